#include <array>
#include <cmath>
#include <numbers>

#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr double kCollar = 2.0;
constexpr double kSmall = 1.6;
constexpr double kFrameAt = 12;  // millimetres outside the neat line, clear of frame and figures

struct Pen {
    const Canvas& canvas;
    void write(const QString& text, QPointF start, double capital = kCollar, Cut cut = Cut::Regular) const {
        canvas.fill(canvas.letters.row(text, cut, capital).translated(start), ink::kBlack);
    }
    void writeRight(const QString& text, QPointF end, double capital = kCollar, Cut cut = Cut::Regular) const {
        write(text, end - QPointF(canvas.letters.width(text, cut, capital), 0), capital, cut);
    }
    void writeMiddle(const QString& text, QPointF middle, double capital = kCollar, Cut cut = Cut::Regular) const {
        write(text, middle - QPointF(canvas.letters.width(text, cut, capital) / 2, 0), capital, cut);
    }
    void line(QPointF from, QPointF to, double width = 0.15) const {
        QPainterPath path(from);
        path.lineTo(to);
        canvas.stroke(path, ink::kBlack, width);
    }
};

void drawTitle(const Pen& pen, const QRectF& neat) {
    const double y = neat.top() - kFrameAt - 8;
    pen.write(QStringLiteral("ULMERAY SOUTH"), {neat.left(), y}, 7.0, Cut::Bold);
    pen.write(QStringLiteral("ISL 25   SHEET 2   1:25,000   EDITION 3"), {neat.left() + 105, y}, 3.0);
    pen.writeRight(QStringLiteral("EXERCISE AND DEMONSTRATION ONLY: NO SUCH PLACE"), {neat.right(), y}, 3.0, Cut::Bold);
    pen.writeMiddle(QStringLiteral("EXERCISE"), {neat.center().x(), 447.5}, 3.0, Cut::Bold);
}

/// Rows of words at a pitch; the first is a heading.
void drawRows(const Pen& pen, QPointF at, std::initializer_list<const char*> rows) {
    bool heading = true;
    for (const char* row : rows) {
        pen.write(QString::fromUtf8(row), at, kSmall, heading ? Cut::Bold : Cut::Regular);
        at.ry() += 2.65;
        heading = false;
    }
}

/// 0 to 4000 m, and 1000 m to the left in steps of 100.
void drawScaleBar(const Pen& pen, QPointF zero) {
    pen.writeMiddle(QStringLiteral("1:25,000"), zero + QPointF(60, -1.6), 2.4, Cut::Bold);
    for (int n = -10; n < 0; ++n) {
        const QRectF cell(zero.x() + n * 4.0, zero.y(), 4.0, 1.2);
        if (n % 2 == 0) {
            pen.canvas.painter.fillRect(cell, ink::kBlack);
        }
    }
    for (int n = 0; n < 4; ++n) {
        if (n % 2 == 0) {
            pen.canvas.painter.fillRect(QRectF(zero.x() + n * 40.0, zero.y(), 40.0, 1.2), ink::kBlack);
        }
    }
    QPainterPath edge;
    edge.addRect(QRectF(zero.x() - 40, zero.y(), 200, 1.2));
    pen.canvas.stroke(edge, ink::kBlack, 0.15);
    for (const auto& [metres, x] : {std::pair{1000, -40.0}, std::pair{500, -20.0}, std::pair{0, 0.0},
                                    std::pair{1000, 40.0}, std::pair{2000, 80.0}, std::pair{3000, 120.0}}) {
        pen.writeMiddle(QString::number(metres), zero + QPointF(x, 4.0), kSmall);
    }
    pen.writeMiddle(QStringLiteral("4000 metres"), zero + QPointF(160, 4.0), kSmall);
}

