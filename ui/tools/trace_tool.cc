#include "ui/tools/trace_tool.h"

#include <algorithm>

#include "core/geodesy/plane_line.h"
#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"

namespace crosstick::tools {
namespace {

using geodesy::PlanePoint;

bool isLine(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->shape == measures::Shape::Line && !entry->points.most &&
           measure.points.size() > 1;
}

}  // namespace

plan::FilmPtr filmToTraceFrom(const Ground& ground, const plan::ItemId& item) {
    const auto found = std::find_if(ground.shown.rbegin(), ground.shown.rend(), [&](const plan::FilmPtr& film) {
        return film->id != ground.film && plan::isShownOn(*film, item);
    });
    return found == ground.shown.rend() ? nullptr : *found;
}

TraceTool::Grip TraceTool::gripAt(PlanePoint at, const Ground& ground) const {
    Grip grip{at, {}, {}, {}};
    std::vector<plan::FilmPtr> others = ground.shown;
    std::erase_if(others, [&](const plan::FilmPtr& film) { return film->id == ground.film; });
    const auto hit = hitAt(ground.plan, others, std::nullopt, at, ground.reach);
    const plan::MeasurePtr measure = hit ? ground.plan.measure(hit->item) : nullptr;
    if (measure) {
        grip.order = plan::TraceOrder{measure->id, filmToTraceFrom(ground, measure->id)->id, version_(*measure), {}};
        grip.line = isLine(*measure) ? measure->points : plan::Points{};
        grip.what = movement::label(*measure);
    }
    return grip;
}

/// Of the line, between the place where the hand took hold and the one nearest to it now.
plan::Points TraceTool::stretch() const {
    return geodesy::partBetween(grip_->line, grip_->start, hand_);
}

Reply TraceTool::released(const Ground& ground) {
    const Grip grip = *grip_;
    const bool wentOn = apart(grip.start, hand_) > ground.reach;
    Reply reply;
    if (!grip.order) {
        grip_.reset();
        const auto corner = ways_.onGrid(grip.start);
        const auto opposite = ways_.onGrid(hand_);
        if (wentOn && corner && opposite) {
            reply.done = true;
            box_(*corner, *opposite);
        }
        return reply;
    }
    plan::TraceOrder order = *grip.order;
    if (wentOn && !grip.line.empty()) {
        order.part = stretch();
    }
    grip_.reset();
    plan::Traced traced = plan::traced(ground.plan, {order}, ground.film, ground.newId);
    if (!traced.copies.empty()) {
        reply.commit = Commit{std::move(traced.plan), "trace " + grip.what};
        reply.select = traced.copies.front();
    }
    return reply;
}

Reply TraceTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    hand_ = event.kind == Event::Kind::Nudge ? hand_ : event.at;
    switch (event.kind) {
        case Event::Kind::Press:
            grip_ = gripAt(event.at, ground);
            break;
        case Event::Kind::Release:
            return grip_ ? released(ground) : reply;
        case Event::Kind::Cancel:
            reply.done = !grip_;
            grip_.reset();
            break;
        case Event::Kind::Finish:
            reply.done = true;
            break;
        case Event::Kind::Move:
        case Event::Kind::Again:
        case Event::Kind::TakeBack:
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet TraceTool::wet() const {
    Wet wet;
    if (!grip_) {
        wet.what = "trace";
        return wet;
    }
    wet.what = grip_->what.empty() ? "what lies in the box" : grip_->what;
    if (!grip_->order) {
        const auto corner = ways_.onGrid(grip_->start);
        const auto opposite = ways_.onGrid(hand_);
        if (corner && opposite) {
            wet.line = boxInPlan(ways_, *corner, *opposite);
            wet.closes = true;
        }
    } else if (!grip_->line.empty()) {
        wet.line = stretch();
    }
    return wet;
}

}  // namespace crosstick::tools
