#include "tests/places.h"

namespace crosstick::places {

std::filesystem::path share() {
    return CROSSTICK_SHARE;
}

std::filesystem::path data() {
    return CROSSTICK_SOURCE "/tests/data";
}

std::filesystem::path source() {
    return CROSSTICK_SOURCE;
}

std::filesystem::path program() {
    return CROSSTICK_BUILD "/app/crosstick";
}

std::filesystem::path foreignReader() {
    return CROSSTICK_BUILD "/app/crosstick-reader";
}

std::filesystem::path sheetCache() {
    return CROSSTICK_BUILD "/test-cache";
}

}  // namespace crosstick::places
