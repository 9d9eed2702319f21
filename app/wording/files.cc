#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> filesWords() {
    return {};
}

}  // namespace crosstick::app
