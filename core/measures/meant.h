#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/measures/catalogue.h"

namespace crosstick::measures {

/// What somebody means who types words: a measure, and what it is to be called where that was said, too.
struct Meant {
    const Entry* entry = nullptr;  ///< never null in an answer
    std::string label;             ///< number or name, as typed: "3", "bodkin"; empty: the next free one
    std::string unit;              ///< of a unit symbol, the words that it is composed from
    friend bool operator==(const Meant&, const Meant&) = default;
};

/// The measures that words can mean, the best first: an abbreviation; a name, or words that a unit symbol is composed
/// from ("1/2 inf sqd"); then abbreviations that begin so, initials ("fcl"), names whose words begin so ("cas col"),
/// what holds the letters anywhere; at last names that have the letters in their order ("bdy", "chkpt"). Within each of
/// the three, kinds used lately come first. Behind an abbreviation or a whole name stands a number or a name: "cp 3",
/// "pl bodkin". Nothing typed: the recent ones, then the catalogue. Case, blanks, strokes and hyphens in abbreviations
/// do not matter.
/// Laws: every abbreviation of the catalogue finds a measure first that has it, whatever was used lately; so does every
///       name.
/// @param recent  kinds, the last used first
[[nodiscard]] std::vector<Meant> meantBy(std::string_view words, std::span<const std::string> recent, std::size_t most);

/// What words say beyond doubt: an abbreviation or a whole name, alone or with a label behind it; else nothing.
[[nodiscard]] std::optional<Meant> meantExactly(std::string_view words);

}  // namespace crosstick::measures
