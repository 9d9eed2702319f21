#include "sample-data/sheet/contours.h"

#include <array>
#include <unordered_map>

#include "core/drawing/steps.h"

namespace crosstick::demo {
namespace {

/// An edge between two neighbouring cells: cell index times 2, plus 1 for the edge downwards.
using Edge = std::size_t;

struct Piece {
    Edge from, to;
};

/// The edges of one square, clockwise from the top.
struct Square {
    const Lattice& lattice;
    int column, row;
    [[nodiscard]] Edge edge(int side) const {
        switch (side) {
            case 0:
                return lattice.index(column, row) * 2;
            case 1:
                return lattice.index(column + 1, row) * 2 + 1;
            case 2:
                return lattice.index(column, row + 1) * 2;
            default:
                return lattice.index(column, row) * 2 + 1;
        }
    }
};

// Corners in bits: upper left 1, upper right 2, lower right 4, lower left 8, set where the ground is higher. Pieces run
// with the high ground on their right; a saddle is parted by its mean.
constexpr std::array<std::array<int, 4>, 16> kPieces{{{-1, -1, -1, -1},
                                                      {0, 3, -1, -1},
                                                      {1, 0, -1, -1},
                                                      {1, 3, -1, -1},
                                                      {2, 1, -1, -1},
                                                      {0, 3, 2, 1},
                                                      {2, 0, -1, -1},
                                                      {2, 3, -1, -1},
                                                      {3, 2, -1, -1},
                                                      {0, 2, -1, -1},
                                                      {1, 0, 3, 2},
                                                      {1, 2, -1, -1},
                                                      {3, 1, -1, -1},
                                                      {0, 1, -1, -1},
                                                      {3, 0, -1, -1},
                                                      {-1, -1, -1, -1}}};

std::vector<Piece> piecesAt(const Field<float>& z, double level) {
    std::vector<Piece> pieces;
    const Lattice& lattice = z.lattice;
    for (int row = 0; row + 1 < lattice.rows; ++row) {
        for (int column = 0; column + 1 < lattice.columns; ++column) {
            const auto high = [&](int c, int r) { return static_cast<double>(z(c, r)) >= level; };
            const int code = (high(column, row) ? 1 : 0) | (high(column + 1, row) ? 2 : 0) |
                             (high(column + 1, row + 1) ? 4 : 0) | (high(column, row + 1) ? 8 : 0);
            const Square square{lattice, column, row};
            const auto& sides = kPieces[static_cast<std::size_t>(code)];
            for (std::size_t n = 0; n < 4 && sides[n] >= 0; n += 2) {
                pieces.push_back({square.edge(sides[n]), square.edge(sides[n + 1])});
            }
        }
    }
    return pieces;
}

Spot crossingOn(Edge edge, const Field<float>& z, double level) {
    const Lattice& lattice = z.lattice;
    const int cell = static_cast<int>(edge / 2);
    const int column = cell % lattice.columns;
    const int row = cell / lattice.columns;
    const int nextColumn = edge % 2 == 0 ? column + 1 : column;
    const int nextRow = edge % 2 == 0 ? row : row + 1;
    const auto a = static_cast<double>(z(column, row));
    const auto b = static_cast<double>(z(nextColumn, nextRow));
    const double share = a == b ? 0.5 : (level - a) / (b - a);
    const Spot from = lattice.centre(column, row);
    return from + (lattice.centre(nextColumn, nextRow) - from) * share;
}

/// Chaikin's corner cutting: the lattice's steps vanish.
Line cutCorners(const Line& line, bool closed) {
    Line smooth;
    const std::size_t count = line.size();
    if (!closed && count > 0) {
        smooth.push_back(line.front());
    }
    for (std::size_t n = 0; n + (closed ? 0 : 1) < count; ++n) {
        const Spot a = line[n];
        const Spot b = line[(n + 1) % count];
        smooth.push_back(a * 0.75 + b * 0.25);
        smooth.push_back(a * 0.25 + b * 0.75);
    }
    if (!closed && count > 0) {
        smooth.push_back(line.back());
    }
    return smooth;
}

void joinAt(const Field<float>& z, double level, std::vector<Contour>& out) {
    const std::vector<Piece> pieces = piecesAt(z, level);
    std::unordered_map<Edge, std::size_t> byStart;
    std::unordered_map<Edge, std::size_t> byEnd;
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        byStart.emplace(pieces[n].from, n);
        byEnd.emplace(pieces[n].to, n);
    }
    std::vector<char> used(pieces.size(), 0);
    const auto follow = [&](std::size_t start) {
        Contour contour{level, false, {crossingOn(pieces[start].from, z, level)}};
        for (std::size_t n = start;;) {
            used[n] = 1;
            contour.line.push_back(crossingOn(pieces[n].to, z, level));
            const auto next = byStart.find(pieces[n].to);
            if (next == byStart.end()) {
                break;
            }
            if (used[next->second] != 0) {
                contour.closed = next->second == start;
                break;
            }
            n = next->second;
        }
        if (contour.closed) {
            contour.line.pop_back();
        }
        for (int round = 0; round < 2; ++round) {
            contour.line = cutCorners(contour.line, contour.closed);
        }
        out.push_back(std::move(contour));
    };
    for (std::size_t n = 0; n < pieces.size(); ++n) {  // open lines from their beginnings first
        if (used[n] == 0 && !byEnd.contains(pieces[n].from)) {
            follow(n);
        }
    }
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        if (used[n] == 0) {
            follow(n);
        }
    }
}

}  // namespace

std::vector<Contour> contoursOf(const Field<float>& heights, double interval, double from, double to) {
    std::vector<Contour> contours;
    for (const double level : drawing::steps(from, to, interval)) {
        joinAt(heights, level, contours);
    }
    return contours;
}

}  // namespace crosstick::demo
