#include <algorithm>
#include <cmath>

#include "core/files/exchange.h"
#include "core/files/faults.h"
#include "core/files/json_figures.h"
#include "core/files/json_form.h"
#include "core/geodesy/grid_reference.h"
#include "core/measures/catalogue.h"

namespace crosstick::files {
namespace {

constexpr std::size_t kMostFeatures = 100'000;
constexpr std::size_t kMostPoints = 1'000'000;

/// An error that says which feature.
tl::unexpected<Error> bad(std::size_t number, const std::string& why) {
    return fail(kBadFeature, {{"feature", static_cast<std::int64_t>(number)}, {"why", why}});
}

Result<geodesy::PlanePoint> placeOf(const Json& json, geodesy::Zone zone, std::size_t number) {
    if (!json.is_array() || json.size() < 2 || !json[0].is_number() || !json[1].is_number()) {
        return bad(number, "a coordinate is not a pair of numbers");
    }
    const double longitude = json[0].get<double>();
    const double latitude = json[1].get<double>();
    if (!(std::abs(longitude) <= 180) || !(std::abs(latitude) <= 90)) {
        return bad(number,
                   "a coordinate lies off the globe: longitude comes first, -180 to 180, then latitude, -90 to 90");
    }
    const auto grid = geodesy::gridPoint({Degrees(latitude), Degrees(longitude)}, zone);
    if (!grid) {
        return bad(number, "a coordinate lies too far from the plan's zone " + std::to_string(zone.number));
    }
    return grid->at;
}

using Points = std::vector<geodesy::PlanePoint>;

Result<Points> placesOf(const Json& list, geodesy::Zone zone, std::size_t number) {
    if (!list.is_array() || list.size() > kMostPoints) {
        return bad(number, "its coordinates are no list");
    }
    Points points;
    points.reserve(list.size());
    for (const Json& value : list) {
        const auto place = placeOf(value, zone, number);
        if (!place) {
            return tl::unexpected(place.error());
        }
        points.push_back(*place);
    }
    return points;
}

Result<Points> geometryOf(const Json& feature, geodesy::Zone zone, std::size_t number) {
    const auto geometry = feature.find("geometry");
    if (geometry == feature.end() || geometry->is_null()) {
        return Points{};  // named, but not placed yet
    }
    const std::string type =
        geometry->is_object()
            ? geometry->value("type", Json()).is_string() ? geometry->value("type", std::string{}) : std::string{}
            : std::string{};
    const Json coordinates = geometry->is_object() ? geometry->value("coordinates", Json()) : Json();
    if (type == "Point") {
        return placeOf(coordinates, zone, number).map([](geodesy::PlanePoint p) { return Points{p}; });
    }
    if (type == "LineString" || type == "MultiPoint") {
        return placesOf(coordinates, zone, number);
    }
    if (type != "Polygon") {
        return bad(number, "its geometry is " + (type.empty() ? std::string("none") : type.substr(0, 40)) +
                               "; Point, LineString and Polygon can be drawn");
    }
    if (!coordinates.is_array() || coordinates.size() != 1) {
        return bad(number, "its polygon must have one ring, without holes");
    }
    auto ring = placesOf(coordinates[0], zone, number);
    if (ring && (ring->size() < 4 || ring->front() != ring->back())) {
        return bad(number, "its polygon is not closed: the last coordinate must be the first again");
    }
    if (ring) {
        ring->pop_back();
    }
    return ring;
}

Uuid idOf(const Json& value, const plan::Plan& plan) {
    const std::string name = value.is_string() ? value.get<std::string>() : value.dump();
    return parseUuid(name).value_or(namedUuid(plan.id(), name));
}

/// Where a measure or route is to be shown, and how.
struct Placing {
    Uuid item;
    std::vector<std::string> films;
    std::set<int> phases;
    std::optional<geodesy::PlanePoint> symbolAt, labelAt;
    std::optional<plan::ItemId> standsWith, pointsTo;
    std::vector<plan::FiguresAt> figures;
};

class Import {
  public:
    Import(const plan::Plan& plan, const DrawOn& drawOn) : plan_(plan), drawOn_(drawOn), zone_(plan.heading().plane) {}

    Result<void> take(const Json& feature, std::size_t number) {
        if (!feature.is_object() || feature.value("type", Json()) != "Feature") {
            return bad(number, "it is no Feature");
        }
        const Json properties = feature.value("properties", Json());
        if (!properties.is_object() || !properties.value("kind", Json()).is_string()) {
            return fail(kNoKind, {{"feature", static_cast<std::int64_t>(number)}});
        }
        auto points = geometryOf(feature, zone_, number);
        if (!points) {
            return tl::unexpected(points.error());
        }
        const Json id = feature.value("id", Json("feature " + std::to_string(number)));
        const Uuid item = idOf(id, plan_);
        return properties["kind"] == "route" ? takeRoute(item, properties, *points, number)
                                             : takeMeasure(item, properties, std::move(*points), number);
    }

