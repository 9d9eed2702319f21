#include "core/film/placed_ticks.h"

#include <cmath>
#include <limits>
#include <optional>

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;

Box movedBox(const Box& box, Point by) {
    return {box.left + by.x, box.top + by.y, box.right + by.x, box.bottom + by.y};
}

TickDrawing movedTick(TickDrawing tick, Point by) {
    return {drawing::moved(std::move(tick.drawing), by), movedBox(tick.box, by), movedBox(tick.label, by)};
}

/// In the quadrant where the fewest lines run through the letters, the one toward the window's middle first.
TickDrawing labelled(geodesy::PlanePoint at, Point onFilm, const Box& window, TickLabel label, const Occupancy& drawn) {
    const double x = onFilm.x > window.middle().x ? -1 : 1;
    const double y = onFilm.y > window.middle().y ? -1 : 1;
    std::optional<TickDrawing> best;
    int least = 0;
    for (const drawing::Vector inward : {drawing::Vector{x, y}, {x, -y}, {-x, y}, {-x, -y}}) {
        TickDrawing tick = movedTick(film::tick(at, inward, label), onFilm);
        const Box& letters = tick.label;
        const int taken = drawn.within(letters) + (window.grown(-1).contains(letters) ? 0 : 1000);
        if (!best || taken < least) {
            least = taken;
            best = std::move(tick);
        }
    }
    return std::move(*best);
}

}  // namespace

std::vector<PlacedTick> placedTicks(const plan::Registration& registration, const Frame& frame,
                                    const Occupancy& drawn) {
    const Box window = frame.window();
    std::vector<PlacedTick> ticks;
    std::size_t lowerLeft = 0;
    double nearest = std::numeric_limits<double>::infinity();
    for (const geodesy::PlanePoint at : registration.ticks) {
        const Point p = frame.gridToFilm(at);
        if (!window.grown(0.01).contains(p)) {
            continue;
        }
        const double distance = std::hypot(p.x - window.left, p.y - window.bottom);
        if (distance < nearest) {
            nearest = distance;
            lowerLeft = ticks.size();
        }
        ticks.push_back({at, p, {}});
    }
    for (std::size_t n = 0; n < ticks.size(); ++n) {
        PlacedTick& tick = ticks[n];
        tick.mark =
            labelled(tick.at, tick.onFilm, window, n == lowerLeft ? TickLabel::Full : TickLabel::Figures, drawn);
    }
    return ticks;
}

}  // namespace crosstick::film
