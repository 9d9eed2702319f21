#include "ui/table/overlay.h"

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPainterPath>

#include "core/drawing/text_ruler.h"
#include "ui/press/film_marks.h"
#include "ui/table/hand_words.h"
#include "ui/table/lettering.h"
#include "ui/table/plain_letters.h"
#include "ui/table/rim_figures.h"
#include "ui/table/rim_painter.h"

namespace crosstick::table {
namespace {

constexpr double kWetPen = 2.5;
constexpr double kArmFrom = 4;
constexpr double kArmTo = 11;
constexpr double kHandle = 7;
constexpr double kTabWide = 42;
constexpr double kTagWide = 222;
constexpr double kTagInside = 12;
constexpr double kBar = 4;
constexpr double kMark = 14;  ///< room of a mark before a word

double onPixel(double at) {
    return std::floor(at) + 0.5;
}

}  // namespace

void paintWet(QPainter& painter, const std::vector<QPointF>& line, bool closes, const Palette& colours) {
    if (line.size() < 2) {
        return;
    }
    painter.save();
    painter.setPen(QPen(colours.ours, kWetPen, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter.drawPolyline(line.data(), static_cast<int>(line.size()));
    if (closes && line.size() > 2) {
        painter.setPen(QPen(colours.ours, 1, Qt::DashLine));
        painter.drawLine(line.back(), line.front());
    }
    painter.restore();
}

void paintCrossHair(QPainter& painter, QPointF at, const Palette& colours) {
    painter.save();
    const QLineF arms[] = {{at.x() - kArmTo, at.y(), at.x() - kArmFrom, at.y()},
                           {at.x() + kArmFrom, at.y(), at.x() + kArmTo, at.y()},
                           {at.x(), at.y() - kArmTo, at.x(), at.y() - kArmFrom},
                           {at.x(), at.y() + kArmFrom, at.x(), at.y() + kArmTo}};
    for (const auto& [colour, wide] : {std::pair(colours.pens.paper, 4.5), std::pair(colours.ours, 2.0)}) {
        painter.setPen(QPen(colour, wide));
        painter.drawLines(arms, 4);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.ours);
    painter.drawEllipse(at, 1.3, 1.3);
    painter.restore();
}

void paintThreads(QPainter& painter, geodesy::PlanePoint place, const View& view, const press::Faces& faces,
                  const Palette& colours) {
    const Area& area = view.area();
    const Spot spot = view.spot(place);
    const bool isStraight = uprightLines(view) == GridLines::Eastings;
    const GridLines across = isStraight ? GridLines::Northings : GridLines::Eastings;
    const Metres above = isStraight ? place.easting : place.northing;
    const Metres beside = isStraight ? place.northing : place.easting;
    const double x = onRim(view, uprightLines(view), above);
    const double y = onRim(view, across, beside);
    painter.save();
    QPen thread(colours.ours, 1, Qt::CustomDashLine);
    thread.setDashPattern({1, 3});
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(thread);
    for (const QPointF& end : {QPointF(x, area.top), QPointF(area.left, y)}) {
        const QLineF line(end, QPointF(spot.x, spot.y));
        if (line.length() > kArmTo) {
            const QPointF last = line.pointAt(1 - kArmTo / line.length());
            painter.drawLine(QPointF(onPixel(end.x()), onPixel(end.y())),
                             QPointF(onPixel(last.x()), onPixel(last.y())));
        }
    }
    painter.setRenderHint(QPainter::Antialiasing, true);
    const LetterStyle style{11, drawing::Weight::Bold, colours.well};
    const double capital = 11 * drawing::kCapital;
    if (x > area.left && x < area.right()) {
        const std::string figures = fourFigures(above);
        const double wide = std::max(kTabWide, lettersWide(figures, style) + 8);
        const QRectF tab(std::round(x - wide / 2), 0, wide, kRim);
        painter.fillRect(tab, colours.ours);
        letter(painter, faces, {tab.center().x() - lettersWide(figures, style) / 2, kRim / 2 + capital / 2}, figures,
               style);
    }
    if (y > area.top && y < area.bottom()) {
        const std::string figures = fourFigures(beside);
        const double wide = std::max(kTabWide, lettersWide(figures, style) + 8);
        const QRectF tab(0, std::round(y - wide / 2), kRim, wide);
        painter.fillRect(tab, colours.ours);
        letter(painter, faces, {kRim / 2 + capital / 2, tab.center().y() + lettersWide(figures, style) / 2}, figures,
               style, Degrees(90));
    }
    painter.restore();
}

void paintHandles(QPainter& painter, const std::vector<QPointF>& points, const Palette& colours) {
    painter.save();
    for (const QPointF& p : points) {
        const QRectF box(std::round(p.x()) - kHandle / 2, std::round(p.y()) - kHandle / 2, kHandle, kHandle);
        painter.setPen(QPen(colours.pens.paper, 3));
        painter.drawRect(box);
        painter.setPen(QPen(colours.ours, 1.5));
        painter.drawRect(box);
    }
    painter.restore();
}

void paintTag(QPainter& painter, QPointF at, const Tag& tag, const View& view, const press::Faces& faces,
              const Palette& colours) {
    const LetterStyle large{17, drawing::Weight::Bold, colours.ink};
    const LetterStyle plain{12, plainLetters(), colours.ink};
    const LetterStyle own{12, drawing::Weight::Bold, colours.ours};
    struct Row {
        const std::string& text;
        const LetterStyle& style;
        double high;
    };
    double high = 14;
    double wide = kTagWide;
    std::vector<Row> rows;
    for (const Row& row : {Row{tag.first, large, 21}, Row{tag.second, plain, 16}, Row{tag.third, own, 16}}) {
        if (!row.text.empty()) {
            rows.push_back(row);
            high += row.high;
            wide = std::max(wide, lettersWide(row.text, row.style) + 2 * kTagInside + kBar);
        }
    }
    double left = at.x() + 20;
    double top = at.y() + 18;
    left = left + wide > view.area().right() - 4 ? at.x() - 20 - wide : left;
    top = top + high > view.area().bottom() - 4 ? at.y() - 18 - high : top;
    const QRectF box(std::round(std::max(left, view.area().left + 4)), std::round(std::max(top, view.area().top + 4)),
                     std::ceil(wide), high);
    painter.save();
    painter.fillRect(box.translated(2, 2), QColor(0, 0, 0, 71));
    painter.fillRect(box, colours.well);
    painter.setPen(QPen(colours.edge, 1));
    painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
    painter.fillRect(QRectF(box.left(), box.top(), kBar, box.height()), colours.ours);
    double y = box.top() + 6;
    for (const Row& row : rows) {
        y += row.high;
        letter(painter, faces, {box.left() + kBar + kTagInside - 4, y - 4}, row.text, row.style);
    }
    painter.restore();
}

void paintGuide(QPainter& painter, const Guide& guide, const View& view, const press::Faces& faces,
                const Palette& colours) {
    QPolygonF line;
    for (const geodesy::PlanePoint place : guide.line) {
        const Spot spot = view.spot(place);
        line << QPointF(spot.x, spot.y);
    }
    const bool isHeavy = guide.weight == Guide::Weight::Heavy;
    painter.save();
    for (const auto& [colour, wide] :
         {std::pair(colours.pens.paper, isHeavy ? 5.0 : 3.5), std::pair(colours.ours, isHeavy ? 2.5 : 1.2)}) {
        painter.setPen(QPen(colour, wide));
        painter.drawPolygon(line);
    }
    const LetterStyle style{11, isHeavy ? drawing::Weight::Bold : drawing::Weight::Regular, colours.ours};
    const QRectF box = line.boundingRect();
    const QPointF base(box.right() + 6, box.center().y() + 4);
    const double wide = lettersWide(guide.word, style);
    if (!guide.word.empty() && base.x() + wide < view.area().right()) {
        QColor ground = colours.pens.paper;
        ground.setAlpha(200);
        painter.fillRect(QRectF(base.x() - 3, base.y() - 11, wide + 6, 15), ground);
        letter(painter, faces, {base.x(), base.y()}, guide.word, style);
    }
    painter.restore();
}

void paintFilmName(QPainter& painter, QPointF at, const FilmWord& film, const View& view, const press::Faces& faces,
                   const Palette& colours) {
    const LetterStyle style{11, drawing::Weight::Bold, colours.ours};
    const double mark = film.pinned ? kMark : 0;
    const double wide = lettersWide(film.name, style) + mark;
    const double left = at.x() + 16 + wide > view.area().right() - 4 ? at.x() - 16 - wide : at.x() + 16;
    const double base = at.y() + 24 > view.area().bottom() - 4 ? at.y() - 10 : at.y() + 24;
    QColor ground = colours.pens.paper;
    ground.setAlpha(200);
    painter.fillRect(QRectF(left - 3, base - 11, wide + 6, 15), ground);
    if (film.pinned) {
        painter.strokePath(press::pin({left - 1, base - 12}), QPen(colours.ours, 1.5));
    }
    letter(painter, faces, {left + mark, base}, film.name, style);
}

void paintSentence(QPainter& painter, const std::string& words, const View& view, const press::Faces& faces,
                   const Palette& colours) {
    const LetterStyle style{15, drawing::Weight::Bold, colours.ink};
    const QPointF middle = QRectF(view.area().left, view.area().top, view.area().width, view.area().height).center();
    const double wide = lettersWide(words, style);
    painter.setPen(QPen(colours.edge, 1));
    painter.setBrush(colours.well);
    painter.drawRect(QRectF(middle.x() - wide / 2 - 16, middle.y() - 20, wide + 32, 40));
    letter(painter, faces, {middle.x() - wide / 2, middle.y() + 5}, words, style);
}

}  // namespace crosstick::table
