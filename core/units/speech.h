#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace crosstick {

/// Says an English word or sentence in the language of who reads it, with %1, %2, ... filled by the parts in their
/// order.
using Speech = std::function<std::string(std::string_view english, const std::vector<std::string>& parts)>;

/// A sentence with %1 to %9 filled by the parts; what there is no part for stays as it is.
[[nodiscard]] std::string filled(std::string_view sentence, const std::vector<std::string>& parts);

}  // namespace crosstick
