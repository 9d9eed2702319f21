#include "core/files/faults.h"
#include "core/files/json_form.h"

namespace crosstick::files {
namespace {

template <class T>
Json changesJson(const std::vector<plan::Change<T>>& changes) {
    Json list = Json::array();
    for (const auto& change : changes) {
        list.push_back(change.after ? Json{{"put", toJson(*change.after)}} : Json{{"remove", text(change.before->id)}});
    }
    return list;
}

Json orderJson(const plan::Change<plan::Order>& change) {
    Json list = Json::array();
    for (const Uuid& id : *change.after) {
        list.push_back(text(id));
    }
    return list;
}

template <class T, class From>
bool readChanges(FieldReader& reader, const char* key, std::vector<plan::Change<T>>& changes, From&& from) {
    const Json* list = reader.array(key);
    if (list == nullptr) {
        return true;
    }
    for (const Json& value : *list) {
        FieldReader change(value, key);
        if (const Json* put = change.object("put")) {
            auto after = from(*put);
            if (!after) {
                return false;
            }
            changes.push_back({nullptr, std::make_shared<const T>(std::move(*after))});
        } else if (const auto id = change.id("remove")) {
            auto gone = std::make_shared<T>();
            gone->id = *id;
            changes.push_back({std::move(gone), nullptr});
        } else {
            return false;
        }
    }
    return true;
}

bool readOrder(FieldReader& reader, const char* key, plan::Change<plan::Order>& change) {
    const Json* list = reader.array(key);
    if (list == nullptr) {
        return true;
    }
    auto order = std::make_shared<plan::Order>();
    for (const Json& value : *list) {
        const auto id = value.is_string() ? parseUuid(value.get<std::string>()) : std::nullopt;
        if (!id) {
            return false;
        }
        order->push_back(*id);
    }
    change.after = std::move(order);
    return true;
}

template <class T>
bool readOne(const Result<T>& value, plan::Change<T>& change) {
    if (value) {
        change.after = std::make_shared<const T>(*value);
    }
    return value.has_value();
}

}  // namespace

Json toJson(const plan::Difference& d) {
    Json json = Json::object();
    if (d.identity) {
        json["identity"] = text(d.identity->second);
    }
    if (d.heading.after) {
        json["heading"] = toJson(*d.heading.after);
    }
    if (d.phases.after) {
        json["phases"] = toJson(*d.phases.after);
    }
    if (d.registration.after) {
        json["registration"] = Json{{"is", toJson(*d.registration.after)}};
    }
    if (d.force.after) {
        json["force"] = toJson(*d.force.after);
    }
    if (d.sheetOrder.after) {
        json["sheet_order"] = orderJson(d.sheetOrder);
    }
    if (d.filmOrder.after) {
        json["film_order"] = orderJson(d.filmOrder);
    }
    if (d.routeOrder.after) {
        json["route_order"] = orderJson(d.routeOrder);
    }
    json["sheets"] = changesJson(d.sheets);
    json["films"] = changesJson(d.films);
    json["routes"] = changesJson(d.routes);
    json["measures"] = changesJson(d.measures);
    return json;
}

Result<plan::Difference> differenceFrom(const Json& json) {
    FieldReader reader(json, "edit");
    plan::Difference d;
    bool isGood = true;
    if (const auto identity = reader.id("identity")) {
        d.identity = std::pair(Uuid{}, *identity);
    }
    if (const Json* heading = reader.object("heading")) {
        isGood = readOne(headingFrom(*heading), d.heading) && isGood;
    }
    if (const Json* phases = reader.array("phases")) {
        isGood = readOne(phasesFrom(*phases), d.phases) && isGood;
    }
    if (const Json* registration = reader.object("registration")) {
        isGood = readOne(registrationFrom(registration->value("is", Json())), d.registration) && isGood;
    }
    if (const Json* force = reader.object("force")) {
        isGood = readOne(forceFrom(*force), d.force) && isGood;
    }
    isGood = readOrder(reader, "sheet_order", d.sheetOrder) && readOrder(reader, "film_order", d.filmOrder) &&
             readOrder(reader, "route_order", d.routeOrder) && isGood;
    isGood = readChanges(reader, "sheets", d.sheets, sheetFrom) && readChanges(reader, "films", d.films, filmFrom) &&
             readChanges(reader, "routes", d.routes, routeFrom) &&
             readChanges(reader, "measures", d.measures, measureFrom) && isGood;
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    if (!isGood) {
        return fail(kBadField, {{"what", std::string("edit")},
                                {"field", std::string("a change")},
                                {"expected", std::string("put or remove with its identity")}});
    }
    return d;
}

}  // namespace crosstick::files
