#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

using enum Confidence;
constexpr Group kGround = Group::Terrain;

constexpr std::array<Field, 1> kEnemySide{{{"enemy_side", "Enemy on the", FieldType::Side, "left"}}};
constexpr std::array<Field, 1> kRadius{{{"radius", "Radius, m", FieldType::Metres, "500"}}};
constexpr std::array<Field, 1> kSlope{{{"slope", "Slope, %", FieldType::Percent, ""}}};
constexpr std::array<Field, 1> kWidth{{{"width", "Width on the film, mm", FieldType::Millimetres, "5"}}};
constexpr std::array<Field, 1> kWideWidth{{{"width", "Width on the film, mm", FieldType::Millimetres, "7"}}};

constexpr std::array kEntries{
    spot("key-terrain", "Key terrain", "K", kGround, Sign::KeyTerrain, {"132100", Low},
         "Whoever holds it has the advantage."),
    area("key-terrain-area", "Key terrain, area", "K", kGround, Sign::KeyTerrainArea, {"132100", Low},
         "Whoever holds it has the advantage.")
        .named(Naming::Number),
    line("avenue-of-approach", "Avenue of approach", "AVENUE", kGround, Sign::Avenue, {},
         "A way that suits a force of a size, from tail to tip; never abbreviated like the assembly area.")
        .in(Colour::OfItsForce)
        .with(kWideWidth)
        .named(Naming::Number),
    line("mobility-corridor", "Mobility corridor", "MC", kGround, Sign::Corridor, {},
         "A lane of an avenue in which movement is free, from tail to tip.")
        .explained()
        .in(Colour::OfItsForce)
        .with(kWidth)
        .named(Naming::Number),
    area("restricted-ground", "Restricted ground", "", kGround, Sign::Hatched, {}, "Slows a force down.")
        .in(Colour::Obstacle)
        .drawn(Dashed::Never)
        .worded(Wording::Bare)
        .named(Naming::None),
    area("severely-restricted-ground", "Severely restricted ground", "", kGround, Sign::CrossHatched, {},
         "Hinders a force unless work is done.")
        .in(Colour::Obstacle)
        .drawn(Dashed::Never)
        .worded(Wording::Bare)
        .named(Naming::None),
    area("no-go-area", "No-go area", "NO-GO", kGround, Sign::NoGo, {}, "Not entered.")
        .explained()
        .named(Naming::Number),
    line("obstacle-line", "Obstacle line", "", kGround, Sign::Teeth, {"290100", Medium},
         "Its teeth point to the enemy's side.")
        .in(Colour::Obstacle)
        .worded(Wording::Bare)
        .with(kEnemySide)
        .named(Naming::None),
    line("linear-danger-area", "Linear danger area", "DGR", kGround, Sign::DangerLine, {},
         "A road, stream or ride that is crossed by drill.")
        .explained()
        .named(Naming::Number),
    anchored("ford", "Ford", "FORD", kGround, kTwo, Sign::Ford, {}, "The spot, then a point across the water.")
        .explained()
        .drawn(Dashed::Never),
    anchored("bridge", "Bridge", "BR", kGround, kTwo, Sign::Bridge, {}, "The spot, then a point across the water."),
    anchored("ferry", "Ferry", "FY", kGround, kTwo, Sign::Ferry, {}, "The spot, then a point across the water.")
        .explained()
        .drawn(Dashed::Never),
    anchored("slope-arrows", "Slope arrows", "", kGround, kTwo, Sign::SlopeArrows, {},
             "Beside a route: the spot, then a point uphill; as many heads as the slope is steep.")
        .drawn(Dashed::Never)
        .worded(Wording::Bare)
        .with(kSlope)
        .named(Naming::None),
    anchored("viewpoint", "Viewpoint with field of view", "VP", kGround, kThree, Sign::Viewpoint, {},
             "The spot, then the left and the right limit of the view.")
        .explained(),
    spot("range-ring", "Range ring", "", kGround, Sign::RangeRing, {}, "A circle of a radius round a spot.")
        .worded(Wording::Bare)
        .with(kRadius)
        .named(Naming::None),
};

}  // namespace

std::span<const Entry> groundEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
