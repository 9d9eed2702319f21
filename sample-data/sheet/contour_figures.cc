#include "sample-data/sheet/contour_figures.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "sample-data/sheet/course.h"

namespace crosstick::demo {
namespace {

constexpr double kIndexEvery = 50;
constexpr double kFigures = 1.4;
constexpr double kApart = 90;     // millimetres along one contour
constexpr double kShortest = 28;  // a shorter contour carries no figure
constexpr double kStep = 1.5;

struct Place {
    Along along;
    double distance;
    double cost;
};

/// Turning of a line within 3 mm on either side, degrees.
double bending(const Course& course, double distance) {
    double sum = 0;
    for (const double d : drawing::steps(-3, 2, 1)) {
        sum += std::abs(std::remainder(course.at(distance + d + 1).angle - course.at(distance + d).angle, 360.0));
    }
    return sum;
}

Spot spotAt(QPointF paper) {
    return {SheetPaper::kCorner.east + paper.x() * SheetPaper::kMetresPerMm,
            SheetPaper::kCorner.north - paper.y() * SheetPaper::kMetresPerMm};
}

/// Rise over run.
double steepness(const Field<float>& heights, QPointF paper) {
    const Spot at = spotAt(paper);
    const double dx = sampled(heights, at + Spot{15, 0}) - sampled(heights, at - Spot{15, 0});
    const double dy = sampled(heights, at + Spot{0, 15}) - sampled(heights, at - Spot{0, 15});
    return std::hypot(dx, dy) / 30;
}

QTransform turnedTo(const Along& place) {
    return QTransform().translate(place.at.x(), place.at.y()).rotate(place.angle + 180);
}

bool isClear(const Canvas& canvas, const Mask& room, const QPainterPath& gap) {
    const QRectF box = gap.boundingRect();
    if (!SheetPaper::neatLine().adjusted(3, 3, -3, -3).contains(box)) {
        return false;
    }
    if (room.share(box, 0) > 0) {
        return false;
    }
    return std::none_of(canvas.taken.begin(), canvas.taken.end(),
                        [&](const QRectF& other) { return other.intersects(box); });
}

class Placer {
  public:
    Placer(const Canvas& canvas, const Field<float>& heights, const Mask& room)
        : canvas_(canvas), heights_(heights), room_(room) {}

    void place(const Contour& contour) {
        const Course course(pathOf(contour.line, contour.closed));
        if (course.length() < kShortest) {
            return;
        }
        const QString text = QString::number(static_cast<int>(contour.height));
        const double width = canvas_.letters.width(text, Cut::Regular, kFigures);
        QPainterPath gap;
        gap.addRect(QRectF(-width / 2 - 0.5, -kFigures / 2 - 0.35, width + 1, kFigures + 0.7));
        std::vector<Place> places;
        for (const double d : drawing::steps(5, course.length() - 5, kStep)) {
            const Along along{course.at(d).at, chordAngle(course, d, width)};
            if (isClear(canvas_, room_, turnedTo(along).map(gap))) {
                places.push_back({along, d, costOf(course, along, d)});
            }
        }
        std::stable_sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.cost < b.cost; });
        take(course, places, text, gap);
    }
    [[nodiscard]] std::vector<ContourFigures> figures() && { return std::move(figures_); }

  private:
    const Canvas& canvas_;
    const Field<float>& heights_;
    const Mask& room_;
    std::vector<QPointF> standing_;
    std::vector<ContourFigures> figures_;

    static double chordAngle(const Course& course, double d, double width) {
        const QPointF chord = course.at(d + width / 2).at - course.at(d - width / 2).at;
        return std::atan2(chord.y(), chord.x()) * 180 / std::numbers::pi;
    }

    [[nodiscard]] double costOf(const Course& course, const Along& along, double d) const {
        const double lean = std::abs(std::remainder(along.angle + 180, 360.0));  // 0 upright, 180 on its head
        double cost = bending(course, d) + std::max(0.0, lean - 60) * 0.6;
        cost += std::max(0.0, steepness(heights_, along.at) - 0.25) * 200;
        const bool inColumn = std::any_of(standing_.begin(), standing_.end(), [&](QPointF other) {
            return std::hypot(other.x() - along.at.x(), other.y() - along.at.y()) < 18;
        });
        return inColumn ? cost - 12 : cost;
    }

    void take(const Course& course, const std::vector<Place>& places, const QString& text, const QPainterPath& gap) {
        constexpr double kWorst = 110;
        const auto most = static_cast<std::size_t>(std::max(1.0, course.length() / kApart));
        std::vector<double> used;
        for (const Place& place : places) {
            const bool tooNear = std::any_of(used.begin(), used.end(), [&](double other) {
                return std::abs(other - place.distance) < kApart * 0.7;
            });
            if (used.size() == most || place.cost > kWorst) {
                return;
            }
            if (!tooNear) {
                used.push_back(place.distance);
                stand(place, text, gap);
            }
        }
    }

    void stand(const Place& place, const QString& text, const QPainterPath& gap) {
        const QTransform turn = turnedTo(place.along);
        const double width = canvas_.letters.width(text, Cut::Regular, kFigures);
        const QTransform base = QTransform::fromTranslate(-width / 2, kFigures / 2) * turn;
        figures_.push_back({base.map(canvas_.letters.row(text, Cut::Regular, kFigures)), turn.map(gap)});
        standing_.push_back(place.along.at);
        canvas_.taken.push_back(figures_.back().gap.boundingRect());
    }
};

}  // namespace

bool isIndexContour(double height) {
    return std::fmod(height + 0.5, kIndexEvery) < 1;
}

std::vector<ContourFigures> figuresFor(const Canvas& canvas, const std::vector<Contour>& contours,
                                       const Field<float>& heights, const Mask& room) {
    Placer placer(canvas, heights, room);
    for (const Contour& contour : contours) {
        if (isIndexContour(contour.height)) {
            placer.place(contour);
        }
    }
    return std::move(placer).figures();
}

}  // namespace crosstick::demo
