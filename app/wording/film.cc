#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> filmWords() {
    return {};
}

}  // namespace crosstick::app
