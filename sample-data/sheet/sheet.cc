#include "sample-data/sheet/sheet.h"

#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

std::vector<PlacedName> drawAll(const Canvas& canvas, const Json& cover, const Json& names, const Island& island) {
    canvas.painter.setClipRect(SheetPaper::neatLine());
    drawTints(canvas, cover);
    canvas.painter.setClipRect(SheetPaper::neatLine());
    drawVegetation(canvas, cover);
    drawRelief(canvas, cover, island);
    drawWater(canvas, cover);
    drawWays(canvas, cover);
    drawBuildings(canvas, cover);
    drawSpotHeights(canvas, island);
    auto placed = placeNames(canvas, names, island);
    drawIslandName(canvas, names);
    canvas.painter.setClipping(false);
    drawGrid(canvas);
    drawNames(canvas, placed);
    drawCollar(canvas);
    return placed;
}

/// Places of the plan and spot heights that names and contour figures leave free.
void keepFree(std::vector<QRectF>& taken, const Json& spots, const Island& island) {
    for (const SpotHeight& spot : island.spotHeights) {
        taken.push_back(QRectF(SheetPaper::at(spot.peg.at) - QPointF(1.3, 1.3), QSizeF(6.5, 2.6)));
    }
    for (const Json& spot : spots) {
        taken.push_back(QRectF(SheetPaper::at(spotOf(spot)) - QPointF(1.3, 1.3), QSizeF(2.6, 2.6)));
    }
}

}  // namespace

Result<PaintedSheet> paintSheet(const Ground& ground, const Island& island, const Sources& sources) {
    const auto letters = Letters::open(sources.faces);
    if (!letters) {
        return tl::unexpected(letters.error());
    }
    PaintedSheet sheet{QImage(SheetPaper::kColumns, SheetPaper::kRows, QImage::Format_RGB32), {}};
    sheet.picture.fill(ink::kPaper);
    std::vector<QRectF> taken;
    QImage bare;
    Mask land;
    const auto painted = readData(sources.lists / "cover.json", [&](const Json& cover) {
        return readData(sources.lists / "names.json", [&](const Json& names) {
            QPainter painter(&sheet.picture);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.scale(SheetPaper::kDotsPerMm, SheetPaper::kDotsPerMm);
            keepFree(taken, names.value("keep_free", Json::array()), island);
            const Canvas canvas{painter, *letters, ground, taken, sheet.picture, bare, land};
            sheet.names = drawAll(canvas, cover, names, island);
            return true;
        });
    });
    if (!painted) {
        return tl::unexpected(painted.error());
    }
    if (!*painted) {
        return tl::unexpected(painted->error());
    }
    return sheet;
}

}  // namespace crosstick::demo
