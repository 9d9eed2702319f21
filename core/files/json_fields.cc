#include "core/files/json_fields.h"

#include <cmath>

#include "core/files/faults.h"

namespace crosstick::files {
namespace {

constexpr std::size_t kMostBytes = std::size_t{64} << 20U;
constexpr int kDeepest = 64;

/// The depth of brackets outside strings, looked at before the parser is, since it recurses.
bool tooDeep(std::string_view text) {
    int depth = 0;
    bool inString = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (inString) {
            at += c == '\\' ? 1U : 0U;
            inString = c != '"';
        } else if (c == '"') {
            inString = true;
        } else if (c == '[' || c == '{') {
            if (++depth > kDeepest) {
                return true;
            }
        } else if (c == ']' || c == '}') {
            --depth;
        }
    }
    return false;
}

}  // namespace

Result<Json> parseJson(std::string_view text) {
    const auto bad = [](const char* why) { return fail(kNotJson, {{"why", std::string(why)}}); };
    if (text.size() > kMostBytes) {
        return bad("it is larger than 64 MB");
    }
    if (tooDeep(text)) {
        return bad("it is nested more than 64 levels deep");
    }
    Json json = Json::parse(text, nullptr, false);
    if (json.is_discarded()) {
        return bad("a bracket, comma or quote is missing or the file is cut off");
    }
    return json;
}

std::string jsonText(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

FieldReader::FieldReader(const Json& object, std::string what) : object_(object), what_(std::move(what)) {
    if (!object_.is_object()) {
        fault_ = Error{kBadField,
                       {{"what", what_}, {"field", std::string("itself")}, {"expected", std::string("an object")}}};
    }
}

void FieldReader::wrong(const char* key, const char* expected) {
    if (!fault_) {
        fault_ = Error{kBadField, {{"what", what_}, {"field", std::string(key)}, {"expected", std::string(expected)}}};
    }
}

// Null counts as absent.
const Json* FieldReader::take(const char* key) {
    if (fault_) {
        return nullptr;
    }
    taken_.insert(key);
    const auto found = object_.find(key);
    return found == object_.end() || found->is_null() ? nullptr : &*found;
}

bool FieldReader::has(const char* key) {
    return take(key) != nullptr;
}

std::string FieldReader::text(const char* key) {
    const Json* value = take(key);
    if (value == nullptr) {
        return {};
    }
    if (value->is_number_integer()) {
        return value->dump();  // "number": 3
    }
    if (!value->is_string()) {
        wrong(key, "a text");
        return {};
    }
    return value->get_ref<const std::string&>();
}

std::optional<double> FieldReader::number(const char* key) {
    const Json* value = take(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_number() || !std::isfinite(value->get<double>())) {
        wrong(key, "a number");
        return std::nullopt;
    }
    return value->get<double>();
}

std::optional<std::int64_t> FieldReader::whole(const char* key) {
    const Json* value = take(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_number_integer() || (value->is_number_unsigned() && value->get<std::uint64_t>() > INT64_MAX)) {
        wrong(key, "a whole number");
        return std::nullopt;
    }
    return value->get<std::int64_t>();
}

std::optional<Uuid> FieldReader::id(const char* key) {
    if (!has(key)) {
        return std::nullopt;
    }
    auto id = parseUuid(text(key));
    if (!id) {
        wrong(key, "an identity of 8-4-4-4-12 hex digits");
    }
    return id;
}

std::optional<Instant> FieldReader::time(const char* key) {
    if (!has(key)) {
        return std::nullopt;
    }
    const auto time = parseIsoTime(text(key));
    if (!time) {
        wrong(key, "a time like 2027-03-13T15:00-02:00");
        return std::nullopt;
    }
    return *time;
}

std::optional<CalendarDate> FieldReader::date(const char* key) {
    if (!has(key)) {
        return std::nullopt;
    }
    const auto date = parseIsoDate(text(key));
    if (!date) {
        wrong(key, "a date like 2027-03-13");
        return std::nullopt;
    }
    return *date;
}

std::vector<std::string> FieldReader::texts(const char* key) {
    std::vector<std::string> list;
    if (const Json* values = array(key)) {
        for (const Json& value : *values) {
            if (!value.is_string()) {
                wrong(key, "a list of texts");
                return {};
            }
            list.push_back(value.get<std::string>());
        }
    }
    return list;
}

const Json* FieldReader::object(const char* key) {
    const Json* value = take(key);
    if (value != nullptr && !value->is_object()) {
        wrong(key, "an object");
        return nullptr;
    }
    return value;
}

const Json* FieldReader::array(const char* key) {
    const Json* value = take(key);
    if (value != nullptr && !value->is_array()) {
        wrong(key, "a list");
        return nullptr;
    }
    return value;
}

std::optional<geodesy::PlanePoint> FieldReader::point(const char* key) {
    const Json* value = take(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    auto point = pointFrom(*value);
    if (!point) {
        wrong(key, "two finite numbers");
    }
    return point;
}

std::size_t FieldReader::choice(const char* key, std::initializer_list<std::string_view> words, std::size_t standard) {
    if (!has(key)) {
        return standard;
    }
    const std::string word = text(key);
    std::size_t at = 0;
    for (const std::string_view known : words) {
        if (known == word) {
            return at;
        }
        ++at;
    }
    wrong(key, "one of its words");
    return standard;
}

plan::UnknownFields FieldReader::unknown() const {
    plan::UnknownFields fields;
    if (object_.is_object()) {
        for (const auto& [key, value] : object_.items()) {
            if (!taken_.contains(key)) {
                fields.emplace(key, jsonText(value));
            }
        }
    }
    return fields;
}

void put(Json& object, const char* key, const std::string& text) {
    if (!text.empty()) {
        object[key] = text;
    }
}

void put(Json& object, const char* key, const std::optional<Instant>& time) {
    if (time) {
        object[key] = isoTime(*time, TimeZone{});
    }
}

// A field that has become known meanwhile is not overwritten by what was kept of it.
void put(Json& object, const plan::UnknownFields& unknown) {
    for (const auto& [key, text] : unknown) {
        if (!object.contains(key)) {
            Json value = Json::parse(text, nullptr, false);
            object[key] = value.is_discarded() ? Json(text) : std::move(value);
        }
    }
}

Json pointJson(geodesy::PlanePoint point) {
    return Json::array({point.easting.value(), point.northing.value()});
}

std::optional<geodesy::PlanePoint> pointFrom(const Json& json) {
    if (!json.is_array() || json.size() != 2 || !json[0].is_number() || !json[1].is_number()) {
        return std::nullopt;
    }
    const geodesy::PlanePoint point{Metres(json[0].get<double>()), Metres(json[1].get<double>())};
    return isFinite(point.easting) && isFinite(point.northing) ? std::optional(point) : std::nullopt;
}

}  // namespace crosstick::files
