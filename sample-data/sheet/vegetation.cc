#include <cmath>

#include "core/drawing/steps.h"
#include "sample-data/ground/noise.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr std::uint64_t kTrees = 31, kTufts = 32, kGrains = 33;

/// Places on a 60-degree net of a pitch inside a path, each moved by up to half of `jitter` pitches, the same every
/// time. From a jitter of 1 on no net is seen.
template <class Draw>
void onNet(const QPainterPath& area, double pitch, double jitter, std::uint64_t seed, Draw&& draw) {
    const QRectF box = area.boundingRect();
    const double rise = pitch * std::sqrt(3.0) / 2;
    const auto firstRow = static_cast<std::int64_t>(std::floor(box.top() / rise));
    const auto lastRow = static_cast<std::int64_t>(std::ceil(box.bottom() / rise));
    for (std::int64_t row = firstRow; row <= lastRow; ++row) {
        const auto firstColumn = static_cast<std::int64_t>(std::floor(box.left() / pitch)) - 1;
        const auto lastColumn = static_cast<std::int64_t>(std::ceil(box.right() / pitch));
        for (std::int64_t column = firstColumn; column <= lastColumn; ++column) {
            const double x =
                (static_cast<double>(column) + (row % 2 == 0 ? 0 : 0.5) + (chance(seed, column, row) - 0.5) * jitter) *
                pitch;
            const double y = (static_cast<double>(row) + (chance(seed + 100, column, row) - 0.5) * jitter) * rise;
            if (area.contains(QPointF(x, y))) {
                draw(QPointF(x, y));
            }
        }
    }
}

void conifer(const Canvas& canvas, QPointF foot) {
    QPainterPath tree;
    tree.moveTo(foot.x() - 0.38, foot.y());
    tree.lineTo(foot.x(), foot.y() - 1.0);
    tree.lineTo(foot.x() + 0.38, foot.y());
    tree.closeSubpath();
    tree.moveTo(foot);
    tree.lineTo(foot.x(), foot.y() + 0.2);
    canvas.stroke(tree, ink::kTree, 0.12);
}

void broadleaf(const Canvas& canvas, QPointF at) {
    QPainterPath tree;
    tree.addEllipse(at, 0.45, 0.45);
    canvas.stroke(tree, ink::kTree, 0.12);
}

void tuft(const Canvas& canvas, QPointF at, const QColor& colour, double size) {
    QPainterPath tuft;
    for (const double lean : {-0.35, 0.0, 0.35}) {
        tuft.moveTo(at.x() + lean * size * 0.4, at.y());
        tuft.lineTo(at.x() + lean * size, at.y() - size * (lean == 0 ? 0.9 : 0.7));
    }
    canvas.stroke(tuft, colour, 0.1);
}

void drawWoods(const Canvas& canvas, const Json& cover) {
    for (const Json& wood : cover.at("woods")) {
        const QPainterPath area = pathOf(curved(lineOf(wood.at("points")), true), true);
        const bool isConifer = wood.at("kind") == "conifer";
        onNet(area, 3.0, 0.55, kTrees, [&](QPointF p) { isConifer ? conifer(canvas, p) : broadleaf(canvas, p); });
        QPen edge(ink::kWoodName, 0.15, Qt::CustomDashLine, Qt::RoundCap, Qt::RoundJoin);
        edge.setDashPattern({0.1, 4.0});
        canvas.painter.strokePath(area, edge);
    }
}

void drawMarsh(const Canvas& canvas, const QPainterPath& area) {
    const QRectF box = area.boundingRect();
    std::int64_t row = 0;
    for (const double y : drawing::steps(box.top(), box.bottom(), 0.8)) {
        std::int64_t column = 0;
        double x = box.left() + chance(kTufts + 9, row, -1) * 1.8;
        while (x < box.right()) {
            const double reach = 0.7 + 0.8 * chance(kTufts + 9, row, column);
            const double from = x;
            x += reach + 0.5 + 0.5 * chance(kTufts + 10, row, column++);
            if (area.contains(QPointF(from, y)) && area.contains(QPointF(from + reach, y))) {
                QPainterPath dash(QPointF(from, y));
                dash.lineTo(from + reach, y);
                canvas.stroke(dash, ink::kWater, 0.12);
            }
        }
        ++row;
    }
    onNet(area, 2.6, 0.9, kTufts, [&](QPointF p) { tuft(canvas, p, ink::kWater, 0.7); });
}

void dots(const Canvas& canvas, const QPainterPath& area, double pitch, double size, const QColor& colour) {
    QPainterPath grains;
    onNet(area, pitch, 0.8, kGrains, [&](QPointF p) { grains.addEllipse(p, size / 2, size / 2); });
    canvas.fill(grains, colour);
}

QPainterPath band(const Line& line, double width) {
    QPainterPathStroker stroker;
    stroker.setWidth(width);
    stroker.setCapStyle(Qt::RoundCap);
    return stroker.createStroke(pathOf(line));
}

/// Rough pasture: tufts on the open hill above 150 m, in loose patches of many sizes, away from woods.
void drawPasture(const Canvas& canvas, const QPainterPath& woods) {
    const QPainterPath land = pathOf(canvas.ground.shore, true);
    const QPainterPath lake = pathOf(canvas.ground.lake, true);
    std::int64_t count = 0;
    onNet(land, 5.2, 1.6, kTufts + 7, [&](QPointF p) {
        const Spot spot{SheetPaper::kCorner.east + p.x() * SheetPaper::kMetresPerMm,
                        SheetPaper::kCorner.north - p.y() * SheetPaper::kMetresPerMm};
        constexpr double kCalm = 0.06;  // of the waves of several hundred metres that also make the ground rough
        const double patch = roughness(kTufts, spot) * kCalm;
        ++count;
        if (chance(kTufts + 8, count, 0) < 0.22 + patch && canvas.heightAt(spot) > 150 && !woods.contains(p) &&
            !lake.contains(p)) {
            tuft(canvas, p, ink::kTuft, 0.6 + 0.4 * chance(kTufts + 8, count, 1));
        }
    });
}

}  // namespace

void drawVegetation(const Canvas& canvas, const Json& cover) {
    QPainterPath woods;
    for (const Json& wood : cover.at("woods")) {
        woods.addPath(pathOf(curved(lineOf(wood.at("points")), true), true));
    }
    for (const Json& marsh : cover.at("marshes")) {
        woods.addPath(pathOf(curved(lineOf(marsh), true), true));
    }
    drawPasture(canvas, woods);
    drawWoods(canvas, cover);
    for (const Json& marsh : cover.at("marshes")) {
        drawMarsh(canvas, pathOf(curved(lineOf(marsh), true), true));
    }
    for (const Json& sand : cover.at("sands")) {
        dots(canvas, band(lineOf(sand.at("points")), sand.at("width").get<double>() / SheetPaper::kMetresPerMm), 0.55,
             0.15, ink::kSand);
    }
    for (const Json& scree : cover.at("screes")) {
        dots(canvas, pathOf(curved(lineOf(scree), true), true), 0.7, 0.22, ink::kScree);
    }
    const Json& boulders = cover.at("boulders");
    QPainterPath field;
    const double radius = boulders.at("diameter").get<double>() / 2 / SheetPaper::kMetresPerMm;
    field.addEllipse(SheetPaper::at(spotOf(boulders.at("at"))), radius, radius);
    dots(canvas, field, 0.6, 0.28, ink::kBlack);
}

}  // namespace crosstick::demo
