#include <cmath>

#include "core/geodesy/grid_reference.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr double kPrincipal = 3.0;
constexpr double kOther = 1.8;
constexpr double kFrameAt = 12;

/// "6", "54" and "" or "000mE": the figures of a grid line, its principal digits large.
struct Figures {
    QString before, principal, after;
};

Figures figuresOf(double value, bool full, const QString& unit) {
    const int kilometres = static_cast<int>(std::lround(value / 1000));
    const QString principal = QStringLiteral("%1").arg(kilometres % 100, 2, 10, QLatin1Char('0'));
    return {QString::number(kilometres / 100), principal, full ? QStringLiteral("000m") + unit : QString()};
}

/// Left end of the base line of the principal digits at a point.
void drawFigures(const Canvas& canvas, const Figures& figures, QPointF middle, const QColor& rim) {
    const double before = canvas.letters.width(figures.before, Cut::Regular, kOther);
    const double principal = canvas.letters.width(figures.principal, Cut::Bold, kPrincipal);
    const double after = figures.after.isEmpty() ? 0 : canvas.letters.width(figures.after, Cut::Regular, kOther);
    double x = middle.x() - (before + principal + after) / 2;
    const double base = middle.y() + kPrincipal / 2;
    QPainterPath row;
    row.setFillRule(Qt::WindingFill);
    row.addPath(canvas.letters.row(figures.before, Cut::Regular, kOther).translated(x, base - kPrincipal + kOther));
    x += before + 0.15;
    row.addPath(canvas.letters.row(figures.principal, Cut::Bold, kPrincipal).translated(x, base));
    x += principal + 0.15;
    if (!figures.after.isEmpty()) {
        row.addPath(canvas.letters.row(figures.after, Cut::Regular, kOther).translated(x, base));
    }
    canvas.letter(row, ink::kBlack, rim);
}

void drawLines(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    for (double e = 650000; e < 659000; e += 1000) {
        QPainterPath line(QPointF(SheetPaper::at({e, 0}).x(), neat.top()));
        line.lineTo(SheetPaper::at({e, 0}).x(), neat.bottom());
        canvas.stroke(line, ink::kGrid, std::fmod(e, 10000) == 0 ? 0.2 : 0.1);
    }
    for (double n = 5097000; n < 5105000; n += 1000) {
        QPainterPath line(QPointF(neat.left(), SheetPaper::at({0, n}).y()));
        line.lineTo(neat.right(), SheetPaper::at({0, n}).y());
        canvas.stroke(line, ink::kGrid, n == 5100000 ? 0.2 : 0.1);
    }
}

void drawMarginFigures(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    for (double e = 649000; e <= 659000; e += 1000) {
        const double x = SheetPaper::at({e, 0}).x();
        const bool corner = e == 649000;
        drawFigures(canvas, figuresOf(e, corner, QStringLiteral("E")), {x + (corner ? 5.2 : 0), neat.bottom() + 4.6},
                    ink::kPaper);
        drawFigures(canvas, figuresOf(e, false, {}), {x, neat.top() - 4.6}, ink::kPaper);
    }
    for (double n = 5096000; n <= 5105000; n += 1000) {
        const double y = SheetPaper::at({0, n}).y();
        const bool corner = n == 5096000;
        drawFigures(canvas, figuresOf(n, false, {}), {neat.right() + 6, y}, ink::kPaper);
        drawFigures(canvas, figuresOf(n, false, {}), {neat.left() - 6, y - (corner ? 3.4 : 0)}, ink::kPaper);
        if (corner) {
            canvas.letter(
                canvas.letters.row(QStringLiteral("000mN"), Cut::Regular, 1.6).translated(neat.left() - 9.4, y + 0.6),
                ink::kBlack, ink::kPaper);
        }
    }
}

