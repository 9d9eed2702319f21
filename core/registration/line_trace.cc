#include "core/registration/line_trace.h"

#include <algorithm>
#include <cmath>

#include "core/registration/dark_piece.h"

namespace crosstick::registration {
namespace {

constexpr double kGap = 3;     // pixels about the crossing that are left out: the other line is there
constexpr double kNear = 1.0;  // pixels from the line within which a piece belongs to it

struct Vote {
    double offset = 0, slope = 0, votes = -1;
};

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
