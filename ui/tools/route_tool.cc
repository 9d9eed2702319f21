#include "ui/tools/route_tool.h"

#include <algorithm>

#include "ui/tools/hit.h"

namespace crosstick::tools {
namespace {

std::string routeName(const plan::Plan& plan) {
    for (char letter = 'A'; letter <= 'Z'; ++letter) {
        std::string name(1, letter);
        if (!plan.routeNamed(name)) {
            return name;
        }
    }
    return "NEW";
}

plan::Measure pointOf(std::string kind, std::string number, geodesy::PlanePoint at, const Uuid& id) {
    plan::Measure measure;
    measure.id = id;
    measure.kind = std::move(kind);
    measure.number = std::move(number);
    measure.points = {at};
    return measure;
}

}  // namespace

std::string RouteTool::nextLabel(const Ground& ground) const {
    if (corners_.empty()) {
        return "SP " + plan::nextNumber(ground.plan, "start-point");
    }
    const auto drawn = std::count_if(corners_.begin() + 1, corners_.end(),
                                     [](const Corner& corner) { return !corner.bend && !corner.stands; });
    // Numbers that the present plan has are passed over, then those of this line.
    plan::Plan so = ground.plan;
    for (std::ptrdiff_t n = 0; n < drawn; ++n) {
        plan::PlanBuilder builder(so);
        Uuid id;
        id.bytes[0] = static_cast<std::uint8_t>(n + 1);
        builder.put(pointOf("checkpoint", plan::nextNumber(so, "checkpoint"), {}, id));
        so = std::move(builder).build();
    }
    return "CP " + plan::nextNumber(so, "checkpoint");
}

/// The plan with the route of these corners: points are made where none stands, the last one as what the ending says.
Preview RouteTool::built(const std::vector<Corner>& corners, const Ground& ground, Ending ending) const {
    plan::Route route;
    route.id = ground.newId();
    route.name = routeName(ground.plan);
    route.use = use_;
    std::vector<plan::Measure> made;
    plan::Plan so = ground.plan;
    for (std::size_t n = 0; n < corners.size(); ++n) {
        const Corner& corner = corners[n];
        const bool last = n + 1 == corners.size();
        route.vertices.push_back(corner.at);
        if (corner.stands) {
            route.stops.push_back({n, *corner.stands, {}});
        } else if (use_ != plan::Use::Vehicle && (!corner.bend || last)) {
            const std::string kind = n == 0                                     ? "start-point"
                                     : last && ending == Ending::AtReleasePoint ? "release-point"
                                                                                : "checkpoint";
            plan::Measure measure = pointOf(kind, plan::nextNumber(so, kind), corner.at, ground.newId());
            route.stops.push_back({n, measure.id, {}});
            plan::PlanBuilder builder(so);
            builder.put(measure);
            so = std::move(builder).build();
            made.push_back(std::move(measure));
        }
    }
    const plan::ItemId id = route.id;
    return {plan::withRoute(ground.plan, std::move(route), std::move(made), ground.film), id};
}

std::optional<Preview> RouteTool::preview(const Ground& ground) const {
    if (corners_.empty()) {
        return std::nullopt;
    }
    std::vector<Corner> corners = corners_;
    corners.push_back({hand_, false, std::nullopt});
    return built(corners, ground, Ending::InTheHand);
}

Reply RouteTool::finished(const Ground& ground) {
    Reply reply;
    if (corners_.size() < 2) {
        return reply;
    }
    // An alternate shares the release point that it is led to, or ends at a checkpoint: it has none of its own.
    const Ending ending = use_ == plan::Use::Alternate ? Ending::InTheHand : Ending::AtReleasePoint;
    Preview done = built(corners_, ground, ending);
    const char* caption = use_ == plan::Use::Primary     ? "draw a route"
                          : use_ == plan::Use::Alternate ? "draw an alternate route"
                                                         : "draw a way of vehicles";
    reply.commit = Commit{std::move(done.plan), caption, true};
    reply.select = std::optional<plan::ItemId>(done.route);
    reply.done = true;
    corners_.clear();
    return reply;
}

Reply RouteTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    switch (event.kind) {
        case Event::Kind::Press: {
            Corner corner{event.at, event.second, std::nullopt};
            if (const plan::MeasurePtr stands = pointAt(ground.plan, ground.shown, event.at, ground.reach)) {
                const bool twice = std::any_of(corners_.begin(), corners_.end(),
                                               [&](const Corner& c) { return c.stands == stands->id; });
                if (!twice) {
                    corner = {stands->points.front(), false, stands->id};
                }
            }
            corners_.push_back(corner);
            hand_ = event.at;
            break;
        }
        case Event::Kind::Move:
        case Event::Kind::Release:
            hand_ = event.at;
            break;
        case Event::Kind::Again:  // no point of its own: it ends the route at the one it pressed
        case Event::Kind::Finish:
            return finished(ground);
        case Event::Kind::TakeBack:
            if (!corners_.empty()) {
                corners_.pop_back();
            }
            break;
        case Event::Kind::Cancel:
            reply.done = corners_.empty();
            corners_.clear();
            break;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    what_ = nextLabel(ground);
    return reply;
}

Wet RouteTool::wet() const {
    Wet wet{{}, false, what_, std::nullopt};
    for (const Corner& corner : corners_) {
        wet.line.push_back(corner.at);
    }
    if (!corners_.empty()) {
        wet.from = corners_.size() - 1;
    }
    wet.line.push_back(hand_);
    return wet;
}

std::string RouteTool::hint() const {
    return corners_.empty()      ? "click the start point"
           : corners_.size() < 2 ? "click the next point, Shift for a bend"
                                 : "Enter or a double click ends it at the last point";
}

}  // namespace crosstick::tools
