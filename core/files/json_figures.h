#pragma once

#include <functional>

#include "core/files/json_fields.h"
#include "core/plan/film.h"

namespace crosstick::files {

// Figures of legs that a hand placed, in the store and in GeoJSON, which write a place each in its own way.

void putFigures(Json& showing, const std::vector<plan::FiguresAt>& figures,
                const std::function<Json(geodesy::PlanePoint)>& placeJson);
/// A wrong field is told to the reader, and what was read before it comes back.
[[nodiscard]] std::vector<plan::FiguresAt> figuresFrom(
    FieldReader& reader, const std::function<std::optional<geodesy::PlanePoint>(const Json&)>& placeFrom);

}  // namespace crosstick::files
