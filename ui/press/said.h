#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace crosstick::press {

/// A word or a sentence of the papers in the program's language, with %1, %2, ... filled by the parts in their order;
/// English where no translator is there.
[[nodiscard]] std::string said(std::string_view english, const std::vector<std::string>& parts = {});
/// The same of what the core or a tool says in the window.
[[nodiscard]] std::string spoken(std::string_view english, const std::vector<std::string>& parts = {});

}  // namespace crosstick::press
