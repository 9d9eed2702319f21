#pragma once

#include "ui/table/scene.h"

namespace crosstick::table {

/// Where symbols and labels of several films would lie over each other, the film above keeps them, the working one
/// first, and the label below is left out: half a label under another one reads as neither. It stays on its film, and
/// comes back on the table when that is the working one.
void leaveOutCovered(std::vector<FilmInk>& films);

/// An item's marks without the letters of some of its parts.
[[nodiscard]] drawing::Drawing withoutLetters(const symbols::EngravedItem& item, const std::set<std::size_t>& parts);

}  // namespace crosstick::table
