#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace crosstick::measures {

/// A line as it is typed over the table: what is meant, then where. "cp 4583 0845", "pl bodkin 4583 0845, 4590 0850",
/// "1/2 inf sqd 25T FL 5427 9806", "5427 9806".
struct TypedLine {
    std::string words;                ///< the measure, with its number or name; blanks single, none at the ends
    std::vector<std::string> places;  ///< each in some writing of a place, or figures alone: "4583 0845"
    std::string unfinished;           ///< the begin of a place that is none yet: "4583 08"; no places then
    friend bool operator==(const TypedLine&, const TypedLine&) = default;
};

/// Reads a line. Places stand at its end: any writing of geodesy::parsePoint, figures alone of 6 to 10 digits, or these
/// behind the letters of a square ("FL 5427 9806"). Several are parted by commas or semicolons, figures in pairs by
/// blanks alone. Of several readings the one with the longest place counts. A square of over 100 m is no place yet:
/// somebody who places a thing means more. Never fails; at most 400 letters are read.
[[nodiscard]] TypedLine readTypedLine(std::string_view typed);

}  // namespace crosstick::measures
