#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> planWords() {
    return {};
}

}  // namespace crosstick::app
