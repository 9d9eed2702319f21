#include "ui/table/laid_sheets.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include "ui/table/lettering.h"

namespace crosstick::table {
namespace {

constexpr int kBentPieces = 8;  // of an edge that is straight on its own sheet and bent on another's grid
constexpr double kSeamPen = 2;
constexpr double kLetters = 12;

std::string gridOf(const plan::Plan& plan) {
    return plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
}

std::vector<plan::RasterSpot> shownCorners(const plan::Sheet& sheet, Collar collar) {
    const auto all = rasterCorners(sheet);
    return collar == Collar::Shown ? std::vector<plan::RasterSpot>(all.begin(), all.end()) : plan::outline(sheet);
}

}  // namespace

std::vector<LaidSheet> laidSheets(const plan::Plan& plan) {
    std::vector<LaidSheet> laid;
    for (std::size_t n = 0; n < plan.sheets().size(); ++n) {
        if (auto lie = SheetLie::of(*plan.sheets()[n], gridOf(plan))) {
            laid.push_back({n, plan.sheets()[n], std::move(*lie)});
        }
    }
    std::stable_sort(laid.begin(), laid.end(), [](const LaidSheet& a, const LaidSheet& b) {
        if (a.sheet->asFilm.has_value() != b.sheet->asFilm.has_value()) {
            return b.sheet->asFilm.has_value();
        }
        const double first = a.sheet->scale.denominator;
        const double second = b.sheet->scale.denominator;
        return first == second ? a.place > b.place : first > second;
    });
    return laid;
}

GridBox groundOf(const LaidSheet& laid) {
    std::optional<GridBox> box;
    for (const plan::RasterSpot corner : plan::outline(*laid.sheet)) {
        const geodesy::PlanePoint at = laid.lie.onGrid({corner.column, corner.row});
        const GridBox here{at, at};
        box = box ? box->joined(here) : here;
    }
    return box.value_or(GridBox{});
}

QPolygonF edgeOf(const View& view, const LaidSheet& laid, Collar collar) {
    const auto corners = shownCorners(*laid.sheet, collar);
    const int pieces = laid.lie.isStraight() ? 1 : kBentPieces;
    QPolygonF edge;
    for (std::size_t n = 0; n < corners.size(); ++n) {
        const plan::RasterSpot a = corners[n];
        const plan::RasterSpot b = corners[(n + 1) % corners.size()];
        for (int piece = 0; piece < pieces; ++piece) {
            const double t = static_cast<double>(piece) / pieces;
            const Spot spot =
                view.spot(laid.lie.onGrid({a.column + t * (b.column - a.column), a.row + t * (b.row - a.row)}));
            if (!std::isfinite(spot.x) || !std::isfinite(spot.y)) {
                return {};
            }
            edge << QPointF(spot.x, spot.y);
        }
    }
    return edge;
}

void clipTo(QPainter& painter, const QPolygonF& edge) {
    const QRectF box = edge.boundingRect();
    const bool isUpright = edge.size() == 4 && std::all_of(edge.begin(), edge.end(), [&](QPointF p) {
                               const auto close = [](double a, double b) { return std::abs(a - b) < 0.01; };
                               return (close(p.x(), box.left()) || close(p.x(), box.right())) &&
                                      (close(p.y(), box.top()) || close(p.y(), box.bottom()));
                           });
    if (isUpright) {
        painter.setClipRect(box, Qt::IntersectClip);
    } else {
        QPainterPath path;
        path.addPolygon(edge);
        painter.setClipPath(path, Qt::IntersectClip);
    }
}

std::vector<SeamMark> seamMarks(const plan::Plan& plan) {
    std::vector<SeamMark> marks;
    if (plan.sheets().size() < 2) {
        return marks;
    }
    const auto seams = sheets::seamsOf(plan);
    const auto link = geodesy::PlaneLink::between(plan.planeCrs(), gridOf(plan));
    if (!seams || !link) {
        return marks;
    }
    for (const sheets::Seam& seam : *seams) {
        const auto from = link->forward(seam.from);
        const auto to = link->forward(seam.to);
        if (seam.meets() || !from || !to) {
            continue;
        }
        const QString metres = QLocale::c().toString(std::abs(seam.offset.value()), 'f', 0);
        marks.push_back({*from, *to,
                         seam.offset > Metres(0)
                             ? QCoreApplication::translate("LightTable", "%1 m missing").arg(metres)
                             : QCoreApplication::translate("LightTable", "%1 m overlap").arg(metres)});
    }
    return marks;
}

void paintSeams(QPainter& painter, const View& view, const std::vector<SeamMark>& seams, const press::Faces& faces,
                const Palette& colours) {
    painter.save();
    for (const SeamMark& seam : seams) {
        const Spot from = view.spot(seam.from);
        const Spot to = view.spot(seam.to);
        painter.setPen(QPen(colours.ours, kSeamPen, Qt::DashLine));
        painter.drawLine(QPointF(from.x, from.y), QPointF(to.x, to.y));
        const std::string words = seam.words.toStdString();
        const LetterStyle style{kLetters, drawing::Weight::Bold, colours.ours};
        const double wide = lettersWide(words, style);
        // On the middle of what is in sight of it, on a plate of its own.
        const QLineF line(from.x, from.y, to.x, to.y);
        const Spot middle = view.area().middle();
        const QPointF along = line.p2() - line.p1();
        const double length = QPointF::dotProduct(along, along);
        const double t =
            length > 0
                ? std::clamp(QPointF::dotProduct(QPointF(middle.x, middle.y) - line.p1(), along) / length, 0.05, 0.95)
                : 0.5;
        const QPointF at = line.pointAt(t);
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.card);
        painter.drawRect(QRectF(at.x() - wide / 2 - 5, at.y() - 10, wide + 10, 19));
        letter(painter, faces, {at.x() - wide / 2, at.y() + 4}, words, style);
    }
    painter.restore();
}

}  // namespace crosstick::table
