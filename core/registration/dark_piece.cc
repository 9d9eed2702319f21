#include "core/registration/dark_piece.h"

namespace crosstick::registration {
namespace {

constexpr int kGround = kSide * kPerPixel;  // steps

/// The centre of the darkness round a step.
Centre centreAround(const Piece& piece, const Across& across, std::size_t peak) {
    const float* middle = piece.grey.data() + peak + kGround;
    double sum = 0;
    double moment = 0;
    for (int n = -kGround; n <= kGround; ++n) {
        const double u = static_cast<double>(n + kGround) / (2 * kGround);
        const double ground =
            static_cast<double>(middle[-kGround]) * (1 - u) + static_cast<double>(middle[kGround]) * u;
        const double dark =
            std::max(0.0, ground - static_cast<double>(middle[n]) - 0.15 * static_cast<double>(piece.dark[peak]));
        sum += dark;
        moment += dark * n;
    }
    const double deepest = static_cast<double>(piece.dark[peak]);
    return {piece.along, across.offsetOf(peak) + moment / sum / kPerPixel, deepest, sum / deepest / kPerPixel};
}

bool isDark(const Piece& piece, std::size_t step, double contrast) {
    return static_cast<double>(piece.dark[step]) >= contrast / 3;
}

}  // namespace

Piece pieceAt(const GreyWindow& window, PixelPoint at, PixelPoint direction, double along, const Across& across) {
    Piece piece{along, {}, {}, true};
    const int wide = across.half + kGround;
    piece.grey.assign(static_cast<std::size_t>(2 * wide + 1), 0);
    for (int k = 0; k < kPiece; ++k) {
        const double t = along + k - (kPiece - 1) / 2.0;
        for (int n = -wide; n <= wide; ++n) {
            const double o = static_cast<double>(n) / kPerPixel;
            const float grey =
                window.at({at.x + direction.x * t - direction.y * o, at.y + direction.y * t + direction.x * o});
            piece.isSeen = piece.isSeen && (grey >= 0 || std::abs(n) > across.half);
            piece.grey[static_cast<std::size_t>(n + wide)] += std::max(0.0F, grey) / kPiece;
        }
    }
    for (int n = -across.half; n <= across.half; ++n) {
        const float* middle = piece.grey.data() + (n + wide);
        piece.dark.push_back(std::min(middle[-kGround], middle[kGround]) - middle[0]);
    }
    return piece;
}

std::optional<Centre> centreOf(const Piece& piece, const Across& across, double near, double contrast) {
    if (!piece.isSeen) {
        return std::nullopt;
    }
    const auto first = across.indexOf(near - 2);
    const auto last = across.indexOf(near + 2);
    std::size_t peak = first;
    for (std::size_t n = first; n <= last; ++n) {
        peak = piece.dark[n] > piece.dark[peak] ? n : peak;
    }
    return isDark(piece, peak, contrast) ? std::optional(centreAround(piece, across, peak)) : std::nullopt;
}

std::vector<Centre> centresOf(const Piece& piece, const Across& across, double contrast) {
    constexpr std::size_t kApart = 3;  // steps
    std::vector<Centre> centres;
    for (std::size_t n = kApart; piece.isSeen && n + kApart < piece.dark.size(); ++n) {
        const auto at = piece.dark.begin() + static_cast<std::ptrdiff_t>(n);
        if (isDark(piece, n, contrast) && std::max_element(at - kApart, at + kApart + 1) == at) {
            centres.push_back(centreAround(piece, across, n));
        }
    }
    return centres;
}

}  // namespace crosstick::registration
