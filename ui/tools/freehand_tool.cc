#include "ui/tools/freehand_tool.h"

#include <cmath>

#include <fmt/format.h>

#include "ui/tools/hit.h"
#include "ui/tools/place_tool.h"

namespace crosstick::tools {
namespace {

constexpr double kStep = 0.125;  // of the tolerance: a hand that stands still adds nothing

}  // namespace

void FreehandTool::trace(const Event& event) {
    hand_ = event.at;
    if (!trace_.empty() && apart(trace_.back(), event.at) > tolerance_ * kStep) {
        trace_.push_back(event.at);
    }
}

void FreehandTool::endAt(const Event& event) {
    trace(event);
    if (trace_.size() > 1) {
        trace_.back() = event.at;
    }
}

Reply FreehandTool::finished(const measures::Entry& kind, const Ground& ground) {
    Reply reply;
    const plan::Points kept = geodesy::simplified(trace_, tolerance_);
    const std::size_t drawn = trace_.size();
    trace_.clear();
    dragged_ = false;
    if (kept.size() < static_cast<std::size_t>(kind.points.least)) {
        return reply;  // a click and another on the spot: nothing was drawn
    }
    plan::Measure measure = newMeasure(kind, ground.plan, ground.newId(), kept);
    const plan::ItemId id = measure.id;
    reply.commit = Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film), "draw freehand", true,
                          &kind == &entry_};
    reply.select = std::optional<plan::ItemId>(id);
    reply.said = fmt::format("{} points drawn, {} kept: none that is left out lies {} m off the line.", drawn,
                             kept.size(), std::lround(std::ceil(tolerance_.value())));
    reply.done = true;
    return reply;
}

Reply FreehandTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    switch (event.kind) {
        case Event::Kind::Press:
            if (!trace_.empty()) {
                endAt(event);
                return finished(entry_, ground);
            }
            hand_ = event.at;
            trace_ = {event.at};
            dragged_ = event.held;
            return reply;
        case Event::Kind::Move:
            trace(event);
            dragged_ = dragged_ && event.held;
            return reply;
        case Event::Kind::Release:
            if (dragged_ && trace_.size() > 1 && apart(trace_.front(), event.at) > ground.reach * 2) {
                endAt(event);
                return finished(entry_, ground);
            }
            dragged_ = false;
            return reply;
        case Event::Kind::Again:
        case Event::Kind::Finish:
            return finished(entry_, ground);
        case Event::Kind::TakeBack:
            trace_.clear();
            return reply;
        case Event::Kind::Cancel:
            reply.done = trace_.empty();
            trace_.clear();
            return reply;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

std::optional<Reply> FreehandTool::endAs(const measures::Entry& kind, const Ground& ground) {
    const bool isLine = kind.shape == measures::Shape::Line || kind.shape == measures::Shape::Area;
    if (!isLine || kind.points.most || trace_.size() < 2) {
        return std::nullopt;
    }
    Reply reply = finished(kind, ground);
    return reply.commit ? std::optional(std::move(reply)) : std::nullopt;
}

Wet FreehandTool::wet() const {
    Wet wet{trace_, entry_.shape == measures::Shape::Area && trace_.size() > 2, "line drawn freehand", std::nullopt};
    wet.line.push_back(hand_);
    return wet;
}

std::string FreehandTool::hint() const {
    return trace_.empty() ? "click where the line begins, then draw"
                          : fmt::format("a click ends it \u00b7 {} points", trace_.size());
}

}  // namespace crosstick::tools
