#pragma once

#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/plan/measure.h"
#include "core/units/result.h"

namespace crosstick::files {

using Json = nlohmann::json;

/// Reads JSON text that nobody has checked: at most 64 MB, 64 levels deep and 4 million values, every number finite.
/// Errors: files/not-json with "why", which names line and column where the text itself is at fault.
[[nodiscard]] Result<Json> parseJson(std::string_view text);
/// Compact text; damaged UTF-8 comes out as the replacement letter.
[[nodiscard]] std::string jsonText(const Json& json);

/// Takes fields out of an object one by one; what nobody took is unknown and kept. The first wrong field is remembered,
/// and from then on everything comes back empty: ask fault() at the end.
class FieldReader {
  public:
    /// @param what  names the object in errors: "measure", "route QUILL"
    FieldReader(const Json& object, std::string what);

    [[nodiscard]] bool has(const char* key);
    [[nodiscard]] std::string text(const char* key);
    [[nodiscard]] std::optional<double> number(const char* key);
    [[nodiscard]] std::optional<std::int64_t> whole(const char* key);
    [[nodiscard]] std::optional<Uuid> id(const char* key);
    [[nodiscard]] std::optional<Instant> time(const char* key);
    [[nodiscard]] std::optional<CalendarDate> date(const char* key);
    [[nodiscard]] std::vector<std::string> texts(const char* key);
    [[nodiscard]] const Json* object(const char* key);
    [[nodiscard]] const Json* array(const char* key);
    [[nodiscard]] std::optional<geodesy::PlanePoint> point(const char* key);  ///< [easting, northing]
    /// One of the words, by its place; `standard` where the field is absent.
    [[nodiscard]] std::size_t choice(const char* key, std::initializer_list<std::string_view> words,
                                     std::size_t standard);

    void wrong(const char* key, const char* expected);
    [[nodiscard]] plan::UnknownFields unknown() const;
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

  private:
    const Json& object_;
    std::string what_;
    std::vector<const char*> taken_;  ///< keys are literals
    std::size_t found_ = 0;           ///< of the object's keys, how many were taken
    std::optional<Error> fault_;

    [[nodiscard]] const Json* take(const char* key);
};

/// Puts a field where it has something to say.
void put(Json& object, const char* key, const std::string& text);
void put(Json& object, const char* key, const std::optional<Instant>& time);
void put(Json& object, const plan::UnknownFields& unknown);
/// "2027-03-13"; empty for a date that is none.
[[nodiscard]] std::string dateOrNothing(CalendarDate date);
[[nodiscard]] Json pointJson(geodesy::PlanePoint point);
[[nodiscard]] std::optional<geodesy::PlanePoint> pointFrom(const Json& json);

}  // namespace crosstick::files
