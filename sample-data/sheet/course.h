#pragma once

#include <vector>

#include <QPainterPath>

#include "sample-data/place.h"

namespace crosstick::demo {

/// Point and direction at a distance along a line.
struct Along {
    QPointF at;    ///< millimetres of paper
    double angle;  ///< degrees, as QPainter turns: clockwise
};

/// A line on the paper with a table of its lengths, so that a place along it is found by halving. Millimetres; curves
/// are taken as the straight pieces QPainterPath gives them.
class Course {
  public:
    /// The first line of a path. A closed one ends where it began.
    explicit Course(const QPainterPath& path);
    explicit Course(std::vector<QPointF> points);

    [[nodiscard]] double length() const { return until_.empty() ? 0 : until_.back(); }
    [[nodiscard]] const std::vector<QPointF>& points() const { return points_; }
    /// Beyond an end: the end. A line without length has the direction 0.
    [[nodiscard]] Along at(double distance) const;
    /// The part between two distances; empty where there is none.
    [[nodiscard]] QPainterPath piece(double from, double to) const;
    [[nodiscard]] Course reversed() const;
    struct Nearest {
        double distance;  ///< along the line
        double away;
    };
    /// Where the line passes nearest to a place.
    [[nodiscard]] Nearest nearest(QPointF place) const;

  private:
    std::vector<QPointF> points_;
    std::vector<double> until_;  ///< length from the beginning to each point
};

}  // namespace crosstick::demo
