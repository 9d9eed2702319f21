#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> planWords() {
    static constexpr std::array kWords{
        Words{"plan/film-pinned",
              "{film} is pinned. Trace from it onto a film of yours, or take its pin out with Ctrl+B."},
        Words{"measures/bad-number", "A number from {low} to {high} is wanted here."},
        Words{"measures/bad-answer", "Yes or no: \"yes\", \"no\"."},
        Words{"measures/bad-side", "Left or right, seen along the line as it was drawn: \"left\", \"right\"."},
        Words{"measures/bad-echelon", "One of tm, sqd, sec, plt, coy, bn, rgt, bde, div is wanted here."},
    };
    return kWords;
}

}  // namespace crosstick::app
