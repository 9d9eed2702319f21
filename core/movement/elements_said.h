#pragma once

#include <string_view>
#include <vector>

#include "core/plan/force.h"

namespace crosstick::movement {

/// Elements said in one line, parted by commas, in their order: "1/2 inf sqd 9, hq plt 3, Porters 4". A number at the
/// end is people; words that say a unit are its symbol, and its name is made of them ("1 Sqd", "HQ"); other words are
/// the name, with the symbol of the usual element. Identities are not set. Nothing is refused: a part that is blank is
/// passed over, and at most 60 are read.
[[nodiscard]] std::vector<plan::Element> elementsSaid(std::string_view line);

/// What an element's symbol is until somebody says another: our own default.
inline constexpr std::string_view kUsualElement = "inf sqd";

}  // namespace crosstick::movement
