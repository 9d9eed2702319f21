#include "symbols/signs.h"

#include <algorithm>
#include <array>

#include "symbols/action_boxes.h"
#include "symbols/area_signs.h"
#include "symbols/areas.h"
#include "symbols/axes.h"
#include "symbols/boundary.h"
#include "symbols/circle_tasks.h"
#include "symbols/crossings.h"
#include "symbols/fires.h"
#include "symbols/front_lines.h"
#include "symbols/ground_signs.h"
#include "symbols/line_labels.h"
#include "symbols/line_signs.h"
#include "symbols/order_of_march.h"
#include "symbols/point_marks.h"
#include "symbols/tasks.h"
#include "symbols/unit_symbol.h"
#include "symbols/words.h"

namespace crosstick::symbols {
namespace {

using measures::Sign;

constexpr SignRule spot(Sign sign, void (*place)(Desk&, Subject&)) {
    return {sign, Body::Spot, Turn::Symbols, Layer::Symbols, place};
}
constexpr SignRule lineEnds(Sign sign, void (*place)(Desk&, Subject&)) {
    return {sign, Body::Line, Turn::LineEnds, Layer::Lines, place};
}
constexpr SignRule ring(Sign sign, void (*place)(Desk&, Subject&)) {
    return {sign, Body::Ring, Turn::Areas, Layer::Areas, place};
}
constexpr SignRule wide(Sign sign, void (*place)(Desk&, Subject&)) {
    return {sign, Body::Line, Turn::Areas, Layer::Lines, place};
}
/// A constructed sign that stands between its anchors like a symbol.
constexpr SignRule anchored(Sign sign, void (*place)(Desk&, Subject&), Points (*along)(const Points&) = nullptr) {
    return {sign, Body::Anchors, Turn::Symbols, Layer::Symbols, place, along};
}

/// The order in which the points of a support by fire are drawn.
Points fireLine(const Points& p) {
    return {p[2], p[0], p[1], p[3]};
}
/// A bar between the first two, and from its middle to the third.
Points barAndStem(const Points& p) {
    const Point middle = (p[0] + p[1]) * 0.5;
    return {p[0], p[1], middle, p[2]};
}

constexpr std::array kRules{
    spot(Sign::ActionBox, &placeActionBox),
    spot(Sign::Square, &placeContactPoint),
    spot(Sign::Coordination, &placeCoordinationPoint),
    spot(Sign::Star, &placeDecisionPoint),
    spot(Sign::Post, &placeObservationPost),
    spot(Sign::Target, &placeTargetReferencePoint),
    spot(Sign::Critical, &placeCriticalPoint),
    spot(Sign::KeyTerrain, &placeKeyTerrain),
    spot(Sign::Waypoint, &placeWaypoint),
    spot(Sign::RangeRing, &placeRangeRing),
    spot(Sign::TaskWords, &placeTaskInWords),
    spot(Sign::Unit, &placeUnit),
    anchored(Sign::Viewpoint, &placeViewpoint,
             [](const Points& p) {
                 return Points{p[1], p[0], p[2]};
             }),
    anchored(Sign::Ford, &placeFord),
    anchored(Sign::Bridge, &placeBridge),
    anchored(Sign::Ferry, &placeFerry),
    anchored(Sign::SlopeArrows, &placeSlopeArrows),
    anchored(Sign::Halt, &placeHalt),
    lineEnds(Sign::NamedLine, &placeNamedLine),
    lineEnds(Sign::ContactLine, &placeContactLine),
    lineEnds(Sign::FrontLine, &placeFrontLine),
    lineEnds(Sign::Teeth, &placeObstacleLine),
    lineEnds(Sign::DangerLine, &placeDangerLine),
    SignRule{Sign::Boundary, Body::Line, Turn::Boundaries, Layer::Lines, &placeBoundary},
    SignRule{Sign::Way, Body::Line, Turn::Boundaries, Layer::Lines, &placeWay},
    wide(Sign::Lane, &placeLane),
    wide(Sign::Attack, &placeAttack),
    wide(Sign::MainAttack, &placeMainAttack),
    wide(Sign::Movement, &placeMovement),
    wide(Sign::FreeArrow, &placeFreeArrow),
    wide(Sign::Axis, &placeAxis),
    wide(Sign::MainAxis, &placeMainAxis),
    wide(Sign::Avenue, &placeAvenue),
    wide(Sign::Corridor, &placeCorridor),
    anchored(Sign::Ambush, &placeAmbush, &barAndStem),
    ring(Sign::Area, &placeArea),
    ring(Sign::BattlePosition, &placeBattlePosition),
    ring(Sign::KeyTerrainArea, &placeKeyTerrainArea),
    ring(Sign::DangerArea, &placeDangerArea),
    ring(Sign::Hatched, &placeRestricted),
    ring(Sign::CrossHatched, &placeSeverelyRestricted),
    ring(Sign::NoGo, &placeNoGo),
    anchored(Sign::SupportByFire, &placeSupportByFire, &fireLine),
    anchored(Sign::AttackByFire, &placeAttackByFire, &barAndStem),
    anchored(Sign::Block, &placeBlock, &barAndStem),
    anchored(Sign::Breach, &placeBreach, &barAndStem),
    anchored(Sign::Canalize, &placeCanalize, &barAndStem),
    anchored(Sign::Bypass, &placeBypass, &barAndStem),
    anchored(Sign::Clear, &placeClear, &barAndStem),
    anchored(Sign::Disrupt, &placeDisrupt, &barAndStem),
    anchored(Sign::Fix, &placeFix),
    anchored(Sign::Destroy, &placeDestroy),
    anchored(Sign::Neutralize, &placeNeutralize),
    anchored(Sign::Interdict, &placeInterdict),
    anchored(Sign::Secure, &placeSecure),
    anchored(Sign::Occupy, &placeOccupy),
    anchored(Sign::Retain, &placeRetain),
    anchored(Sign::Isolate, &placeIsolate),
    anchored(Sign::Security, &placeSecurity,
             [](const Points& p) {
                 return Points{p[1], p[0], p[2]};
             }),
    anchored(Sign::Withdraw, &placeWithdraw),
    SignRule{Sign::Words, Body::Spot, Turn::Words, Layer::Symbols, &placeWords},
    SignRule{Sign::BoxedWords, Body::Spot, Turn::Words, Layer::Symbols, &placeBoxedWords},
    SignRule{Sign::OrderOfMarch, Body::Spot, Turn::Blocks, Layer::Symbols, &placeOrderOfMarch},
};

static_assert(kRules.size() == static_cast<std::size_t>(Sign::OrderOfMarch) + 1, "every sign has one rule");

}  // namespace

const SignRule& ruleOf(Sign sign) {
    const auto found = std::find_if(kRules.begin(), kRules.end(), [sign](const SignRule& r) { return r.sign == sign; });
    return found == kRules.end() ? unknownRule() : *found;
}

const SignRule& unknownRule() {
    static constexpr SignRule kUnknown{Sign::Words, Body::Spot, Turn::Words, Layer::Lines, &placeUnknown};
    return kUnknown;
}

}  // namespace crosstick::symbols
