#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/plan/plan.h"
#include "core/units/result.h"

namespace crosstick::details {

/// Why a measure of a kind cannot have a number that was typed; nothing where it can.
/// Errors: details/number-taken with "number" and "next", the next free one; details/number-taken-on-route with "route"
///         besides; details/number-issued with "what" and "papers" where its present one stands on papers given out.
/// @param measure  that is to have it; a new one has none
[[nodiscard]] std::optional<Error> numberFault(const plan::Plan& plan, std::string_view kind, const std::string& number,
                                               const plan::ItemId& measure = {});

}  // namespace crosstick::details
