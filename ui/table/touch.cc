#include "ui/table/touch.h"

#include <limits>

#include "core/drawing/path.h"

namespace crosstick::table {
namespace {

bool holds(const drawing::TurnedBox& box, drawing::Point p) {
    const Radians turn = radians(box.angle);
    const drawing::Vector along{std::cos(turn.value()), -std::sin(turn.value())};
    const drawing::Vector from = p - box.middle;
    return std::abs(drawing::dot(from, along)) <= box.width / 2 &&
           std::abs(drawing::dot(from, drawing::leftOf(along))) <= box.height / 2;
}

}  // namespace

std::optional<Lying> lyingAt(const std::vector<FilmInk>& films, geodesy::PlanePoint onGrid, const plan::ItemId& except,
                             Metres beside) {
    std::optional<Lying> best;
    for (auto film = films.rbegin(); film != films.rend() && !best; ++film) {
        const drawing::Point at = film->frame.gridToFilm(onGrid);
        const double clear = beside.value() * 1000 / film->frame.scale().denominator;
        double least = std::numeric_limits<double>::infinity();
        for (const std::size_t n : film->shown) {
            const symbols::EngravedItem& item = film->engraved->items[n];
            if (item.item == except || !film->extents[n].grown(clear).contains(at)) {
                continue;
            }
            const auto covered = film->covered.find(n);
            for (std::size_t p = 0; p < item.parts.size(); ++p) {
                const symbols::Part& part = item.parts[p];
                if (covered != film->covered.end() && covered->second.contains(p)) {
                    continue;  // left out: nothing is there to be taken hold of
                }
                const double size = part.box.width * part.box.height;
                if (size < least && holds(part.box.grown(clear), at)) {
                    least = size;
                    const bool isSymbol = part.what == symbols::Part::What::Symbol && item.handle;
                    best = Lying{item.item,
                                 film->film->id,
                                 part.what,
                                 item.isAside,
                                 film->frame.filmToGrid(isSymbol ? *item.handle : part.box.middle),
                                 part.leg};
                }
            }
        }
    }
    return best;
}

}  // namespace crosstick::table
