#pragma once

#include <optional>

#include "core/film/paper.h"
#include "core/plan/plan.h"

namespace crosstick::film {

/// Distance of the printed grid's lines that ticks stand on: 1 km for 1:10,000 to 1:100,000, 100 m for larger scales,
/// 10 km for smaller ones, as sheets usually print it.
[[nodiscard]] Metres gridInterval(Scale scale);

/// A window and ticks for all films of a plan, in the grid of its first sheet (or its own plane).
///
/// The window holds every measure and route that lies on the ground with 10 mm round it for labels, cut to the sheet; a
/// plan without any takes as much of the sheet as an A4 film holds whole, else the middle that an A3 film holds. Window
/// edges lie on whole tenths of the grid interval. Ticks are four crossings nearest the window's corners, inside it and
/// clear of what is drawn (7 mm) where the grid leaves a choice; three where no fourth fits; the window grows for them.
/// Errors: film/no-ground for a plan with neither sheet nor measures; film/off-the-sheet where none of them lies on the
///         sheet; film/too-few-crossings with "count" and "interval"; those of geodesy::PlaneLink.
[[nodiscard]] Result<plan::Registration> proposeRegistration(const plan::Plan& plan);

/// Ticks of an inset stand on crossings of the 100 m grid, whatever its scale: sheets do not print it, a protractor
/// finds it.
inline constexpr Metres kInsetInterval{100};

/// On which crossings ticks stand, and at which scale they are drawn.
struct TickGrid {
    Scale scale;
    Metres interval{1000};
};
/// The crossings that sheets of a scale print.
[[nodiscard]] TickGrid printedTicks(Scale scale);
/// The crossings that a film's ticks stand on: of an inset its own, else those of the plan's first sheet.
[[nodiscard]] TickGrid ticksFor(const plan::Plan& plan, const plan::Film* film);

/// A window between two corners with the ticks that proposeRegistration would choose in it.
/// @param grid  none: the scale of the plan's first sheet, and what that prints
/// Errors: film/too-few-crossings; those of geodesy::PlaneLink.
[[nodiscard]] Result<plan::Registration> proposeTicks(const plan::Plan& plan, geodesy::PlanePoint southWest,
                                                      geodesy::PlanePoint northEast,
                                                      std::optional<TickGrid> grid = std::nullopt);

/// A tick's arms of 5 mm and two of air to the window's frame.
inline constexpr PaperMm kTickInset{7};

/// The scale that a film is drawn to: its own, else its sheet's, else the usual one.
[[nodiscard]] Scale scaleOf(const plan::Plan& plan, const plan::Film& film);

/// What a film is registered by: an inset's own window and ticks, else the plan's; for a film on a sheet of another
/// grid, or a plan that has none, what proposeRegistration would say for that grid. Errors: those of
/// proposeRegistration.
[[nodiscard]] Result<plan::Registration> registrationFor(const plan::Plan& plan, const plan::Film& film);

/// True where the plan's own window and ticks hold for a film: it lies on the grid of the plan's first sheet and is no
/// inset.
[[nodiscard]] bool sharesRegistration(const plan::Plan& plan, const plan::Film& film);

}  // namespace crosstick::film
