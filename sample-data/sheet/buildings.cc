#include <cmath>
#include <numbers>

#include "sample-data/ground/noise.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr std::uint64_t kHouses = 61;

/// Direction of the nearest of some ways, degrees clockwise on the paper.
double nearestWay(const std::vector<Course>& ways, QPointF at) {
    double away = 1e9;
    double angle = 0;
    for (const Course& way : ways) {
        const Course::Nearest nearest = way.nearest(at);
        if (nearest.away < away) {
            away = nearest.away;
            angle = way.at(nearest.distance).angle;
        }
    }
    return angle;
}

std::vector<Course> waysOf(const Json& cover) {
    std::vector<Course> ways;
    for (const char* kind : {"roads", "tracks"}) {
        for (const Json& way : cover.at(kind)) {
            ways.emplace_back(pathOf(curved(lineOf(way.at("points")))));
        }
    }
    return ways;
}

/// 8 x 12 m to 15 x 30 m, at least 0.5 x 0.7 mm on paper, turned along the nearest way.
void drawBuilding(const Canvas& canvas, const std::vector<Course>& ways, const Json& spot, const Json& kind) {
    const Spot place = spotOf(spot);
    const bool isWorks = kind == "works";
    const QPointF at = SheetPaper::at(place);
    const double size = chance(kHouses, static_cast<std::int64_t>(place.east), static_cast<std::int64_t>(place.north));
    const double wide = (isWorks ? 22 : 12 + size * 8) / SheetPaper::kMetresPerMm;
    const double deep = (isWorks ? 15 : 8 + size * 4) / SheetPaper::kMetresPerMm;
    canvas.painter.save();
    canvas.painter.translate(at);
    canvas.painter.rotate(nearestWay(ways, at));
    const QRectF house(-std::max(0.7, wide) / 2, -std::max(0.5, deep) / 2, std::max(0.7, wide), std::max(0.5, deep));
    canvas.painter.fillRect(house, ink::kBuilding);
    QPainterPath edge;
    edge.addRect(house);
    canvas.stroke(edge, ink::kBlack, 0.1);
    canvas.painter.restore();
    canvas.taken.push_back(QRectF(at - QPointF(0.6, 0.6), QSizeF(1.2, 1.2)));
}

void cross(const Canvas& canvas, QPointF at, double size) {
    QPainterPath path(at - QPointF(0, size));
    path.lineTo(at);
    path.moveTo(at - QPointF(size / 3, size * 2 / 3));
    path.lineTo(at - QPointF(-size / 3, size * 2 / 3));
    canvas.stroke(path, ink::kBlack, 0.16);
}

void drawLandmarks(const Canvas& canvas, const Json& cover) {
    const QPointF chapel = SheetPaper::at(spotOf(cover.at("chapel")));
    cross(canvas, chapel - QPointF(0, 0.35), 1.2);
    const QPointF light = SheetPaper::at(spotOf(cover.at("light_house")));
    QPainterPath rays;
    for (int n = 0; n < 8; ++n) {
        const double turn = n * std::numbers::pi / 4;
        rays.moveTo(light + QPointF(std::cos(turn), std::sin(turn)) * 0.5);
        rays.lineTo(light + QPointF(std::cos(turn), std::sin(turn)) * 1.1);
    }
    rays.addEllipse(light, 0.4, 0.4);
    canvas.stroke(rays, ink::kBlack, 0.14);
    // The mast stands beside the pillar, nearer than a sign is wide: it is drawn on the pillar's triangle.
    const QPointF mast = SheetPaper::at(spotOf(cover.at("mast"))) - QPointF(0, 1.35);
    QPainterPath pole(mast);
    pole.lineTo(mast - QPointF(0, 1.6));
    pole.moveTo(mast - QPointF(0.35, 1.2));
    pole.lineTo(mast - QPointF(-0.35, 1.2));
    canvas.stroke(pole, ink::kBlack, 0.14);
    QPainterPath rings;
    const double fold = cover.at("sheepfold_diameter").get<double>() / 2 / SheetPaper::kMetresPerMm;
    for (const Json& place : cover.at("sheepfolds")) {
        rings.addEllipse(SheetPaper::at(spotOf(place)), std::max(0.45, fold), std::max(0.45, fold));
    }
    canvas.stroke(rings, ink::kBlack, 0.15);
    for (const Json& place : cover.at("cairns")) {
        const QPointF p = SheetPaper::at(spotOf(place));
        QPainterPath cairn(p + QPointF(-0.45, 0.3));
        cairn.lineTo(p + QPointF(0, -0.5));
        cairn.lineTo(p + QPointF(0.45, 0.3));
        cairn.closeSubpath();
        canvas.fill(cairn, ink::kBlack);
    }
    const QPointF chimney = SheetPaper::at(spotOf(cover.at("chimney")));
    QPainterPath stack;
    stack.addEllipse(chimney, 0.35, 0.35);
    canvas.fill(stack, ink::kPaper);
    canvas.stroke(stack, ink::kBlack, 0.16);
    canvas.painter.fillRect(QRectF(chimney - QPointF(0.1, 0.1), QSizeF(0.2, 0.2)), ink::kBlack);
}

}  // namespace

void drawBuildings(const Canvas& canvas, const Json& cover) {
    const std::vector<Course> ways = waysOf(cover);
    for (const Json& place : cover.at("buildings")) {
        for (const Json& spot : place.at("points")) {
            drawBuilding(canvas, ways, spot, place.at("kind"));
        }
    }
    drawLandmarks(canvas, cover);
}

void drawSpotHeights(const Canvas& canvas, const Island& island) {
    for (const SpotHeight& spot : island.spotHeights) {
        const QPointF at = SheetPaper::at(spot.peg.at);
        const bool isLake = spot.kind == SpotKind::Lake;
        const QColor colour = isLake ? ink::kWaterName : ink::kBlack;
        if (spot.kind == SpotKind::Pillar) {
            QPainterPath pillar(at + QPointF(0, -0.95));
            pillar.lineTo(at + QPointF(0.82, 0.48));
            pillar.lineTo(at + QPointF(-0.82, 0.48));
            pillar.closeSubpath();
            canvas.stroke(pillar, ink::kBlack, 0.16);
        }
        QPainterPath dot;
        dot.addEllipse(at, 0.2, 0.2);
        canvas.fill(dot, colour);
        const QString figures = QString::number(static_cast<int>(std::lround(spot.peg.height)));
        const double left = spot.kind == SpotKind::Pillar ? 1.1 : 0.6;
        const QPainterPath row = canvas.letters.row(figures, Cut::Regular, 1.6).translated(at + QPointF(left, 0.8));
        canvas.letter(row, colour);
        canvas.taken.push_back(row.boundingRect().united(QRectF(at - QPointF(1, 1), QSizeF(2, 2))));
    }
}

}  // namespace crosstick::demo
