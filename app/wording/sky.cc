#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array kWords{
    Words{"sky/date-outside", "{date} is no date that light is reckoned for: give one from 1970 to 2050."},
};

}  // namespace

std::span<const Words> skyWords() {
    return kWords;
}

}  // namespace crosstick::app
