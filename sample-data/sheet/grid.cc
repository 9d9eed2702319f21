#include <algorithm>
#include <cmath>

#include "core/drawing/steps.h"
#include "core/geodesy/grid_reference.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr double kPrincipal = 3.0;
constexpr double kOther = 1.8;

/// "6", "54" and "" or "000mE": the figures of a grid line, its principal digits large.
struct Figures {
    QString before, principal, after;
};

Figures figuresOf(double value, bool full, const QString& unit) {
    const int kilometres = static_cast<int>(std::lround(value / 1000));
    const QString principal = QStringLiteral("%1").arg(kilometres % 100, 2, 10, QLatin1Char('0'));
    return {QString::number(kilometres / 100), principal, full ? QStringLiteral("000m") + unit : QString()};
}

/// Where a row of figures is held.
enum class Held { Left, Middle, Right };

/// Figures at a point: their foot on it, or for Left and Right their half height.
void drawFigures(const Canvas& canvas, const Figures& figures, QPointF at, Held held) {
    const double before = canvas.letters.width(figures.before, Cut::Regular, kOther);
    const double principal = canvas.letters.width(figures.principal, Cut::Bold, kPrincipal);
    const double after = figures.after.isEmpty() ? 0 : canvas.letters.width(figures.after, Cut::Regular, kOther) + 0.3;
    const double width = before + 0.3 + principal + after;
    double x = at.x() - (held == Held::Left ? 0 : held == Held::Middle ? width / 2 : width);
    const double base = at.y() + (held == Held::Middle ? 0 : kPrincipal / 2);
    QPainterPath row;
    row.setFillRule(Qt::WindingFill);
    row.addPath(canvas.letters.row(figures.before, Cut::Regular, kOther).translated(x, base));
    x += before + 0.3;
    row.addPath(canvas.letters.row(figures.principal, Cut::Bold, kPrincipal).translated(x, base));
    x += principal + 0.3;
    if (!figures.after.isEmpty()) {
        row.addPath(canvas.letters.row(figures.after, Cut::Regular, kOther).translated(x, base));
    }
    canvas.fill(row, ink::kBlack);
}

void drawLines(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    for (const double e : drawing::steps(650000, 658000, 1000)) {
        QPainterPath line(QPointF(SheetPaper::at({e, 0}).x(), neat.top()));
        line.lineTo(SheetPaper::at({e, 0}).x(), neat.bottom());
        canvas.stroke(line, ink::kGrid, std::fmod(e, 10000) == 0 ? 0.2 : 0.1);
    }
    for (const double n : drawing::steps(5097000, 5104000, 1000)) {
        QPainterPath line(QPointF(neat.left(), SheetPaper::at({0, n}).y()));
        line.lineTo(neat.right(), SheetPaper::at({0, n}).y());
        canvas.stroke(line, ink::kGrid, n == 5100000 ? 0.2 : 0.1);
    }
}

/// Figures outside the frame, at the south-west corner in full; a short tick outside the neat line leads from each grid
/// line to its figures.
void drawMarginFigures(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    constexpr double kAway = SheetPaper::kFrame + 1.1;
    constexpr double kTick = 1.6;
    const auto tick = [&](QPointF from, QPointF step) {
        QPainterPath line(from);
        line.lineTo(from + step);
        canvas.stroke(line, ink::kBlack, 0.15);
    };
    for (const double e : drawing::steps(649000, 659000, 1000)) {
        const double x = SheetPaper::at({e, 0}).x();
        drawFigures(canvas, figuresOf(e, e == 649000, QStringLiteral("E")), {x, neat.bottom() + kAway + kPrincipal},
                    Held::Middle);
        drawFigures(canvas, figuresOf(e, false, {}), {x, neat.top() - kAway}, Held::Middle);
        tick({x, neat.top()}, {0, -kTick});
        tick({x, neat.bottom()}, {0, kTick});
    }
    for (const double n : drawing::steps(5096000, 5105000, 1000)) {
        const double y = SheetPaper::at({0, n}).y();
        drawFigures(canvas, figuresOf(n, n == 5096000, QStringLiteral("N")), {neat.left() - kAway, y}, Held::Right);
        drawFigures(canvas, figuresOf(n, false, {}), {neat.right() + kAway, y}, Held::Left);
        tick({neat.left(), y}, {-kTick, 0});
        tick({neat.right(), y}, {kTick, 0});
    }
}

/// A small figure on a grid line, at the first of some places along it where nothing stands.
void drawOnLine(const Canvas& canvas, int figure, QPointF at, QPointF step) {
    const QString text = QStringLiteral("%1").arg(figure % 100, 2, 10, QLatin1Char('0'));
    const QPainterPath row = canvas.letters.row(text, Cut::Regular, 1.6);
    const QPointF middle = row.boundingRect().center();
    for (int n = 0; n < 8; ++n) {
        const QPainterPath here = row.translated(at + step * n - middle);
        const bool isFree = std::none_of(canvas.taken.begin(), canvas.taken.end(), [&](const QRectF& other) {
            return other.intersects(here.boundingRect().adjusted(-0.4, -0.4, 0.4, 0.4));
        });
        if (isFree) {
            canvas.letter(here, ink::kGrid, 0.4);
            return;
        }
    }
}

