#pragma once

#include "core/plan/force.h"

namespace crosstick::plan {

/// An element out of the force, of every column, with its tasks. Who was attached to it is attached to nobody, and its
/// events are the whole column's, to be reported by whoever is named anew.
[[nodiscard]] Force withoutElement(Force force, const Uuid& element);

/// A task in place of the one that its element has in its phase; one that says nothing is taken out.
[[nodiscard]] Force withTask(Force force, Task task);

}  // namespace crosstick::plan
