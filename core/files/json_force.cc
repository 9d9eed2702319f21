#include "core/files/json_form.h"
#include "core/files/json_tasks.h"

namespace crosstick::files {
namespace {

constexpr std::int64_t kMostPeople = 100'000;
constexpr std::int64_t kMostFiles = 8;
constexpr double kLongestGap = 10'000;

Json elementJson(const plan::Element& element) {
    Json json = {{"id", text(element.id)}};
    put(json, "unit", element.unit);
    put(json, "name", element.name);
    put(json, "call_sign", element.callSign);
    if (element.people != 0) {
        json["people"] = element.people;
    }
    put(json, element.unknown);
    return json;
}

Json columnJson(const plan::Column& column) {
    Json serials = Json::array();
    for (const plan::Serial& serial : column.serials) {
        Json json = {{"element", text(serial.element)}};
        put(json, "role", serial.role);
        if (serial.behind) {
            json["behind_m"] = serial.behind->value();
        }
        put(json, serial.unknown);
        serials.push_back(std::move(json));
    }
    Json json = {{"id", text(column.id)},
                 {"serials", std::move(serials)},
                 {"files", column.files},
                 {"apart_m", column.apart.value()},
                 {"interval_m", column.interval.value()}};
    put(json, "name", column.name);
    put(json, column.unknown);
    return json;
}

Metres gap(FieldReader& reader, const char* key, Metres standard) {
    const double metres = reader.number(key).value_or(standard.value());
    if (!(metres >= 0 && metres <= kLongestGap)) {
        reader.wrong(key, "0 to 10,000 m");
    }
    return Metres(metres);
}

std::optional<plan::Element> elementFrom(const Json& json, FieldReader& force) {
    FieldReader reader(json, "element");
    plan::Element element;
    element.id = reader.id("id").value_or(Uuid{});
    element.unit = reader.text("unit");
    element.name = reader.text("name");
    element.callSign = reader.text("call_sign");
    const auto people = reader.whole("people").value_or(0);
    element.people = static_cast<int>(people);
    element.unknown = reader.unknown();
    if (reader.fault() || element.id.isNone() || people < 0 || people > kMostPeople) {
        force.wrong("elements", "an identity and a number of people");
        return std::nullopt;
    }
    return element;
}

std::optional<plan::Serial> serialFrom(const Json& json, FieldReader& force) {
    FieldReader reader(json, "serial");
    plan::Serial serial;
    serial.element = reader.id("element").value_or(Uuid{});
    serial.role = reader.text("role");
    if (reader.has("behind_m")) {
        serial.behind = gap(reader, "behind_m", Metres(0));
    }
    serial.unknown = reader.unknown();
    if (reader.fault()) {
        force.wrong("columns", "serials that name their element");
        return std::nullopt;
    }
    return serial;
}

std::optional<plan::Column> columnFrom(const Json& json, FieldReader& force) {
    FieldReader reader(json, "column");
    plan::Column column;
    column.id = reader.id("id").value_or(Uuid{});
    column.name = reader.text("name");
    if (const Json* serials = reader.array("serials")) {
        for (const Json& value : *serials) {
            auto serial = serialFrom(value, force);
            if (!serial) {
                return std::nullopt;
            }
            column.serials.push_back(std::move(*serial));
        }
    }
    const auto files = reader.whole("files").value_or(1);
    column.files = static_cast<int>(files);
    column.apart = gap(reader, "apart_m", column.apart);
    column.interval = gap(reader, "interval_m", column.interval);
    column.unknown = reader.unknown();
    if (reader.fault() || column.id.isNone() || files < 1 || files > kMostFiles) {
        force.wrong("columns", "an identity, 1 to 8 files, gaps in metres");
        return std::nullopt;
    }
    return column;
}

template <class T>
std::optional<T> orWrong(Result<T> read, FieldReader& whole, const char* key) {
    if (!read) {
        whole.wrong(key, "objects of identities, texts and times");
        return std::nullopt;
    }
    return std::move(*read);
}

template <class T, class From>
void readList(FieldReader& reader, const char* key, std::vector<T>& list, From&& from) {
    if (const Json* values = reader.array(key)) {
        for (const Json& value : *values) {
            auto one = from(value, reader);
            if (!one) {
                return;
            }
            list.push_back(std::move(*one));
        }
    }
}

}  // namespace

Json toJson(const plan::Force& force) {
    Json json = {{"elements", Json::array()}, {"columns", Json::array()}};
    for (const plan::Element& element : force.elements) {
        json["elements"].push_back(elementJson(element));
    }
    for (const plan::Column& column : force.columns) {
        json["columns"].push_back(columnJson(column));
    }
    for (const plan::Task& task : force.tasks) {
        json["tasks"].push_back(toJson(task));
    }
    for (const plan::Event& event : force.events) {
        json["events"].push_back(toJson(event));
    }
    put(json, force.unknown);
    return json;
}

Result<plan::Force> forceFrom(const Json& json) {
    FieldReader reader(json, "force");
    plan::Force force;
    readList(reader, "elements", force.elements, elementFrom);
    readList(reader, "columns", force.columns, columnFrom);
    readList(reader, "tasks", force.tasks,
             [](const Json& value, FieldReader& whole) { return orWrong(taskFrom(value), whole, "tasks"); });
    readList(reader, "events", force.events,
             [](const Json& value, FieldReader& whole) { return orWrong(eventFrom(value), whole, "events"); });
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    force.unknown = reader.unknown();
    return force;
}

}  // namespace crosstick::files
