// What a heading says of movement.
#include "core/files/json_movement.h"

#include <array>

namespace crosstick::files {
namespace {

constexpr double kMostPreparing = 30.0 * 24 * 60;  ///< minutes

Json rateJson(const plan::MarchRate& rate) {
    Json json = {{"km_per_h", rate.rate.value()}, {"note", rate.note}};
    put(json, rate.unknown);
    return json;
}

std::optional<plan::MarchRate> rateFrom(FieldReader& reader, const char* key) {
    const Json* object = reader.object(key);
    if (object == nullptr) {
        return std::nullopt;
    }
    FieldReader inner(*object, key);
    plan::MarchRate rate{KilometresPerHour(inner.number("km_per_h").value_or(0)), inner.text("note")};
    rate.unknown = inner.unknown();
    if (inner.fault() || !(rate.rate.value() > 0)) {
        reader.wrong(key, "a rate over 0");
    }
    return rate;
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
    h.rate = rateFrom(reader, "rate");
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

constexpr double kMostOffPace = 0.5;  // share of the distance
constexpr double kMostOffAzimuth = 45;

Json navigatorJson(const plan::NavigatorErrors& errors) {
    Json json = {{"pace_share", errors.pace}, {"compass_deg", errors.compass.value()}};
    put(json, errors.unknown);
    return json;
}

void readNavigator(FieldReader& reader, plan::Heading& h) {
    if (const Json* object = reader.object("navigator")) {
        FieldReader inner(*object, "navigator");
        const double pace = inner.number("pace_share").value_or(-1);
        const double compass = inner.number("compass_deg").value_or(-1);
        h.navigator = plan::NavigatorErrors{pace, Degrees(compass), inner.unknown()};
        if (inner.fault() || !(pace >= 0 && pace <= kMostOffPace && compass >= 0 && compass <= kMostOffAzimuth)) {
            reader.wrong("navigator", "a pace error of 0 to 0.5 and a compass error of 0 to 45 degrees");
        }
    }
}

constexpr double kLongestCourse = 10000;  // metres

void putCourses(Json& json, const std::vector<plan::PaceCourse>& courses) {
    for (const plan::PaceCourse& course : courses) {
        Json form = {{"length_m", course.length.value()}, {"double_paces", course.doublePaces}};
        put(form, "walker", course.walker);
        put(form, "going", std::string(course.going == plan::Going::Road ? "road" : ""));
        put(form, "light", std::string(course.light == plan::Light::Night ? "night" : ""));
        put(form, course.unknown);
        json["courses"].push_back(std::move(form));
    }
}

void readCourses(FieldReader& reader, plan::Heading& h) {
    const Json* list = reader.array("courses");
    if (list == nullptr) {
        return;
    }
    for (const Json& value : *list) {
        FieldReader inner(value, "course");
        plan::PaceCourse course{inner.text("walker"), Metres(inner.number("length_m").value_or(0)),
                                inner.number("double_paces").value_or(0)};
        course.going = static_cast<plan::Going>(inner.choice("going", {"cross-country", "road"}, 0));
        course.light = static_cast<plan::Light>(inner.choice("light", {"day", "night"}, 0));
        course.unknown = inner.unknown();
        const double length = course.length.value();
        if (inner.fault() || !(length > 0 && length <= kLongestCourse && course.doublePaces > 0)) {
            reader.wrong("courses", "a length up to 10 km and a count over 0");
            return;
        }
        h.courses.push_back(std::move(course));
    }
}

Json evacuationJson(const plan::Evacuation& evacuation) {
    Json json = Json::object();
    const auto put = [&](const char* key, const std::optional<plan::ItemId>& item) {
        if (item) {
            json[key] = text(*item);
        }
    };
    put("collection", evacuation.collection);
    put("onward", evacuation.onward);
    put("pick_up", evacuation.pickUp);
    if (evacuation.carry) {
        json["carry"] = rateJson(*evacuation.carry);
    }
    files::put(json, evacuation.unknown);
    return json;
}

void readEvacuation(FieldReader& reader, plan::Heading& h) {
    if (const Json* object = reader.object("evacuation")) {
        FieldReader inner(*object, "evacuation");
        h.evacuation =
            plan::Evacuation{inner.id("collection"), inner.id("onward"), inner.id("pick_up"), rateFrom(inner, "carry")};
        h.evacuation->unknown = inner.unknown();
        if (inner.fault()) {
            reader.wrong("evacuation", "identities, and a rate over 0");
        }
    }
}

}  // namespace

void putMovement(Json& json, const plan::Heading& h) {
    putCourses(json, h.courses);
    if (h.pace) {
        json["pace"] = {{"double_paces_per_100m", h.pace->doublePacesPer100}, {"note", h.pace->note}};
        put(json["pace"], h.pace->unknown);
    }
    if (h.rate) {
        json["rate"] = rateJson(*h.rate);
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
    if (h.navigator) {
        json["navigator"] = navigatorJson(*h.navigator);
    }
    if (h.evacuation) {
        json["evacuation"] = evacuationJson(*h.evacuation);
    }
}

void readMovement(FieldReader& reader, plan::Heading& h) {
    readPaceAndRate(reader, h);
    readCourses(reader, h);
    readTiming(reader, h);
    readNavigator(reader, h);
    readEvacuation(reader, h);
}

}  // namespace crosstick::files
