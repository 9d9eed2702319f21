#pragma once

#include <string>
#include <vector>

#include "core/measures/catalogue.h"
#include "symbols/engrave.h"

namespace crosstick::symbols {

/// Sheets on which everything this program draws stands by itself, to be laid beside the rules of engraving and to
/// check a printer and a pen by: every measure of the catalogue, planned and the enemy's, unit symbols, hard cases,
/// routes and a film in little.
struct SpecimenPage {
    std::string title;
    drawing::Drawing drawing;  ///< millimetres from the page's upper left corner
};
/// A3, lying.
inline constexpr drawing::Box kSpecimenPaper{0, 0, 420, 297};

/// @param pens  those of the present measures; the enemy's are shown with both
[[nodiscard]] std::vector<SpecimenPage> specimen(const drawing::Gauge& gauge, PenMode pens);

/// A measure as a picture for lists to choose from: drawn by its own function, made small enough for the room and laid
/// into its middle; pens stay as they are. Letters are left out where they would be too small to read.
[[nodiscard]] drawing::Drawing tokenOf(const measures::Entry& entry, const drawing::Box& room,
                                       const drawing::Gauge& gauge);
/// The same with a measure's own number, words, side and state.
[[nodiscard]] drawing::Drawing tokenOf(const plan::Measure& shown, const measures::Entry& entry,
                                       const drawing::Box& room, const drawing::Gauge& gauge);

}  // namespace crosstick::symbols
