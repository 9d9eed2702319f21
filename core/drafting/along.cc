#include "core/drafting/along.h"

#include <algorithm>

#include "core/measures/catalogue.h"

namespace crosstick::drafting {
namespace {

using geodesy::Ends;

/// The ring once round, opened at a way along it: the place there is its first and its last.
Line openedAt(const Line& ring, double way) {
    Line line{placeAt(ring, way)};
    const auto first = static_cast<std::size_t>(way) + 1;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        line.push_back(ring[(first + n) % ring.size()]);
    }
    if (line.back() == line.front()) {
        line.pop_back();
    }
    line.push_back(line.front());
    return line;
}

Line backwards(Line line) {
    std::reverse(line.begin(), line.end());
    return line;
}

Line stretchOf(const Line& line, double from, double to) {
    return from <= to ? lineOf(line, {from, to}) : backwards(lineOf(line, {to, from}));
}

Line shorterWay(const Line& ring, double from, geodesy::PlanePoint to) {
    const Line opened = openedAt(ring, from);
    const double there = nearestOn(opened, Ends::Open, to)->way;
    Line onward = lineOf(opened, {0, there});
    Line back = backwards(lineOf(opened, {there, static_cast<double>(opened.size() - 1)}));
    return lengthOf(onward) <= lengthOf(back) ? onward : back;
}

}  // namespace

std::optional<DrawnStretch> drawnBetween(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                         geodesy::PlanePoint from, geodesy::PlanePoint to, Metres reach) {
    std::optional<DrawnStretch> best;
    Metres least = reach * 2;
    const auto look = [&](const plan::ItemId& item, const Line& line, Ends ends) {
        const auto start = nearestOn(line, ends, from);
        const auto end = nearestOn(line, ends, to);
        if (!start || start->away > reach || end->away > reach || start->way == end->way ||
            (best && start->away + end->away >= least)) {
            return;
        }
        least = start->away + end->away;
        best = DrawnStretch{
            item, ends == Ends::Closed ? shorterWay(line, start->way, end->at) : stretchOf(line, start->way, end->way)};
    };
    for (const plan::FilmPtr& film : films) {
        for (const plan::Showing& showing : film->shows) {
            if (const plan::RoutePtr route = plan.route(showing.item)) {
                look(showing.item, route->vertices, Ends::Open);
            } else if (const plan::MeasurePtr measure = plan.measure(showing.item);
                       measure && measure->anchor == plan::Anchor::Ground && measure->points.size() > 1) {
                const measures::Entry* entry = measures::find(measure->kind);
                const bool isArea = entry != nullptr && entry->shape == measures::Shape::Area;
                look(showing.item, measure->points, isArea ? Ends::Closed : Ends::Open);
            }
        }
    }
    return best;
}

}  // namespace crosstick::drafting
