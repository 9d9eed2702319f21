#include "ui/work/film_look.h"

#include <algorithm>
#include <cmath>

namespace crosstick::work {

FilmLook faded(FilmLook look, Fading by) {
    const auto now = std::lround(look.strength * 100);
    int next = by == Fading::Fainter ? kStrengths.back() : kStrengths.front();
    for (const int strength : kStrengths) {  // the nearest beyond the present one
        if (by == Fading::Fainter && strength < now) {
            next = std::max(next, strength);
        } else if (by == Fading::Stronger && strength > now) {
            next = std::min(next, strength);
        }
    }
    look.strength = next / 100.0;
    return look;
}

Tint tintAfter(Tint tint) {
    const auto at = std::find(kTints.begin(), kTints.end(), tint);
    return at == kTints.end() || at + 1 == kTints.end() ? kTints.front() : *(at + 1);
}

}  // namespace crosstick::work