    Imported finish() && {
        plan::PlanBuilder builder(plan_);
        Imported imported;
        imported.measures = measures_.size();
        imported.routes = routes_.size();
        builder.put(std::move(measures_));
        for (plan::Route& route : routes_) {
            builder.put(std::move(route));
        }
        const std::size_t before = plan_.films().size();
        plan::Plan next = std::move(builder).build();
        for (const Placing& placing : placings_) {
            next = shown(next, placing);
        }
        imported.films = next.films().size() - before;
        imported.plan = std::move(next);
        return imported;
    }

  private:
    const plan::Plan& plan_;
    const DrawOn& drawOn_;
    geodesy::Zone zone_;
    std::vector<plan::Measure> measures_;
    std::vector<plan::Route> routes_;
    std::vector<Placing> placings_;

    std::optional<geodesy::PlanePoint> placeField(FieldReader& reader, const char* key, std::size_t number) {
        const Json* value = reader.array(key);
        if (value == nullptr) {
            return std::nullopt;
        }
        const auto place = placeOf(*value, zone_, number);
        if (!place) {
            reader.wrong(key, "a longitude and a latitude");
            return std::nullopt;
        }
        return *place;
    }

    std::optional<plan::ItemId> itemField(FieldReader& reader, const char* key) {
        const std::string name = reader.text(key);
        return name.empty() ? std::nullopt : std::optional(idOf(Json(name), plan_));
    }

    Placing placingOf(FieldReader& reader, const Uuid& item, std::size_t number) {
        Placing placing;
        placing.item = item;
        placing.films = reader.texts("shown_on");
        const std::string film = reader.text("film");
        if (placing.films.empty() && !film.empty()) {
            placing.films = {film};
        }
        if (placing.films.empty() || (drawOn_.film && film.empty())) {
            placing.films.push_back(drawOn_.film.value_or("FILM 1"));
        }
        if (const Json* phases = reader.array("phases")) {
            for (const Json& phase : *phases) {
                if (phase.is_number_integer()) {
                    placing.phases.insert(static_cast<int>(phase.get<std::int64_t>() % 1000));
                }
            }
        }
        placing.symbolAt = placeField(reader, "extension", number);
        placing.labelAt = placeField(reader, "label_at", number);
        placing.figures = figuresFrom(reader, [&](const Json& value) -> std::optional<geodesy::PlanePoint> {
            const auto place = placeOf(value, zone_, number);
            return place ? std::optional(*place) : std::nullopt;
        });
        placing.standsWith = itemField(reader, "stands_with");
        placing.pointsTo = itemField(reader, "points_to");
        return placing;
    }

    Result<void> takeMeasure(const Uuid& item, const Json& properties, Points points, std::size_t number) {
        Json form = properties;
        form["id"] = text(item);
        form.erase("points");
        FieldReader reader(form, "feature " + std::to_string(number));
        Placing placing = placingOf(reader, item, number);
        if (reader.fault()) {
            return tl::unexpected(*reader.fault());
        }
        if (form.value("anchor", Json()) == "paper") {
            form["points"] = form.value("paper", Json::array());
        }
        for (const char* key : {"shown_on", "film", "phases", "extension", "label_at", "stands_with", "points_to",
                                "grid", "route", "paper"}) {
            form.erase(key);  // told by films and points, or worked out from them
        }
        if (form.value("traced_from", Json()).is_null()) {
            form.erase("traced_from");
        }
        auto measure = measureFrom(form);
        if (!measure) {
            return bad(number, fieldWords(measure.error()));
        }
        if (measure->anchor == plan::Anchor::Ground) {
            measure->points = std::move(points);
        }
        if (auto fits = fitsKind(*measure, number); !fits) {
            return fits;
        }
        if (measure->points.empty()) {
            measure->state = plan::PlaceState::Unplaced;
        }
        measures_.push_back(std::move(*measure));
        placings_.push_back(std::move(placing));
        return {};
    }

    static std::string fieldWords(const Error& error) {
        const auto word = [&](std::string_view key) {
            for (const Argument& argument : error.arguments) {
                if (argument.key == key && std::holds_alternative<std::string>(argument.value)) {
                    return std::get<std::string>(argument.value);
                }
            }
            return std::string("?");
        };
        return "\"" + word("field") + "\" must be " + word("expected");
    }

