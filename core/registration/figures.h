#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/registration/fit.h"

namespace crosstick::registration {

/// What a scan's fit says of the paper, at one place of the picture.
struct Figures {
    double stretchEast = 0, stretchNorth = 0;  ///< per cent along the grid's axes: above 0, the paper is too long
    bool isAbsolute = false;  ///< against the scan's dots and the sheet's scale; else each against the mean of both
    Degrees rotation;         ///< of grid east from the picture's right, clockwise
    Degrees skew;             ///< by how much the angle from grid north to grid east exceeds 90 degrees
};
/// @param at            where, in a model that is not the same everywhere
/// @param dotsPerMetre  of the scan, where its file says so. Not believed where that would be a stretch of over 5 per
///                      cent (our own limit: no paper holds together so far, but many files carry dots of nothing)
[[nodiscard]] Figures figuresOf(const Model& model, PixelPoint at, std::optional<Scale> scale = std::nullopt,
                                std::optional<double> dotsPerMetre = std::nullopt);

/// A fit's proof in the words of work on the ground.
struct Proof {
    std::size_t worst = 0;  ///< the mark that lies farthest off, blunders aside; from 0
    double pixels = 0;      ///< by which it does
    Metres ground;
    std::optional<PaperMm> paper;   ///< where the scale is known
    std::optional<Metres> goodFor;  ///< none where nothing can be checked
};
/// Good for: the greater of the worst mark and twice the leave-one-out rms, rounded up to 10, 25, 50, 100, 250, ... m:
/// our own rule, some 95 in 100 places are that good; no film is drawn finer than 10 m.
[[nodiscard]] Proof proofOf(const Fit& fit, std::optional<Scale> scale = std::nullopt);
/// "Worst mark 0.4 mm = 10 m on the ground (mark 3); good for 25 m work.", or that it cannot be checked and what would
/// help; then, where it is so, that models cannot be told apart.
/// @param marks  how many of what was fitted are marks; what comes after them are crossings that were found
/// @param crossing  what the map prints at the worst place where no mark was set there; empty: not known
[[nodiscard]] std::string proofText(const Fit& fit, const Proof& proof, std::size_t marks = kMostMarks,
                                    std::string_view crossing = {});
[[nodiscard]] const char* nameOf(Kind kind);  ///< "similarity", "affine", "projective", "quadratic"

}  // namespace crosstick::registration
