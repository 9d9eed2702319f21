#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/quantity.h"
#include "core/units/result.h"

namespace crosstick::film {

struct Paper {
    PaperMm width;
    PaperMm height;
    friend bool operator==(const Paper&, const Paper&) = default;
};

/// Papers to try, in this order; each list holds one size upright and lying.
struct PaperChoice {
    std::string name;  ///< "A4", "A4 or A3", "300 x 400 mm"
    std::vector<std::vector<Paper>> sizes;
    friend bool operator==(const PaperChoice&, const PaperChoice&) = default;
};

/// A4, else A3: what is taken where nobody asked for a paper.
[[nodiscard]] PaperChoice usualPapers();
/// "a4", "a3", "letter" in either orientation, or "300x400" in millimetres as it stands (10 to 5000, decimals allowed).
/// Errors: film/no-such-paper with "text".
[[nodiscard]] Result<PaperChoice> parsePaper(std::string_view text);

/// How much window a paper holds beside its furniture, upright and lying; see page.h.
struct WindowRoom {
    PaperMm width, height;
};
inline constexpr std::array kA4Rooms{WindowRoom{PaperMm(190), PaperMm(231)}, WindowRoom{PaperMm(277), PaperMm(144)}};
inline constexpr std::array kA3Rooms{WindowRoom{PaperMm(277), PaperMm(354)}, WindowRoom{PaperMm(400), PaperMm(231)}};

/// Nothing is printed nearer to the paper's edge.
inline constexpr PaperMm kPaperEdge{6};

}  // namespace crosstick::film
