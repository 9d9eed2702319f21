#pragma once

#include <optional>
#include <vector>

#include "core/drawing/text_ruler.h"

namespace crosstick::drawing {

struct FaceAdvance {
    Face face;
    double em;
};

/// The bundled face that sets a letter, and how far it moves on; nothing for a letter that neither has.
[[nodiscard]] std::optional<FaceAdvance> faceAdvance(char32_t letter, Weight weight);
/// Every letter that the table says a face sets.
[[nodiscard]] std::vector<char32_t> lettersOf(Face face);

}  // namespace crosstick::drawing
