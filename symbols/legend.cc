#include <algorithm>
#include <set>

#include "core/measures/catalogue.h"
#include "core/movement/leg_ends.h"
#include "core/units/capitals.h"
#include "symbols/desk.h"
#include "symbols/route_lines.h"
#include "symbols/token.h"

namespace crosstick::symbols {
namespace {

constexpr double kWidth = 16;
constexpr double kHeight = 5;
constexpr double kMiddle = 2.5;

drawing::Drawing routeSample(plan::Use use, const Engraving& engraving) {
    drawing::Drawing sample;
    const drawing::Ink ink = engraving.pens == PenMode::OnePen ? drawing::Ink::Black : drawing::Ink::Blue;
    Pencil pencil(sample, {ink, Side::Own, Standing::Present, drawing::Halo::None, false}, engraving.gauge);
    const drawing::Path path(Points{{0, kMiddle}, {kWidth, kMiddle}});
    pencil.lines(routePattern(path, use), engraving.gauge.routePen);
    return sample;
}

template <class Wanted>
bool showsRoute(const Engraving& engraving, Wanted&& wanted) {
    return std::any_of(engraving.film.shows.begin(), engraving.film.shows.end(), [&](const plan::Showing& showing) {
        const auto route = engraving.plan.route(showing.item);
        return route && wanted(*route);
    });
}

/// The way to the start point, or on from the last point.
bool hasAdministrativeMove(const plan::Plan& plan, const plan::Route& route) {
    if (route.vertices.size() < 2) {
        return false;
    }
    const auto ends = movement::legEnds(plan, route);
    return ends.front().stop.vertex > 0 || ends.back().stop.vertex + 1 < route.vertices.size();
}

drawing::Drawing administrativeSample(const Engraving& engraving) {
    const drawing::Ink ink = engraving.pens == PenMode::OnePen ? drawing::Ink::Black : drawing::Ink::Blue;
    return {{administrativeDots(drawing::Path(Points{{0.5, kMiddle}, {kWidth - 0.5, kMiddle}}), ink)}};
}

std::string explanation(const measures::Entry& entry) {
    const std::string text = inCapitals(entry.name);
    const bool saysIt = entry.abbreviation.empty() || text == entry.abbreviation;
    return saysIt ? text : text + " (" + std::string(entry.abbreviation) + ')';
}

/// Lines, areas, points, words.
int rankOf(measures::Shape shape) {
    return shape == measures::Shape::Line    ? 0
           : shape == measures::Shape::Area  ? 1
           : shape == measures::Shape::Point ? 2
                                             : 3;
}

/// Free text and blocks explain themselves.
bool isExplained(const measures::Entry& entry, LegendExtent extent) {
    return entry.legend == measures::Legend::Explain ||
           (extent == LegendExtent::Everything && entry.shape != measures::Shape::Text &&
            entry.lies == measures::Lies::OnTheGround);
}

void addMeasures(std::vector<LegendRow>& rows, const Engraving& engraving, LegendExtent extent) {
    struct Kind {
        const measures::Entry* entry;
        plan::MeasurePtr shown;
    };
    std::vector<Kind> kinds;
    std::set<std::string> known;
    for (const plan::Showing& showing : engraving.film.shows) {
        const plan::MeasurePtr measure = engraving.plan.measure(showing.item);
        const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
        if (entry != nullptr && isExplained(*entry, extent) && !measure->points.empty() &&
            known.insert(measure->kind).second) {
            kinds.push_back({entry, measure});
        }
    }
    std::stable_sort(kinds.begin(), kinds.end(),
                     [](const Kind& a, const Kind& b) { return rankOf(a.entry->shape) < rankOf(b.entry->shape); });
    for (const Kind& kind : kinds) {
        rows.push_back({token(*kind.shown, *kind.entry, engraving, {0, 0, kWidth, kHeight}, TokenLetters::OfKind),
                        explanation(*kind.entry)});
    }
}

}  // namespace

// The patterns of routes are a house rule (engraving E1), so a film that shows one explains it; then one row for each
// kind on it that the catalogue says is not standard, in capitals like every block (engraving D, D3).
std::vector<LegendRow> legend(const Engraving& engraving, LegendExtent extent) {
    std::vector<LegendRow> rows;
    for (const auto& [use, words] :
         {std::pair{plan::Use::Primary, "PRIMARY ROUTE"}, std::pair{plan::Use::Alternate, "ALTERNATE ROUTE"},
          std::pair{plan::Use::Vehicle, "WAY OF VEHICLES (VEH)"}}) {
        if (showsRoute(engraving, [used = use](const plan::Route& route) { return route.use == used; })) {
            rows.push_back({routeSample(use, engraving), words});
        }
    }
    if (showsRoute(engraving, [&](const plan::Route& route) { return hasAdministrativeMove(engraving.plan, route); })) {
        LegendRow row{administrativeSample(engraving), {}};
        row.text = "ADMINISTRATIVE MOVE";
        rows.push_back(std::move(row));
    }
    addMeasures(rows, engraving, extent);
    return rows;
}

}  // namespace crosstick::symbols
