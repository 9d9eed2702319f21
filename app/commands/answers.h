#pragma once

#include <optional>
#include <string>

#include <nlohmann/json.hpp>

#include "app/command.h"
#include "core/geodesy/leg.h"

namespace crosstick::app {

using Json = nlohmann::ordered_json;  ///< keys in the order that they were put in

// What commands that answer in JSON share: plain numbers in full precision, null for what is unknown or not a number,
// never a negative zero.

[[nodiscard]] Json number(double value);
[[nodiscard]] Json number(const std::optional<double>& value);
template <class Tag>
[[nodiscard]] Json number(Quantity<Tag> value) {
    return number(value.value());
}
template <class Tag>
[[nodiscard]] Json number(const std::optional<Quantity<Tag>>& value) {
    return value ? number(value->value()) : Json();
}
/// One array and a line's end, nothing else. Bytes that are no UTF-8 are replaced.
void say(std::ostream& out, const Json& array);

/// declination_deg, declination_sigma_deg, gm_angle_deg, and declination_note where they are null.
void putDeclination(Json& answer, const geodesy::Norths& norths);
/// mgrs, or null where MGRS does not reach: 1 m, no blanks.
[[nodiscard]] Json mgrsJson(const geodesy::GridPoint& point);
[[nodiscard]] std::string hemisphereLetter(geodesy::Zone zone);  ///< "n" or "s"

/// "10.76 west, one sigma 0.36; WMM2025 on 2026-11-25 at height 0 m", or why there is none.
[[nodiscard]] std::string declinationText(const geodesy::Norths& norths);
/// The caution at the end of what is written for people; a second line where the field is weak.
[[nodiscard]] std::string cautionText(std::optional<Nanotesla> weakestField);

/// Reading of an option's text, for CLI::Option::check: empty when good, else what to write instead.
[[nodiscard]] std::string dateFault(const std::string& text);
[[nodiscard]] std::string numberFault(const std::string& text);
[[nodiscard]] std::string positiveFault(const std::string& text);
/// A number that has been checked; the blank that the command line may have put in front is skipped.
[[nodiscard]] std::optional<double> checkedNumber(const std::string& text);
/// An argument as it was typed, without the blank that the command line may have put in front.
[[nodiscard]] std::string asTyped(const std::string& argument);
/// The date asked for, else today's (UTC).
[[nodiscard]] CalendarDate dateOr(const std::string& text, Instant now);

[[nodiscard]] Result<geodesy::MagneticModel> magneticModel(const Surroundings& surroundings);

}  // namespace crosstick::app
