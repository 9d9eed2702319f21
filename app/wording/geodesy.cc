#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> geodesyWords() {
    return {};
}

}  // namespace crosstick::app
