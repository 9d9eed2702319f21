#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> appWords() {
    return {};
}

}  // namespace crosstick::app
