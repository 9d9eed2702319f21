#pragma once

#include "core/files/json_fields.h"
#include "core/plan/plan.h"

namespace crosstick::files {

/// What a heading says of movement: paces, rates, timing, preparations, evacuation; fields of the heading's own object.
void putMovement(Json& json, const plan::Heading& heading);
void readMovement(FieldReader& reader, plan::Heading& heading);

}  // namespace crosstick::files