void drawCheckBars(const Pen& pen, QPointF level, QPointF upright) {
    for (int n = 0; n <= 10; ++n) {
        const double mark = n % 5 == 0 ? 2.0 : 1.2;
        pen.line(level + QPointF(n * 10.0, 0), level + QPointF(n * 10.0, -mark));
        pen.line(upright - QPointF(0, n * 10.0), upright + QPointF(mark, -n * 10.0));
    }
    pen.line(level, level + QPointF(100, 0));
    pen.line(upright, upright - QPointF(0, 100));
    pen.writeMiddle(QStringLiteral("100 mm: if this bar measures otherwise, the paper has stretched or shrunk"),
                    level + QPointF(50, 2.8), kSmall);
    pen.canvas.painter.save();
    pen.canvas.painter.translate(upright + QPointF(-1.2, -50));
    pen.canvas.painter.rotate(-90);
    pen.writeMiddle(QStringLiteral("100 mm"), {0, 0}, kSmall);
    pen.canvas.painter.restore();
}

// Figures for March 2027 at the sheet's centre: magnetic 9.461 W of true, grid 1.433 E of true, G-M 10.894 W; prongs
// are drawn wide apart, not to scale.
void drawDeclination(const Pen& pen, QPointF foot) {
    const auto prong = [&](double degrees, double length) {
        const double turn = degrees * std::numbers::pi / 180;
        const QPointF tip = foot + QPointF(std::sin(turn), -std::cos(turn)) * length;
        pen.line(foot, tip, 0.2);
        return tip;
    };
    const QPointF grid = prong(7, 17);
    const QPointF trueNorth = prong(-4, 18.5);
    const QPointF magnetic = prong(-26, 17);
    pen.write(QStringLiteral("GN"), grid + QPointF(-0.5, -0.8), kSmall, Cut::Bold);
    QPainterPath star;
    for (int n = 0; n < 10; ++n) {
        const double turn = n * std::numbers::pi / 5;
        const QPointF p =
            trueNorth + QPointF(0, -1.2) + QPointF(std::sin(turn), -std::cos(turn)) * (n % 2 == 0 ? 1.1 : 0.45);
        n == 0 ? star.moveTo(p) : star.lineTo(p);
    }
    star.closeSubpath();
    pen.canvas.fill(star, ink::kBlack);
    pen.line(magnetic, magnetic + QPointF(1.7, 0.9), 0.2);
    pen.write(QStringLiteral("M"), magnetic + QPointF(-1.6, -0.8), kSmall, Cut::Bold);
    drawRows(pen, foot + QPointF(12, -19),
             {"Declination, March 2027, sheet centre", "Magnetic north 9\302\275\302\260 (170 mils) west of true",
              "Grid north 1\302\260 26' (30 mils) east of true", "G-M angle 11\302\260 (190 mils) WEST",
              "Grid to magnetic: add 11\302\260", "Magnetic to grid: subtract 11\302\260",
              "Yearly change 12' east; the angle shrinks", "From the model WMM2025. Not to scale."});
}

using Sample = void (*)(const Canvas&, QPointF);

void drawLegendRow(const Pen& pen, QPointF at, const char* words, Sample sample) {
    sample(pen.canvas, at + QPointF(5, -0.7));
    pen.write(QString::fromUtf8(words), at + QPointF(12.5, 0), kSmall);
}

QPainterPath bar(QPointF middle) {
    QPainterPath path(middle - QPointF(5, 0));
    path.lineTo(middle + QPointF(5, 0));
    return path;
}

void roadASample(const Canvas& c, QPointF p) {
    c.stroke(bar(p), ink::kBlack, 0.9);
    c.stroke(bar(p), ink::kRoadA, 0.6);
}

void roadBSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p), ink::kBlack, 0.7);
    c.stroke(bar(p), ink::kRoadB, 0.45);
}

void trackSample(const Canvas& c, QPointF p) {
    c.dashes(bar(p), ink::kBlack, 0.25, 3.0, 0.8);
}

void pathSample(const Canvas& c, QPointF p) {
    c.dashes(bar(p), ink::kBlack, 0.18, 1.2, 0.8);
}

void wallSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p), ink::kBlack, 0.12);
}

void contoursSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p - QPointF(0, 0.4)), ink::kContour, 0.12);
    c.stroke(bar(p + QPointF(0, 0.4)), ink::kContour, 0.25);
}

void brookSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p), ink::kWater, 0.25);
}

void woodsSample(const Canvas& c, QPointF p) {
    c.painter.fillRect(QRectF(p - QPointF(5, 1), QSizeF(10, 2)), ink::kWood);
    QPainterPath tree(p + QPointF(-2.8, 0.6));
    tree.lineTo(p + QPointF(-2.4, -0.5));
    tree.lineTo(p + QPointF(-2.0, 0.6));
    tree.closeSubpath();
    tree.addEllipse(p + QPointF(2.4, 0), 0.45, 0.45);
    c.stroke(tree, ink::kTree, 0.12);
}

void buildingsSample(const Canvas& c, QPointF p) {
    c.painter.fillRect(QRectF(p - QPointF(4, 0.3), QSizeF(0.8, 0.6)), ink::kBuilding);
    QPainterPath ring;
    ring.addEllipse(p, 0.45, 0.45);
    c.stroke(ring, ink::kBlack, 0.15);
    QPainterPath cairn(p + QPointF(3.1, 0.4));
    cairn.lineTo(p + QPointF(3.5, -0.4));
    cairn.lineTo(p + QPointF(3.9, 0.4));
    cairn.closeSubpath();
    c.fill(cairn, ink::kBlack);
}

void heightsSample(const Canvas& c, QPointF p) {
    QPainterPath t(p + QPointF(-2, -0.9));
    t.lineTo(p + QPointF(-1.2, 0.5));
    t.lineTo(p + QPointF(-2.8, 0.5));
    t.closeSubpath();
    c.stroke(t, ink::kBlack, 0.16);
    QPainterPath d;
    d.addEllipse(p + QPointF(2, 0), 0.2, 0.2);
    c.fill(d, ink::kBlack);
}

void cliffsSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p - QPointF(0, 0.7)), ink::kBlack, 0.18);
    QPainterPath wedges;
    for (int n = 0; n < 23; ++n) {
        const double x = -4.7 + n * 0.42;
        wedges.moveTo(p + QPointF(x - 0.12, -0.7));
        wedges.lineTo(p + QPointF(x + 0.12, -0.7));
        wedges.lineTo(p + QPointF(x, n % 2 == 0 ? 0.75 : 0.2));
        wedges.closeSubpath();
    }
    c.fill(wedges, ink::kBlack);
}

void powerLineSample(const Canvas& c, QPointF p) {
    c.stroke(bar(p), ink::kBlack, 0.1);
    QPainterPath t;
    for (const double x : {-3.0, 1.0}) {
        t.moveTo(p + QPointF(x, -0.45));
        t.lineTo(p + QPointF(x, 0.45));
    }
    c.stroke(t, ink::kBlack, 0.1);
}

struct LegendRow {
    const char* words;
    Sample sample;
};
constexpr std::array<LegendRow, 12> kLegend{{
    {"Road, 5 m, surfaced", roadASample},
    {"Road, 3.5 m, surfaced", roadBSample},
    {"Track, 3 m", trackSample},
    {"Path", pathSample},
    {"Wall", wallSample},
    {"Contour, every fifth heavy", contoursSample},
    {"Brook, shore", brookSample},
    {"Conifer, mixed wood", woodsSample},
    {"Building; sheepfold; cairn", buildingsSample},
    {"Pillar; spot height", heightsSample},
    {"Cliff over 20 m; quarry face", cliffsSample},
    {"Power line", powerLineSample},
}};

void drawLegend(const Pen& pen, QPointF at) {
    constexpr int kRowsInColumn = 6;
    pen.write(QStringLiteral("Legend"), at, kSmall, Cut::Bold);
    int n = 0;
    for (const LegendRow& row : kLegend) {
        const int column = n / kRowsInColumn;
        drawLegendRow(pen, at + QPointF(column * 52.0, 3.0 + n % kRowsInColumn * 3.1), row.words, row.sample);
        ++n;
    }
}

