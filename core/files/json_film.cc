#include "core/files/json_figures.h"
#include "core/files/json_form.h"
#include "core/files/json_sizes.h"

namespace crosstick::files {

std::optional<drawing::Gauge> gaugeFrom(FieldReader& reader) {
    const Json* sizes = reader.object("sizes");
    if (sizes == nullptr) {
        return std::nullopt;
    }
    const drawing::Gauge usual;
    FieldReader inner(*sizes, "sizes");
    const auto gauge =
        drawing::Gauge::of(inner.number("symbol_mm").value_or(usual.symbol), inner.number("pen_mm").value_or(usual.pen),
                           inner.number("letters_mm").value_or(usual.letters));
    if (inner.fault()) {
        reader.wrong("sizes", "millimetres of symbol, pen and letters");
        return std::nullopt;
    }
    return gauge;
}

void putGauge(Json& json, const std::optional<drawing::Gauge>& gauge) {
    if (gauge) {
        json["sizes"] = {{"symbol_mm", gauge->symbol}, {"pen_mm", gauge->pen}, {"letters_mm", gauge->letters}};
    }
}

Json toJson(const std::optional<plan::Registration>& registration) {
    if (!registration) {
        return Json();
    }
    Json ticks = Json::array();
    for (const geodesy::PlanePoint tick : registration->ticks) {
        ticks.push_back(pointJson(tick));
    }
    Json form = {{"south_west", pointJson(registration->southWest)},
                 {"north_east", pointJson(registration->northEast)},
                 {"ticks", std::move(ticks)}};
    put(form, registration->unknown);
    return form;
}

Result<std::optional<plan::Registration>> registrationFrom(const Json& json) {
    if (json.is_null()) {
        return std::optional<plan::Registration>{};
    }
    FieldReader reader(json, "window and ticks");
    plan::Registration registration;
    const auto southWest = reader.point("south_west");
    const auto northEast = reader.point("north_east");
    if (!southWest || !northEast) {
        reader.wrong("south_west", "a corner, as north_east must be one");
    }
    registration.southWest = southWest.value_or(geodesy::PlanePoint{});
    registration.northEast = northEast.value_or(geodesy::PlanePoint{});
    if (const Json* ticks = reader.array("ticks")) {
        for (const Json& value : *ticks) {
            const auto tick = pointFrom(value);
            if (!tick) {
                reader.wrong("ticks", "pairs of finite numbers");
                break;
            }
            registration.ticks.push_back(*tick);
        }
    }
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    registration.unknown = reader.unknown();
    return std::optional(std::move(registration));
}

Json toJson(const plan::Film& f) {
    Json json = {{"id", text(f.id)}, {"name", f.name}, {"phases", f.phases}};
    if (f.scale) {
        json["scale"] = f.scale->denominator;
    }
    if (f.groundSheet) {
        json["ground_sheet"] = text(*f.groundSheet);
    }
    putGauge(json, f.gauge);
    put(json, "hold", std::string(f.pinned ? "pinned" : ""));
    if (f.inset) {
        json["inset"] = {{"parent", text(f.inset->parent)}, {"place", toJson(std::optional(f.inset->place))}};
        put(json["inset"], f.inset->unknown);
    }
    Json shows = Json::array();
    for (const plan::Showing& showing : f.shows) {
        Json entry = {{"item", text(showing.item)}, {"order", showing.order}};
        if (showing.symbolAt) {
            entry["symbol_at"] = pointJson(*showing.symbolAt);
        }
        if (showing.labelAt) {
            entry["label_at"] = pointJson(*showing.labelAt);
        }
        if (showing.standsWith) {
            entry["stands_with"] = text(*showing.standsWith);
        }
        if (showing.pointsTo) {
            entry["points_to"] = text(*showing.pointsTo);
        }
        putFigures(entry, showing.figures, pointJson);
        put(entry, showing.unknown);
        shows.push_back(std::move(entry));
    }
    json["shows"] = std::move(shows);
    put(json, f.unknown);
    return json;
}

namespace {

void readInset(FieldReader& reader, plan::Film& film) {
    const Json* inset = reader.object("inset");
    if (inset == nullptr) {
        return;
    }
    FieldReader inner(*inset, "inset");
    const auto parent = inner.id("parent");
    const Json* place = inner.object("place");
    const auto registration = registrationFrom(place == nullptr ? Json() : *place);
    if (!parent || inner.fault() || !registration || !*registration) {
        reader.wrong("inset", "a parent film, and a place with a window and ticks");
        return;
    }
    film.inset = plan::Inset{*parent, **registration, inner.unknown()};
}

}  // namespace

Result<plan::Film> filmFrom(const Json& json) {
    FieldReader reader(json, "film");
    plan::Film f;
    f.id = reader.id("id").value_or(Uuid{});
    f.name = reader.text("name");
    if (const Json* phases = reader.array("phases")) {
        for (const Json& phase : *phases) {
            if (!phase.is_number_integer()) {
                reader.wrong("phases", "whole numbers");
                break;
            }
            f.phases.insert(static_cast<int>(phase.get<std::int64_t>() % 1000));
        }
    }
    if (const auto scale = reader.number("scale")) {
        if (!(*scale >= 1 && *scale <= 1e9)) {
            reader.wrong("scale", "the number under the 1 of a scale");
        }
        f.scale = Scale{*scale};
    }
    f.groundSheet = reader.id("ground_sheet");
    f.gauge = gaugeFrom(reader);
    f.pinned = reader.choice("hold", {"free", "pinned"}, 0) == 1;
    readInset(reader, f);
    if (const Json* shows = reader.array("shows")) {
        for (const Json& value : *shows) {
            FieldReader inner(value, "film " + f.name);
            plan::Showing showing{inner.id("item").value_or(Uuid{}), inner.text("order"),     inner.point("symbol_at"),
                                  inner.point("label_at"),           inner.id("stands_with"), inner.id("points_to")};
            showing.figures = figuresFrom(inner, pointFrom);
            showing.unknown = inner.unknown();
            if (inner.fault()) {
                return tl::unexpected(*inner.fault());
            }
            f.shows.push_back(std::move(showing));
        }
    }
    if (f.id.isNone()) {
        reader.wrong("id", "something");
    }
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    f.unknown = reader.unknown();
    return f;
}

}  // namespace crosstick::files
