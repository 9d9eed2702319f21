#include "core/registration/model.h"

#include <cmath>

namespace crosstick::registration {
namespace {

constexpr double kHorizon = 1e-6;

using Numbers = std::array<double, 12>;

Normed similarityAt(const Numbers& n, double x, double y) {
    // y runs down and northing up, so that a sheet lying straight has n[1] of 0 and n[0] above 0.
    return {n[0] * x + n[1] * y + n[2], n[1] * x - n[0] * y + n[3], n[0], n[1], n[1], -n[0]};
}

Normed affineAt(const Numbers& n, double x, double y) {
    return {n[0] + n[1] * x + n[2] * y, n[3] + n[4] * x + n[5] * y, n[1], n[2], n[4], n[5]};
}

Normed projectiveAt(const Numbers& n, double x, double y) {
    Normed at = affineAt(n, x, y);
    const double depth = 1 + n[6] * x + n[7] * y;
    at.east /= depth;
    at.north /= depth;
    return {at.east,
            at.north,
            (n[1] - at.east * n[6]) / depth,
            (n[2] - at.east * n[7]) / depth,
            (n[4] - at.north * n[6]) / depth,
            (n[5] - at.north * n[7]) / depth,
            depth};
}

Normed quadraticAt(const Numbers& n, double x, double y) {
    const auto value = [&](std::size_t k) {
        return n[k] + n[k + 1] * x + n[k + 2] * y + n[k + 3] * x * x + n[k + 4] * x * y + n[k + 5] * y * y;
    };
    const auto byX = [&](std::size_t k) { return n[k + 1] + 2 * n[k + 3] * x + n[k + 4] * y; };
    const auto byY = [&](std::size_t k) { return n[k + 2] + n[k + 4] * x + 2 * n[k + 5] * y; };
    return {value(0), value(6), byX(0), byY(0), byX(6), byY(6)};
}

/// x and y of the step whose slopes make these differences.
PixelPoint solved(double aX, double aY, double bX, double bY, double a, double b) {
    const double area = aX * bY - aY * bX;
    return {(a * bY - b * aY) / area, (b * aX - a * bX) / area};
}

/// Of the model that is left when its bend is straightened: exact for all but the quadratic one.
PixelPoint straightInverse(Kind kind, const Numbers& n, double east, double north) {
    if (kind == Kind::Projective) {
        return solved(n[1] - east * n[6], n[2] - east * n[7], n[4] - north * n[6], n[5] - north * n[7], east - n[0],
                      north - n[3]);
    }
    const Normed at = normedAt(kind, n, 0, 0);
    return solved(at.eastX, at.eastY, at.northX, at.northY, east - at.east, north - at.north);
}

}  // namespace

int parametersOf(Kind kind) {
    constexpr std::array kCounts{4, 6, 8, 12};
    return kCounts[static_cast<std::size_t>(kind)];
}

int fewestMarks(Kind kind) {
    return parametersOf(kind) / 2;
}

PixelPoint PixelStep::pixels(Metres east, Metres north) const {
    return solved(eastPerColumn, eastPerRow, northPerColumn, northPerRow, east.value(), north.value());
}

double PixelStep::metres() const {
    return std::sqrt(std::abs(eastPerColumn * northPerRow - eastPerRow * northPerColumn));
}

Normed normedAt(Kind kind, const Numbers& numbers, double x, double y) {
    switch (kind) {
        case Kind::Similarity:
            return similarityAt(numbers, x, y);
        case Kind::Affine:
            return affineAt(numbers, x, y);
        case Kind::Projective:
            return projectiveAt(numbers, x, y);
        case Kind::Quadratic:
            break;
    }
    return quadraticAt(numbers, x, y);
}

Model::Model(Kind kind, const Norm& norm, const Numbers& numbers) : kind_(kind), norm_(norm), numbers_(numbers) {}

std::optional<geodesy::PlanePoint> Model::place(PixelPoint at) const {
    const Normed normed =
        normedAt(kind_, numbers_, (at.x - norm_.middle.x) / norm_.pixels, (at.y - norm_.middle.y) / norm_.pixels);
    if (!(normed.depth > kHorizon)) {
        return std::nullopt;
    }
    return geodesy::PlanePoint{norm_.place.easting + Metres(normed.east * norm_.metres),
                               norm_.place.northing + Metres(normed.north * norm_.metres)};
}

std::optional<PixelPoint> Model::pixel(geodesy::PlanePoint place) const {
    const double east = (place.easting - norm_.place.easting).value() / norm_.metres;
    const double north = (place.northing - norm_.place.northing).value() / norm_.metres;
    PixelPoint at = straightInverse(kind_, numbers_, east, north);
    constexpr int kMostSteps = 30;
    constexpr double kNear = 1e-9;
    double left = kind_ == Kind::Quadratic ? 1 : 0;
    for (int n = 0; n < kMostSteps && left > kNear; ++n) {
        const Normed here = normedAt(kind_, numbers_, at.x, at.y);
        const PixelPoint step =
            solved(here.eastX, here.eastY, here.northX, here.northY, east - here.east, north - here.north);
        at = {at.x + step.x, at.y + step.y};
        left = std::hypot(step.x, step.y);
    }
    const bool isThere = std::isfinite(at.x) && std::isfinite(at.y) && left <= kNear &&
                         normedAt(kind_, numbers_, at.x, at.y).depth > kHorizon;
    return isThere
               ? std::optional(PixelPoint{norm_.middle.x + at.x * norm_.pixels, norm_.middle.y + at.y * norm_.pixels})
               : std::nullopt;
}

PixelStep Model::stepAt(PixelPoint at) const {
    const Normed normed =
        normedAt(kind_, numbers_, (at.x - norm_.middle.x) / norm_.pixels, (at.y - norm_.middle.y) / norm_.pixels);
    const double k = norm_.metres / norm_.pixels;
    return {normed.eastX * k, normed.eastY * k, normed.northX * k, normed.northY * k};
}

std::optional<plan::Placement> Model::placement() const {
    if (kind_ != Kind::Similarity && kind_ != Kind::Affine) {
        return std::nullopt;
    }
    const PixelStep step = stepAt(norm_.middle);
    return plan::Placement{place({0, 0}).value_or(norm_.place), step.eastPerColumn, step.eastPerRow,
                           step.northPerColumn, step.northPerRow};
}

}  // namespace crosstick::registration
