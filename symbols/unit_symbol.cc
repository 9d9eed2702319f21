#include "symbols/unit_symbol.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/echelons.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"
#include "symbols/unit_frame.h"
#include "symbols/unit_icons.h"
#include "symbols/unit_row.h"

namespace crosstick::symbols {
namespace {

using measures::Affiliation;
using measures::UnitSymbol;

constexpr double kBeside = 0.9;
constexpr std::size_t kLongNote = 12;

Points scaled(Points points, double h) {
    for (Point& p : points) {
        p = p * h;
    }
    return points;
}

/// The mark over the frame, and a task force's bracket round it; gives how high it reaches.
void drawMark(Pencil& pencil, const UnitSymbol& unit, double top, double h) {
    const auto echelon = echelonOf(unit.echelon);
    if (!echelon) {
        return;
    }
    const double e = 0.30 * h;
    const Point middle{0, -top - 0.12 * h - e / 2};
    drawEchelon(pencil, *echelon, middle, {1, 0}, e);
    if (unit.isTaskForce) {
        const double half = echelonWidth(*echelon, e, pencil.gauge().pen) / 2 + 0.20 * h;
        const double high = middle.y - e / 2 - 0.12 * h;
        pencil.line({{-half, -top}, {-half, high}, {half, high}, {half, -top}});
    }
}

/// Three rows on either side: left the time and the designation, right the state, the note and the higher formation.
/// Gives the foot of what stands under the frame, or of the frame.
double drawAmplifiers(Pencil& letters, const UnitSymbol& unit, double halfWide, double bottom, double h) {
    const double capital = letters.gauge().letters;
    const double pitch = std::max(0.45 * h, 1.4 * capital);
    const auto onLeft = [&](const std::string& text, double y) {
        if (!text.empty()) {
            letters.lettersFrom(text, {-halfWide - kBeside - drawing::textWidth(text, capital), y}, capital);
        }
    };
    const auto onRight = [&](const std::string& text, double y) {
        if (!text.empty()) {
            letters.lettersFrom(text, {halfWide + kBeside, y}, capital);
        }
    };
    const bool isLong = unit.note.size() > kLongNote;
    onLeft(unit.time, -pitch);
    onLeft(unit.designation, pitch);
    onRight(unit.state, -pitch);
    onRight(isLong ? std::string{} : unit.note, 0);
    onRight(unit.higher, pitch);
    if (isLong) {
        constexpr double kRowsApart = 1.2;
        const double under = std::max(bottom + kBeside, pitch + capital / 2 + kRowsApart);
        letters.letters({{unit.note}, capital}, {0, under + capital / 2}, Degrees(0));
        return under + capital;
    }
    return bottom;
}

/// From the bottom's middle down and then toward the azimuth; toward the north first to the side, so that it never
/// crosses its own symbol.
void drawDirection(Pencil& pencil, Degrees direction, double bottom, double halfWide, double h) {
    const double turn = radians(direction).value();
    const Vector u{std::sin(turn), -std::cos(turn)};
    Points shaft{{0, bottom}, {0, bottom + 0.40 * h}};
    if (u.y < 0) {
        const double side = u.x >= 0 ? 1 : -1;
        shaft.push_back({side * (halfWide + 1), bottom + 0.40 * h});
    }
    const Point tip = shaft.back() + u * (1.1 * h);
    shaft.push_back(filledHead(pencil, tip, u).at);
    pencil.line(shaft);
}

std::optional<Point> drawStaff(Pencil& pencil, const UnitFrame& frame, double bottom, double h) {
    const bool fromCorner = frame.affiliation == Affiliation::Friend || frame.affiliation == Affiliation::Neutral;
    const Point from = fromCorner ? Point{-frame.a * h, frame.b * h} : Point{-frame.top * h, 0};
    const Point foot{from.x, bottom + 0.75 * h};
    pencil.line({from, foot});
    return foot;
}

drawing::Box boundsOf(const Points& points) {
    drawing::Box box;
    for (const Point p : points) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

}  // namespace

namespace {

/// Does a line run through letters or the mark of its own symbol?
bool crossesOwn(const UnitSketch& sketch, Point from, Point spot) {
    constexpr double kClear = 0.3;
    for (const drawing::Mark& mark : sketch.letters.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            const double wide = drawing::textWidth(text->text, text->capHeight);
            const TurnedBox box{text->start + Vector{wide / 2, -text->capHeight / 2}, wide, text->capHeight,
                                Degrees(0)};
            const bool isInside = box.middle.y > sketch.frame.top && box.middle.y < sketch.frame.bottom &&
                                  std::abs(box.middle.x) < sketch.frame.right;
            if (!isInside && box.grown(kClear).meets(from, spot)) {
                return true;
            }
        }
    }
    const double high = sketch.frame.top - drawing::extent(sketch.ink).top;
    const TurnedBox over{{0, sketch.frame.top - high / 2}, sketch.frame.height(), high - kClear, Degrees(0)};
    return high > kClear && over.meets(from, spot);
}

}  // namespace

Point lineStart(const UnitSketch& sketch, Vector toSpot) {
    constexpr double kNearlyDown = 0.5;  // cosine of 60 degrees
    const Vector u = drawing::unit(toSpot);
    const auto end = drawing::leaves(sketch.outline, {0, 0}, u);
    const Point toward = end ? u * end->far : Point{};
    const Point under{0, sketch.frame.bottom};
    const Point usual = u.y > kNearlyDown ? under : toward;
    // Where letters or the mark stand in the way, from another side of the frame.
    for (const Point start : {usual, toward, under, Point{u.x < 0 ? sketch.frame.left : sketch.frame.right, 0},
                              Point{u.x < 0 ? sketch.frame.left : sketch.frame.right, sketch.frame.bottom}}) {
        if (!crossesOwn(sketch, start, toSpot)) {
            return start;
        }
    }
    return usual;
}

UnitSketch sketchUnit(const UnitSymbol& unit, const Manner& manner, const drawing::Gauge& gauge) {
    const double h = gauge.symbol;
    const UnitFrame frame = unitFrame(unit.affiliation);
    UnitSketch sketch;
    Manner own = manner;
    own.standing = unit.isDashed ? Standing::Planned : manner.standing;
    Pencil ink(sketch.ink, own, gauge);
    Pencil letters(sketch.letters, own, gauge);
    sketch.outline = scaled(frame.outline, h);
    ink.outline(sketch.outline, frame.isRound() ? drawing::Join::Round : drawing::Join::Miter);
    sketch.frame = boundsOf(widened(sketch.outline, ink.outlineReach()));
    // Only the frame tells the enemy: an icon or an echelon mark drawn twice would be another one.
    Pencil single = ink.single();
    for (const measures::UnitIcon icon : unit.icons) {
        drawIcon(single, icon, frame, h);
    }
    if (!unit.letters.empty()) {
        letters.letters({{unit.letters}, std::max(1.8, 0.36 * h)}, {0, 0}, Degrees(0));
    }
    const double bottom = sketch.frame.bottom;
    drawMark(single, unit, -sketch.frame.top, h);
    sketch.under = drawAmplifiers(letters, unit, sketch.frame.right, bottom, h);
    const double halfWide = std::max(sketch.frame.right, drawing::extent(sketch.letters).right);
    if (unit.direction) {
        drawDirection(single, *unit.direction, bottom, halfWide, h);
    }
    if (unit.isHeadquarters) {
        sketch.foot = drawStaff(single, frame, bottom, h);
    }
    return sketch;
}

UnitSketch sketchUnit(Desk& desk, Subject& subject) {
    const std::string typed = fieldOf(*subject.measure, "unit");
    measures::UnitSymbol unit = measures::readUnit(typed.empty() ? subject.measure->name : typed);
    Manner& manner = subject.manner;
    if (manner.side == Side::Enemy && unit.affiliation == Affiliation::Friend) {
        unit.affiliation = Affiliation::Hostile;
    } else if (manner.side == Side::Own && unit.affiliation == Affiliation::Hostile) {
        const bool onePen = desk.engraving().pens == PenMode::OnePen;
        manner.side = Side::Enemy;
        manner.ink = onePen ? drawing::Ink::Black : drawing::Ink::Red;
        manner.doubled = onePen;
    }
    return sketchUnit(unit, manner, desk.gauge());
}

void placeUnit(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    if (!subject.row.empty() || subject.tip) {
        placeRow(desk, subject);
        return;
    }
    UnitSketch sketch = sketchUnit(desk, subject);
    const drawing::Box whole = sketch.whole();
    const Point spot = subject.points.front();
    const Point own = sketch.foot ? spot - *sketch.foot : spot;
    const auto lineFrom = [&](Point centre) {
        if (!sketch.foot) {
            return Points{centre + lineStart(sketch, spot - centre), spot};
        }
        // From the staff's foot with one elbow, so that it runs through no letter of its own.
        const Point foot = centre + *sketch.foot;
        return Points{foot, {spot.x, foot.y}, spot};
    };
    const auto centre = blockPlace(desk, subject, whole, own, lineFrom);
    if (!centre) {
        desk.remark(subject, kLabelLeftOut);
        return;
    }
    if (*centre != own) {
        extensionLine(desk, subject, lineFrom(*centre), ExtensionEnd::Dot);
        subject.isAside = true;
    }
    subject.handle = centre;
    layUnit(desk, subject, std::move(sketch), *centre);
}

void layUnit(Desk& desk, Subject& subject, UnitSketch sketch, Point centre) {
    const drawing::Box whole = sketch.whole();
    subject.ink.append(drawing::moved(std::move(sketch.ink), centre));
    subject.letters.append(drawing::moved(std::move(sketch.letters), centre));
    desk.take(subject, {centre + whole.middle(), whole.width(), whole.height(), Degrees(0)});
}

}  // namespace crosstick::symbols
