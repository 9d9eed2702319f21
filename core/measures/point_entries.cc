#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

using enum Confidence;
constexpr Group kMove = Group::Movement;
constexpr Group kPoints = Group::Points;
constexpr Group kSupport = Group::Support;

/// From how far off the point can be made out by who comes for it: what a navigator's drift is measured against.
constexpr std::array kSearched{Field{"found_within", "Found within, m", FieldType::Metres, ""}};

constexpr std::array<Field, 2> kCheckpoint{{
    kSearched[0],
    {"lettered", "CKP over its number", FieldType::Answer, "no"},
}};
constexpr std::array kCrossed{Field{"cross", "With a cross", FieldType::Answer, "no"}};

constexpr std::array kEntries{
    box("start-point", "Start point", "SP", kMove, {"131600", High},
        "Where a march comes under its commander; a route's first leg begins here.")
        .with(kSearched),
    box("checkpoint", "Checkpoint", "CP", kMove, {"130300", High},
        "A numbered point that a person can recognise on the ground.")
        .with(kCheckpoint),
    box("release-point", "Release point", "RP", kMove, {"131500", High},
        "Where elements return to their own commander.")
        .with(kSearched),
    box("rally-point", "Rally point", "RLY", kMove, {"131400", High}, "Where those who were separated gather.")
        .with(kSearched),
    box("objective-rally-point", "Objective rally point", "ORP", kMove, {"131400", Medium},
        "The last halt before the objective, out of its sight.")
        .with(kSearched),
    box("traffic-post", "Traffic control post", "TCP", kMove, {"321400", Medium}, "Someone directs the march here."),
    box("scheduled-halt", "Scheduled halt", "HALT", kMove, {}, "A halt beside the route, at a set time.")
        .explained()
        .with(kSearched),
    spot("waypoint", "Waypoint", "", kMove, Sign::Waypoint, {"131800", Medium}, "A place to steer by.")
        .worded(Wording::Bare)
        .with(kSearched),
    spot("critical-point", "Critical point", "", kMove, Sign::Critical, {},
         "Something on a route that a reconnaissance has numbered; the legend says what.")
        .explained()
        .worded(Wording::Bare)
        .with(kSearched),

    box("linkup-point", "Linkup point", "LU", kPoints, {"131100", High}, "Where two forces meet."),
    box("passage-point", "Passage point", "PP", kPoints, {"131200", High}, "Where a force passes through another."),
    box("point-of-departure", "Point of departure", "PD", kPoints, {"160400", Low},
        "Where a unit crosses the line of departure."),
    spot("contact-point", "Contact point", "", kPoints, Sign::Square, {"130500", Medium},
         "Where neighbours have to make contact.")
        .worded(Wording::Bare),
    spot("coordination-point", "Coordination point", "CO", kPoints, Sign::Coordination, {"130600", High},
         "Where neighbours meet to agree, mostly on a boundary."),
    spot("decision-point", "Decision point", "", kPoints, Sign::Star, {"130700", High},
         "Where and when the leader has to decide.")
        .worded(Wording::Bare),
    spot("observation-post", "Observation post", "OP", kPoints, Sign::Post, {"160100", Medium}, "A post that watches."),
    spot("listening-post", "Listening post", "LP", kPoints, Sign::Post, {"160200", Medium},
         "A post that listens, mostly by night."),
    spot("target-reference-point", "Target reference point", "TRP", kPoints, Sign::Target, {"160300", Medium},
         "A thing on the ground that fire is directed from."),

    box("casualty-collection-point", "Casualty collection point", "CCP", kSupport, {"320500", Medium},
        "Where casualties are brought.")
        .with(kCrossed),
    box("ambulance-exchange-point", "Ambulance exchange point", "AXP", kSupport, {"320101", Low},
        "Where casualties change from one vehicle to another."),
    box("ambulance-load-point", "Ambulance load point", "ALP", kSupport, {"320102", Low},
        "Where ambulances are loaded."),
    box("ambulance-relay-point", "Ambulance relay point", "ARP", kSupport, {"320103", Low},
        "Where ambulances wait to take over."),
    box("ambulance-control-point", "Ambulance control point", "ACP", kSupport, {"320104", Low},
        "Where ambulances are told where to go."),
    box("ammunition-supply-point", "Ammunition supply point", "ASP", kSupport, {"320200", Medium},
        "Where ammunition is issued."),
    box("logistics-release-point", "Logistics release point", "LRP", kSupport, {"320900", Medium},
        "Where supplies are handed over to those who fetch them."),
    box("supply-class-1", "Supply point, class I", "CL I", kSupport, {"321701", Low}, "Rations and water."),
    box("supply-class-3", "Supply point, class III", "CL III", kSupport, {"321703", Low}, "Fuel."),
    box("supply-class-5", "Supply point, class V", "CL V", kSupport, {"321705", Low}, "Ammunition."),
    box("medevac-pickup", "Medical evacuation pick-up", "MEDEVAC", kSupport, {"321100", Low},
        "Where the wounded are picked up.")
        .explained(),
    box("rehearsal-site", "Rehearsal site", "RHSL", kSupport, {}, "Where the operation is rehearsed.").explained(),
};

}  // namespace

std::span<const Entry> pointEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
