#pragma once

#include "core/files/json_fields.h"
#include "core/plan/difference.h"

namespace crosstick::files {

/// The JSON form of everything a plan holds: in the store, in the journal, and what content hashes are taken of. Fields
/// that say nothing are left out; unknown ones come back as they came.
/// Laws: xFrom(toJson(x)) == x for every x whose numbers are finite.
[[nodiscard]] Json toJson(const plan::Heading& heading);
[[nodiscard]] Json toJson(const std::vector<plan::Phase>& phases);
[[nodiscard]] Json toJson(const std::optional<plan::Registration>& registration);
[[nodiscard]] Json toJson(const plan::Force& force);
[[nodiscard]] Json toJson(const plan::Sheet& sheet);
[[nodiscard]] Json toJson(const plan::Film& film);
[[nodiscard]] Json toJson(const plan::Route& route);
[[nodiscard]] Json toJson(const plan::Measure& measure);

/// Errors: files/bad-field naming the object and the field.
[[nodiscard]] Result<plan::Heading> headingFrom(const Json& json);
[[nodiscard]] Result<std::vector<plan::Phase>> phasesFrom(const Json& json);
[[nodiscard]] Result<std::optional<plan::Registration>> registrationFrom(const Json& json);
[[nodiscard]] Result<plan::Force> forceFrom(const Json& json);
[[nodiscard]] Result<plan::Sheet> sheetFrom(const Json& json);
[[nodiscard]] Result<plan::Film> filmFrom(const Json& json);
[[nodiscard]] Result<plan::Route> routeFrom(const Json& json);
[[nodiscard]] Result<plan::Measure> measureFrom(const Json& json);

/// What a measure says besides identity, kind, name, number, points and its four states: the store keeps those in
/// columns. Null where there is nothing besides.
[[nodiscard]] Json measureRest(const plan::Measure& measure);
/// Fills the rest into a measure. Errors: files/bad-field.
[[nodiscard]] Result<plan::Measure> withRest(plan::Measure measure, const Json& rest);

[[nodiscard]] Json toJson(const plan::Difference& difference);
[[nodiscard]] Result<plan::Difference> differenceFrom(const Json& json);

}  // namespace crosstick::files
