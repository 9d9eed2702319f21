#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> demoWords() {
    return {};
}

}  // namespace crosstick::app
