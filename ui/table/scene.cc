#include "ui/table/scene.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "core/drawing/text_ruler.h"
#include "core/film/registration.h"
#include "ui/table/rim_figures.h"

namespace crosstick::table {
namespace {

constexpr double kTickArm = 4;
constexpr double kTickPen = 0.25;
constexpr double kTickLetters = 2;
constexpr double kTickGap = 0.8;

std::vector<plan::FilmPtr> inOrder(const Scene& scene) {
    std::vector<plan::FilmPtr> films;
    plan::FilmPtr last;
    for (const plan::FilmId& id : scene.films) {
        plan::FilmPtr film = scene.plan.film(id);
        if (film && scene.working == id) {
            last = std::move(film);
        } else if (film) {
            films.push_back(std::move(film));
        }
    }
    if (last) {
        films.push_back(std::move(last));
    }
    return films;
}

std::vector<drawing::Box> boxesOf(const drawing::Drawing& marks) {
    std::vector<drawing::Box> boxes;
    for (const drawing::Mark& mark : marks.marks) {
        boxes.push_back(drawing::extent({{mark}}));
    }
    return boxes;
}

/// On the table all films lie on the plan's first sheet, whatever they are printed for.
plan::Film laidOn(const plan::Film& film) {
    plan::Film onTable = film;
    onTable.groundSheet.reset();
    return onTable;
}

using Link = std::shared_ptr<const geodesy::PlaneLink>;

Result<FilmInk> inkOf(const Scene& scene, const plan::FilmPtr& film, const Link& link) {
    const plan::Film onTable = laidOn(*film);
    auto frame = film::Frame::over(scene.plan, onTable, link);
    if (!frame) {
        return tl::unexpected(frame.error());
    }
    const auto& registration = scene.plan.registration();
    drawing::Drawing ticks = registration ? registerTicks(*registration, *frame) : drawing::Drawing{};
    symbols::Engraving engraving{.plan = scene.plan,
                                 .film = onTable,
                                 .frame = *frame,
                                 .gauge = {},
                                 .pens = symbols::PenMode::Colour,
                                 .surface = symbols::Surface::LightTable,
                                 .reserved = boxesOf(ticks),
                                 .figures = scene.figures,
                                 .angles = scene.angles};
    symbols::EngravedFilm engraved = symbols::engrave(engraving);
    return FilmInk{film, std::move(*frame), std::move(engraved), std::move(ticks)};
}

/// From the top down: what a film above has inked at the same scale is left out below.
void inkOnce(std::vector<FilmInk>& films) {
    std::set<std::pair<double, plan::ItemId>> inked;
    for (std::size_t n = films.size(); n-- > 0;) {
        FilmInk& film = films[n];
        const double scale = film.frame.scale().denominator;
        std::erase_if(film.engraved.items, [&](const symbols::EngravedItem& item) {
            return inked.contains({scale, item.item});
        });
        for (const symbols::EngravedItem& item : film.engraved.items) {
            inked.emplace(scale, item.item);
        }
    }
}

}  // namespace

drawing::Drawing registerTicks(const plan::Registration& registration, const film::Frame& frame) {
    const Metres printed = film::gridInterval(frame.scale());
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

Result<std::vector<FilmInk>> inkFilms(const Scene& scene) {
    std::vector<FilmInk> films;
    const std::vector<plan::FilmPtr> ordered = inOrder(scene);
    if (ordered.empty()) {
        return films;
    }
    auto opened = geodesy::PlaneLink::between(scene.plan.planeCrs(), scene.plan.gridCrs(laidOn(*ordered.front())));
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    const Link link = std::make_shared<const geodesy::PlaneLink>(std::move(*opened));
    for (const plan::FilmPtr& film : ordered) {
        auto ink = inkOf(scene, film, link);
        if (!ink) {
            return tl::unexpected(ink.error());
        }
        films.push_back(std::move(*ink));
    }
    inkOnce(films);
    return films;
}

std::optional<GridBox> inkedGround(const std::vector<FilmInk>& films) {
    std::optional<GridBox> ground;
    for (const FilmInk& film : films) {
        const drawing::Box box = drawing::extent(film.engraved.all());
        if (box.isEmpty() || !std::isfinite(box.width()) || !std::isfinite(box.height())) {
            continue;
        }
        const GridBox part{film.frame.filmToGrid({box.left, box.bottom}), film.frame.filmToGrid({box.right, box.top})};
        ground = ground ? ground->joined(part) : part;
    }
    return ground;
}

}  // namespace crosstick::table
