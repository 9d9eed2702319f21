#include "sample-data/sheet/course.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <QPolygonF>

namespace crosstick::demo {
namespace {

std::vector<QPointF> firstLine(const QPainterPath& path) {
    const auto lines = path.toSubpathPolygons();
    return lines.empty() ? std::vector<QPointF>{} : std::vector<QPointF>(lines.front().begin(), lines.front().end());
}

double between(QPointF a, QPointF b) {
    return std::hypot(b.x() - a.x(), b.y() - a.y());
}

}  // namespace

Course::Course(const QPainterPath& path) : Course(firstLine(path)) {}

Course::Course(std::vector<QPointF> points) : points_(std::move(points)) {
    until_.reserve(points_.size());
    double sum = 0;
    for (std::size_t n = 0; n < points_.size(); ++n) {
        sum += n == 0 ? 0 : between(points_[n - 1], points_[n]);
        until_.push_back(sum);
    }
}

Along Course::at(double distance) const {
    if (points_.size() < 2 || length() <= 0) {
        return {points_.empty() ? QPointF() : points_.front(), 0};
    }
    const double d = std::clamp(distance, 0.0, length());
    const auto found = std::upper_bound(until_.begin() + 1, until_.end() - 1, d);
    auto end = static_cast<std::size_t>(found - until_.begin());
    while (end > 1 && until_[end] <= until_[end - 1]) {  // a point that stands twice at the end
        --end;
    }
    const QPointF a = points_[end - 1];
    const QPointF b = points_[end];
    const double share = (d - until_[end - 1]) / (until_[end] - until_[end - 1]);
    return {a + (b - a) * std::min(share, 1.0), std::atan2(b.y() - a.y(), b.x() - a.x()) * 180 / std::numbers::pi};
}

QPainterPath Course::piece(double from, double to) const {
    from = std::max(from, 0.0);
    to = std::min(to, length());
    if (to <= from) {
        return {};
    }
    QPainterPath path(at(from).at);
    for (std::size_t n = 0; n < points_.size(); ++n) {
        if (until_[n] > from && until_[n] < to) {
            path.lineTo(points_[n]);
        }
    }
    path.lineTo(at(to).at);
    return path;
}

Course Course::reversed() const {
    return Course(std::vector<QPointF>(points_.rbegin(), points_.rend()));
}

Course::Nearest Course::nearest(QPointF place) const {
    Nearest best{0, std::numeric_limits<double>::max()};
    for (std::size_t n = 1; n < points_.size(); ++n) {
        const QPointF along = points_[n] - points_[n - 1];
        const double square = QPointF::dotProduct(along, along);
        const double share =
            square > 0 ? std::clamp(QPointF::dotProduct(place - points_[n - 1], along) / square, 0.0, 1.0) : 0;
        const double away = between(place, points_[n - 1] + along * share);
        if (away < best.away) {
            best = {until_[n - 1] + share * (until_[n] - until_[n - 1]), away};
        }
    }
    return best;
}

}  // namespace crosstick::demo
