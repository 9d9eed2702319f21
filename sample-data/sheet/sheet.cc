#include "sample-data/sheet/sheet.h"

#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

void drawAll(const Canvas& canvas, const Json& cover, const Json& names, const Island& island) {
    canvas.painter.setClipRect(SheetPaper::neatLine());
    drawTints(canvas, cover);
    canvas.painter.setClipRect(SheetPaper::neatLine());
    drawVegetation(canvas, cover);
    drawRelief(canvas, cover);
    drawWater(canvas, cover);
    drawWays(canvas, cover);
    drawBuildings(canvas, cover);
    drawSpotHeights(canvas, island);
    canvas.painter.setClipping(false);
    drawGrid(canvas);
    canvas.painter.setClipRect(SheetPaper::neatLine());
    drawNames(canvas, names, island);
    canvas.painter.setClipping(false);
    drawCollar(canvas);
}

/// Places of the plan that names leave free.
void keepFree(std::vector<QRectF>& taken, const Json& spots) {
    for (const Json& spot : spots) {
        taken.push_back(QRectF(SheetPaper::at(spotOf(spot)) - QPointF(1.3, 1.3), QSizeF(2.6, 2.6)));
    }
}

}  // namespace

Result<QImage> paintSheet(const Ground& ground, const Island& island, const Sources& sources) {
    const auto letters = Letters::open(sources.faces);
    if (!letters) {
        return tl::unexpected(letters.error());
    }
    QImage image(SheetPaper::kColumns, SheetPaper::kRows, QImage::Format_RGB32);
    image.fill(ink::kPaper);
    std::vector<QRectF> taken;
    const auto painted = readData(sources.lists / "cover.json", [&](const Json& cover) {
        return readData(sources.lists / "names.json", [&](const Json& names) {
            QPainter painter(&image);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.scale(SheetPaper::kDotsPerMm, SheetPaper::kDotsPerMm);
            keepFree(taken, names.value("keep_free", Json::array()));
            drawAll(Canvas{painter, *letters, ground, taken}, cover, names, island);
            return true;
        });
    });
    if (!painted) {
        return tl::unexpected(painted.error());
    }
    if (!*painted) {
        return tl::unexpected(painted->error());
    }
    return image;
}

}  // namespace crosstick::demo
