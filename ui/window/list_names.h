#pragma once

#include <QString>

#include "core/plan/plan.h"

namespace crosstick::window {

/// What a measure or route is called in a list where its sign does not stand beside it: "PL BODKIN", "RTE QUILL",
/// "Boundary A, 2/C", "Direction of attack WEST"; empty where the plan has no such thing.
[[nodiscard]] QString listName(const plan::Plan& plan, const plan::ItemId& item);

}  // namespace crosstick::window
