#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

constexpr std::array<Field, 1> kUnitWords{{{"unit", "Unit in words", FieldType::UnitWords, "inf sqd"}}};

constexpr std::array<Field, 2> kMarch{
    {{"column", "Column", FieldType::Text, ""}, {"direction", "Direction, grid azimuth", FieldType::Azimuth, ""}}};

constexpr std::array kEntries{
    spot("unit", "Unit symbol", "", Group::Units, Sign::Unit, {},
         "Composed from words: \"1/2 inf sqd\", \"hq B/1-9 inf coy\", \"eny inf plt ?\".")
        .worded(Wording::Bare)
        .with(kUnitWords)
        .named(Naming::None),
    spot("order-of-march", "Order of march", "", Group::Units, Sign::OrderOfMarch, {},
         "A block of the column in its order, with intervals and direction; it lies on the film's paper.")
        .onPaper()
        .drawn(Dashed::Never)
        .worded(Wording::Bare)
        .with(kMarch)
        .named(Naming::None),
    Entry{
        "text", "Text", "", Group::Words, Shape::Text, kOne, Sign::Words, {}, "Words on the film, begun at their spot."}
        .drawn(Dashed::Never)
        .worded(Wording::Bare),
    Entry{"boxed-note",
          "Boxed note",
          "",
          Group::Words,
          Shape::Text,
          kOne,
          Sign::BoxedWords,
          {},
          "Words in a frame, begun at their spot."}
        .drawn(Dashed::Never)
        .worded(Wording::Bare),
};

}  // namespace

std::span<const Entry> otherEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