/// Small figures on the lines inside, every five kilometres, and the letters of the 100 km squares beside the line they
/// part.
void drawInside(const Canvas& canvas) {
    for (const int n : {5097, 5102}) {
        for (const int e : {652, 657}) {
            const QPointF p = SheetPaper::at({e * 1000.0, n * 1000.0});
            drawOnLine(canvas, e, p + QPointF(0, -4), {0, -3});
            drawOnLine(canvas, n, p + QPointF(4, 0), {3, 0});
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

/// Where a meridian or parallel meets one side of the neat line: the other coordinate is brought onto the side in a few
/// steps, the lines of the sheet being all but straight.
enum class Side { South, North, West, East };

double meetsSide(Side side, double degrees) {
    const QRectF neat = SheetPaper::neatLine();
    const bool isMeridian = side == Side::South || side == Side::North;
    const double wanted = side == Side::South   ? neat.bottom()
                          : side == Side::North ? neat.top()
                          : side == Side::West  ? neat.left()
                                                : neat.right();
    constexpr double kDegreesPerMm = SheetPaper::kMetresPerMm / 111000;
    double other = isMeridian ? 46.04 : -31.01;
    QPointF place;
    for (int round = 0; round < 6; ++round) {
        place = isMeridian ? placeOf(other, degrees) : placeOf(degrees, other);
        other += isMeridian ? (place.y() - wanted) * kDegreesPerMm : (wanted - place.x()) * kDegreesPerMm * 1.44;
    }
    return isMeridian ? place.x() : place.y();
}

constexpr double kLadderFrom = 3.8;  // millimetres outside the neat line
constexpr double kLadderTo = 5.0;

/// A part of the ladder between two places along a side.
QRectF rungOn(Side side, double from, double to) {
    const QRectF neat = SheetPaper::neatLine();
    constexpr double kDeep = kLadderTo - kLadderFrom;
    switch (side) {
        case Side::South:
            return {from, neat.bottom() + kLadderFrom, to - from, kDeep};
        case Side::North:
            return {from, neat.top() - kLadderTo, to - from, kDeep};
        case Side::West:
            return {neat.left() - kLadderTo, from, kDeep, to - from};
        default:
            return {neat.right() + kLadderFrom, from, kDeep, to - from};
    }
}

/// What stands beside a minute's mark: the whole degree in full, the others by their minutes.
void drawMinuteText(const Canvas& canvas, Side side, double at, int minute) {
    const QRectF neat = SheetPaper::neatLine();
    const bool isMeridian = side == Side::South || side == Side::North;
    const QString text = minute % 60 == 0 ? minuteText(minute, isMeridian ? QStringLiteral("W") : QStringLiteral("N"))
                                          : QStringLiteral("%1'").arg(minute % 60, 2, 10, QLatin1Char('0'));
    constexpr double kFigures = 1.5;
    const double width = canvas.letters.width(text, Cut::Regular, kFigures);
    constexpr double kMiddle = (0.2 + kLadderFrom) / 2;
    QTransform turn;
    if (isMeridian) {
        turn.translate(at, side == Side::South ? neat.bottom() + kMiddle : neat.top() - kMiddle);
    } else {
        turn.translate(side == Side::West ? neat.left() - kMiddle : neat.right() + kMiddle, at);
        turn.rotate(-90);
    }
    turn.translate(-width / 2, kFigures / 2);
    const QPainterPath row = turn.map(canvas.letters.row(text, Cut::Regular, kFigures));
    canvas.painter.fillRect(row.boundingRect().adjusted(-0.4, -0.4, 0.4, 0.4), ink::kPaper);
    canvas.fill(row, ink::kBlack);
}

/// The ladder along one side: minutes in turn black and white, odd minutes black.
void drawLadder(const Canvas& canvas, Side side) {
    const QRectF neat = SheetPaper::neatLine();
    const bool isMeridian = side == Side::South || side == Side::North;
    const double begin = isMeridian ? neat.left() : neat.top();
    const double end = isMeridian ? neat.right() : neat.bottom();
    const int first = isMeridian ? 31 * 60 + 5 : 46 * 60 + 5;  // minutes fall eastwards and southwards
    const int last = isMeridian ? 30 * 60 + 56 : 45 * 60 + 59;
    QPainterPath lines;
    for (int minute = first; minute > last; --minute) {
        const double sign = isMeridian ? -1 : 1;
        const double from = meetsSide(side, sign * minute / 60.0);
        const double to = meetsSide(side, sign * (minute - 1) / 60.0);
        if (minute % 2 != 0 && std::min(to, end) > std::max(from, begin)) {
            canvas.painter.fillRect(rungOn(side, std::max(from, begin), std::min(to, end)), ink::kBlack);
        }
        if (from > begin && from < end) {
            lines.addRect(rungOn(side, from, from));
            if (from > begin + 5 && from < end - 5) {
                drawMinuteText(canvas, side, from, minute);
            }
        }
    }
    lines.addRect(rungOn(side, begin, end));
    canvas.stroke(lines, ink::kBlack, 0.12);
}

void drawFrame(const Canvas& canvas) {
    const QRectF neat = SheetPaper::neatLine();
    QPainterPath line;
    line.addRect(neat);
    canvas.painter.strokePath(line, QPen(ink::kBlack, 0.35, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    constexpr double kFrame = SheetPaper::kFrame;
    QPainterPath outer;
    outer.addRect(neat.adjusted(-kFrame, -kFrame, kFrame, kFrame));
    canvas.painter.strokePath(outer, QPen(ink::kBlack, 0.8, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
}

}  // namespace

void drawGrid(const Canvas& canvas) {
    drawLines(canvas);
    drawInside(canvas);
    drawFrame(canvas);
    drawMarginFigures(canvas);
    for (const Side side : {Side::South, Side::North, Side::West, Side::East}) {
        drawLadder(canvas, side);
    }
}

}  // namespace crosstick::demo
