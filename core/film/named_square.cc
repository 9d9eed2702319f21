#include "core/film/named_square.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/film/furniture.h"
#include "core/film/registration.h"
#include "core/film/window_span.h"

namespace crosstick::film {

using drawing::Box;
using drawing::Point;

std::optional<NamedSquare> namedSquare(const plan::Registration& registration, const Frame& frame,
                                       const GridNames& names, const Occupancy& drawn,
                                       const std::vector<drawing::Box>& taken, drawing::Point near) {
    const Metres side = gridInterval(frame.scale());
    const double wide = frame.east(side).value();
    const double high = frame.north(side).value();
    const PaperMm paperSide((wide + high) / 2);
    std::optional<NamedSquare> best;
    double least = std::numeric_limits<double>::infinity();
    for (const Metres northing : linesIn({registration.southWest.northing, registration.northEast.northing}, side)) {
        for (const Metres easting : linesIn({registration.southWest.easting, registration.northEast.easting}, side)) {
            const Point low = frame.gridToFilm({easting, northing});
            const Box square{low.x, low.y - high, low.x + wide, low.y};
            if (!frame.window().grown(-1).contains(square)) {
                continue;
            }
            const std::string name = names.square({easting, northing}, side);
            const SquareMarks marks = squareMarks(square, name, paperSide);
            double cost = std::hypot(square.middle().x - near.x, square.middle().y - near.y);
            bool free = true;
            for (const Box& box : marks.boxes) {
                free = free && std::none_of(taken.begin(), taken.end(), [&](const Box& t) { return t.meets(box); });
                cost += 200.0 * drawn.within(box.grown(1));
            }
            if (free && cost < least) {
                least = cost;
                best = NamedSquare{{easting, northing}, side, name, paperSide};
            }
        }
    }
    return best;
}

}  // namespace crosstick::film
