#include <cmath>

#include "core/files/json_form.h"

namespace crosstick::files {
namespace {

Json pointsJson(const std::vector<geodesy::PlanePoint>& points) {
    Json list = Json::array();
    for (const geodesy::PlanePoint p : points) {
        list.push_back(pointJson(p));
    }
    return list;
}

std::vector<geodesy::PlanePoint> pointsFrom(FieldReader& reader, const char* key) {
    std::vector<geodesy::PlanePoint> points;
    if (const Json* list = reader.array(key)) {
        points.reserve(list->size());
        for (const Json& value : *list) {
            const auto point = pointFrom(value);
            if (!point) {
                reader.wrong(key, "a list of pairs of finite numbers");
                return {};
            }
            points.push_back(*point);
        }
    }
    return points;
}

void putRest(Json& json, const plan::Measure& m) {
    if (!m.fields.empty()) {
        json["fields"] = m.fields;
    }
    if (!m.relations.empty()) {
        json["relation"] = m.relations;
    }
    put(json, "why", m.why);
    put(json, "tie", m.tie);
    put(json, "from", m.from);
    put(json, "until", m.until);
    if (m.tracedFrom) {
        Json trace = {{"film", m.tracedFrom->film}, {"item", m.tracedFrom->item}, {"version", m.tracedFrom->version}};
        put(trace, m.tracedFrom->unknown);
        json["traced_from"] = std::move(trace);
    }
    put(json, m.unknown);
}

std::map<std::string, std::string> fieldsFrom(FieldReader& reader) {
    std::map<std::string, std::string> fields;
    if (const Json* object = reader.object("fields")) {
        for (const auto& [key, value] : object->items()) {
            if (!value.is_string()) {
                reader.wrong("fields", "an object of texts");
                return {};
            }
            fields[key] = value.get<std::string>();
        }
    }
    return fields;
}

void readRest(FieldReader& reader, plan::Measure& m) {
    m.fields = fieldsFrom(reader);
    m.relations = reader.texts("relation");
    m.why = reader.text("why");
    m.tie = reader.text("tie");
    m.from = reader.time("from");
    m.until = reader.time("until");
    if (const Json* trace = reader.object("traced_from")) {
        FieldReader inner(*trace, "traced_from");
        m.tracedFrom = plan::TraceSource{inner.text("film"), inner.text("item"), inner.text("version")};
        m.tracedFrom->unknown = inner.unknown();
        if (inner.fault()) {
            reader.wrong("traced_from", "an object of texts");
        }
    }
}

constexpr double kLongestHalt = 7.0 * 24 * 60;  // minutes

void putLegNotes(Json& json, const plan::LegNotes& leg) {
    if (leg.going) {
        json["going"] = *leg.going == plan::Going::Road ? "road" : "cross-country";
    }
    if (leg.halt) {
        json["halt_min"] = leg.halt->value();
    }
    put(json, "catching", leg.catching);
    put(json, "remark", leg.remark);
    if (leg.rally) {
        json["rally"] = text(*leg.rally);
    }
    put(json, "in_contact", leg.inContact);
    put(json, "if_separated", leg.ifSeparated);
}

plan::LegNotes legNotesFrom(FieldReader& stop) {
    plan::LegNotes leg;
    if (const auto going = stop.choice("going", {"", "cross-country", "road"}, 0); going > 0) {
        leg.going = static_cast<plan::Going>(going - 1);
    }
    if (const auto halt = stop.number("halt_min")) {
        leg.halt = Minutes(*halt);
        if (!(*halt >= 0 && *halt <= kLongestHalt)) {
            stop.wrong("halt_min", "minutes up to a week");
        }
    }
    leg.catching = stop.text("catching");
    leg.remark = stop.text("remark");
    leg.rally = stop.id("rally");
    leg.inContact = stop.text("in_contact");
    leg.ifSeparated = stop.text("if_separated");
    return leg;
}

constexpr double kHighest = 9000;  // metres; no ground on Earth is higher

void putByHand(Json& json, const plan::Route& r) {
    if (r.decision) {
        json["decision"] = Json::object();
        put(json["decision"], "criterion", r.decision->criterion);
        put(json["decision"], "decider", r.decision->decider);
        put(json["decision"], "code_word", r.decision->codeWord);
    }
    for (const plan::ContourSpot& spot : r.contours) {
        json["contours"].push_back({{"at", pointJson(spot.at)}, {"height_m", spot.height.value()}});
    }
}

void readByHand(FieldReader& reader, plan::Route& r) {
    if (const Json* decision = reader.object("decision")) {
        FieldReader inner(*decision, "decision");
        r.decision = plan::Decision{inner.text("criterion"), inner.text("decider"), inner.text("code_word")};
        if (inner.fault()) {
            reader.wrong("decision", "an object of texts");
        }
    }
    if (const Json* contours = reader.array("contours")) {
        for (const Json& value : *contours) {
            FieldReader inner(value, "contour");
            const auto at = inner.point("at");
            const auto height = inner.number("height_m");
            if (!at || !height || std::abs(*height) > kHighest || inner.fault()) {
                reader.wrong("contours", "places with a height in metres");
                return;
            }
            r.contours.push_back({*at, Metres(*height)});
        }
    }
}

void readStops(FieldReader& reader, plan::Route& route) {
    const Json* stops = reader.array("points");
    if (stops == nullptr) {
        return;
    }
    for (const Json& value : *stops) {
        FieldReader stop(value, "route point");
        const auto at = stop.whole("at");
        const auto measure = stop.id("measure");
        plan::LegNotes leg = legNotesFrom(stop);
        const bool isGood = at && measure && *at >= 0 && static_cast<std::size_t>(*at) < route.vertices.size();
        if (!isGood || stop.fault()) {
            reader.wrong("points", "vertices that the route has, with their measures");
            return;
        }
        route.stops.push_back({static_cast<std::size_t>(*at), *measure, stop.unknown(), std::move(leg)});
    }
}

}  // namespace

Json measureRest(const plan::Measure& measure) {
    Json json = Json::object();
    putRest(json, measure);
    return json.empty() ? Json() : json;
}

Result<plan::Measure> withRest(plan::Measure measure, const Json& rest) {
    FieldReader reader(rest, "measure " + text(measure.id));
    readRest(reader, measure);
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    measure.unknown = reader.unknown();
    return measure;
}

Json toJson(const plan::Measure& m) {
    Json json = {{"id", text(m.id)}, {"kind", m.kind}};
    put(json, "name", m.name);
    put(json, "number", m.number);
    if (!m.points.empty()) {
        json["points"] = pointsJson(m.points);
    }
    put(json, "anchor", std::string(m.anchor == plan::Anchor::Paper ? "paper" : ""));
    if (m.state != plan::PlaceState::Confirmed) {
        json["state"] = m.state == plan::PlaceState::Assumed ? "assumed" : "unplaced";
    }
    put(json, "standing", std::string(m.standing == plan::Standing::Planned ? "planned" : ""));
    put(json, "whose", std::string(m.whose == plan::Whose::Enemy ? "enemy" : ""));
    putRest(json, m);
    return json;
}

Result<plan::Measure> measureFrom(const Json& json) {
    FieldReader reader(json, "measure");
    plan::Measure m;
    m.id = reader.id("id").value_or(Uuid{});
    m.kind = reader.text("kind");
    m.name = reader.text("name");
    m.number = reader.text("number");
    m.points = pointsFrom(reader, "points");
    m.anchor = static_cast<plan::Anchor>(reader.choice("anchor", {"ground", "paper"}, 0));
    m.state = static_cast<plan::PlaceState>(reader.choice("state", {"unplaced", "assumed", "confirmed"}, 2));
    m.standing = static_cast<plan::Standing>(reader.choice("standing", {"present", "planned"}, 0));
    m.whose = static_cast<plan::Whose>(reader.choice("whose", {"own", "enemy"}, 0));
    readRest(reader, m);
    if (m.id.isNone() || m.kind.empty()) {
        reader.wrong(m.kind.empty() ? "kind" : "id", "something");
    }
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    m.unknown = reader.unknown();
    return m;
}

Json toJson(const plan::Route& r) {
    Json json = {{"id", text(r.id)}};
    put(json, "name", r.name);
    if (r.use != plan::Use::Primary) {
        json["use"] = r.use == plan::Use::Vehicle ? "vehicle" : "alternate";
    }
    json["vertices"] = pointsJson(r.vertices);
    Json stops = Json::array();
    for (const plan::Stop& stop : r.stops) {
        Json entry = {{"at", stop.vertex}, {"measure", text(stop.measure)}};
        putLegNotes(entry, stop.leg);
        put(entry, stop.unknown);
        stops.push_back(std::move(entry));
    }
    json["points"] = std::move(stops);
    if (r.onwardTo) {
        json["onward_to"] = text(*r.onwardTo);
    }
    put(json, "start", r.start);
    put(json, "not_later_than", r.notLaterThan);
    putByHand(json, r);
    put(json, "why", r.why);
    put(json, "if_not_found", r.ifNotFound);
    put(json, r.unknown);
    return json;
}

Result<plan::Route> routeFrom(const Json& json) {
    FieldReader reader(json, "route");
    plan::Route r;
    r.id = reader.id("id").value_or(Uuid{});
    r.name = reader.text("name");
    r.use = static_cast<plan::Use>(reader.choice("use", {"primary", "alternate", "vehicle"}, 0));
    r.vertices = pointsFrom(reader, "vertices");
    readStops(reader, r);
    r.onwardTo = reader.id("onward_to");
    r.start = reader.time("start");
    r.notLaterThan = reader.time("not_later_than");
    readByHand(reader, r);
    r.why = reader.text("why");
    r.ifNotFound = reader.text("if_not_found");
    if (r.id.isNone()) {
        reader.wrong("id", "something");
    }
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    r.unknown = reader.unknown();
    return r;
}

}  // namespace crosstick::files
