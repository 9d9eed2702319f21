#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

using enum Confidence;
constexpr Group kAreas = Group::Areas;

constexpr std::array<Field, 2> kPositionFields{
    {{"echelon", "Echelon", FieldType::Echelon, "plt"}, {"enemy", "Enemy to, grid azimuth", FieldType::Azimuth, "0"}}};
constexpr std::array<Field, 1> kAgent{{{"agent", "Agent", FieldType::Text, ""}}};

constexpr std::array kEntries{
    area("area-of-operations", "Area of operations", "AO", kAreas, Sign::Area, {"120100", High},
         "Where a commander answers for what happens."),
    area("assembly-area", "Assembly area", "AA", kAreas, Sign::Area, {"150200", Medium}, "Where a force prepares."),
    area("objective", "Objective", "OBJ", kAreas, Sign::Area, {"151700", Medium}, "What is to be taken."),
    area("assault-position", "Assault position", "ASLT", kAreas, Sign::Area, {"151500", Medium},
         "The last covered place before the assault."),
    area("attack-position", "Attack position", "ATK", kAreas, Sign::Area, {"151600", Medium},
         "The last place before the line of departure."),
    area("battle-position", "Battle position", "BP", kAreas, Sign::BattlePosition, {"151200", Medium},
         "Defended from; dashed while prepared and not occupied.")
        .with(kPositionFields)
        .named(Naming::Number),
    area("patrol-base", "Patrol base", "PB", kAreas, Sign::Area, {},
         "Where a patrol halts, hidden and ready all round.")
        .explained(),
    area("engagement-area", "Engagement area", "EA", kAreas, Sign::Area, {"151300", Medium},
         "Where the enemy is to be destroyed by massed fires."),
    area("named-area-of-interest", "Named area of interest", "NAI", kAreas, Sign::Area, {"120200", High},
         "Watched, to answer a question.")
        .named(Naming::Number),
    area("targeted-area-of-interest", "Targeted area of interest", "TAI", kAreas, Sign::Area, {"120300", High},
         "Where a target is to be attacked.")
        .named(Naming::Number),
    area("landing-zone", "Landing zone", "LZ", kAreas, Sign::Area, {"150800", Medium}, "Aircraft set down here."),
    area("pickup-zone", "Pickup zone", "PZ", kAreas, Sign::Area, {"150900", Medium}, "Aircraft pick up here."),
    area("drop-zone", "Drop zone", "DZ", kAreas, Sign::Area, {"150600", Medium}, "People or loads are dropped here."),
    area("extraction-zone", "Extraction zone", "EZ", kAreas, Sign::Area, {"150700", Medium},
         "A force is taken out from here."),
    area("support-area", "Support area", "BSA", kAreas, Sign::Area, {}, "Where support is based.").explained(),
    area("rehearsal-area", "Rehearsal area", "RHSL", kAreas, Sign::Area, {}, "Where the operation is rehearsed.")
        .explained(),
    area("danger-area", "Danger area", "DANGER AREA", kAreas, Sign::DangerArea, {},
         "Open, or under somebody's eyes; crossed by drill.")
        .explained()
        .named(Naming::Number),
    area("contaminated-area", "Contaminated area", "CBRN", kAreas, Sign::Area, {}, "The agent is written out.")
        .in(Colour::Contamination)
        .with(kAgent),
    area("free-area", "Area", "", kAreas, Sign::Area, {}, "An area without a meaning of its own; name it.")
        .explained()
        .worded(Wording::Bare),
    anchored("support-by-fire", "Support by fire", "SBF", kAreas, kFour, Sign::SupportByFire, {"152100", Medium},
             "Both ends of the position, then the left and the right limit of fire."),
    anchored("attack-by-fire", "Attack by fire", "ABF", kAreas, kThree, Sign::AttackByFire, {"152000", Medium},
             "Both ends of the position, then a point on the enemy."),
};

}  // namespace

std::span<const Entry> areaEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
