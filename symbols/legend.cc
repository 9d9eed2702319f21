#include <algorithm>
#include <cctype>
#include <set>

#include "core/measures/catalogue.h"
#include "symbols/manner.h"
#include "symbols/signs.h"

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

/// Where a sample's points lie: a line along the row, a ring round it, a spot in its middle, or anchors far enough from
/// each other for their sign.
Points samplePoints(const measures::Entry& entry, Body body) {
    using measures::Sign;
    switch (body) {
        case Body::Spot:
            return {{kWidth / 2, kMiddle}};
        case Body::Line:
            return {{0, kMiddle}, {kWidth, kMiddle}};
        case Body::Ring:
            return {{0.2, 0.2}, {kWidth - 0.2, 0.2}, {kWidth - 0.2, kHeight - 0.2}, {0.2, kHeight - 0.2}};
        case Body::Anchors:
            break;
    }
    Points anchors{{4, 4}, {28, 4}, {16, 24}, {28, 24}};
    if (entry.sign == Sign::Viewpoint) {
        anchors = {{16, 24}, {6, 6}, {26, 6}};
    } else if (entry.sign == Sign::Withdraw) {
        anchors = {{4, 8}, {24, 8}, {24, 16}};
    } else if (entry.points.least == 2) {
        anchors = {{16, 16}, {28, 7}};
    }
    anchors.resize(static_cast<std::size_t>(entry.points.least));
    return anchors;
}

/// Ink made small enough for a row of the legend and laid into its middle; pens stay as they are.
drawing::Drawing fitted(drawing::Drawing ink, double pen) {
    const drawing::Box box = drawing::extent(ink);
    const double k = std::min({1.0, (kWidth - pen) / std::max(box.width() - pen, 1e-6),
                               (kHeight - pen) / std::max(box.height() - pen, 1e-6)});
    const Point middle = box.middle();
    const auto moved = [&](Point& p) { p = Point{kWidth / 2, kMiddle} + (p - middle) * k; };
    for (drawing::Mark& mark : ink.marks) {
        if (auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (drawing::Polyline& piece : stroke->pieces) {
                std::for_each(piece.points.begin(), piece.points.end(), moved);
            }
        } else if (auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (auto& ring : fill->rings) {
                std::for_each(ring.begin(), ring.end(), moved);
            }
        }
    }
    return ink;
}

/// The measure's own function draws it, without its letters: what they mean is the row's text.
drawing::Drawing sampleOf(const plan::Measure& shown, const measures::Entry& entry, const Engraving& engraving) {
    const SignRule& rule = ruleOf(entry.sign);
    plan::Measure measure;
    measure.kind = shown.kind;
    measure.whose = shown.whose;
    measure.fields = shown.fields;
    const plan::Showing showing{measure.id, {}, {}, {}};
    // A sign on a spot looks for room; all others would leave gaps for letters that a sample does not have.
    Desk desk(engraving, {-200, -200, 200, 200}, rule.body == Body::Spot ? Desk::Room::Ample : Desk::Room::None);
    Subject subject;
    subject.order = 1;
    subject.measure = &measure;
    subject.showing = &showing;
    subject.points = samplePoints(entry, rule.body);
    subject.manner = mannerOf(measure, Place::ByItself, engraving);
    rule.place(desk, subject);
    return fitted(std::move(subject.ink), engraving.gauge.pen);
}

std::string explanation(const measures::Entry& entry) {
    std::string text(entry.name);
    text.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(text.front())));
    std::string spoken(entry.abbreviation);
    std::transform(spoken.begin(), spoken.end(), spoken.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    return spoken.empty() || spoken == text ? text : text + " (" + std::string(entry.abbreviation) + ')';
}

/// Lines, areas, points, words.
int rankOf(measures::Shape shape) {
    return shape == measures::Shape::Line    ? 0
           : shape == measures::Shape::Area  ? 1
           : shape == measures::Shape::Point ? 2
                                             : 3;
}

void addMeasures(std::vector<LegendRow>& rows, const Engraving& engraving) {
    struct Kind {
        const measures::Entry* entry;
        plan::MeasurePtr shown;
    };
    std::vector<Kind> kinds;
    std::set<std::string> known;
    for (const plan::Showing& showing : engraving.film.shows) {
        const plan::MeasurePtr measure = engraving.plan.measure(showing.item);
        const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
        if (entry != nullptr && entry->legend == measures::Legend::Explain && !measure->points.empty() &&
            known.insert(measure->kind).second) {
            kinds.push_back({entry, measure});
        }
    }
    std::stable_sort(kinds.begin(), kinds.end(),
                     [](const Kind& a, const Kind& b) { return rankOf(a.entry->shape) < rankOf(b.entry->shape); });
    for (const Kind& kind : kinds) {
        rows.push_back({sampleOf(*kind.shown, *kind.entry, engraving), explanation(*kind.entry)});
    }
}

}  // namespace

// The patterns of routes are a house rule (engraving E1), so a film that shows one explains it; then one row for each
// kind on it that the catalogue says is not standard (engraving D3).
std::vector<LegendRow> legend(const Engraving& engraving) {
    std::vector<LegendRow> rows;
    if (showsRoute(engraving, plan::Use::Primary)) {
        rows.push_back({routeSample(plan::Use::Primary, engraving), "primary route"});
    }
    if (showsRoute(engraving, plan::Use::Alternate)) {
        rows.push_back({routeSample(plan::Use::Alternate, engraving), "alternate route"});
    }
    addMeasures(rows, engraving);
    return rows;
}

}  // namespace crosstick::symbols
