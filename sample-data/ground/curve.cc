#include "sample-data/ground/curve.h"

#include <algorithm>
#include <array>

namespace crosstick::demo {
namespace {

Peg blended(const Peg& a, const Peg& b, double share) {
    return {a.at + (b.at - a.at) * share, a.height + (b.height - a.height) * share};
}

/// Four neighbours and the knots between them.
struct Span {
    std::array<Peg, 4> pegs;
    std::array<double, 4> knots{};
};

Span spanOf(const std::array<Peg, 4>& pegs) {
    Span span{pegs, {}};
    for (std::size_t i = 1; i < 4; ++i) {
        span.knots[i] = span.knots[i - 1] + std::max(std::sqrt(length(pegs[i].at - pegs[i - 1].at)), 1e-6);
    }
    return span;
}

/// Barry and Goldman's pyramid at a share of the middle piece.
Peg at(const Span& span, double share) {
    const auto& t = span.knots;
    const double u = t[1] + (t[2] - t[1]) * share;
    const auto lerp = [&](const Peg& a, const Peg& b, std::size_t from, std::size_t to) {
        return blended(a, b, (u - t[from]) / (t[to] - t[from]));
    };
    const Peg a = lerp(span.pegs[0], span.pegs[1], 0, 1);
    const Peg b = lerp(span.pegs[1], span.pegs[2], 1, 2);
    const Peg c = lerp(span.pegs[2], span.pegs[3], 2, 3);
    return lerp(lerp(a, b, 0, 2), lerp(b, c, 1, 3), 1, 2);
}

/// A neighbour beyond the end of an open line: the end mirrored.
Peg mirrored(const Peg& end, const Peg& inner) {
    return {end.at + (end.at - inner.at), end.height};
}

}  // namespace

PegLine smoothed(const PegLine& pegs, Metres step, Ends ends) {
    const std::size_t count = pegs.size();
    if (count < 2) {
        return pegs;
    }
    const bool closed = ends == Ends::Closed;
    const auto neighbour = [&](std::size_t piece, int offset) -> Peg {
        const auto index = static_cast<std::ptrdiff_t>(piece) + offset;
        if (closed) {
            return pegs[static_cast<std::size_t>(index + static_cast<std::ptrdiff_t>(count)) % count];
        }
        if (index < 0) {
            return mirrored(pegs[0], pegs[1]);
        }
        const auto place = static_cast<std::size_t>(index);
        return place < count ? pegs[place] : mirrored(pegs[count - 1], pegs[count - 2]);
    };
    PegLine curve;
    for (std::size_t piece = 0; piece < (closed ? count : count - 1); ++piece) {
        const Span span = spanOf({neighbour(piece, -1), neighbour(piece, 0), neighbour(piece, 1), neighbour(piece, 2)});
        const auto steps = std::max(1, static_cast<int>(length(span.pegs[2].at - span.pegs[1].at) / step.value()));
        curve.push_back(span.pegs[1]);
        for (int i = 1; i < steps; ++i) {
            Peg next = at(span, static_cast<double>(i) / steps);
            const auto [low, high] = std::minmax(curve.back().height, span.pegs[2].height);
            next.height = std::clamp(next.height, low, high);  // never back towards where it came from
            curve.push_back(next);
        }
    }
    if (!closed) {
        curve.push_back(pegs.back());
    }
    return curve;
}

Line smoothed(const Line& points, Metres step, Ends ends) {
    PegLine pegs;
    pegs.reserve(points.size());
    for (const Spot& point : points) {
        pegs.push_back({point, 0});
    }
    return placesOf(smoothed(pegs, step, ends));
}

}  // namespace crosstick::demo
