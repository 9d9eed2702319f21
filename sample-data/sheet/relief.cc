#include <cmath>

#include "sample-data/ground/noise.h"
#include "sample-data/sheet/cliffs.h"
#include "sample-data/sheet/contour_figures.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr double kLowest = 10;
constexpr double kInterval = 10;
constexpr double kHighest = 450;
constexpr double kShortest = 3;  // millimetres: a smaller ring says nothing
constexpr std::uint64_t kStrokes = 41;
// What a pixel lets through: no line, lines, lines on scree.
constexpr std::uint8_t kPlain = 1, kOnScree = 2;

/// The strip between foot and upper edge.
QPainterPath bandOf(const Cliff& cliff) {
    Line ring = cliff.foot;
    ring.insert(ring.end(), cliff.top.rbegin(), cliff.top.rend());
    return pathOf(ring, true);
}

Mask contourGround(const Canvas& canvas, const Json& cover, const std::vector<Cliff>& cliffs) {
    Mask mask;
    mask.fill(pathOf(canvas.ground.shore, true), kPlain);
    for (const Json& scree : cover.at("screes")) {
        mask.fill(pathOf(curved(lineOf(scree), true), true), kOnScree);
    }
    mask.fill(pathOf(canvas.ground.lake, true), 0);
    mask.fill(pathOf(lineOf(cover.at("quarry").at("points")), true), 0);
    for (const Cliff& cliff : cliffs) {
        QPainterPath band = bandOf(cliff);
        band.setFillRule(Qt::WindingFill);
        mask.fill(band, 0);
    }
    return mask;
}

/// Figures keep off ways, brooks and marshes too.
Mask figureGround(const Canvas& canvas, const Json& cover, Mask mask) {
    const auto keepOff = [&](const Line& line) {
        QPainterPathStroker stroker;
        stroker.setWidth(1.2);
        mask.fill(stroker.createStroke(pathOf(line)), 0);
    };
    for (const char* kind : {"roads", "tracks", "paths"}) {
        for (const Json& way : cover.at(kind)) {
            keepOff(curved(lineOf(way.at("points"))));
        }
    }
    for (const NamedPegs& brook : canvas.ground.brooks) {
        keepOff(placesOf(brook.pegs));
    }
    for (const Json& marsh : cover.at("marshes")) {
        mask.fill(pathOf(curved(lineOf(marsh), true), true), 0);
    }
    return mask;
}

/// Where a line between two places changes from one kind of ground to another.
QPointF changeBetween(const Mask& mask, QPointF from, QPointF to) {
    const int kind = mask.at(from);
    for (int n = 0; n < 6; ++n) {
        const QPointF middle = (from + to) / 2;
        (mask.at(middle) == kind ? from : to) = middle;
    }
    return to;
}

/// A contour, left out where no line may run, in the scree's ink where it crosses scree.
void drawContour(const Canvas& canvas, const Course& course, double width, const Mask& mask) {
    QPainterPath run;
    int kind = 0;
    QPointF before;
    const auto end = [&] {
        if (kind != 0 && run.elementCount() > 1) {
            canvas.stroke(run, kind == kOnScree ? ink::kScree : ink::kContour, width);
        }
        run = QPainterPath();
    };
    for (std::size_t n = 0; n < course.points().size(); ++n) {
        const QPointF here = course.points()[n];
        const int next = mask.at(here);
        if (n == 0) {
            run.moveTo(here);
        } else if (next == kind) {
            run.lineTo(here);
        } else {
            const QPointF change = changeBetween(mask, before, here);
            run.lineTo(change);
            end();
            run.moveTo(change);
            run.lineTo(here);
        }
        kind = next;
        before = here;
    }
    end();
}

void drawContours(const Canvas& canvas, const Json& cover, const Island& island, Mask mask) {
    const Field<float> heights = heightsToDraw(canvas.ground, island.spotHeights);
    const auto contours = contoursOf(heights, kInterval, kLowest, kHighest);
    const auto figures = figuresFor(canvas, contours, heights, figureGround(canvas, cover, mask));
    for (const ContourFigures& one : figures) {
        mask.fill(one.gap, 0);
    }
    for (const Contour& contour : contours) {
        const Course course(pathOf(contour.line, contour.closed));
        if (course.length() > kShortest) {
            drawContour(canvas, course, isIndexContour(contour.height) ? 0.25 : 0.12, mask);
        }
    }
    for (const ContourFigures& one : figures) {
        canvas.fill(one.row, ink::kContour);
    }
}

