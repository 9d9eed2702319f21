#pragma once

#include "core/measures/catalogue.h"

namespace crosstick::measures {

// The catalogue's parts, each with the rows of some groups, and the short words they are written in.
// Codes: MIL-STD-2525D symbol set 25, from memory, not checked against the document; metadata for exchange only.

inline constexpr PointCount kOne{1, 1};
inline constexpr PointCount kTwo{2, 2};
inline constexpr PointCount kThree{3, 3};
inline constexpr PointCount kFour{4, 4};
inline constexpr PointCount kLine{2, std::nullopt};
inline constexpr PointCount kRing{3, std::nullopt};

[[nodiscard]] constexpr Entry spot(std::string_view kind, std::string_view name, std::string_view abbreviation,
                                   Group group, Sign sign, Code code, std::string_view help) {
    return Entry{kind, name, abbreviation, group, Shape::Point, kOne, sign, code, help}.named(Naming::Number);
}
[[nodiscard]] constexpr Entry box(std::string_view kind, std::string_view name, std::string_view abbreviation,
                                  Group group, Code code, std::string_view help) {
    return spot(kind, name, abbreviation, group, Sign::ActionBox, code, help);
}
[[nodiscard]] constexpr Entry line(std::string_view kind, std::string_view name, std::string_view abbreviation,
                                   Group group, Sign sign, Code code, std::string_view help) {
    return {kind, name, abbreviation, group, Shape::Line, kLine, sign, code, help};
}
[[nodiscard]] constexpr Entry area(std::string_view kind, std::string_view name, std::string_view abbreviation,
                                   Group group, Sign sign, Code code, std::string_view help) {
    return {kind, name, abbreviation, group, Shape::Area, kRing, sign, code, help};
}
/// A sign built on a fixed number of anchors.
[[nodiscard]] constexpr Entry anchored(std::string_view kind, std::string_view name, std::string_view abbreviation,
                                       Group group, PointCount anchors, Sign sign, Code code, std::string_view help) {
    return Entry{kind, name, abbreviation, group, Shape::Line, anchors, sign, code, help}.named(Naming::Number);
}

[[nodiscard]] std::span<const Entry> pointEntries();
[[nodiscard]] std::span<const Entry> lineEntries();
[[nodiscard]] std::span<const Entry> areaEntries();
[[nodiscard]] std::span<const Entry> taskEntries();
[[nodiscard]] std::span<const Entry> groundEntries();
[[nodiscard]] std::span<const Entry> otherEntries();

}  // namespace crosstick::measures
