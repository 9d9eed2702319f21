#include <algorithm>
#include <cmath>
#include <numbers>

#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

QPainterPath landPath(const Ground& ground) {
    QPainterPath land = pathOf(ground.shore, true);
    for (const Line& islet : ground.islets) {
        land.addPath(pathOf(islet, true));
    }
    return land;
}

/// Grey-violet where the ground turns away from the north-west light, at most 14 %, only over 8 degrees.
QImage shadingOf(const Field<float>& heights) {
    const Lattice& lattice = heights.lattice;
    QImage shade(lattice.columns, lattice.rows, QImage::Format_ARGB32_Premultiplied);
    shade.fill(Qt::transparent);
    constexpr double kLight = 45 * std::numbers::pi / 180;  // height of the light
    const double east = -std::sin(std::numbers::pi / 4) * std::cos(kLight);
    const double north = std::cos(std::numbers::pi / 4) * std::cos(kLight);
    for (int row = 1; row + 1 < lattice.rows; ++row) {
        auto* line = reinterpret_cast<QRgb*>(shade.scanLine(row));
        for (int column = 1; column + 1 < lattice.columns; ++column) {
            const auto z = [&](int c, int r) { return static_cast<double>(heights(c, r)); };
            const double dx = (z(column + 1, row) - z(column - 1, row)) / (2 * lattice.cell);
            const double dy = (z(column, row - 1) - z(column, row + 1)) / (2 * lattice.cell);
            const double steep = std::atan(std::hypot(dx, dy)) * 180 / std::numbers::pi;
            const double lit = (-dx * east - dy * north + std::sin(kLight)) / std::sqrt(1 + dx * dx + dy * dy);
            const double dark = std::clamp((std::sin(kLight) - lit) * 0.6, 0.0, ink::kShadeMost) *
                                std::clamp((steep - 8) / 6, 0.0, 1.0);
            const int alpha = static_cast<int>(std::lround(dark * 255));
            line[column] = qPremultiply(qRgba(ink::kShade.red(), ink::kShade.green(), ink::kShade.blue(), alpha));
        }
    }
    return shade;
}

}  // namespace

void drawTints(const Canvas& canvas, const Json& cover) {
    const QPainterPath land = landPath(canvas.ground);
    canvas.painter.fillRect(SheetPaper::neatLine(), ink::kSea);
    canvas.painter.save();
    // Three lines off the shore, paler outwards: strokes of falling width and rising strength under the land.
    for (const auto& [width, strength] : {std::pair{5.68, 72}, std::pair{3.28, 105}, std::pair{1.48, 140}}) {
        QColor line = ink::kWater;
        line.setAlpha(strength);
        canvas.stroke(land, line, width);
        canvas.stroke(land, ink::kSea, width - 0.16);
    }
    canvas.fill(land, ink::kLand);
    for (const Json& wood : cover.at("woods")) {
        canvas.fill(pathOf(curved(lineOf(wood.at("points")), true), true), ink::kWood);
    }
    const Field<float> soft = blurred(canvas.ground.heights, 2.5);
    const QImage shade = shadingOf(soft);
    const Lattice& lattice = soft.lattice;
    const Spot half{-lattice.cell / 2, lattice.cell / 2};
    const QRectF where(SheetPaper::at(lattice.first + half),
                       QSizeF(lattice.columns * lattice.cell, lattice.rows * lattice.cell) / SheetPaper::kMetresPerMm);
    canvas.painter.setClipPath(land, Qt::IntersectClip);
    canvas.painter.setRenderHint(QPainter::SmoothPixmapTransform);
    canvas.painter.drawImage(where, shade);
    canvas.fill(pathOf(canvas.ground.lake, true), ink::kSea);
    canvas.painter.restore();
    canvas.land.fill(land, kOnLand);
    canvas.land.fill(pathOf(canvas.ground.lake, true), kOnLake);
    canvas.bare = canvas.picture.copy();
}

}  // namespace crosstick::demo
