#include "core/drawing/text_ruler.h"

#include "core/drawing/face_table.h"

namespace crosstick::drawing {
namespace {

constexpr char32_t kReplacement = 0xfffd;

/// The first letter of a text and how many bytes it takes. A damaged sequence gives the replacement letter and one
/// byte.
struct Decoded {
    char32_t letter;
    std::size_t length;
};

Decoded decode(std::string_view rest) {
    const auto byte = [&](std::size_t n) { return static_cast<unsigned char>(rest[n]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) {
        return {lead, 1};
    }
    const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : lead >= 0xc2 ? 2 : 0;
    if (length == 0 || rest.size() < length || lead > 0xf4) {
        return {kReplacement, 1};
    }
    char32_t letter = lead & (0xffU >> (length + 1));
    for (std::size_t n = 1; n < length; ++n) {
        if ((byte(n) & 0xc0U) != 0x80U) {
            return {kReplacement, 1};
        }
        letter = (letter << 6U) | (byte(n) & 0x3fU);
    }
    return {letter, length};
}

/// Advance of a letter that neither face has: a question mark is set in its place.
constexpr char32_t kStandIn = U'?';

class BundledRuler final : public TextRuler {
  public:
    [[nodiscard]] double advance(std::string_view utf8, Weight weight) const override {
        double em = 0;
        while (!utf8.empty()) {
            const Decoded next = decode(utf8);
            utf8.remove_prefix(next.length);
            const auto known = faceAdvance(next.letter, weight);
            em += known ? known->em : faceAdvance(kStandIn, weight)->em;
        }
        return em;
    }
};

}  // namespace

const TextRuler& bundledRuler() {
    static const BundledRuler ruler;
    return ruler;
}

double textWidth(std::string_view utf8, double capHeight, Weight weight) {
    return bundledRuler().advance(utf8, weight) * capHeight / kCapital;
}

std::vector<GlyphPlace> setRow(std::string_view utf8, Weight weight) {
    std::vector<GlyphPlace> row;
    double at = 0;
    while (!utf8.empty()) {
        const Decoded next = decode(utf8);
        utf8.remove_prefix(next.length);
        const auto known = faceAdvance(next.letter, weight);
        const auto stand = known ? *known : *faceAdvance(kStandIn, weight);
        row.push_back({known ? next.letter : kStandIn, stand.face, at});
        at += stand.em;
    }
    return row;
}

}  // namespace crosstick::drawing