    static Result<void> fitsKind(const plan::Measure& measure, std::size_t number) {
        const measures::Entry* entry = measures::find(measure.kind);
        const std::size_t count = measure.points.size();
        if (entry == nullptr || count == 0) {
            return {};
        }
        if (count < static_cast<std::size_t>(entry->points.least) ||
            (entry->points.most && count > static_cast<std::size_t>(*entry->points.most))) {
            return bad(number, "a " + std::string(entry->kind) + " cannot be drawn from " + std::to_string(count) +
                                   (count == 1 ? " point" : " points"));
        }
        return {};
    }

    /// What a list names by this file's own ids: stops and figures may name measures so.
    void namedById(Json& form, const char* list, std::initializer_list<const char*> keys) const {
        if (!form.contains(list) || form[list].is_null()) {
            form.erase(list);
            return;
        }
        for (Json& one : form[list]) {
            for (const char* key : keys) {
                if (one.is_object() && one.contains(key)) {
                    one[key] = text(idOf(one[key], plan_));
                }
            }
        }
    }

    Result<void> takeRoute(const Uuid& item, const Json& properties, const Points& points, std::size_t number) {
        if (points.size() < 2) {
            return bad(number, "a route needs a LineString of two points or more");
        }
        Json form = properties;
        form["id"] = text(item);
        form.erase("kind");
        form["vertices"] = Json::array();
        for (const geodesy::PlanePoint p : points) {
            form["vertices"].push_back(pointJson(p));
        }
        namedById(form, "points", {"measure", "rally"});
        namedById(form, "figures_at", {"from", "to"});
        if (form.contains("onward_to") && !form["onward_to"].is_null()) {
            form["onward_to"] = text(idOf(form["onward_to"], plan_));
        }
        FieldReader reader(form, "feature " + std::to_string(number));
        Placing placing = placingOf(reader, item, number);
        if (reader.fault()) {
            return tl::unexpected(*reader.fault());
        }
        for (const char* key : {"shown_on", "film", "phases", "extension", "label_at", "figures_at"}) {
            form.erase(key);
        }
        auto route = routeFrom(form);
        if (!route) {
            return bad(number, fieldWords(route.error()));
        }
        routes_.push_back(std::move(*route));
        placings_.push_back(std::move(placing));
        return {};
    }

    [[nodiscard]] plan::Plan shown(const plan::Plan& plan, const Placing& placing) const {
        plan::Plan next = plan;
        for (const std::string& name : placing.films) {
            plan::Film film;
            if (const auto held = next.filmNamed(name)) {
                film = *held;
            } else {
                film.id = namedUuid(plan_.id(), "film " + name);
                film.name = name;
            }
            film.phases.insert(placing.phases.begin(), placing.phases.end());
            showOn(film, placing);
            plan::PlanBuilder builder(next);
            builder.put(std::move(film));
            next = std::move(builder).build();
        }
        return next;
    }

    static void showOn(plan::Film& film, const Placing& placing) {
        auto showing = std::find_if(film.shows.begin(), film.shows.end(),
                                    [&](const plan::Showing& one) { return one.item == placing.item; });
        if (showing == film.shows.end()) {
            const std::string last = film.shows.empty() ? std::string{} : film.shows.back().order;
            showing = film.shows.insert(showing, {placing.item, plan::orderBetween(last, ""), {}, {}});
        }
        showing->symbolAt = placing.symbolAt;
        showing->labelAt = placing.labelAt;
        showing->standsWith = placing.standsWith;
        showing->pointsTo = placing.pointsTo;
        showing->figures = placing.figures;
    }
};

}  // namespace

Result<Imported> readGeoJson(std::string_view text, const plan::Plan& plan, const DrawOn& drawOn) {
    auto json = parseJson(text);
    if (!json) {
        return tl::unexpected(json.error());
    }
    const bool isObject = json->is_object();
    const std::string type =
        isObject && json->value("type", Json()).is_string() ? json->value("type", std::string{}) : std::string{};
    Json features = type == "FeatureCollection" ? json->value("features", Json())
                    : type == "Feature"         ? Json::array({*json})
                                                : Json();
    if (!features.is_array() || features.size() > kMostFeatures) {
        return fail(kNotGeoJson);
    }
    Import import(plan, drawOn);
    std::size_t number = 0;
    for (const Json& feature : features) {
        if (auto taken = import.take(feature, ++number); !taken) {
            return tl::unexpected(taken.error());
        }
    }
    return std::move(import).finish();
}

}  // namespace crosstick::files
