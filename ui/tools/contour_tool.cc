#include "ui/tools/contour_tool.h"

#include "core/movement/hand_profile.h"
#include "core/plan/route_edits.h"

namespace crosstick::tools {

Reply ContourTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    const plan::RoutePtr route = ground.plan.route(route_);
    if (!route || route->vertices.empty()) {
        reply.done = true;  // the route is gone
        return reply;
    }
    const auto nearest = [&](geodesy::PlanePoint point) { return movement::nearestOn(route->vertices, point).at; };
    read_.clear();
    for (const plan::ContourSpot& contour : route->contours) {
        read_.push_back(nearest(contour.at));
    }
    switch (event.kind) {
        case Event::Kind::Press:
            onRoute_ = nearest(event.at);
            ask_(*onRoute_);
            break;
        case Event::Kind::Move:
        case Event::Kind::Release:
            onRoute_ = nearest(event.at);
            break;
        case Event::Kind::TakeBack:
            if (!route->contours.empty()) {
                reply.commit = Commit{plan::withoutLastContour(ground.plan, route_), "take back a contour"};
            }
            break;
        case Event::Kind::Finish:
        case Event::Kind::Cancel:
            reply.done = true;
            break;
        case Event::Kind::Again:  // one place, pressed twice
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet ContourTool::wet() const {
    Wet wet;
    if (onRoute_) {
        wet.line = {*onRoute_};
    }
    wet.what = "contour";
    wet.marks = read_;
    if (onRoute_) {
        wet.marks.push_back(*onRoute_);  // the hand may be beside the route
    }
    wet.belongs = Wet::Belongs::ToThePlan;
    return wet;
}

std::string ContourTool::hint() const {
    return read_.empty() ? "click where the route crosses a contour" : "click the next contour, Enter ends";
}

}  // namespace crosstick::tools
