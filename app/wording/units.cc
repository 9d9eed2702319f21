#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> unitsWords() {
    return {};
}

}  // namespace crosstick::app
