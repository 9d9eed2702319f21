#include "ui/tools/place_tool.h"

#include "core/plan/numbering.h"
#include "core/plan/route_edits.h"
#include "ui/tools/hit.h"

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

/// A checkpoint on a route's line or bend is put into it.
plan::Plan onRoute(const plan::Plan& plan, const Ground& ground, const plan::Measure& measure) {
    const auto hit = measure.kind == "checkpoint" && !measure.points.empty()
                         ? routeAt(ground.plan, ground.shown, measure.points.front(), ground.reach)
                         : std::nullopt;
    if (!hit) {
        return plan;
    }
    const std::size_t vertex = hit->vertex ? *hit->vertex : *hit->before;
    const plan::Plan bent = hit->vertex ? plan : plan::withPointBefore(plan, hit->item, vertex, measure.points.front());
    return plan::withStop(bent, hit->item, vertex, measure.id);
}

}  // namespace

std::string suggestedLabel(const measures::Meant& meant, const plan::Plan& plan) {
    const measures::Entry& entry = *meant.entry;
    if (!meant.unit.empty()) {
        return meant.unit;
    }
    if (entry.shape == measures::Shape::Text || (entry.naming == measures::Naming::None && meant.label.empty())) {
        return lower(entry.name);
    }
    const bool isBare = entry.abbreviation.empty() || entry.wording == measures::Wording::Bare;
    std::string words(isBare ? entry.name : entry.abbreviation);
    const plan::Called called = plan::calledBy(meant, plan);
    for (const std::string& part : {called.number, called.name}) {
        words += part.empty() ? part : ' ' + part;
    }
    return words;
}

std::string suggestedLabel(const measures::Entry& entry, const plan::Plan& plan) {
    return suggestedLabel(measures::Meant{&entry, {}, {}}, plan);
}

plan::Measure newMeasure(const measures::Meant& meant, const plan::Plan& plan, const plan::ItemId& id,
                         plan::Points points) {
    plan::Measure measure;
    measure.id = id;
    measure.kind = meant.entry->kind;
    measure.points = std::move(points);
    for (const measures::Field& field : meant.entry->fields) {
        const bool isSaid = field.type == measures::FieldType::UnitWords && !meant.unit.empty();
        if (isSaid || !field.standard.empty()) {
            measure.fields.emplace(field.key, isSaid ? std::string_view(meant.unit) : field.standard);
        }
    }
    return plan::called(std::move(measure), meant, plan);
}

plan::Measure newMeasure(const measures::Entry& entry, const plan::Plan& plan, const plan::ItemId& id,
                         plan::Points points) {
    return newMeasure(measures::Meant{&entry, {}, {}}, plan, id, std::move(points));
}

plan::Measure PlaceTool::made(const Ground& ground) const {
    plan::Measure measure = newMeasure(meant_, ground.plan, ground.newId(), points_);
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
    const bool isSaid = !meant_.label.empty() || !meant_.unit.empty();  // else the caret goes to its label
    reply.commit = Commit{onRoute(plan::withMeasure(ground.plan, measure, ground.film), ground, measure),
                          "draw " + lower(entry_.name), !isSaid};
    reply.select = std::optional<plan::ItemId>(id);
    meant_.label.clear();                  // it is taken now
    reply.done = entry_.points.most != 1;  // points are often placed one after the other
    points_.clear();
    return reply;
}

Reply PlaceTool::take(const Event& event, const Ground& ground) {
    what_ = suggestedLabel(meant_, ground.plan);
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
