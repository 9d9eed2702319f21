#pragma once

#include <optional>

#include "core/drawing/drawing.h"
#include "core/files/json_fields.h"

namespace crosstick::files {

/// The sizes that a plan or a film is drawn in, as "sizes" of its object.
void putGauge(Json& json, const std::optional<drawing::Gauge>& gauge);
[[nodiscard]] std::optional<drawing::Gauge> gaugeFrom(FieldReader& reader);

}  // namespace crosstick::files
