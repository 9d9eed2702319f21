#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/quantity.h"

namespace crosstick::measures {

enum class Affiliation { Friend, Hostile, Neutral, Unknown };
enum class UnitIcon {
    Infantry,
    Reconnaissance,
    Armour,
    Antitank,
    Mortar,
    Artillery,
    AirDefence,
    Engineer,
    Medical,
    Signal,
    Aviation,
    Supply,
    Transport,
    Maintenance,
    Cbrn,
    Mountain,
    Airborne,
    AirAssault
};

/// A unit as a symbol shows it (trade.md 3; from memory, not checked against a standard).
struct UnitSymbol {
    Affiliation affiliation = Affiliation::Friend;
    bool isDashed = false;             ///< planned, assumed, suspected
    std::string echelon;               ///< "sqd"; empty: no mark
    std::vector<UnitIcon> icons;       ///< drawn over each other; none: an empty frame
    std::string letters;               ///< "MP", "SF": in place of an icon
    bool isHeadquarters = false;       ///< a staff from the frame
    bool isTaskForce = false;          ///< a bracket round the echelon mark
    std::string state;                 ///< "(+)", "(-)", "(+-)"
    std::string designation;           ///< T: "1"
    std::string higher;                ///< M: "2"
    std::string time;                  ///< W: "260400Z"
    std::string note;                  ///< H
    std::optional<Degrees> direction;  ///< grid azimuth it moves toward
    std::vector<std::string> unread;   ///< words that are not understood; they stand in the note too
    friend bool operator==(const UnitSymbol&, const UnitSymbol&) = default;
};

/// Reads words in any order, parted by blanks: "1/2 inf sqd", "hq B/1-9 inf coy", "eny inf plt ?", "mor sec of B",
/// "abn inf coy >045 \"QRF\"", "3/2 inf sqd (-) plan @260400Z". Case matters only in designations. A token with a
/// figure or a stroke, or one letter, is a designation, parted at its first stroke into the unit's own and the higher
/// one's. Of two sizes or affiliations the later counts. Never fails: what it does not understand goes to the note and
/// to `unread`. At most 200 letters are read.
[[nodiscard]] UnitSymbol readUnit(std::string_view words);

/// The words that a unit is read from: the shortest ones this program knows, in a fixed order. Law: what they are read
/// as has all of the unit but `unread`.
[[nodiscard]] std::string unitWords(const UnitSymbol& unit);

/// The symbol alone, for places where what stands beside it is said already: no designations, times, notes, direction.
[[nodiscard]] UnitSymbol withoutAmplifiers(UnitSymbol unit);

/// A word that may be typed, and what it is called in a list.
struct UnitWord {
    std::string_view word;
    std::string_view name;
};
[[nodiscard]] std::span<const UnitWord> unitSides();
[[nodiscard]] std::span<const UnitWord> unitSizes();
/// Icons, and letters in place of one.
[[nodiscard]] std::span<const UnitWord> unitIcons();

}  // namespace crosstick::measures
