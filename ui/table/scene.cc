#include "ui/table/scene.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/text_ruler.h"
#include "core/film/inset.h"
#include "core/film/registration.h"
#include "ui/table/rim_figures.h"

namespace crosstick::table {
namespace {

constexpr double kTickArm = 4;
constexpr double kTickPen = 0.25;
constexpr double kTickLetters = 2;
constexpr double kTickGap = 0.8;

/// What ticks stand on: the grid that the sheet prints, or an inset's finer one.
Metres intervalOf(const plan::Registration& registration, Scale scale) {
    const Metres printed = film::gridInterval(scale);
    const auto isOn = [printed](Metres line) { return std::fmod(line.value(), printed.value()) == 0; };
    const bool all = std::all_of(registration.ticks.begin(), registration.ticks.end(),
                                 [&](geodesy::PlanePoint tick) { return isOn(tick.easting) && isOn(tick.northing); });
    return all ? printed : film::kInsetInterval;
}

}  // namespace

drawing::Drawing registerTicks(const plan::Registration& registration, const film::Frame& frame) {
    const Metres printed = intervalOf(registration, frame.scale());
    drawing::Drawing drawing;
    for (const geodesy::PlanePoint tick : registration.ticks) {
        const drawing::Point at = frame.gridToFilm(tick);
        drawing::Stroke cross;
        cross.pieces = {{{{at.x - kTickArm, at.y}, {at.x + kTickArm, at.y}}, false},
                        {{{at.x, at.y - kTickArm}, {at.x, at.y + kTickArm}}, false}};
        cross.width = kTickPen;
        drawing.marks.emplace_back(std::move(cross));
        drawing::Text label;
        label.text = principalFigures(tick.easting, printed) + ' ' + principalFigures(tick.northing, printed);
        label.start = {at.x + kTickGap, at.y - kTickGap};
        label.capHeight = kTickLetters;
        label.halo = drawing::Halo::Paper;
        drawing.marks.emplace_back(std::move(label));
    }
    return drawing;
}

std::optional<GridBox> inkedGround(const std::vector<FilmInk>& films) {
    std::optional<GridBox> ground;
    for (const FilmInk& film : films) {
        drawing::Box box;
        for (const std::size_t item : film.shown) {
            box = box.joined(film.extents[item]);
        }
        if (box.isEmpty() || !std::isfinite(box.width()) || !std::isfinite(box.height())) {
            continue;
        }
        const GridBox part{film.frame.filmToGrid({box.left, box.bottom}), film.frame.filmToGrid({box.right, box.top})};
        ground = ground ? ground->joined(part) : part;
    }
    return ground;
}

}  // namespace crosstick::table