/// Wedges from an upper edge down to a foot, close together, every second one shorter, none quite like the next.
/// @param top, foot  of as many points
void drawFace(const Canvas& canvas, const Line& top, const Line& foot) {
    constexpr double kApart = 0.42;
    constexpr double kHalfBase = 0.12;
    QPainterPath wedges;
    double next = kApart / 2;
    double done = 0;
    std::int64_t count = 0;
    for (std::size_t n = 1; n < top.size(); ++n) {
        const QPointF a = SheetPaper::at(top[n - 1]);
        const QPointF b = SheetPaper::at(top[n]);
        const QPointF footA = SheetPaper::at(foot[n - 1]);
        const QPointF footB = SheetPaper::at(foot[n]);
        const double step =
            (std::hypot(b.x() - a.x(), b.y() - a.y()) + std::hypot(footB.x() - footA.x(), footB.y() - footA.y())) / 2;
        while (next < done + step) {
            const std::int64_t number = count++;
            const double share = (next - done) / step;
            next += kApart * (0.85 + 0.3 * chance(kStrokes, number, 0));
            const QPointF head = a + (b - a) * share;
            const QPointF down = footA + (footB - footA) * share - head;
            const double reach = std::hypot(down.x(), down.y());
            if (reach < 0.15) {
                continue;
            }
            const QPointF across = QPointF(-down.y(), down.x()) / reach * kHalfBase;
            const double part = (number % 2 == 0 ? 0.97 : 0.62) - 0.1 * chance(kStrokes, number, 1);
            wedges.moveTo(head - across);
            wedges.lineTo(head + across);
            wedges.lineTo(head + down * part + across * 0.2);
            wedges.lineTo(head + down * part - across * 0.2);
            wedges.closeSubpath();
        }
        done += step;
    }
    wedges.setFillRule(Qt::WindingFill);
    canvas.fill(wedges, ink::kBlack);
    canvas.stroke(pathOf(top), ink::kBlack, 0.18);
}

/// A quarry: its face falls inwards, its floor is strewn.
void drawQuarry(const Canvas& canvas, const Json& quarry) {
    const Line ring = lineOf(quarry.at("points"));
    const QPainterPath area = pathOf(ring, true);
    canvas.taken.push_back(area.boundingRect());
    canvas.fill(area, ink::kQuarry);
    QPainterPath rubble;
    const QRectF box = area.boundingRect();
    constexpr double kPitch = 0.7;
    const auto rows = static_cast<std::int64_t>(box.height() / kPitch) + 1;
    const auto columns = static_cast<std::int64_t>(box.width() / kPitch) + 1;
    for (std::int64_t row = 0; row < rows; ++row) {
        for (std::int64_t column = 0; column < columns; ++column) {
            const double x = box.left() + static_cast<double>(column) * kPitch;
            const double y = box.top() + static_cast<double>(row) * kPitch;
            const QPointF grain(x + 0.5 * chance(kStrokes + 1, row, column),
                                y + 0.5 * chance(kStrokes + 2, row, column));
            if (area.contains(grain)) {
                rubble.addEllipse(grain, 0.09, 0.09);
            }
        }
    }
    canvas.fill(rubble, ink::kScree);
    canvas.dashes(area, ink::kBlack, 0.12, 0.6, 0.5);
    const Line top = curved({ring[4], ring[0], ring[1], ring[2]});
    Spot middle;
    for (const Spot& corner : ring) {
        middle = middle + corner * (1.0 / static_cast<double>(ring.size()));
    }
    Line foot;
    for (const Spot& edge : top) {
        const Spot inwards = middle - edge;
        foot.push_back(edge + inwards * std::min(0.45, 26 / std::max(1.0, length(inwards))));
    }
    drawFace(canvas, top, foot);
}

}  // namespace

void drawRelief(const Canvas& canvas, const Json& cover, const Island& island) {
    const auto cliffs = cliffsOf(canvas.ground);
    drawContours(canvas, cover, island, contourGround(canvas, cover, cliffs));
    for (const Cliff& cliff : cliffs) {
        drawFace(canvas, cliff.top, cliff.foot);
    }
    drawQuarry(canvas, cover.at("quarry"));
}

}  // namespace crosstick::demo
