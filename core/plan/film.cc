#include "core/plan/film.h"

namespace crosstick::plan {
namespace {

constexpr std::string_view kLetters = "0123456789abcdefghijklmnopqrstuvwxyz";

std::size_t rank(const std::string& key, std::size_t at, std::size_t beyond) {
    return at < key.size() ? kLetters.find(key[at]) : beyond;
}

}  // namespace

// Keys are fractions in base 36 without their "0.": a letter is taken from the gap between the two keys, or, where
// there is none, one more place is opened. No key ends in 0, so there is always room in front of it.
std::string orderBetween(const std::string& before, const std::string& after) {
    std::string key;
    bool below = after.empty();  // true once the key is certainly smaller than `after`
    for (std::size_t at = 0;; ++at) {
        const std::size_t low = rank(before, at, 0);
        const std::size_t high = below ? kLetters.size() : rank(after, at, 0);
        if (high > low + 1) {
            return key + kLetters[(low + high) / 2];
        }
        key += kLetters[low];
        below = below || high > low;
    }
}

}  // namespace crosstick::plan
