#include "ui/table/picture.h"

#include <algorithm>
#include <system_error>

#include <QImageWriter>
#include <QPainter>
#include <QPainterPath>
#include <QSaveFile>

#include "core/film/registration.h"
#include "ui/table/corner_block.h"
#include "ui/table/faults.h"
#include "ui/table/film_painter.h"
#include "ui/table/laid_sheets.h"
#include "ui/table/rim_painter.h"

namespace crosstick::table {
namespace {

constexpr double kMargin = 28;
constexpr double kFigureRoom = 36;   ///< least distance of figures on the rim
constexpr Scale kClosest{2500};      ///< a single point is not looked at from nearer
constexpr int kDotsPerMetre = 3780;  ///< 96 to the inch

plan::SheetPtr firstSheet(const plan::Plan& plan) {
    return plan.sheets().empty() ? nullptr : plan.sheets().front();
}

Metres printedInterval(const plan::Plan& plan) {
    const plan::SheetPtr sheet = firstSheet(plan);
    return film::gridInterval(sheet ? sheet->scale : Scale{});
}

void paintSheetEdge(QPainter& painter, const QPolygonF& edge, const Palette& palette) {
    QPainterPath path;
    path.addPolygon(edge);
    path.closeSubpath();
    painter.strokePath(path, QPen(palette.edge, 2));
}

Result<void> paintGround(QPainter& painter, const Scene& scene, const View& view, const TileSources& tiles,
                         const RimFigures& figures, const press::Faces& faces, const Palette& palette) {
    std::vector<std::pair<LaidSheet, QPolygonF>> open;
    for (LaidSheet& laid : laidSheets(scene.plan)) {
        if (laid.place < tiles.size() && tiles[laid.place] != nullptr) {
            QPolygonF edge = edgeOf(view, laid);
            if (!laid.sheet->asFilm) {
                paintSheetEdge(painter, edge, palette);
            }  // before all of them: where two join no edge is seen
            open.emplace_back(std::move(laid), std::move(edge));
        }
    }
    for (const auto& [laid, edge] : open) {
        painter.save();
        clipTo(painter, edge);
        painter.setOpacity(laid.sheet->asFilm.value_or(1));
        auto painted = paintSheet(painter, view, laid.lie, *tiles[laid.place], Scaling::Smooth);
        painter.restore();
        if (!painted) {
            return painted;
        }
    }
    if (open.empty()) {
        const Area& area = view.area();
        painter.fillRect(QRectF(area.left, area.top, area.width, area.height), palette.sheet);
        paintGrid(painter, view, figures, palette);
    } else {
        paintSeams(painter, view, seamMarks(scene.plan), faces, palette);
    }
    return {};
}

void paintFilms(QPainter& painter, const Scene& scene, const std::vector<FilmInk>& films, const View& view,
                const Wish& wish, const press::Brushes& brushes, const Palette& palette) {
    if (films.empty()) {
        return;
    }
    const bool works = scene.working == films.back().film->id;
    const std::size_t below = works ? films.size() - 1 : films.size();
    painter.setOpacity(works ? std::clamp(wish.below, 0.0, 1.0) : 1);
    painter.drawImage(QPointF(0, 0), flattened(view, films, below, brushes, wish.size, 1));
    painter.setOpacity(1);
    if (works) {
        paintFilm(painter, view, films.back(), brushes);
        const auto& stack = scene.plan.films();
        const auto at = std::find(stack.begin(), stack.end(), films.back().film);
        paintFilmEdge(painter, view, films.back(), static_cast<int>(at - stack.begin()) + 1, palette);
    }
}

}  // namespace

Result<View> viewFor(const Scene& scene, const std::vector<FilmInk>& films, const Wish& wish) {
    const Area area = insideRim(wish.size.width(), wish.size.height());
    std::optional<GridBox> ground = inkedGround(films);
    for (const LaidSheet& laid : ground ? std::vector<LaidSheet>{} : laidSheets(scene.plan)) {
        ground = ground ? ground->joined(groundOf(laid)) : groundOf(laid);
    }
    if (!ground && !wish.centre) {
        return fail(kNothingToSee, {{"plan", scene.plan.heading().name}});
    }
    const GridBox box = ground ? *ground : GridBox{*wish.centre, *wish.centre};
    const View fitted = View::fitting(box, area, kMargin, zoomFor(kClosest));
    return View(area, wish.centre.value_or(fitted.centre()), wish.seen ? zoomFor(*wish.seen) : fitted.zoom());
}

Result<void> paintTable(QPainter& painter, const Scene& scene, const std::vector<FilmInk>& films, const View& view,
                        const Wish& wish, const TileSources& tiles, const press::Faces& faces) {
    const Palette colours = palette(wish.theme);
    const RimFigures figures = rimFigures(view, printedInterval(scene.plan), kFigureRoom);
    const Area& area = view.area();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(QRectF(0, 0, area.right(), area.bottom()), colours.desk);
    painter.save();
    painter.setClipRect(QRectF(area.left, area.top, area.width, area.height));
    auto ground = paintGround(painter, scene, view, tiles, figures, faces, colours);
    if (!ground) {
        painter.restore();
        return ground;
    }
    const press::Brushes brushes{faces, colours.pens, press::Letters::AsOutlines, press::HaloRule::Painted};
    paintFilms(painter, scene, films, view, wish, brushes, colours);
    paintCornerBlock(painter, view, cornerRows(scene.plan, view), faces, colours);
    painter.restore();
    paintRim(painter, view, figures, faces, colours);
    return {};
}

Result<QImage> picture(const Scene& scene, const Wish& wish, const TileSources& tiles, const press::Faces& faces) {
    const auto films = inkFilms(scene);
    if (!films) {
        return tl::unexpected(films.error());
    }
    const auto view = viewFor(scene, *films, wish);
    if (!view) {
        return tl::unexpected(view.error());
    }
    QImage image(wish.size, QImage::Format_RGB32);
    image.setDotsPerMeterX(kDotsPerMetre);
    image.setDotsPerMeterY(kDotsPerMetre);
    QPainter painter(&image);
    const auto painted = paintTable(painter, scene, *films, *view, wish, tiles, faces);
    if (!painted) {
        return tl::unexpected(painted.error());
    }
    return image;
}

Result<void> writePng(const QImage& image, const std::filesystem::path& file) {
    const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    std::error_code ignored;
    if (!std::filesystem::is_directory(folder, ignored)) {
        return fail(kFolderMissing, {{"file", file.string()}, {"folder", folder.string()}});
    }
    QSaveFile out(QString::fromStdString(file.string()));
    const auto refused = [&](const QString& why) {
        return fail(kCannotWrite, {{"file", file.string()}, {"why", why.toStdString()}});
    };
    if (!out.open(QIODevice::WriteOnly)) {
        return refused(out.errorString());
    }
    QImageWriter writer(&out, QByteArrayLiteral("png"));
    if (!writer.write(image)) {
        return refused(out.error() == QFileDevice::NoError ? writer.errorString() : out.errorString());
    }
    return out.commit() ? Result<void>() : Result<void>(refused(out.errorString()));
}

}  // namespace crosstick::table
