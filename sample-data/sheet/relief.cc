#include <cmath>
#include <numbers>

#include "sample-data/ground/curve.h"
#include "sample-data/sheet/contours.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr double kInterval = 10;
constexpr double kIndexEvery = 50;
constexpr double kFigures = 1.4;
constexpr double kBetweenFigures = 70;  // millimetres along an index contour
constexpr double kCliffFrom = 20;       // metres of edge height

bool isIndex(double height) {
    return std::fmod(height + 0.5, kIndexEvery) < 1;
}

/// Turning of a path within a window round a distance, degrees: figures stand where a contour runs straight.
double bending(const QPainterPath& path, double distance) {
    double sum = 0;
    for (double d = -3; d < 3; d += 1) {
        double turn = along(path, distance + d + 1).angle - along(path, distance + d).angle;
        turn = std::remainder(turn, 360.0);
        sum += std::abs(turn);
    }
    return sum;
}

/// Figures in a gap with their feet downhill: the higher ground lies right of the line's direction.
void drawFigures(const Canvas& canvas, const Contour& contour, const QPainterPath& path) {
    const double whole = path.length();
    if (whole < 40) {
        return;
    }
    const QString text = QString::number(static_cast<int>(contour.height));
    const double width = canvas.letters.width(text, Cut::Regular, kFigures);
    const int count = std::max(1, static_cast<int>(whole / kBetweenFigures));
    for (int n = 0; n < count; ++n) {
        double best = whole * (n + 0.5) / count;
        double least = 1e9;
        for (double d = best - 18; d <= best + 18; d += 2) {
            const double bent = d > 6 && d < whole - 6 ? bending(path, d) : 1e9;
            if (bent < least) {
                least = bent;
                best = d;
            }
        }
        const Along place = along(path, best);
        if (least > 40 || !SheetPaper::neatLine().adjusted(4, 4, -4, -4).contains(place.at)) {
            continue;
        }
        const QTransform turn = QTransform()
                                    .translate(place.at.x(), place.at.y())
                                    .rotate(place.angle + 180)
                                    .translate(-width / 2, kFigures / 2);
        const QPainterPath row = turn.map(canvas.letters.row(text, Cut::Regular, kFigures));
        canvas.letter(row, ink::kContour, ink::kLand, 0.45);
        canvas.taken.push_back(row.boundingRect());
    }
}

void drawContours(const Canvas& canvas) {
    const auto contours = contoursOf(canvas.ground.heights, kInterval, kInterval, 450);
    for (const Contour& contour : contours) {
        const QPainterPath path = pathOf(contour.line, contour.closed);
        if (path.length() > 1.5) {
            canvas.stroke(path, ink::kContour, isIndex(contour.height) ? 0.25 : 0.12);
        }
    }
    for (const Contour& contour : contours) {
        if (isIndex(contour.height)) {
            drawFigures(canvas, contour, pathOf(contour.line, contour.closed));
        }
    }
}

/// Strokes down a face, 0.6 apart; `side` turns them to the low side of the line's direction.
void hachures(const Canvas& canvas, const QPainterPath& edge, double side, double shortest, double longest) {
    QPainterPath strokes;
    const double whole = edge.length();
    int n = 0;
    for (double d = 0.3; d < whole; d += 0.6, ++n) {
        const Along place = along(edge, d);
        const double turn = (place.angle + side * 90) * std::numbers::pi / 180;
        const double length = n % 2 == 0 ? longest : shortest;
        strokes.moveTo(place.at);
        strokes.lineTo(place.at + QPointF(std::cos(turn), std::sin(turn)) * length);
    }
    canvas.stroke(edge, ink::kBlack, 0.2);
    canvas.stroke(strokes, ink::kBlack, 0.15);
}

/// Cliffs stand where the shore's edge is 20 m and more; the listed shore runs anticlockwise, the sea on its right.
void drawCliffs(const Canvas& canvas) {
    QPainterPath run;
    std::vector<QPainterPath> runs;
    for (const Peg& peg : canvas.ground.edge) {
        if (peg.height < kCliffFrom) {
            if (run.elementCount() > 1) {
                runs.push_back(run);
            }
            run = QPainterPath();
            continue;
        }
        const QPointF p = SheetPaper::at(peg.at);
        run.elementCount() == 0 ? run.moveTo(p) : run.lineTo(p);
    }
    if (run.elementCount() > 1) {
        runs.push_back(run);
    }
    for (const QPainterPath& cliff : runs) {
        QPainterPathStroker inland;
        hachures(canvas, cliff, -1, 0.8, 1.3);
    }
}

void drawQuarry(const Canvas& canvas, const Json& quarry) {
    const Line ring = lineOf(quarry.at("points"));
    const QPainterPath area = pathOf(ring, true);
    canvas.fill(area, QColor(240, 236, 226));
    QPainterPath face;
    face.moveTo(SheetPaper::at(ring[4]));
    face.lineTo(SheetPaper::at(ring[0]));
    face.lineTo(SheetPaper::at(ring[1]));
    face.lineTo(SheetPaper::at(ring[2]));
    hachures(canvas, face, -1, 0.7, 1.1);
    canvas.dashes(area, ink::kBlack, 0.12, 0.6, 0.5);
    QPainterPath rubble;
    const QRectF box = area.boundingRect();
    for (double y = box.top(); y < box.bottom(); y += 0.75) {
        for (double x = box.left(); x < box.right(); x += 0.75) {
            if (area.contains(QPointF(x, y))) {
                rubble.addEllipse(QPointF(x, y), 0.09, 0.09);
            }
        }
    }
    canvas.fill(rubble, ink::kScree);
}

}  // namespace

void drawRelief(const Canvas& canvas, const Json& cover) {
    drawContours(canvas);
    drawCliffs(canvas);
    drawQuarry(canvas, cover.at("quarry"));
}

}  // namespace crosstick::demo
