#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> sheetsWords() {
    return {};
}

}  // namespace crosstick::app
