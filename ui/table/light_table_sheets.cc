// The plan's map sheets as they lie on the table.
#include <algorithm>

#include <QPainter>

#include "ui/table/light_table.h"
#include "ui/table/overlay.h"
#include "ui/table/rim_painter.h"

namespace crosstick::table {

void LightTable::renewSheet() {
    laid_ = work_.isOpen() ? laidSheets(work_.plan()) : std::vector<LaidSheet>{};
    seams_ = work_.isOpen() ? seamMarks(work_.plan()) : std::vector<SeamMark>{};
    layTiles();
    if (isVisible()) {  // their tiles are read while the rest of the window is painted
        for (const LaidSheet& laid : laid_) {
            tiles_.foresee(laid.place, view_, laid.lie);
        }
    }
    ground_.forget();
    pannedTable_.forget();
    zoomedTable_.forget();
    update();
}

/// What there is of each sheet: our copy, or the whole at a glance while the copy is made.
void LightTable::layTiles() {
    std::vector<SheetInk> inks;
    if (work_.isOpen()) {
        for (const plan::SheetPtr& sheet : work_.plan().sheets()) {
            const work::SheetGround* ground = work_.sheetGrounds().of(sheet->id);
            const RasterSize size{sheet->columns, sheet->rows};
            const Ground kind = sheet->asFilm ? Ground::Film : Ground::Map;
            inks.push_back(ground != nullptr ? SheetInk{ground->copy(), ground->glance(), size, kind}
                                             : SheetInk{{}, nullptr, size, kind});
        }
    }
    tiles_.lay(std::move(inks), theme_);
}

void LightTable::showCollar(std::optional<plan::SheetId> sheet) {
    whole_ = sheet;
    ground_.forget();
    pannedTable_.forget();
    zoomedTable_.forget();
    update();
}

/// Sheets and desk round them, or the bare grid, inside a part of the table.
void LightTable::paintGround(QPainter& painter, const QRectF& part, Scaling scaling, const RimFigures& figures,
                             const Palette& colours) {
    painter.fillRect(part, colours.desk);
    std::vector<std::pair<const LaidSheet*, QPolygonF>> open;
    for (const LaidSheet& laid : laid_) {
        if (tiles_.isOpen(laid.place)) {
            open.emplace_back(&laid,
                              edgeOf(view_, laid, whole_ == laid.sheet->id ? Collar::Shown : Collar::AsThePlanSays));
        }
    }
    painter.setPen(QPen(colours.edge, 2));
    painter.setBrush(colours.sheet);
    for (const auto& [laid, edge] : open) {  // all of them first: where two sheets join no edge is seen
        if (!laid->sheet->asFilm) {
            painter.drawPolygon(edge);
        }
    }
    for (const auto& [laid, edge] : open) {
        painter.save();
        clipTo(painter, edge);  // a coarser tile that stands in reaches a little beyond
        painter.setOpacity(laid->sheet->asFilm.value_or(1));
        tiles_.paint(painter, laid->place, view_, laid->lie, part, scaling);
        painter.restore();
    }
    if (open.empty()) {
        painter.fillRect(part, colours.sheet);
        paintGrid(painter, view_, figures, colours);
    } else {
        paintSeams(painter, view_, seams_, *faces_, colours);
    }
}

/// A bare grid might be all there is: while the first sheet is read, it says that more is to come.
void LightTable::paintComing(QPainter& painter, const Palette& colours) const {
    const bool isSeen =
        std::any_of(laid_.begin(), laid_.end(), [this](const LaidSheet& laid) { return tiles_.isOpen(laid.place); });
    if (!isSeen && !laid_.empty() && work_.sheetGrounds().isReading()) {
        const plan::Sheet& sheet = *laid_.front().sheet;
        const std::string name =
            sheet.name.empty() ? std::filesystem::path(sheet.path).filename().string() : sheet.name;
        paintSentence(painter,
                      tr("%1 is coming. Its grid is here already.").arg(QString::fromStdString(name)).toStdString(),
                      view_, *faces_, colours);
    }
}

/// Where the tiles lie that came since the last frame.
std::vector<QRectF> LightTable::takeArrived() {
    std::vector<QRectF> parts;
    parts.reserve(arrived_.size());
    for (const SheetTile tile : arrived_) {
        const auto laid =
            std::find_if(laid_.begin(), laid_.end(), [tile](const LaidSheet& one) { return one.place == tile.sheet; });
        if (laid != laid_.end()) {
            parts.push_back(tileOnTable(view_, laid->lie, tile.key).mapRect(QRectF(0, 0, kTile, kTile)));
        }
    }
    arrived_.clear();
    return parts;
}

}  // namespace crosstick::table
