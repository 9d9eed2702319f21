#pragma once

#include "core/files/json_fields.h"
#include "core/plan/tasks.h"

namespace crosstick::files {

[[nodiscard]] Json toJson(const plan::Task& task);
[[nodiscard]] Json toJson(const plan::Event& event);
/// Errors: files/bad-field.
[[nodiscard]] Result<plan::Task> taskFrom(const Json& json);
[[nodiscard]] Result<plan::Event> eventFrom(const Json& json);

}  // namespace crosstick::files
