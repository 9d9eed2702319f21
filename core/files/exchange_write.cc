#include "core/files/exchange.h"
#include "core/files/json_figures.h"
#include "core/files/json_form.h"
#include "core/geodesy/grid_reference.h"
#include "core/measures/catalogue.h"
#include "core/units/number_text.h"

namespace crosstick::files {
namespace {

/// Nine decimals of a degree: 0.1 mm, and no more digits than are true.
Json degreesJson(Degrees angle) {
    return Json::parse(numberText(angle.value(), 9), nullptr, false);
}

Json placeJson(geodesy::PlanePoint point, geodesy::Zone zone) {
    const auto place = geodesy::geographic({zone, point});
    return place ? Json::array({degreesJson(place->longitude), degreesJson(place->latitude)}) : Json();
}

Json geometryJson(const std::vector<geodesy::PlanePoint>& points, measures::Shape shape, geodesy::Zone zone) {
    if (points.empty()) {
        return Json();
    }
    if (points.size() == 1) {
        return {{"type", "Point"}, {"coordinates", placeJson(points.front(), zone)}};
    }
    Json list = Json::array();
    for (const geodesy::PlanePoint p : points) {
        list.push_back(placeJson(p, zone));
    }
    if (shape == measures::Shape::Area && points.size() >= 3) {
        list.push_back(list.front());
        return {{"type", "Polygon"}, {"coordinates", Json::array({std::move(list)})}};
    }
    return {{"type", "LineString"}, {"coordinates", std::move(list)}};
}

/// On which films an item is shown, the first one as its home, and how it differs on it.
void putShowings(Json& properties, const plan::Plan& plan, const Uuid& item) {
    Json films = Json::array();
    for (const plan::FilmPtr& film : plan.films()) {
        for (const plan::Showing& showing : film->shows) {
            if (showing.item != item) {
                continue;
            }
            films.push_back(film->name);
            if (showing.symbolAt && !properties.contains("extension")) {
                properties["extension"] = placeJson(*showing.symbolAt, plan.heading().plane);
            }
            if (showing.labelAt && !properties.contains("label_at")) {
                properties["label_at"] = placeJson(*showing.labelAt, plan.heading().plane);
            }
            if (!properties.contains("figures_at")) {
                putFigures(properties, showing.figures,
                           [&](geodesy::PlanePoint place) { return placeJson(place, plan.heading().plane); });
            }
            if (showing.standsWith && !properties.contains("stands_with")) {
                properties["stands_with"] = text(*showing.standsWith);
            }
            if (showing.pointsTo && !properties.contains("points_to")) {
                properties["points_to"] = text(*showing.pointsTo);
            }
        }
    }
    if (!films.empty()) {
        properties["film"] = films.front();
        properties["shown_on"] = std::move(films);
    }
}

Json feature(const Uuid& id, Json geometry, Json properties) {
    return {{"type", "Feature"},
            {"id", text(id)},
            {"geometry", std::move(geometry)},
            {"properties", std::move(properties)}};
}

}  // namespace

std::string writeGeoJson(const plan::Plan& plan, std::optional<plan::FilmId> film) {
    const geodesy::Zone zone = plan.heading().plane;
    std::set<Uuid> wanted;
    if (film) {
        if (const auto held = plan.film(*film)) {
            for (const plan::Showing& showing : held->shows) {
                wanted.insert(showing.item);
            }
        }
    }
    Json features = Json::array();
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (film && !wanted.contains(measure->id)) {
            return;
        }
        const measures::Entry* entry = measures::find(measure->kind);
        Json properties = toJson(*measure);
        const bool onPaper = measure->anchor == plan::Anchor::Paper;
        if (onPaper) {  // millimetres of paper are no places on the ground
            properties["paper"] = properties.value("points", Json::array());
        }
        properties.erase("id");
        properties.erase("points");
        putShowings(properties, plan, measure->id);
        const auto shape = entry == nullptr ? measures::Shape::Line : entry->shape;
        Json geometry = onPaper ? Json() : geometryJson(measure->points, shape, zone);
        features.push_back(feature(measure->id, std::move(geometry), std::move(properties)));
    });
    for (const plan::RoutePtr& route : plan.routes()) {
        if (film && !wanted.contains(route->id)) {
            continue;
        }
        Json properties = toJson(*route);
        properties.erase("id");
        properties.erase("vertices");
        properties["kind"] = "route";
        putShowings(properties, plan, route->id);
        features.push_back(
            feature(route->id, geometryJson(route->vertices, measures::Shape::Line, zone), std::move(properties)));
    }
    const Json collection = {
        {"type", "FeatureCollection"},
        {"crosstick", {{"form", 1}, {"plan", plan.heading().name}, {"marking", plan.heading().marking}}},
        {"features", std::move(features)}};
    return jsonText(collection) + "\n";
}

}  // namespace crosstick::files
