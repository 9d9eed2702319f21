#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

QPainterPath wayPath(const Json& way) {
    return pathOf(curved(lineOf(way.at("points"))));
}

void drawPowerLine(const Canvas& canvas, const Json& power) {
    const QPainterPath line = pathOf(lineOf(power.at("poles")));
    canvas.stroke(line, ink::kBlack, 0.1);
    QPainterPath ticks;
    const Course course(line);
    for (const double d : drawing::steps(2, course.length(), 4)) {
        const Along place = course.at(d);
        const double turn = (place.angle + 90) * std::numbers::pi / 180;
        const QPointF across(std::cos(turn) * 0.45, std::sin(turn) * 0.45);
        ticks.moveTo(place.at - across);
        ticks.lineTo(place.at + across);
    }
    canvas.stroke(ticks, ink::kBlack, 0.1);
}

/// Two wings across a road.
void drawBridge(const Canvas& canvas, QPointF at, double angle, double half, double span) {
    canvas.painter.save();
    canvas.painter.translate(at);
    canvas.painter.rotate(angle);
    QPainterPath wings;
    for (const double side : {-1.0, 1.0}) {
        wings.moveTo(-span - 0.4, side * (half + 0.4));
        wings.lineTo(-span, side * half);
        wings.lineTo(span, side * half);
        wings.lineTo(span + 0.4, side * (half + 0.4));
    }
    canvas.stroke(wings, ink::kBlack, 0.2);
    canvas.painter.restore();
}

/// Direction of a way where it passes nearest to a place.
double angleAt(const QPainterPath& way, QPointF at) {
    const Course course(way);
    return course.at(course.nearest(at).distance).angle;
}

const Json& named(const Json& list, const Json& name) {
    for (const Json& entry : list) {
        if (entry.at("name") == name) {
            return entry;
        }
    }
    return list.at(0);
}

void drawCrossings(const Canvas& canvas, const Json& cover) {
    for (const Json& bridge : cover.at("bridges")) {
        const QPointF at = SheetPaper::at(spotOf(bridge.at("at")));
        const double angle = angleAt(wayPath(named(cover.at("roads"), bridge.at("on"))), at);
        drawBridge(canvas, at, angle, 0.55, 0.6);
        canvas.taken.push_back(QRectF(at - QPointF(1.2, 1.2), QSizeF(2.4, 2.4)));
    }
    for (const Json& bridge : cover.at("footbridges")) {
        const QPointF at = SheetPaper::at(spotOf(bridge.at("at")));
        drawBridge(canvas, at, angleAt(wayPath(named(cover.at("paths"), bridge.at("on"))), at), 0.3, 0.4);
    }
    for (const Json& culvert : cover.at("culverts")) {
        const QPointF at = SheetPaper::at(spotOf(culvert.at("at")));
        drawBridge(canvas, at, angleAt(wayPath(named(cover.at("tracks"), culvert.at("on"))), at), 0.35, 0.15);
    }
    for (const Json& weir : cover.at("weirs")) {
        const QPointF at = SheetPaper::at(spotOf(weir));
        QPainterPath bar(at - QPointF(0.9, 0.35));
        bar.lineTo(at + QPointF(0.9, 0.35));
        canvas.stroke(bar, ink::kBlack, 0.3);
        canvas.taken.push_back(QRectF(at - QPointF(1.2, 1.2), QSizeF(2.4, 2.4)));
    }
    for (const Json& ford : cover.at("fords")) {
        const QPointF at = SheetPaper::at(spotOf(ford));
        const QPainterPath row =
            canvas.letters.row(QStringLiteral("ford"), Cut::Italic, 1.6).translated(at + QPointF(1.0, 1.4));
        canvas.letter(row, ink::kWaterName);
        canvas.taken.push_back(row.boundingRect());
    }
    QPainterPath stones;
    for (const Json& place : cover.at("stepping_stones")) {
        for (const double d : drawing::steps(-0.6, 0.6, 0.4)) {
            stones.addEllipse(SheetPaper::at(spotOf(place)) + QPointF(d * 0.5, d), 0.12, 0.12);
        }
    }
    canvas.fill(stones, ink::kBlack);
}

}  // namespace

// All casings before all fills, so that junctions open into each other.
void drawWays(const Canvas& canvas, const Json& cover) {
    drawFields(canvas, cover);
    for (const Json& wall : cover.at("walls")) {
        canvas.stroke(pathOf(curved(lineOf(wall))), ink::kBlack, 0.12);
    }
    for (const Json& path : cover.at("paths")) {
        canvas.dashes(wayPath(path), ink::kBlack, 0.18, 1.2, 0.8);
    }
    for (const Json& track : cover.at("tracks")) {
        canvas.dashes(wayPath(track), ink::kBlack, 0.25, 3.0, 0.8);
    }
    for (const Json& road : cover.at("roads")) {
        canvas.stroke(wayPath(road), ink::kBlack, road.at("class") == "A" ? 0.9 : 0.7, Qt::RoundCap);
    }
    for (const char* kind : {"B", "A"}) {
        for (const Json& road : cover.at("roads")) {
            if (road.at("class") == kind) {
                const bool isA = road.at("class") == "A";
                canvas.stroke(wayPath(road), isA ? ink::kRoadA : ink::kRoadB, isA ? 0.6 : 0.45, Qt::RoundCap);
            }
        }
    }
    drawPowerLine(canvas, cover.at("power_line"));
    drawCrossings(canvas, cover);
}

}  // namespace crosstick::demo
