#include "core/drawing/path.h"

#include <algorithm>
#include <cmath>

namespace crosstick::drawing {
namespace {

constexpr double kOnePoint = 0.05;
constexpr double kMiterMost = 2.85;

}  // namespace

double length(Vector v) {
    return std::hypot(v.x, v.y);
}
Vector unit(Vector v) {
    const double size = length(v);
    return size > 0 ? v * (1 / size) : Vector{0, 0};
}
double cross(Vector a, Vector b) {
    return a.x * b.y - a.y * b.x;
}
double dot(Vector a, Vector b) {
    return a.x * b.x + a.y * b.y;
}
double turn(Vector from, Vector to) {
    return std::atan2(cross(from, to), dot(from, to));
}
bool isFinite(Point p) {
    return std::isfinite(p.x) && std::isfinite(p.y);
}

Points cleaned(std::span<const Point> points) {
    Points kept;
    for (const Point p : points) {
        if (isFinite(p) && (kept.empty() || length(p - kept.back()) >= kOnePoint)) {
            kept.push_back(p);
        }
    }
    return kept;
}

Path::Path(Points points, bool closed) : points_(std::move(points)), closed_(closed) {
    if (closed_ && points_.size() > 1 && points_.front() != points_.back()) {
        points_.push_back(points_.front());
    }
    double s = 0;
    for (std::size_t n = 0; n < points_.size(); ++n) {
        s += n == 0 ? 0 : drawing::length(points_[n] - points_[n - 1]);
        at_.push_back(s);
    }
}

Point Path::at(double s) const {
    if (points_.empty()) {
        return {};
    }
    if (s <= 0) {
        return points_.front();
    }
    if (s >= length()) {
        return points_.back();
    }
    const auto next = static_cast<std::size_t>(std::upper_bound(at_.begin(), at_.end(), s) - at_.begin());
    const double share = (s - at_[next - 1]) / (at_[next] - at_[next - 1]);
    return points_[next - 1] + (points_[next] - points_[next - 1]) * share;
}

Vector Path::chord(double s, double k) const {
    return unit(at(s + k / 2) - at(s - k / 2));
}

Points Path::between(double s, double e) const {
    Points piece{at(s)};
    for (std::size_t n = 0; n < points_.size(); ++n) {
        if (at_[n] > s + 1e-9 && at_[n] < e - 1e-9) {
            piece.push_back(points_[n]);
        }
    }
    piece.push_back(at(e));
    return piece;
}

double Path::turning(double s, double e) const {
    double sum = 0;
    for (std::size_t n = 1; n + 1 < points_.size(); ++n) {
        if (at_[n] > s && at_[n] < e) {
            sum += std::abs(turn(points_[n] - points_[n - 1], points_[n + 1] - points_[n]));
        }
    }
    return sum;
}

namespace {

/// Liang and Barsky: the part of a segment inside a box as shares of it; nothing where it misses.
std::optional<Stretch> segmentInside(Point a, Point b, const Box& box) {
    double from = 0;
    double to = 1;
    const auto cut = [&](double start, double delta, double low, double high) {
        if (delta == 0) {
            return start >= low && start <= high;
        }
        double in = (low - start) / delta;
        double out = (high - start) / delta;
        if (in > out) {
            std::swap(in, out);
        }
        from = std::max(from, in);
        to = std::min(to, out);
        return from < to;
    };
    return cut(a.x, b.x - a.x, box.left, box.right) && cut(a.y, b.y - a.y, box.top, box.bottom)
               ? std::optional(Stretch{from, to})
               : std::nullopt;
}

}  // namespace

std::vector<Stretch> inside(const Path& path, const Box& box) {
    std::vector<Stretch> found;
    const Points& points = path.points();
    for (std::size_t n = 1; n < points.size(); ++n) {
        const auto part = segmentInside(points[n - 1], points[n], box);
        if (!part) {
            continue;
        }
        const double start = path.position(n - 1);
        const double span = path.position(n) - start;
        const Stretch stretch{start + part->from * span, start + part->to * span};
        if (!found.empty() && stretch.from - found.back().to < 1e-9) {
            found.back().to = stretch.to;
        } else {
            found.push_back(stretch);
        }
    }
    return found;
}

std::vector<Stretch> without(const std::vector<Stretch>& stretches, const std::vector<Stretch>& gaps) {
    std::vector<Stretch> left = stretches;
    for (const Stretch& gap : gaps) {
        std::vector<Stretch> next;
        for (const Stretch& piece : left) {
            if (gap.to <= piece.from || gap.from >= piece.to) {
                next.push_back(piece);
                continue;
            }
            next.push_back({piece.from, gap.from});
            next.push_back({gap.to, piece.to});
        }
        left = std::move(next);
    }
    std::erase_if(left, [](const Stretch& piece) { return piece.length() < kOnePoint; });
    return left;
}

std::vector<Polyline> clipped(const Polyline& line, const Box& box) {
    bool whole = true;
    for (const Point p : line.points) {
        whole = whole && box.contains(p);
    }
    if (whole) {
        return {line};
    }
    const Path path(line.points, line.closed);
    std::vector<Polyline> parts;
    for (const Stretch& stretch : inside(path, box)) {
        parts.push_back({path.between(stretch.from, stretch.to), false});
    }
    // A ring cut elsewhere stays whole at its first vertex, which would lose its mitre as two ends.
    if (line.closed && parts.size() > 1 && parts.front().points.front() == parts.back().points.back()) {
        Points joined = std::move(parts.back().points);
        joined.insert(joined.end(), parts.front().points.begin() + 1, parts.front().points.end());
        parts.back().points = std::move(joined);
        parts.erase(parts.begin());
    }
    return parts;
}

Points offset(const Points& points, double by, bool closed) {
    const std::size_t count = points.size();
    if (count < 2) {
        return points;
    }
    Points moved;
    moved.reserve(count);
    for (std::size_t n = 0; n < count; ++n) {
        const bool first = n == 0 && !closed;
        const bool last = n + 1 == count && !closed;
        const Vector in = unit(points[n] - points[(n + count - 1) % count]);
        const Vector out = unit(points[(n + 1) % count] - points[n]);
        const Vector a = leftOf(first ? out : in);
        const Vector b = leftOf(last ? in : out);
        const Vector middle = unit(a + b);
        const double cosine = dot(middle, a);
        if (cosine * kMiterMost < 1) {  // too sharp for a mitre
            moved.push_back(points[n] + a * by);
            moved.push_back(points[n] + b * by);
        } else {
            moved.push_back(points[n] + middle * (by / cosine));
        }
    }
    return moved;
}

std::optional<RayEnd> leaves(const Points& ring, Point from, Vector u) {
    constexpr double kParallel = 1e-12;
    constexpr double kSlack = 1e-9;  // a ray through a corner meets one of its two sides at least
    std::optional<RayEnd> end;
    double along = 0;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Vector span = ring[(n + 1) % ring.size()] - ring[n];
        const double across = cross(u, span);
        if (std::abs(across) > kParallel) {
            const double far = cross(ring[n] - from, span) / across;
            const double share = cross(ring[n] - from, u) / across;
            if (share >= -kSlack && share <= 1 + kSlack && far > 0 && (!end || far > end->far)) {
                end = RayEnd{far, along + std::clamp(share, 0.0, 1.0) * length(span)};
            }
        }
        along += length(span);
    }
    return end;
}

}  // namespace crosstick::drawing
