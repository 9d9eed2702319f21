#include "core/film/window_span.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace crosstick::film {
namespace {

Metres wholeBelow(Metres value, Metres step) {
    return step * std::floor(value / step);
}
Metres wholeAbove(Metres value, Metres step) {
    return step * std::ceil(value / step);
}

Span inside(Span span, Metres inset) {
    return {span.low + inset, span.high - inset};
}

}  // namespace

Window Window::none() {
    constexpr double kFar = std::numeric_limits<double>::infinity();
    return {{Metres(kFar), Metres(-kFar)}, {Metres(kFar), Metres(-kFar)}};
}

bool Window::isEmpty() const {
    return !(east.low < east.high && north.low < north.high);
}

void Window::add(geodesy::PlanePoint point) {
    east = {std::min(east.low, point.easting), std::max(east.high, point.easting)};
    north = {std::min(north.low, point.northing), std::max(north.high, point.northing)};
}

Window Window::grown(Metres by) const {
    return {{east.low - by, east.high + by}, {north.low - by, north.high + by}};
}

Window Window::cut(const Window& limits) const {
    return {{std::max(east.low, limits.east.low), std::min(east.high, limits.east.high)},
            {std::max(north.low, limits.north.low), std::min(north.high, limits.north.high)}};
}

Window Window::roundedOut(Metres step) const {
    return {{wholeBelow(east.low, step), wholeAbove(east.high, step)},
            {wholeBelow(north.low, step), wholeAbove(north.high, step)}};
}

Window Window::roundedIn(Metres step) const {
    return {{wholeAbove(east.low, step), wholeBelow(east.high, step)},
            {wholeAbove(north.low, step), wholeBelow(north.high, step)}};
}

std::vector<Metres> linesIn(Span span, Metres interval) {
    std::vector<Metres> lines;
    for (Metres line = wholeAbove(span.low, interval); line <= span.high; line += interval) {
        lines.push_back(line);
    }
    return lines;
}

Span holdingTwoLines(Span span, Span limits, Metres interval, Metres inset) {
    const Metres step = interval / 10;
    while (linesIn(inside(span, inset), interval).size() < 2) {
        const Metres lineBelow = wholeAbove(span.low + inset, interval) - interval;
        const Metres lineAbove = wholeBelow(span.high - inset, interval) + interval;
        const Metres low = wholeBelow(lineBelow - inset, step);
        const Metres high = wholeAbove(lineAbove + inset, step);
        const bool down = low >= limits.low;
        const bool up = high <= limits.high;
        if (down && (!up || span.low - low <= high - span.high)) {
            span.low = low;
        } else if (up) {
            span.high = high;
        } else {
            break;
        }
    }
    return span;
}

}  // namespace crosstick::film
