#include "ui/tools/place_tool.h"

namespace crosstick::tools {
namespace {

constexpr drawing::Point kCorner{5, 5};  ///< where a block lies on a film that has no place yet

std::string lower(std::string_view text) {
    std::string all(text);
    if (!all.empty()) {
        all[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(all[0])));
    }
    return all;
}

}  // namespace

std::string suggestedLabel(const measures::Entry& entry, const plan::Plan& plan) {
    const bool isBare = entry.abbreviation.empty() || entry.wording == measures::Wording::Bare;
    const std::string head(isBare ? entry.name : entry.abbreviation);
    if (entry.shape == measures::Shape::Text || entry.naming == measures::Naming::None) {
        return lower(entry.name);
    }
    return head + ' ' +
           (entry.naming == measures::Naming::Number ? plan::nextNumber(plan, entry.kind)
                                                     : plan::nextName(plan, entry.kind));
}

plan::Measure newMeasure(const measures::Entry& entry, const plan::Plan& plan, const plan::ItemId& id,
                         plan::Points points) {
    plan::Measure measure;
    measure.id = id;
    measure.kind = entry.kind;
    measure.points = std::move(points);
    if (entry.shape == measures::Shape::Text) {
        measure.name = "TEXT";
    } else if (entry.naming == measures::Naming::Number) {
        measure.number = plan::nextNumber(plan, entry.kind);
    } else if (entry.naming == measures::Naming::Letter) {
        measure.name = plan::nextName(plan, entry.kind);
    }
    for (const measures::Field& field : entry.fields) {
        if (!field.standard.empty()) {
            measure.fields.emplace(field.key, field.standard);
        }
    }
    return measure;
}

plan::Measure PlaceTool::made(const Ground& ground) const {
    plan::Measure measure = newMeasure(entry_, ground.plan, ground.newId(), points_);
    if (entry_.lies == measures::Lies::OnThePaper) {
        measure.anchor = plan::Anchor::Paper;
        for (geodesy::PlanePoint& point : measure.points) {
            const drawing::Point paper = (ground.onPaper ? ground.onPaper(point) : std::nullopt).value_or(kCorner);
            point = {Metres(paper.x), Metres(paper.y)};
        }
    }
    return measure;
}

Reply PlaceTool::finished(const Ground& ground) {
    Reply reply;
    if (points_.size() < static_cast<std::size_t>(entry_.points.least)) {
        return reply;
    }
    plan::Measure measure = made(ground);
    const plan::ItemId id = measure.id;
    reply.commit =
        Commit{plan::withMeasure(ground.plan, std::move(measure), ground.film), "draw " + lower(entry_.name), true};
    reply.select = std::optional<plan::ItemId>(id);
    reply.done = entry_.points.most != 1;  // points are often placed one after the other
    points_.clear();
    return reply;
}

Reply PlaceTool::take(const Event& event, const Ground& ground) {
    what_ = suggestedLabel(entry_, ground.plan);
    Reply reply;
    switch (event.kind) {
        case Event::Kind::Press: {
            hand_ = event.at;
            points_.push_back(event.at);
            const bool whole = entry_.points.most && points_.size() >= static_cast<std::size_t>(*entry_.points.most);
            return whole ? finished(ground) : reply;
        }
        case Event::Kind::Move:
        case Event::Kind::Release:
            hand_ = event.at;
            return reply;
        case Event::Kind::Again:  // no point of its own: it ends the line at the one it pressed
        case Event::Kind::Finish:
            return finished(ground);
        case Event::Kind::TakeBack:
            if (!points_.empty()) {
                points_.pop_back();
            }
            return reply;
        case Event::Kind::Cancel:
            reply.done = points_.empty();
            points_.clear();
            return reply;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet PlaceTool::wet() const {
    Wet wet{points_, entry_.shape == measures::Shape::Area, what_, std::nullopt};
    if (!points_.empty()) {
        wet.from = points_.size() - 1;
    }
    wet.line.push_back(hand_);
    return wet;
}

std::string PlaceTool::hint() const {
    if (points_.size() < static_cast<std::size_t>(entry_.points.least)) {
        if (entry_.points.least > 1 && entry_.points.most == entry_.points.least) {  // anchors, each with its meaning
            return std::to_string(points_.size() + 1) + " of " + std::to_string(entry_.points.least) + ": " +
                   lower(entry_.help);
        }
        return points_.empty() ? "click its place" : "click the next point";
    }
    return "Enter or a double click ends it";
}

}  // namespace crosstick::tools
