#include "core/files/json_form.h"

namespace crosstick::files {
namespace {

Json zoneJson(TimeZone zone) {
    return {{"letter", std::string(1, zone.letter)}, {"offset_min", zone.offset.count()}};
}

constexpr std::int64_t kFarthestZone = 15L * 60;   ///< minutes from UTC
constexpr double kMostPreparing = 30.0 * 24 * 60;  ///< minutes

TimeZone zoneFrom(FieldReader& reader) {
    TimeZone zone;
    if (const Json* object = reader.object("zone")) {
        FieldReader inner(*object, "zone");
        const std::string letter = inner.text("letter");
        const auto offset = inner.whole("offset_min");
        if (letter.size() != 1 || !offset || std::abs(*offset) > kFarthestZone) {
            reader.wrong("zone", "a letter and an offset within 15 hours");
        } else {
            zone = {letter[0], std::chrono::minutes(*offset)};
        }
    }
    return zone;
}

void readPaceAndRate(FieldReader& reader, plan::Heading& h) {
    if (const Json* pace = reader.object("pace")) {
        FieldReader inner(*pace, "pace");
        h.pace = plan::PaceProfile{inner.number("double_paces_per_100m").value_or(0), inner.text("note")};
        h.pace->unknown = inner.unknown();
        if (inner.fault() || !(h.pace->doublePacesPer100 > 0)) {
            reader.wrong("pace", "a count over 0");
        }
    }
    if (const Json* rate = reader.object("rate")) {
        FieldReader inner(*rate, "rate");
        h.rate = plan::MarchRate{KilometresPerHour(inner.number("km_per_h").value_or(0)), inner.text("note")};
        h.rate->unknown = inner.unknown();
        if (inner.fault() || !(h.rate->rate.value() > 0)) {
            reader.wrong("rate", "a rate over 0");
        }
    }
}

constexpr std::array<std::pair<const char*, KilometresPerHour plan::MarchRates::*>, 4> kRates{{
    {"road_day_km_per_h", &plan::MarchRates::roadByDay},
    {"road_night_km_per_h", &plan::MarchRates::roadByNight},
    {"cross_country_day_km_per_h", &plan::MarchRates::crossCountryByDay},
    {"cross_country_night_km_per_h", &plan::MarchRates::crossCountryByNight},
}};

Json timingJson(const plan::Timing& timing) {
    constexpr std::array kRules{"light", "naismith", "tobler"};
    Json json = {{"rule", kRules[static_cast<std::size_t>(timing.rule)]}};
    put(json, "going", std::string(timing.going == plan::Going::Road ? "road" : ""));
    for (const auto& [key, rate] : kRates) {
        json[key] = (timing.rates.*rate).value();
    }
    put(json, timing.unknown);
    return json;
}

void readTiming(FieldReader& reader, plan::Heading& h) {
    constexpr double kFastest = 30;
    if (const Json* timing = reader.object("timing")) {
        FieldReader inner(*timing, "timing");
        h.timing.emplace();
        h.timing->rule = static_cast<plan::TimeRule>(inner.choice("rule", {"light", "naismith", "tobler"}, 0));
        h.timing->going = static_cast<plan::Going>(inner.choice("going", {"cross-country", "road"}, 0));
        for (const auto& [key, rate] : kRates) {
            KilometresPerHour& kept = h.timing->rates.*rate;
            kept = KilometresPerHour(inner.number(key).value_or(kept.value()));
            if (!(kept.value() > 0 && kept.value() <= kFastest)) {
                inner.wrong(key, "a rate over 0 and up to 30");
            }
        }
        h.timing->unknown = inner.unknown();
        if (inner.fault()) {
            reader.wrong("timing", "a rule, and rates over 0 and up to 30 km/h");
        }
    }
    h.hHour = reader.time("h_hour");
    if (const Json* list = reader.array("preparations")) {
        for (const Json& value : *list) {
            FieldReader inner(value, "preparation");
            plan::Preparation one{inner.text("name"), Minutes(inner.number("minutes").value_or(-1))};
            one.unknown = inner.unknown();
            if (inner.fault() || !(one.lasts.value() >= 0 && one.lasts.value() <= kMostPreparing)) {
                reader.wrong("preparations", "a name, and minutes up to 30 days");
                return;
            }
            h.preparations.push_back(std::move(one));
        }
    }
}

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

void put(Json& json, const std::optional<drawing::Gauge>& gauge) {
    if (gauge) {
        json["sizes"] = {{"symbol_mm", gauge->symbol}, {"pen_mm", gauge->pen}, {"letters_mm", gauge->letters}};
    }
}

geodesy::Zone planeFrom(FieldReader& reader) {
    const auto number = reader.whole("plane_zone").value_or(31);
    const auto half = static_cast<geodesy::Hemisphere>(reader.choice("plane_hemisphere", {"n", "s"}, 0));
    if (number < 0 || number > 60) {
        reader.wrong("plane_zone", "0 to 60");
        return {};
    }
    return {static_cast<int>(number), half};
}

}  // namespace

Json toJson(const plan::Heading& h) {
    Json json = Json::object();
    put(json, "name", h.name);
    put(json, "marking", h.marking);
    put(json, "author", h.author);
    put(json, "unit", h.unit);
    put(json, "distribution", h.distribution);
    put(json, "cautions", h.cautions);
    json["zone"] = zoneJson(h.zone);
    put(json, "date", dateOrNothing(h.date));
    put(json, "prepared", h.prepared);
    put(json, "effective", h.effective);
    json["declination"] = h.declination == plan::DeclinationSource::Sheet ? "sheet" : "model";
    json["plane_zone"] = h.plane.number;
    json["plane_hemisphere"] = h.plane.hemisphere == geodesy::Hemisphere::South ? "s" : "n";
    if (h.pace) {
        json["pace"] = {{"double_paces_per_100m", h.pace->doublePacesPer100}, {"note", h.pace->note}};
        put(json["pace"], h.pace->unknown);
    }
    if (h.rate) {
        json["rate"] = {{"km_per_h", h.rate->rate.value()}, {"note", h.rate->note}};
        put(json["rate"], h.rate->unknown);
    }
    if (h.timing) {
        json["timing"] = timingJson(*h.timing);
    }
    put(json, "h_hour", h.hHour);
    for (const plan::Preparation& one : h.preparations) {
        Json form = {{"name", one.name}, {"minutes", one.lasts.value()}};
        put(form, one.unknown);
        json["preparations"].push_back(std::move(form));
    }
    put(json, h.gauge);
    put(json, h.unknown);
    return json;
}

Result<plan::Heading> headingFrom(const Json& json) {
    FieldReader reader(json, "heading");
    plan::Heading h;
    h.name = reader.text("name");
    h.marking = reader.text("marking");
    h.author = reader.text("author");
    h.unit = reader.text("unit");
    h.distribution = reader.text("distribution");
    h.cautions = reader.text("cautions");
    h.zone = zoneFrom(reader);
    h.date = reader.date("date").value_or(CalendarDate{});
    h.prepared = reader.time("prepared");
    h.effective = reader.time("effective");
    h.declination = static_cast<plan::DeclinationSource>(reader.choice("declination", {"model", "sheet"}, 0));
    h.plane = planeFrom(reader);
    readPaceAndRate(reader, h);
    readTiming(reader, h);
    h.gauge = gaugeFrom(reader);
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    h.unknown = reader.unknown();
    return h;
}

Json toJson(const std::vector<plan::Phase>& phases) {
    Json list = Json::array();
    for (const plan::Phase& phase : phases) {
        Json json = {{"number", phase.number}};
        put(json, "name", phase.name);
        put(json, "from", phase.from);
        put(json, "until", phase.until);
        put(json, phase.unknown);
        list.push_back(std::move(json));
    }
    return list;
}

Result<std::vector<plan::Phase>> phasesFrom(const Json& json) {
    std::vector<plan::Phase> phases;
    for (const Json& value : json) {
        FieldReader reader(value, "phase");
        plan::Phase phase;
        phase.number = static_cast<int>(reader.whole("number").value_or(0) % 1000);
        phase.name = reader.text("name");
        phase.from = reader.time("from");
        phase.until = reader.time("until");
        phase.unknown = reader.unknown();
        if (reader.fault()) {
            return tl::unexpected(*reader.fault());
        }
        phases.push_back(std::move(phase));
    }
    return phases;
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
    put(json, f.gauge);
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
        put(entry, showing.unknown);
        shows.push_back(std::move(entry));
    }
    json["shows"] = std::move(shows);
    put(json, f.unknown);
    return json;
}

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
    if (const Json* shows = reader.array("shows")) {
        for (const Json& value : *shows) {
            FieldReader inner(value, "film " + f.name);
            plan::Showing showing{inner.id("item").value_or(Uuid{}), inner.text("order"),     inner.point("symbol_at"),
                                  inner.point("label_at"),           inner.id("stands_with"), inner.id("points_to")};
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