/// Small figures on the lines inside, every five kilometres, and the letters of the 100 km squares beside the line they
/// part.
void drawInside(const Canvas& canvas) {
    for (const double n : {5097000.0, 5102000.0}) {
        for (const double e : {652000.0, 657000.0}) {
            const QPointF p = SheetPaper::at({e, n});
            const QPainterPath east =
                canvas.letters.row(QString::number(static_cast<int>(e / 1000) % 100), Cut::Regular, 1.6);
            canvas.letter(east.translated(p + QPointF(-1.4, -3.0)), ink::kGrid, ink::kLand);
            const QPainterPath north = canvas.letters.row(
                QStringLiteral("%1").arg(static_cast<int>(n / 1000) % 100, 2, 10, QLatin1Char('0')), Cut::Regular, 1.6);
            canvas.letter(north.translated(p + QPointF(3.0, 0.8)), ink::kGrid, ink::kLand);
        }
    }
    const double y = SheetPaper::at({0, 5100000}).y();
    for (const double e : {649900.0, 658100.0}) {
        const double x = SheetPaper::at({e, 0}).x();
        for (const auto& [text, base] :
             {std::pair{QStringLiteral("FM"), y - 2.5}, std::pair{QStringLiteral("FL"), y + 8.5}}) {
            const double width = canvas.letters.width(text, Cut::Bold, 6);
            canvas.fill(canvas.letters.row(text, Cut::Bold, 6).translated(x - width / 2, base), QColor(60, 60, 60, 38));
        }
    }
}

QPointF placeOf(double latitude, double longitude) {
    const auto grid = geodesy::gridPoint({Degrees(latitude), Degrees(longitude)}, {25, geodesy::Hemisphere::North});
    return grid ? SheetPaper::at({grid->at.easting.value(), grid->at.northing.value()}) : QPointF();
}

QString minuteText(int minutes, const QString& side) {
    return QStringLiteral("%1\u00b0 %2' %3").arg(minutes / 60).arg(minutes % 60, 2, 10, QLatin1Char('0')).arg(side);
}

void drawMinuteTick(const Canvas& canvas, QPointF from, QPointF to, const QString& text, QPointF labelAt) {
    QPainterPath tick(from);
    tick.lineTo(to);
    canvas.stroke(tick, ink::kBlack, 0.2);
    if (!text.isEmpty()) {
        const double width = canvas.letters.width(text, Cut::Regular, 1.6);
        canvas.letter(canvas.letters.row(text, Cut::Regular, 1.6).translated(labelAt - QPointF(width / 2, -0.8)),
                      ink::kBlack, ink::kPaper);
    }
}

/// Minutes between neat line and frame: each where the parallel or meridian meets the neat line.
void drawMinutes(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    for (int minute = 31 * 60 + 4; minute >= 30 * 60 + 57; --minute) {
        const double longitude = -minute / 60.0;
        const QString text = minute == 31 * 60 ? minuteText(minute, QStringLiteral("W")) : QString();
        const double top = placeOf(46.0815, longitude).x();
        const double bottom = placeOf(46.0003, longitude).x();
        drawMinuteTick(canvas, {top, neat.top()}, {top, neat.top() - (text.isEmpty() ? 1.2 : 2.2)}, text,
                       {top + 8, neat.top() - 9.6});
        drawMinuteTick(canvas, {bottom, neat.bottom()}, {bottom, neat.bottom() + (text.isEmpty() ? 1.2 : 2.2)}, text,
                       {bottom + 8, neat.bottom() + 9.6});
    }
    for (int minute = 46 * 60; minute <= 46 * 60 + 4; ++minute) {
        const QString text = minute == 46 * 60 ? minuteText(minute, QStringLiteral("N")) : QString();
        const double left = placeOf(minute / 60.0, -31.0746).y();
        const double right = placeOf(minute / 60.0, -30.9452).y();
        if (left < neat.bottom()) {
            drawMinuteTick(canvas, {neat.left(), left}, {neat.left() - 1.2, left}, {}, {});
        }
        if (right < neat.bottom()) {
            drawMinuteTick(canvas, {neat.right(), right}, {neat.right() + 2.2, right}, text,
                           {neat.right() + 6.2, right - 2.6});
        }
    }
}

void drawFrame(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    QPainterPath line;
    line.addRect(neat);
    canvas.stroke(line, ink::kBlack, 0.35, Qt::SquareCap);
    const QRectF frame = neat.adjusted(-kFrameAt, -kFrameAt, kFrameAt, kFrameAt);
    QPainterPath outer;
    outer.addRect(frame);
    canvas.painter.strokePath(outer, QPen(ink::kBlack, 0.8, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
}

}  // namespace

void drawGrid(const Canvas& canvas) {
    drawLines(canvas);
    drawInside(canvas);
    drawFrame(canvas);
    drawMarginFigures(canvas);
    drawMinutes(canvas);
}

}  // namespace crosstick::demo
