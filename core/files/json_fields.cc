#include "core/files/json_fields.h"

#include <algorithm>
#include <cmath>
#include <cstring>

#include "core/files/faults.h"

namespace crosstick::files {
namespace {

constexpr std::size_t kMostBytes = std::size_t{64} << 20U;
constexpr int kDeepest = 64;
// A value takes some 50 bytes of memory once it is read: this many, 200 MB.
constexpr std::size_t kMostValues = 4'000'000;

struct Extent {
    int depth = 0;
    std::size_t values = 1;
};

/// Where the string that begins at a quotation mark has its other one, or the text its end.
std::size_t endOfString(std::string_view text, std::size_t at) {
    for (++at; at < text.size() && text[at] != '"'; ++at) {
        at += text[at] == '\\' ? 1U : 0U;
    }
    return at;
}

/// Depth of brackets and number of values, counted before the parser runs, since it recurses and keeps them all.
Extent extentOf(std::string_view text) {
    Extent extent;
    int depth = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '"') {
            at = endOfString(text, at);
        } else if (c == '[' || c == '{') {
            extent.depth = std::max(extent.depth, ++depth);
            ++extent.values;
        } else if (c == ']' || c == '}') {
            --depth;
        } else if (c == ',') {
            ++extent.values;
        }
    }
    return extent;
}

/// Reads a text only to learn where it goes wrong.
class FaultFinder : public nlohmann::json_sax<Json> {
  public:
    bool null() override { return true; }
    bool boolean(bool /*value*/) override { return true; }
    bool number_integer(number_integer_t /*value*/) override { return true; }
    bool number_unsigned(number_unsigned_t /*value*/) override { return true; }
    bool number_float(number_float_t /*value*/, const string_t& /*text*/) override { return true; }
    bool string(string_t& /*value*/) override { return true; }
    bool binary(binary_t& /*value*/) override { return true; }
    bool start_object(std::size_t /*size*/) override { return true; }
    bool key(string_t& /*value*/) override { return true; }
    bool end_object() override { return true; }
    bool start_array(std::size_t /*size*/) override { return true; }
    bool end_array() override { return true; }
    bool parse_error(std::size_t position, const std::string& /*token*/,
                     const nlohmann::detail::exception& fault) override {
        position_ = position;
        tooLarge_ = fault.id == kOutOfRange;
        return false;
    }

    [[nodiscard]] std::string words(std::string_view text) const {
        const auto before = text.substr(0, std::max<std::size_t>(position_, 1) - 1);
        const auto line = std::count(before.begin(), before.end(), '\n') + 1;
        const auto column = before.size() - (before.rfind('\n') + 1) + 1;
        const char* why = tooLarge_                  ? "a number is too large"
                          : position_ >= text.size() ? "the text ends too soon"
                                                     : "something else is expected there";
        return "line " + std::to_string(line) + ", column " + std::to_string(column) + ": " + why;
    }

  private:
    static constexpr int kOutOfRange = 406;  ///< the parser's own number for it
    std::size_t position_ = 0;
    bool tooLarge_ = false;
};

}  // namespace

Result<Json> parseJson(std::string_view text) {
    const auto bad = [](std::string why) { return fail(kNotJson, {{"why", std::move(why)}}); };
    if (text.size() > kMostBytes) {
        return bad("it is larger than 64 MB");
    }
    const Extent extent = extentOf(text);
    if (extent.depth > kDeepest) {
        return bad("it is nested more than 64 levels deep");
    }
    if (extent.values > kMostValues) {
        return bad("it has more than four million values");
    }
    Json json = Json::parse(text, nullptr, false);
    if (json.is_discarded()) {
        FaultFinder finder;
        Json::sax_parse(text, &finder);
        return bad(finder.words(text));
    }
    return json;
}

std::string jsonText(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

FieldReader::FieldReader(const Json& object, std::string what) : object_(object), what_(std::move(what)) {
    taken_.reserve(8);
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
    const bool isFirst =
        std::none_of(taken_.begin(), taken_.end(), [&](const char* taken) { return std::strcmp(taken, key) == 0; });
    const auto found = object_.find(key);
    if (isFirst) {
        taken_.push_back(key);
        found_ += found == object_.end() ? 0U : 1U;
    }
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
    const Json* value = take(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    const auto* text = value->get_ptr<const std::string*>();
    auto id = text == nullptr ? std::nullopt : parseUuid(*text);
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
    if (object_.is_object() && found_ < object_.size()) {
        for (const auto& item : object_.items()) {
            if (std::none_of(taken_.begin(), taken_.end(), [&](const char* taken) { return item.key() == taken; })) {
                fields.emplace(item.key(), jsonText(item.value()));
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

std::string dateOrNothing(CalendarDate date) {
    return date.ok() ? isoDate(date) : std::string{};
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
