#include "core/registration/line_trace.h"

#include <algorithm>
#include <cmath>

namespace crosstick::registration {
namespace {

constexpr double kGap = 3;     // pixels about the crossing that are left out: the other line is there
constexpr int kPiece = 6;      // pixels along the line that are averaged
constexpr int kSide = 4;       // pixels from a line's middle to where its ground is looked at
constexpr double kFine = 0.5;  // step across, pixels
constexpr double kNear = 1.0;  // pixels from the line within which a piece belongs to it
constexpr int kPerPixel = 2;   // steps

/// Mean greys across one piece of the line, from -half to half steps.
struct Piece {
    double along = 0;         ///< of its middle
    std::vector<float> dark;  ///< how much darker than the ground at both sides; below 0: not at all
    std::vector<float> grey;
    bool isSeen = false;  ///< inside the picture
};

struct Vote {
    double offset = 0, slope = 0, votes = -1;
};

/// What does not change from piece to piece.
struct Across {
    int half = 0;  ///< steps to either side
    [[nodiscard]] std::size_t indexOf(double offset) const {
        return static_cast<std::size_t>(std::clamp<long>(std::lround(offset * kPerPixel) + half, 0, 2L * half));
    }
    [[nodiscard]] double offsetOf(std::size_t index) const { return (static_cast<double>(index) - half) / kPerPixel; }
};

Piece pieceAt(const GreyWindow& window, PixelPoint at, PixelPoint direction, double along, const Across& across) {
    constexpr int kGround = kSide * kPerPixel;
    Piece piece{along, {}, {}, true};
    const int wide = across.half + kGround;
    piece.grey.assign(static_cast<std::size_t>(2 * wide + 1), 0);
    for (int k = 0; k < kPiece; ++k) {
        const double t = along + k - (kPiece - 1) / 2.0;
        for (int n = -wide; n <= wide; ++n) {
            const double o = n * kFine;
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

std::vector<Piece> piecesAlong(const GreyWindow& window, PixelPoint at, PixelPoint direction, const Reach& reach,
                               const Across& across) {
    std::vector<Piece> pieces;
    for (double t = kGap + kPiece / 2.0; t + kPiece / 2.0 <= reach.arm + 1e-9; t += kPiece) {
        pieces.push_back(pieceAt(window, at, direction, t, across));
        pieces.push_back(pieceAt(window, at, direction, -t, across));
    }
    return pieces;
}

/// How much a piece speaks for a line that passes it at an offset: 0 to 1, a pixel either way being the same.
double voteOf(const Piece& piece, const Across& across, double offset, double contrast) {
    if (!piece.isSeen) {
        return 0;
    }
    const std::size_t middle = across.indexOf(offset);
    float darkest = 0;
    for (std::size_t n = middle > 1 ? middle - 2 : 0; n < std::min(piece.dark.size(), middle + 3); ++n) {
        darkest = std::max(darkest, piece.dark[n]);
    }
    return std::clamp(static_cast<double>(darkest) / (contrast / 2), 0.0, 1.0);
}

double votesFor(const std::vector<Piece>& pieces, const Across& across, double offset, double slope, double contrast) {
    double votes = 0;
    for (const Piece& piece : pieces) {
        votes += voteOf(piece, across, offset + slope * piece.along, contrast);
    }
    return votes;
}

/// The best offset and slope; those nearer to where the line should be win where votes are equal.
Vote best(const std::vector<Piece>& pieces, const Across& across, const Reach& reach, double contrast) {
    constexpr double kSlopeStep = 0.015;
    const int slopes = static_cast<int>(std::ceil(reach.slope / kSlopeStep));
    Vote found;
    for (int m = -slopes; m <= slopes; ++m) {
        for (double o = -reach.search; o <= reach.search; o += 1) {
            const double votes = votesFor(pieces, across, o, m * kSlopeStep, contrast);
            const double liking = votes - 0.3 * std::abs(o) / reach.search - 0.02 * std::abs(m);
            if (liking > found.votes) {
                found = {o, m * kSlopeStep, liking};
            }
        }
    }
    return found;
}

/// The most votes for a line as slanted elsewhere.
double rivalOf(const std::vector<Piece>& pieces, const Across& across, const Reach& reach, const LineTrace& line,
               double contrast) {
    constexpr double kElsewhere = 4;
    double most = 0;
    for (double o = -reach.search; o <= reach.search; o += 1) {
        if (std::abs(o - line.offset) >= kElsewhere) {
            most = std::max(most, votesFor(pieces, across, o, line.slope, contrast));
        }
    }
    return most / static_cast<double>(pieces.size());
}

struct Centre {
    double along = 0, offset = 0, contrast = 0, width = 0;
};

/// The centre of a piece's darkness below the straight line between the grounds at both its sides.
std::optional<Centre> centreOf(const Piece& piece, const Across& across, double near, double contrast) {
    constexpr int kGround = kSide * kPerPixel;
    if (!piece.isSeen) {
        return std::nullopt;
    }
    // Its darkest step near where it should be, then the darkness round that.
    const auto first = across.indexOf(near - 2);
    const auto last = across.indexOf(near + 2);
    std::size_t peak = first;
    for (std::size_t n = first; n <= last; ++n) {
        peak = piece.dark[n] > piece.dark[peak] ? n : peak;
    }
    if (static_cast<double>(piece.dark[peak]) < contrast / 3) {
        return std::nullopt;
    }
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
    return Centre{piece.along, across.offsetOf(peak) + moment / sum / kPerPixel, deepest, sum / deepest / kPerPixel};
}

/// A straight line through the centres near it, in a few rounds. In the first it may be a whole pixel off: so far a
/// vote goes for whoever is nearer to where the line should be.
void straighten(const std::vector<Centre>& centres, double& offset, double& slope) {
    for (int round = 0; round < 4; ++round) {
        double n = 0;
        double t = 0;
        double tt = 0;
        double o = 0;
        double to = 0;
        const double near = std::max(kNear, 2.5 - round);
        for (const Centre& c : centres) {
            if (std::abs(c.offset - offset - slope * c.along) < near) {
                n += 1;
                t += c.along;
                tt += c.along * c.along;
                o += c.offset;
                to += c.along * c.offset;
            }
        }
        const double area = n * tt - t * t;
        if (n < 3 || area <= 0) {
            return;
        }
        slope = (n * to - t * o) / area;
        offset = (o - slope * t) / n;
    }
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

}  // namespace

std::optional<LineTrace> traceLine(const GreyWindow& window, PixelPoint at, PixelPoint direction, const Reach& reach,
                                   double contrast) {
    const Across across{static_cast<int>(std::ceil((reach.search + reach.slope * reach.arm + 3) * kPerPixel))};
    const auto pieces = piecesAlong(window, at, direction, reach, across);
    if (pieces.size() < 4) {
        return std::nullopt;
    }
    const Vote vote = best(pieces, across, reach, contrast);
    LineTrace line{vote.offset, vote.slope};
    std::vector<Centre> centres;
    for (const Piece& piece : pieces) {
        if (const auto centre = centreOf(piece, across, vote.offset + vote.slope * piece.along, contrast)) {
            centres.push_back(*centre);
        }
    }
    straighten(centres, line.offset, line.slope);
    std::erase_if(centres,
                  [&](const Centre& c) { return std::abs(c.offset - line.offset - line.slope * c.along) >= kNear; });
    const double all = static_cast<double>(pieces.size());
    if (static_cast<double>(centres.size()) < all / 3) {
        return std::nullopt;
    }
    std::vector<double> contrasts;
    std::vector<double> widths;
    for (const Centre& c : centres) {
        (c.along < 0 ? line.behind : line.ahead) += 2 / all;
        line.scatter +=
            std::pow(c.offset - line.offset - line.slope * c.along, 2) / static_cast<double>(centres.size());
        contrasts.push_back(c.contrast);
        widths.push_back(c.width);
    }
    line.scatter = std::sqrt(line.scatter);
    line.contrast = median(contrasts);
    line.width = median(widths);
    line.rival = rivalOf(pieces, across, reach, line, contrast);
    return line;
}

}  // namespace crosstick::registration
