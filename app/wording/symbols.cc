#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 6> kWords{{
    {"symbols/no-length", "{item} has no length: both of its ends are the same place. Draw it again."},
    {"symbols/label-left-out", "{item} has no room for its name on film {film}. Place the name by hand."},
    {"symbols/outside-window", "{item} lies outside the window of film {film} and is not printed on it."},
    {"symbols/unknown-kind", "{item} is of a kind that this version does not know; it is drawn in words."},
    {"symbols/no-column", "{item} on film {film} names a column that the plan does not have. Choose one in its card."},
    {"symbols/not-reached", "{item} lies where the sheet's grid does not reach. Check its grid."},
}};

}  // namespace

std::span<const Words> symbolsWords() {
    return kWords;
}

}  // namespace crosstick::app
