#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> windowWords() {
    static constexpr std::array kWords{
        Words{"details/number-taken", "{number} is taken. Next free: {next}."},
        Words{"details/name-taken", "{name} is the name of another route. Give this one its own."},
        Words{"details/grid-off-sheet", "This grid is {away_km} km off the sheet. Check the first two figures."},
        Words{"details/grid-unread",
              "\"{text}\" is no grid. Write four to ten figures, an even number, or the whole reference."},
    };
    return kWords;
}

}  // namespace crosstick::app
