#include "core/units/capitals.h"

namespace crosstick {
namespace {

/// Of the letters that UTF-8 writes in two bytes. Where capitals and small letters alternate, the capital comes first.
unsigned capitalOf(unsigned letter) {
    const auto isIn = [letter](unsigned first, unsigned last) { return letter >= first && letter <= last; };
    const bool isOdd = letter % 2 == 1;
    if ((isIn(0xE0, 0xFE) && letter != 0xF7) || isIn(0x430, 0x44F)) {
        return letter - 0x20;
    }
    if (isIn(0x450, 0x45F)) {
        return letter - 0x50;
    }
    if (letter == 0xFF) {
        return 0x178;
    }
    const bool alternatesFromEven =
        isIn(0x100, 0x130) || isIn(0x132, 0x137) || isIn(0x14A, 0x177) || isIn(0x218, 0x21B) || isIn(0x460, 0x481);
    const bool alternatesFromOdd = isIn(0x139, 0x148) || isIn(0x179, 0x17E);
    return (alternatesFromEven && isOdd) || (alternatesFromOdd && !isOdd) ? letter - 1 : letter;
}

void add(std::string& text, unsigned letter) {
    text += static_cast<char>(0xC0U | (letter >> 6U));
    text += static_cast<char>(0x80U | (letter & 0x3FU));
}

}  // namespace

std::string inCapitals(std::string_view words) {
    constexpr unsigned kSharpS = 0xDF;
    constexpr unsigned kDotlessI = 0x131;
    std::string capitals;
    capitals.reserve(words.size());
    for (std::size_t n = 0; n < words.size(); ++n) {
        const auto byte = static_cast<unsigned char>(words[n]);
        const auto next = n + 1 < words.size() ? static_cast<unsigned char>(words[n + 1]) : 0U;
        if (byte >= 'a' && byte <= 'z') {
            capitals += static_cast<char>(byte - 'a' + 'A');
        } else if ((byte & 0xE0U) == 0xC0U && (next & 0xC0U) == 0x80U) {
            const unsigned letter = ((byte & 0x1FU) << 6U) | (next & 0x3FU);
            if (letter == kSharpS) {
                capitals += "SS";
            } else if (letter == kDotlessI) {
                capitals += 'I';
            } else {
                add(capitals, capitalOf(letter));
            }
            ++n;
        } else {
            capitals += words[n];
        }
    }
    return capitals;
}

}  // namespace crosstick
