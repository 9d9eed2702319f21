#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <vector>

#include "core/film/frame.h"
#include "core/movement/route_figures.h"
#include "core/plan/plan.h"
#include "symbols/engrave.h"
#include "ui/table/view.h"

namespace crosstick::table {

/// What lies on the table. All films lie on the plan's first sheet, whatever sheet they were drawn for.
struct Scene {
    plan::Plan plan;
    std::vector<plan::FilmId> films;      ///< the lowest first; those the plan does not have are passed over
    std::optional<plan::FilmId> working;  ///< drawn last, with the frame that says so
    std::map<plan::ItemId, movement::RouteFigures> figures;  ///< for the labels of legs
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
    symbols::PenMode pens = symbols::PenMode::Colour;
    /// Drawn for one pen whatever the others are: their ink has one colour, and friend and enemy are still told apart.
    std::set<plan::FilmId> tinted = {};
};

/// One film's ink, with what brings its millimetres to the sheet's grid.
struct FilmInk {
    plan::FilmPtr film;
    film::Frame frame;
    std::shared_ptr<const symbols::EngravedFilm> engraved;
    std::vector<drawing::Box> extents;  ///< of the engraved items, film millimetres
    std::vector<std::size_t> shown;     ///< items that no film above has inked, in painting order
    drawing::Drawing ticks;             ///< register ticks with their labels, and frames of insets
    /// Labels that are left out on the table, by item and part: ink of a film above stands there.
    std::map<std::size_t, std::set<std::size_t>> covered = {};
};

/// Engraves every film of a scene, in painting order. A measure that several films of one scale show is one thing and
/// is inked once, on the uppermost of them; a label that ink of a film above would cross is left out. Errors: those of
/// film::Frame.
[[nodiscard]] Result<std::vector<FilmInk>> inkFilms(const Scene& scene);

/// Everything inked on the films, in the grid of the sheet; nothing where there is no ink.
[[nodiscard]] std::optional<GridBox> inkedGround(const std::vector<FilmInk>& films);

/// Register ticks as film marks: arms of 4 mm, pen 0.25, the principal figures of both lines at the upper right.
[[nodiscard]] drawing::Drawing registerTicks(const plan::Registration& registration, const film::Frame& frame);

}  // namespace crosstick::table
