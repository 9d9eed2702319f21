#include "ui/tools/meeting_tool.h"

#include <algorithm>

#include "core/drafting/wipe_edits.h"
#include "ui/tools/hit.h"

namespace crosstick::tools {
namespace {

using drafting::End;
using geodesy::Ends;

struct Edge {
    plan::Points line;
    Ends ends = Ends::Open;
};

Edge edgeOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return {route->vertices, Ends::Open};
    }
    const plan::MeasurePtr measure = plan.measure(item);
    const measures::Entry* entry = measures::find(measure->kind);
    const bool isArea = entry != nullptr && entry->shape == measures::Shape::Area;
    return {measure->points, isArea ? Ends::Closed : Ends::Open};
}

}  // namespace

Reply MeetingTool::begun(const Event& event, const Ground& ground) {
    Reply reply;
    const plan::FilmPtr film = ground.plan.film(ground.film);
    const auto hit = film ? hitAt(ground.plan, {film}, {}, event.at, ground.reach) : std::nullopt;
    const plan::MeasurePtr measure = hit ? ground.plan.measure(hit->item) : nullptr;
    if (!measure || !drafting::hasPartsToWipe(ground.plan, hit->item)) {
        reply.said = hit && ground.plan.route(hit->item)
                         ? "A route ends at its points: drag the last one to where it is to end."
                         : "Press on a line of the working film, near the end that is to reach the other.";
        return reply;
    }
    const auto on = geodesy::nearestOn(measure->points, Ends::Open, event.at);
    const double share = geodesy::lengthOf(geodesy::lineOf(measure->points, {0, std::max(on->way, 1e-9)})) /
                         geodesy::lengthOf(measure->points);
    taken_ = Taken{hit->item, share < 0.5 ? End::First : End::Last};
    what_ = nameOf(ground.plan, hit->item);
    return reply;
}

std::optional<Result<plan::Points>> MeetingTool::endedThere(const Event& event, const Ground& ground) const {
    std::vector<plan::ItemId> there = allAt(ground.plan, ground.shown, event.at, ground.reach);
    std::erase_if(there, [&](const plan::ItemId& item) {
        return item == taken_->item || edgeOf(ground.plan, item).line.size() < 2;
    });
    if (there.empty()) {
        return std::nullopt;
    }
    const Edge other = edgeOf(ground.plan, there.front());
    return drafting::endedOn(ground.plan.measure(taken_->item)->points, taken_->end, other.line, other.ends);
}

Reply MeetingTool::ended(const Event& event, const Ground& ground) {
    Reply reply;
    auto line = endedThere(event, ground);
    if (!line) {
        reply.said = "Press on the line that " + what_ + " is to end on.";
        return reply;
    }
    if (!*line) {
        reply.refused = line->error();
        return reply;
    }
    plan::Measure measure = *ground.plan.measure(taken_->item);
    measure.points = std::move(**line);
    const plan::ItemId id = measure.id;
    reply.commit = Commit{std::move(plan::PlanBuilder(ground.plan).put(std::move(measure))).build(),
                          "end a line on another", false};
    reply.select = std::optional(id);
    reply.done = true;
    taken_.reset();
    ended_.clear();
    return reply;
}

Reply MeetingTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (taken_ && !ground.plan.measure(taken_->item)) {
        taken_.reset();
    }
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
        const auto line = taken_ ? endedThere(event, ground) : std::nullopt;
        ended_ = line && *line ? **line : plan::Points{};
    }
    switch (event.kind) {
        case Event::Kind::Press:
            return taken_ ? ended(event, ground) : begun(event, ground);
        case Event::Kind::TakeBack:
            taken_.reset();
            break;
        case Event::Kind::Cancel:
            reply.done = !taken_;
            taken_.reset();
            ended_.clear();
            break;
        default:
            break;
    }
    return reply;
}

Wet MeetingTool::wet() const {
    Wet wet{{hand_}, false, taken_ ? "an end of " + what_ : "end a line on another", std::nullopt};
    if (!ended_.empty()) {
        wet.others.push_back(ended_);
    }
    return wet;
}

std::string MeetingTool::hint() const {
    return taken_ ? "click the line that it is to end on" : "click the line, near the end that is to go there";
}

}  // namespace crosstick::tools
