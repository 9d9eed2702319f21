#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

using enum Confidence;
constexpr Group kLines = Group::Lines;
constexpr Group kMove = Group::Movement;

// Which unit lies on which side of the line, and how high each stands: the higher mark is drawn in the line.
constexpr std::array<Field, 4> kBoundaryFields{{
    {"left_unit", "Left unit", FieldType::Unit, ""},
    {"right_unit", "Right unit", FieldType::Unit, ""},
    {"left_echelon", "Left echelon", FieldType::Echelon, ""},
    {"right_echelon", "Right echelon", FieldType::Echelon, ""},
}};
constexpr std::array<Field, 1> kEnemySide{{{"enemy_side", "Enemy on the", FieldType::Side, "left"}}};
constexpr std::array<Field, 2> kContact{{
    {"half_circles", "As half circles", FieldType::Answer, "no"},
    {"enemy_side", "Enemy on the", FieldType::Side, "left"},
}};
constexpr std::array<Field, 1> kOneWay{{{"one_way", "One way, as it is drawn", FieldType::Answer, "no"}}};
constexpr std::array<Field, 1> kWidth{{{"width", "Width on the film, mm", FieldType::Millimetres, "5"}}};

constexpr std::array kEntries{
    line("boundary", "Boundary", "", kLines, Sign::Boundary, {"110100", High},
         "Parts the areas of two units; each is named on its own side.")
        .with(kBoundaryFields)
        .named(Naming::None),
    line("phase-line", "Phase line", "PL", kLines, Sign::NamedLine, {"140300", High},
         "A line to report at or to stop on, along something that can be recognised."),
    line("light-line", "Light line", "LL", kLines, Sign::NamedLine, {"110200", Medium},
         "Vehicles go without lights beyond it.")
        .worded(Wording::OverPhaseLine),
    line("line-of-departure", "Line of departure", "LD", kLines, Sign::NamedLine, {"141000", Medium},
         "Crossed at a set time; carries its phase line's name.")
        .worded(Wording::OverPhaseLine),
    line("line-of-departure-and-contact", "Line of departure is line of contact", "LD/LC", kLines, Sign::NamedLine,
         {"141100", Medium}, "The attack begins where the forces face each other.")
        .worded(Wording::OverPhaseLine),
    line("line-of-contact", "Line of contact", "LC", kLines, Sign::ContactLine, {"140200", Medium},
         "Where the forces face each other.")
        .worded(Wording::OverPhaseLine)
        .with(kContact),
    line("final-coordination-line", "Final coordination line", "FINAL CL", kLines, Sign::NamedLine, {"140700", Medium},
         "Supporting fires are lifted or shifted when it is reached.")
        .worded(Wording::OverPhaseLine),
    line("limit-of-advance", "Limit of advance", "LOA", kLines, Sign::NamedLine, {"140900", Medium},
         "Nobody goes beyond without order.")
        .worded(Wording::OverPhaseLine),
    line("probable-line-of-deployment", "Probable line of deployment", "PLD", kLines, Sign::NamedLine,
         {"141200", Medium}, "Where the force deploys into its fighting formation, mostly by night.")
        .worded(Wording::OverPhaseLine)
        .drawn(Dashed::Always),
    line("battle-handover-line", "Battle handover line", "BHL", kLines, Sign::NamedLine, {},
         "Responsibility passes from one force to the other.")
        .worded(Wording::OverPhaseLine),
    line("forward-line-of-own-troops", "Forward line of own troops", "FLOT", kLines, Sign::FrontLine, {"140100", High},
         "The most forward positions; its half circles bulge to the enemy's side.")
        .with(kEnemySide)
        .named(Naming::None),
    line("forward-edge-of-battle-area", "Forward edge of the battle area", "FEBA", kLines, Sign::NamedLine,
         {"140400", Medium}, "In words: its end marks are not drawn here.")
        .explained(),
    line("infiltration-lane", "Infiltration lane", "LANE", kLines, Sign::Lane, {"140800", Low},
         "Its middle line; infiltrating forces keep inside it.")
        .explained()
        .with(kWidth)
        .named(Naming::Number),
    line("direction-of-attack", "Direction of attack", "", kLines, Sign::Attack, {"140603", Medium},
         "From its tail to its tip."),
    line("direction-of-main-attack", "Direction of main attack", "", kLines, Sign::MainAttack, {"140602", Medium},
         "From its tail to its tip."),
    line("axis-of-advance", "Axis of advance", "AXIS", kLines, Sign::Axis, {"151404", Medium},
         "Its middle line from tail to tip; the force may use all of its width.")
        .with(kWidth),
    line("axis-of-main-advance", "Axis of main advance", "AXIS", kLines, Sign::MainAxis, {"151403", Medium},
         "The main effort's axis, from tail to tip.")
        .with(kWidth),
    anchored("ambush", "Ambush", "AMB", kLines, kThree, Sign::Ambush, {"141700", Low},
             "Both ends of the position, then a point in the kill zone.")
        .explained(),
    line("report-line", "Report line", "RPT", kLines, Sign::NamedLine, {}, "Crossed with a report or a signal.")
        .named(Naming::Number),
    line("free-line", "Line", "", kLines, Sign::NamedLine, {}, "A line without a meaning of its own; name it.")
        .explained()
        .worded(Wording::Bare),
    line("free-arrow", "Arrow", "", kLines, Sign::FreeArrow, {}, "An arrow without a meaning of its own; name it.")
        .explained()
        .drawn(Dashed::Never)
        .worded(Wording::Bare),

    line("direction-of-movement", "Direction of movement", "", kMove, Sign::Movement, {}, "From its tail to its tip.")
        .named(Naming::None),
    line("route-line", "Route of others", "RTE", kMove, Sign::Way, {"330100", Low},
         "A route that is known by name, without legs of its own.")
        .with(kOneWay),
    line("main-supply-route", "Main supply route", "MSR", kMove, Sign::Way, {"330300", Medium},
         "The route that supply runs on.")
        .with(kOneWay),
    line("alternate-supply-route", "Alternate supply route", "ASR", kMove, Sign::Way, {"330400", Medium},
         "Used where the main supply route cannot be.")
        .with(kOneWay),
    anchored("halt", "Halt on a route", "HALT", kMove, kTwo, Sign::Halt, {},
             "The spot, then a point along the way: two bars stand across it.")
        .explained(),
};

}  // namespace

std::span<const Entry> lineEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
