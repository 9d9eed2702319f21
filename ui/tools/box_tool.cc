#include "ui/tools/box_tool.h"

#include "ui/tools/hit.h"

namespace crosstick::tools {

using geodesy::PlanePoint;

plan::Points boxInPlan(const GridWays& ways, PlanePoint corner, PlanePoint opposite) {
    plan::Points box;
    for (const PlanePoint at :
         {corner, {corner.easting, opposite.northing}, opposite, {opposite.easting, corner.northing}}) {
        box.push_back(ways.inPlan(at).value_or(PlanePoint{}));
    }
    return box;
}

Reply BoxTool::ended() {
    const PlanePoint corner = *std::exchange(corner_, std::nullopt);
    Reply reply;
    reply.done = true;
    take_(corner, hand_);
    return reply;
}

Reply BoxTool::take(const Event& event, const Ground& ground) {
    const auto onGrid = ways_.onGrid(event.at);
    Reply reply;
    if (!onGrid) {
        reply.done = event.kind == Event::Kind::Cancel;
        return reply;
    }
    switch (event.kind) {
        case Event::Kind::Press:
            hand_ = *onGrid;
            if (corner_) {
                return ended();
            }
            corner_ = hand_;
            break;
        case Event::Kind::Move:
            hand_ = *onGrid;
            break;
        case Event::Kind::Release:
            hand_ = *onGrid;
            if (corner_ && apart(*corner_, hand_) > ground.reach) {  // else it was a click: the other corner follows
                return ended();
            }
            break;
        case Event::Kind::Cancel:
            reply.done = !corner_;
            corner_.reset();
            break;
        case Event::Kind::Again:
        case Event::Kind::Finish:
        case Event::Kind::TakeBack:
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet BoxTool::wet() const {
    Wet wet;
    wet.belongs = Wet::Belongs::Nowhere;
    wet.what = corner_ ? words_(*corner_, hand_) : hint_;
    if (corner_) {
        wet.line = boxInPlan(ways_, *corner_, hand_);
        wet.closes = true;
    }
    return wet;
}

}  // namespace crosstick::tools
