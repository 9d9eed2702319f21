#include "core/drawing/hatch.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace crosstick::drawing {
namespace {

/// Where a level line crosses closed rings, from left to right; even-odd in pairs.
std::vector<double> crossingsAt(const Points& ring, double y) {
    std::vector<double> xs;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Point b = ring[(n + 1) % ring.size()];
        if ((a.y > y) != (b.y > y)) {
            xs.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
        }
    }
    std::sort(xs.begin(), xs.end());
    return xs;
}

/// The part of a level line that lies nearer to an edge than the inset.
void cutNearEdges(std::vector<Stretch>& parts, const Points& ring, double y, double inset) {
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Point b = ring[(n + 1) % ring.size()];
        if (std::min(a.y, b.y) > y + inset || std::max(a.y, b.y) < y - inset) {
            continue;
        }
        // The edge as a box of twice the inset's width: where the level line runs inside it.
        const Vector u = unit(b - a);
        const Vector out = leftOf(u) * inset;
        const Points around{a + out - u * inset, b + out + u * inset, b - out + u * inset, a - out - u * inset};
        const std::vector<double> xs = crossingsAt(around, y);
        for (std::size_t k = 0; k + 1 < xs.size(); k += 2) {
            parts = without(parts, {{xs[k], xs[k + 1]}});
        }
    }
}

void cutBoxes(std::vector<Stretch>& parts, const std::vector<Points>& boxes, double y) {
    for (const Points& box : boxes) {
        const std::vector<double> xs = crossingsAt(box, y);
        if (xs.size() >= 2) {
            parts = without(parts, {{xs.front(), xs.back()}});
        }
    }
}

/// Into a frame in which the hatching runs level, and back.
struct Turned {
    double cosine, sine;
    [[nodiscard]] Point there(Point p) const { return {p.x * cosine - p.y * sine, p.x * sine + p.y * cosine}; }
    [[nodiscard]] Point back(Point p) const { return {p.x * cosine + p.y * sine, -p.x * sine + p.y * cosine}; }
};

}  // namespace

std::vector<Polyline> hatched(const Points& ring, const Hatching& hatching, const std::vector<TurnedBox>& left) {
    const double turn = radians(hatching.angle).value();
    const Turned turned{std::cos(turn), std::sin(turn)};
    Points level;
    double top = std::numeric_limits<double>::infinity();
    double bottom = -top;
    for (const Point p : ring) {
        level.push_back(turned.there(p));
        top = std::min(top, level.back().y);
        bottom = std::max(bottom, level.back().y);
    }
    std::vector<Points> boxes;
    for (const TurnedBox& box : left) {
        Points corners;
        for (const Point corner : box.corners()) {
            corners.push_back(turned.there(corner));
        }
        boxes.push_back(std::move(corners));
    }
    // A narrow area would fall between two lines: its phase is shifted so that one passes its middle.
    const bool isNarrow = bottom - top < 2 * hatching.pitch;
    const double phase = isNarrow ? std::fmod((top + bottom) / 2, hatching.pitch) : 0;
    std::vector<Polyline> lines;
    constexpr int kMost = 4000;  // a film of 20 m: bounds the time on an area without end
    int count = 0;
    for (double k = std::ceil((top - phase) / hatching.pitch); k * hatching.pitch + phase < bottom && count < kMost;
         ++k, ++count) {
        const double y = k * hatching.pitch + phase;
        const std::vector<double> xs = crossingsAt(level, y);
        std::vector<Stretch> parts;
        for (std::size_t n = 0; n + 1 < xs.size(); n += 2) {
            parts.push_back({xs[n], xs[n + 1]});
        }
        cutNearEdges(parts, level, y, hatching.inset);
        cutBoxes(parts, boxes, y);
        for (const Stretch& part : parts) {
            if (part.length() > 0.3) {
                lines.push_back({{turned.back({part.from, y}), turned.back({part.to, y})}, false});
            }
        }
    }
    return lines;
}

std::vector<Polyline> combed(const Points& ring, double tick, double pitch) {
    constexpr double kCorner = 30 * std::numbers::pi / 180;
    constexpr double kFromCorner = 2.2;
    double twice = 0;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        twice += cross(ring[n], ring[(n + 1) % ring.size()]);
    }
    const double inward = twice > 0 ? -1 : 1;  // clockwise as seen: left of travel is outside
    Points from = ring;
    const auto isCorner = [&from](std::size_t n) {
        const std::size_t count = from.size();
        const Vector before = from[n] - from[(n + count - 1) % count];
        return std::abs(drawing::turn(before, from[(n + 1) % count] - from[n])) > kCorner;
    };
    // Begun at a corner, so that no stretch runs over the seam.
    for (std::size_t n = 0; n < from.size(); ++n) {
        if (isCorner(n)) {
            std::rotate(from.begin(), from.begin() + static_cast<std::ptrdiff_t>(n), from.end());
            break;
        }
    }
    const Path path(from, true);
    std::vector<double> corners;
    for (std::size_t n = 0; n < from.size(); ++n) {
        if (isCorner(n)) {
            corners.push_back(path.position(n));
        }
    }
    std::vector<double> places;
    if (corners.empty()) {
        const auto count = std::max(1L, std::lround(path.length() / pitch));
        for (long k = 0; k < count; ++k) {
            places.push_back((static_cast<double>(k) + 0.5) * path.length() / static_cast<double>(count));
        }
    }
    for (std::size_t n = 0; n < corners.size(); ++n) {
        const double end = n + 1 < corners.size() ? corners[n + 1] : path.length();
        const double length = end - corners[n];
        if (length < 2) {
            continue;
        }
        if (length < 5.4) {
            places.push_back(corners[n] + length / 2);
            continue;
        }
        const double room = length - 2 * kFromCorner;
        const auto gaps = std::max(1L, std::lround(room / pitch));
        for (long k = 0; k <= gaps; ++k) {
            places.push_back(corners[n] + kFromCorner + room * static_cast<double>(k) / static_cast<double>(gaps));
        }
    }
    std::vector<Polyline> ticks;
    for (const double s : places) {
        const Point foot = path.at(s);
        ticks.push_back({{foot, foot + leftOf(path.chord(s, 0.5)) * (inward * tick)}, false});
    }
    return ticks;
}

}  // namespace crosstick::drawing
