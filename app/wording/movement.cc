#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> movementWords() {
    return {};
}

}  // namespace crosstick::app
