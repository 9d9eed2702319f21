#include "ui/table/covered_labels.h"

#include <algorithm>

#include "core/drawing/occupancy.h"

namespace crosstick::table {
namespace {

constexpr double kTouch = 0;   ///< millimetres between ink of two films that is still apart
constexpr double kSpot = 0.1;  ///< a place, as a box

/// A box of one film's paper on that of another, which lies on the same grid.
drawing::TurnedBox onPaperOf(const film::Frame& other, const film::Frame& own, const drawing::TurnedBox& box) {
    const double scale = own.scale().denominator / other.scale().denominator;
    return {other.gridToFilm(own.filmToGrid(box.middle)), box.width * scale, box.height * scale, box.angle};
}

bool standsIn(const drawing::Text& text, const drawing::TurnedBox& box) {
    const drawing::Box around = drawing::extent({{text}});
    const drawing::Point middle{(around.left + around.right) / 2, (around.top + around.bottom) / 2};
    return drawing::TurnedBox{middle, kSpot, kSpot, box.angle}.meets(box);
}

}  // namespace

void leaveOutCovered(std::vector<FilmInk>& films) {
    drawing::Occupancy taken;
    for (auto film = films.rbegin(); film != films.rend(); ++film) {
        film->covered.clear();
        std::vector<drawing::TurnedBox> own;
        for (const std::size_t n : film->shown) {
            const auto& parts = film->engraved->items[n].parts;
            for (std::size_t p = 0; p < parts.size(); ++p) {
                const drawing::TurnedBox box = onPaperOf(films.back().frame, film->frame, parts[p].box);
                if (parts[p].what != symbols::Part::What::Symbol && !taken.isFree(box, kTouch)) {
                    film->covered[n].insert(p);
                } else {
                    own.push_back(box);
                }
            }
        }
        for (const drawing::TurnedBox& box : own) {  // what a film has on itself was kept apart when it was engraved
            taken.take(box);
        }
    }
}

drawing::Drawing withoutLetters(const symbols::EngravedItem& item, const std::set<std::size_t>& parts) {
    drawing::Drawing left;
    for (const drawing::Mark& mark : item.drawing.marks) {
        const auto* text = std::get_if<drawing::Text>(&mark);
        const bool isOut = text != nullptr && std::any_of(parts.begin(), parts.end(), [&](std::size_t p) {
                               return standsIn(*text, item.parts[p].box);
                           });
        if (!isOut) {
            left.marks.push_back(mark);
        }
    }
    return left;
}

}  // namespace crosstick::table
