#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> pressWords() {
    return {};
}

}  // namespace crosstick::app
