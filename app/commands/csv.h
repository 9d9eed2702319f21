#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "core/units/number_text.h"
#include "core/units/quantity.h"
#include "core/units/result.h"

namespace crosstick::app {

/// A record of RFC 4180 with CRLF at its end; cells that need it stand in quotes.
[[nodiscard]] std::string csvRecord(const std::vector<std::string>& cells);

/// Records of which the first names the columns; only those that are wanted, in their order, or all.
/// Errors: app/no-such-column with "column" and "known".
[[nodiscard]] Result<std::string> csvOf(const std::vector<std::vector<std::string>>& records,
                                        const std::vector<std::string>& wanted);

/// Whether all that are wanted are there. Errors: app/no-such-column.
[[nodiscard]] Result<void> checkColumns(const std::vector<std::string>& wanted, const std::vector<std::string>& known);

/// A spreadsheet takes a text that begins with = + - or @ for a formula; an apostrophe makes it a text.
[[nodiscard]] std::string harmless(const std::string& text);

/// With so many decimals; empty for what is unknown or no number.
[[nodiscard]] inline std::string csvFigure(double value, int decimals) {
    return std::isfinite(value) ? numberText(value, decimals) : std::string{};
}
template <class Tag>
[[nodiscard]] std::string csvFigure(Quantity<Tag> value, int decimals) {
    return csvFigure(value.value(), decimals);
}
template <class T>
[[nodiscard]] std::string csvFigure(const std::optional<T>& value, int decimals) {
    return value ? csvFigure(*value, decimals) : std::string{};
}

}  // namespace crosstick::app
