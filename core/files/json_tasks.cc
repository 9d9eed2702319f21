#include "core/files/json_tasks.h"

namespace crosstick::files {
namespace {

void putId(Json& json, const char* key, const std::optional<Uuid>& id) {
    if (id) {
        json[key] = text(*id);
    }
}

/// What was read, with the fields that another version wrote; or what is wrong with it.
template <class Value>
Result<Value> sound(const FieldReader& reader, Value value) {
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    value.unknown = reader.unknown();
    return value;
}

}  // namespace

Json toJson(const plan::Task& task) {
    Json json = {{"element", text(task.element)}, {"phase", task.phase}};
    put(json, "task", task.task);
    put(json, "purpose", task.purpose);
    put(json, "place", task.place);
    put(json, "trigger", task.trigger);
    put(json, "code_word", task.codeWord);
    putId(json, "attached_to", task.attachedTo);
    put(json, task.unknown);
    return json;
}

Result<plan::Task> taskFrom(const Json& json) {
    FieldReader reader(json, "task");
    plan::Task task;
    task.element = reader.id("element").value_or(Uuid{});
    task.phase = static_cast<int>(reader.whole("phase").value_or(1) % 1000);
    task.task = reader.text("task");
    task.purpose = reader.text("purpose");
    task.place = reader.text("place");
    task.trigger = reader.text("trigger");
    task.codeWord = reader.text("code_word");
    task.attachedTo = reader.id("attached_to");
    return sound(reader, std::move(task));
}

Json toJson(const plan::Event& event) {
    Json json = {{"id", text(event.id)}};
    put(json, "what", event.what);
    putId(json, "place", event.place);
    putId(json, "route", event.route);
    put(json, "man", std::string(event.man == plan::WhichMan::Last ? "last" : ""));
    putId(json, "element", event.element);
    put(json, "planned", event.planned);
    put(json, "code_word", event.codeWord);
    putId(json, "reporter", event.reporter);
    put(json, "reported", event.reported);
    put(json, "actual", event.actual);
    put(json, event.unknown);
    return json;
}

Result<plan::Event> eventFrom(const Json& json) {
    FieldReader reader(json, "event");
    plan::Event event;
    event.id = reader.id("id").value_or(Uuid{});
    event.what = reader.text("what");
    event.place = reader.id("place");
    event.route = reader.id("route");
    event.man = static_cast<plan::WhichMan>(reader.choice("man", {"first", "last"}, 0));
    event.element = reader.id("element");
    event.planned = reader.time("planned");
    event.codeWord = reader.text("code_word");
    event.reporter = reader.id("reporter");
    event.reported = reader.time("reported");
    event.actual = reader.time("actual");
    if (event.id.isNone()) {
        reader.wrong("id", "something");
    }
    return sound(reader, std::move(event));
}

}  // namespace crosstick::files
