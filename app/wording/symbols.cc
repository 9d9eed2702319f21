#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> symbolsWords() {
    return {};
}

}  // namespace crosstick::app
