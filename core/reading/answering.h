#pragma once

#include <functional>

#include "core/worker/record.h"

namespace crosstick::reading {

using Say = std::function<void(const worker::Record&)>;

/// Does what an order says and says what comes of it, Done or one Fault the last. Nothing thrown leaves it.
void answer(const worker::Record& order, const Say& say);

}  // namespace crosstick::reading
