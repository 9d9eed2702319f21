#include "core/measures/catalogue.h"
#include "symbols/sketch.h"

namespace crosstick::symbols {
namespace {

constexpr double kWidth = 16;
constexpr double kMiddle = 2.5;

drawing::Drawing routeSample(plan::Use use, const Engraving& engraving) {
    drawing::Drawing sample;
    const drawing::Ink ink = engraving.pens == PenMode::OnePen ? drawing::Ink::Black : drawing::Ink::Blue;
    Pencil pencil(sample, {ink, Side::Own, Standing::Present, drawing::Halo::None, false}, engraving.gauge);
    const drawing::Path path(Points{{0, kMiddle}, {kWidth, kMiddle}});
    pencil.lines(use == plan::Use::Alternate
                     ? drawing::dashed(path, drawing::kAlternateRoute, drawing::CornerRule::UsersLine)
                     : std::vector<drawing::Polyline>{{path.points(), false}},
                 engraving.gauge.routePen);
    return sample;
}

bool showsRoute(const Engraving& engraving, plan::Use use) {
    for (const plan::Showing& showing : engraving.film.shows) {
        const auto route = engraving.plan.route(showing.item);
        if (route && route->use == use) {
            return true;
        }
    }
    return false;
}

}  // namespace

// The patterns of routes are a house rule (engraving E1), so a film that shows one explains it. Measures that the
// catalogue marks for explaining are named in words with their abbreviation.
std::vector<LegendRow> legend(const Engraving& engraving) {
    std::vector<LegendRow> rows;
    if (showsRoute(engraving, plan::Use::Primary)) {
        rows.push_back({routeSample(plan::Use::Primary, engraving), "primary route"});
    }
    if (showsRoute(engraving, plan::Use::Alternate)) {
        rows.push_back({routeSample(plan::Use::Alternate, engraving), "alternate route"});
    }
    return rows;
}

}  // namespace crosstick::symbols
