#include "symbols/echelons.h"

#include <array>

namespace crosstick::symbols {
namespace {

// Marks by rank, from memory (engraving C2); they shift by one in other armies, so this is the one table of them.
constexpr std::array<Echelon, 9> kEchelons{{{0, "tm", "TM"},
                                            {1, "sqd", "SQD"},
                                            {2, "sec", "SEC"},
                                            {3, "plt", "PLT"},
                                            {4, "coy", "COY"},
                                            {5, "bn", "BN"},
                                            {6, "rgt", "RGT"},
                                            {7, "bde", "BDE"},
                                            {8, "div", "DIV"}}};

int dots(const Echelon& echelon) {
    return echelon.rank >= 1 && echelon.rank <= 3 ? echelon.rank : 0;
}
int bars(const Echelon& echelon) {
    return echelon.rank >= 4 && echelon.rank <= 6 ? echelon.rank - 3 : 0;
}

/// Middles of k marks at a pitch along u.
Points row(Point middle, Vector u, int count, double pitch) {
    Points places;
    for (int n = 0; n < count; ++n) {
        places.push_back(middle + u * (pitch * (n - (count - 1) / 2.0)));
    }
    return places;
}

}  // namespace

std::optional<Echelon> echelonOf(std::string_view word) {
    for (const Echelon& echelon : kEchelons) {
        if (echelon.word == word) {
            return echelon;
        }
    }
    return std::nullopt;
}

double echelonWidth(const Echelon& echelon, double e, double pen) {
    if (const int k = dots(echelon); k > 0) {
        return (k - 1) * 0.87 * e + 0.53 * e;
    }
    if (const int k = bars(echelon); k > 0) {
        return (k - 1) * 0.5 * e + pen;
    }
    return echelon.rank == 0 ? 1.16 * e : (echelon.rank - 7) * 1.15 * e + e;
}

void drawEchelon(Pencil& pencil, const Echelon& echelon, Point middle, Vector u, double e) {
    const Vector up = drawing::leftOf(u);
    for (const Point p : row(middle, u, dots(echelon), 0.87 * e)) {
        pencil.disc(p, 0.53 * e);
    }
    for (const Point p : row(middle, u, bars(echelon), 0.5 * e)) {
        pencil.line({p + up * (e / 2), p - up * (e / 2)});
    }
    if (echelon.rank == 0) {
        pencil.circle(middle, 0.84 * e, pencil.gauge().pen);
        pencil.lines({{{middle - u * (0.58 * e) - up * (0.58 * e), middle + u * (0.58 * e) + up * (0.58 * e)}, false}},
                     0.30);
    }
    for (const Point p : row(middle, u, echelon.rank >= 7 ? echelon.rank - 6 : 0, 1.15 * e)) {
        pencil.line({p + (u + up) * (e / 2), p - (u + up) * (e / 2)});
        pencil.line({p + (u - up) * (e / 2), p - (u - up) * (e / 2)});
    }
}

}  // namespace crosstick::symbols