void drawSlopeIndex(const Pen& pen, QPointF at) {
    pen.write(QStringLiteral("Distance between contours"), at, kSmall, Cut::Bold);
    at += QPointF(0, 3.2);
    for (const int degrees : {5, 10, 15, 20, 30}) {
        const double gap = 10 / std::tan(degrees * std::numbers::pi / 180) / SheetPaper::kMetresPerMm;
        pen.write(QStringLiteral("%1\u00b0").arg(degrees), at, kSmall);
        for (int n = 0; n < 5; ++n) {
            QPainterPath line(at + QPointF(6 + n * gap, -1.9));
            line.lineTo(at + QPointF(6 + n * gap, 0.3));
            pen.canvas.stroke(line, ink::kContour, 0.12);
        }
        at.ry() += 3.0;
    }
}

void drawAdjoining(const Pen& pen, QPointF at) {
    pen.write(QStringLiteral("Adjoining sheets"), at, kSmall, Cut::Bold);
    for (const auto& [top, words, bold] : {std::tuple{1.5, "1 NORTH", false}, std::tuple{8.0, "2 SOUTH", true}}) {
        QPainterPath box;
        box.addRect(QRectF(at + QPointF(0, top), QSizeF(18, 6)));
        pen.canvas.stroke(box, ink::kBlack, bold ? 0.35 : 0.15);
        pen.writeMiddle(QString::fromUtf8(words), at + QPointF(9, top + 3.8), kSmall, bold ? Cut::Bold : Cut::Regular);
    }
}

void drawSquareDiagram(const Pen& pen, QPointF at) {
    QPainterPath box;
    box.addRect(QRectF(at, QSizeF(16, 14)));
    box.moveTo(at + QPointF(0, 9));
    box.lineTo(at + QPointF(16, 9));
    pen.canvas.stroke(box, ink::kBlack, 0.15);
    pen.writeMiddle(QStringLiteral("FM"), at + QPointF(8, 5.6), 2.4, Cut::Bold);
    pen.writeMiddle(QStringLiteral("FL"), at + QPointF(8, 12.4), 2.4, Cut::Bold);
    pen.write(QStringLiteral("51 00"), at + QPointF(17, 9.6), kSmall);
}

}  // namespace

void drawCollar(const Canvas& canvas) {
    const Pen pen{canvas};
    const QRectF neat = SheetPaper::neatLine();
    const double top = neat.bottom() + kFrameAt + 3.8;
    drawTitle(pen, neat);
    drawRows(pen, {neat.left(), top},
             {"Heights, datum, grid", "Contour interval 10 m, every 50 m heavy; heights in metres above",
              "mean sea level. Datum and ellipsoid WGS 84; projection UTM",
              "zone 25 north, central meridian 33\302\260 W. Blue-grey lines: 1 km grid.",
              "Cautions: invented ground, not for navigation. Cliffs lower than",
              "10 m are not shown by contours. Works, quarry and light-house",
              "are disused. Heights come from a computed surface."});
    drawRows(pen, {neat.left() + 84, top},
             {"To give a reference to 10 m", "Kelp Works chimney: square FM. Read right:",
              "line 57, then 08 hundredths: 5708.", "Then up: line 03, then 05: 0305.",
              "25TFM 5708 0305. In a reference the digits", "are cut off, never rounded."});
    drawSquareDiagram(pen, {neat.left() + 138, top - 1.5});
    drawSlopeIndex(pen, {neat.left() + 167, top});
    drawAdjoining(pen, {neat.left() + 201, top});
    drawDeclination(pen, {neat.left() + 234, top + 19});
    drawLegend(pen, {neat.right() - 100, top});
    drawScaleBar(pen, {neat.left() + 40, top + 23});
    drawCheckBars(pen, {neat.left() + 216, top + 25}, {neat.left() - 22, neat.bottom() - 130});
}

}  // namespace crosstick::demo
