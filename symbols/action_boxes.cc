#include "symbols/action_boxes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "core/measures/catalogue.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"

namespace crosstick::symbols {
namespace {

constexpr double kLone = 2.5;
constexpr double kRow = 1.8;
constexpr double kBetweenRows = 0.5;
constexpr double kRouteDot = 1.0;
constexpr double kClear = 0.8;         ///< of other ink, round a box (engraving E2)
constexpr double kLettersClear = 0.9;  ///< and round letters beside it (A4)
constexpr double kCross = 2.0;
constexpr double kUnderCross = 0.6;

double rowsHeight(const std::vector<Label>& rows) {
    double height = kBetweenRows * (static_cast<double>(rows.size()) - 1);
    for (const Label& row : rows) {
        height += row.capital;
    }
    return rows.empty() ? 0 : height;
}

std::vector<Label> rowLabels(const std::vector<std::string>& rows) {
    std::vector<Label> labels;
    labels.reserve(rows.size());
    const bool lone = rows.size() == 1 && rows.front().size() <= 2;
    for (const std::string& row : rows) {
        labels.push_back({{row}, lone ? kLone : kRow});
    }
    return labels;
}

/// Box and what stands beside it, for a tip at a point.
struct Footprint {
    TurnedBox box;
    std::optional<TurnedBox> beside;
};

Footprint footprint(const BoxShape& shape, const BoxContent& content, Point tip, double letters) {
    const drawing::Box b = shape.bounds;
    Footprint print{{tip + b.middle(), b.width(), b.height(), Degrees(0)}, std::nullopt};
    if (!content.beside.empty()) {
        const Label label{{content.beside}, letters};
        const Point left = tip + Point{b.right + 0.9, shape.bodyMiddle.y};
        print.beside = label.boxAt(left + Vector{label.width() / 2, 0}, Degrees(0));
    }
    return print;
}

bool fits(const Desk& desk, const Footprint& print) {
    return desk.fits(print.box) && (!print.beside || desk.fits(*print.beside));
}

/// Lines under a box: those that meet its body, where its letters are, its point, and what stands beside it. The
/// corners beside the point are bare, and on its spot the box may stand on a line.
enum class Stands { OnItsSpot, Aside };

/// Lines that run through it, or nearer than it should be clear of them.
enum class Lines { Through, Near };

int crossings(Desk& desk, const BoxShape& shape, const Footprint& print, std::size_t owner, Stands stands,
              Lines lines) {
    constexpr double kLow = 0.35;  // shares of the point's height and of its width there
    constexpr double kHalfway = 0.7;
    const double shoulder = -shape.outline[1].y;
    const double tip = print.box.middle.y + print.box.height / 2;
    const auto slice = [&](double from, double to, double wide) {
        return TurnedBox{{print.box.middle.x, tip - shoulder * (from + to) / 2},
                         print.box.width * wide,
                         shoulder * (to - from),
                         Degrees(0)};
    };
    TurnedBox body = print.box;
    body.middle.y -= shoulder / 2;
    body.height -= shoulder;
    constexpr double kTouching = 0.3;
    const double pen = desk.gauge().pen / 2;
    const double clear = lines == Lines::Near ? kClear + pen : kTouching;
    const double lettersClear = lines == Lines::Near ? kLettersClear + pen : kTouching;
    return desk.taken().crossings(body.grown(clear), owner) +
           desk.taken().crossings(slice(kHalfway, 1, kHalfway), owner) +
           desk.taken().crossings(slice(stands == Stands::OnItsSpot ? kLow : -kLow, kHalfway, kLow), owner) +
           (print.beside ? desk.taken().crossings(print.beside->grown(lettersClear), owner) : 0);
}

/// Moved so that the box and what stands beside it are inside the window.
Point tipInside(const Desk& desk, const BoxShape& shape, const BoxContent& content, Point tip) {
    const Footprint print = footprint(shape, content, tip, desk.gauge().letters);
    drawing::Box whole = print.box.bounds();
    whole = print.beside ? whole.joined(print.beside->bounds()) : whole;
    const TurnedBox box{whole.middle(), whole.width(), whole.height(), Degrees(0)};
    return tip + (desk.movedInside(box) - box.middle);
}

/// Angle between a direction and the nearest leg: the wider, the calmer the place.
double clearOf(Vector direction, const std::vector<Vector>& legs) {
    double least = std::numbers::pi;
    for (const Vector leg : legs) {
        least = std::min(least, std::abs(drawing::turn(direction, leg)));
    }
    return least;
}

/// Does the line from the spot to the tip run through the box itself or along its edge? The body stands above the tip,
/// its point tapers; a line that stays flatter than the taper stays clear of both.
bool runsThrough(const BoxShape& shape, Point tip, Point spot) {
    constexpr double kBeside = 0.12;  // radians
    const Vector to = spot - tip;
    const Point shoulder = shape.outline[1];
    return std::atan2(std::abs(to.x), -to.y) < std::atan2(std::abs(shoulder.x), -shoulder.y) + kBeside;
}

/// Does a leg leave so near to north that it would run along the box, less than the clearance from its shoulder, or
/// through it?
bool legsLeaveNorth(const std::vector<Vector>& legs, const BoxShape& shape, const drawing::Gauge& gauge) {
    const Point shoulder = shape.outline[1];
    const double apart = kClear + (gauge.routePen + gauge.pen) / 2;
    return clearOf({0, -1}, legs) <
           std::atan2(std::abs(shoulder.x), -shoulder.y) + std::asin(std::min(1.0, apart / drawing::length(shoulder)));
}

/// Where a tip may be set aside to: directions in the order of liking, and how far.
struct Search {
    std::vector<Vector> directions;
    double farthest;
    Ties ties = Ties::Clear;
};

/// Level and a little up or down: a line that comes in from the side keeps clear of the box above its tip.
std::vector<Vector> flatDirections() {
    constexpr double kAlong = 0.92387953251128674;  // cosine and sine of 22.5 degrees
    constexpr double kAcross = 0.38268343236508977;
    return {{kAlong, kAcross}, {-kAlong, kAcross}, {kAlong, -kAcross}, {-kAlong, -kAcross}};
}

Search usualSearch() {
    Search search{asideDirections(), 24};
    const auto flat = flatDirections();
    search.directions.insert(search.directions.end(), flat.begin(), flat.end());
    return search;
}

/// Farther: below the window's upper edge a box has to stand its own height down.
Search farSearch() {
    return {flatDirections(), 34};
}

/// All round, for a crowd that leaves only a gap.
Search wideSearch() {
    return {allRound(), 30};
}

// Engraving E2: 8 to 16 aside, in the order E, W, SE, SW, NE, NW, S, N, the widest angle between the legs first. One
// sum weighs angle, order, distance and lines under the box; the least wins.
std::optional<Point> tipAside(Desk& desk, const BoxShape& shape, const BoxContent& content, const Search& search,
                              Point spot, const std::vector<Vector>& legs, std::size_t owner) {
    std::optional<Point> best;
    double least = 1e9;
    for (const double distance : drawing::steps(8, search.farthest, 2)) {
        double rank = 0;
        for (const Vector direction : search.directions) {
            rank += std::min(0.15, 1.8 / static_cast<double>(search.directions.size()));
            const Point tip = spot + direction * distance;
            const Footprint print = footprint(shape, content, tip, desk.gauge().letters);
            const double base = rank + 0.12 * (distance - 8) + (std::numbers::pi - clearOf(direction, legs)) * 0.5;
            if (base >= least || !fits(desk, print) || runsThrough(shape, tip, spot)) {
                continue;
            }
            // Its line may cross lines, but no letters, symbols or lines of its kind. What is cheap to ask comes first.
            if (!mayExtend(desk, {tip, spot}, search.ties)) {
                continue;
            }
            double cost = base + (desk.taken().coversSpot(print.box, spot, owner) ? 6 : 0);
            cost += cost < least ? 1.2 * desk.taken().crossings(tip, spot, owner) : 0;
            cost += cost < least ? 2.5 * crossings(desk, shape, print, owner, Stands::Aside, Lines::Through) : 0;
            cost += cost < least ? 2.0 * crossings(desk, shape, print, owner, Stands::Aside, Lines::Near) : 0;
            if (cost < least) {
                least = cost;
                best = tip;
            }
        }
    }
    return best;
}

void drawBox(Desk& desk, Subject& subject, const BoxShape& shape, const BoxContent& content, Point tip) {
    Pencil ink = desk.inkOf(subject);
    Pencil letters = desk.lettersOf(subject);
    Points ring;
    for (const Point p : shape.outline) {
        ring.push_back(p + tip);
    }
    ink.outline(ring, drawing::Join::Miter, Second::Inside);
    for (std::size_t n = 0; n < shape.rows.size(); ++n) {
        letters.letters(shape.rows[n], tip + shape.rowMiddles[n], Degrees(0));
    }
    if (shape.cross) {
        constexpr double kHalf = kCross / 2;
        constexpr double kPen = 0.5;
        const Point at = tip + *shape.cross;
        ink.single().lines({{{at - Vector{kHalf, 0}, at + Vector{kHalf, 0}}, false},
                            {{at - Vector{0, kHalf}, at + Vector{0, kHalf}}, false}},
                           kPen);
    }
    const Footprint print = footprint(shape, content, tip, desk.gauge().letters);
    subject.handle = tip;
    desk.take(subject, print.box);
    if (print.beside) {
        letters.letters({{content.beside}, desk.gauge().letters}, print.beside->middle, Degrees(0));
        desk.take(subject, *print.beside);
    }
}

}  // namespace

BoxContent boxContent(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    BoxContent content;
    const std::string abbreviation(entry == nullptr ? std::string_view{} : entry->abbreviation);
    if (measure.kind == "medevac-pickup") {
        content.hasCross = true;
        content.beside = wordsOf(measure);
        return content;
    }
    content.hasCross = isYes(measure, "cross");
    if (isYes(measure, "lettered")) {
        content.rows.emplace_back("CKP");
    } else if (measure.kind != "checkpoint" || measure.number.empty()) {
        content.rows.push_back(abbreviation);
    }
    if (!measure.number.empty()) {
        (measure.number.size() > 3 ? content.beside : content.rows.emplace_back()) = measure.number;
    }
    if (!measure.name.empty()) {
        if (measure.name.size() <= 3 && content.rows.size() < 2) {
            content.rows.push_back(measure.name);
        } else {
            content.beside += content.beside.empty() ? measure.name : ' ' + measure.name;
        }
    }
    return content;
}

BoxShape boxShape(const BoxContent& content, const drawing::Gauge& gauge, Strokes strokes) {
    BoxShape shape;
    shape.rows = rowLabels(content.rows);
    const double crossHigh = !content.hasCross ? 0 : kCross + (shape.rows.empty() ? 0 : kUnderCross);
    const double inside = crossHigh + rowsHeight(shape.rows);
    double widest = 0;
    for (const Label& row : shape.rows) {
        widest = std::max(widest, row.width());
    }
    const double grown = strokes == Strokes::Double ? kDoubleApart : 0;
    const double pen = strokes == Strokes::Double ? gauge.thin() : gauge.pen;
    const double w = std::max(gauge.symbol, widest + 1.4) + 2 * grown;
    const double room = std::max(0.9 * gauge.symbol, inside + 1.3);
    const double body = room + grown;
    const double tip = 0.6 * gauge.symbol + grown;
    // The tip's angle depends on how far it is set back: a few rounds settle both.
    double back = 0;
    for (int round = 0; round < 8; ++round) {
        back = pen / 2 / std::sin(std::atan2(w / 2, tip - back));  // so that the mitre's ink ends at 0
    }
    shape.outline = {{0, -back}, {-w / 2, -tip}, {-w / 2, -tip - body}, {w / 2, -tip - body}, {w / 2, -tip}};
    const double half = pen / 2;
    shape.bounds = {-w / 2 - half, -tip - body - half, w / 2 + half, 0};
    shape.bodyMiddle = {0, -tip - room / 2};
    double y = shape.bodyMiddle.y - inside / 2;
    if (content.hasCross) {
        shape.cross = Point{0, y + kCross / 2};
        y += crossHigh;
    }
    for (const Label& row : shape.rows) {
        shape.rowMiddles.push_back({0, y + row.capital / 2});
        y += row.capital + kBetweenRows;
    }
    return shape;
}

void placeActionBox(Desk& desk, Subject& subject) {
    const std::vector<Vector>& legs = subject.legs;
    const Point spot = subject.points.front();
    const BoxContent content = boxContent(*subject.measure);
    const BoxShape shape = boxShape(content, desk.gauge(), subject.manner.doubled ? Strokes::Double : Strokes::Single);
    if (!desk.window().contains(spot)) {
        desk.remark(subject, kOutsideWindow);
        return;
    }
    if (subject.onRoute) {
        desk.inkOf(subject).disc(spot, kRouteDot);
    }
    const auto end = subject.onRoute ? ExtensionEnd::Bare : ExtensionEnd::Dot;
    if (subject.symbolAt) {
        const Point tip = tipInside(desk, shape, content, *subject.symbolAt);
        extensionLine(desk, subject, tip, spot, end);
        subject.isAside = true;
        drawBox(desk, subject, shape, content, tip);
        return;
    }
    const Footprint here = footprint(shape, content, spot, desk.gauge().letters);
    const bool ownPlace = fits(desk, here) && !legsLeaveNorth(legs, shape, desk.gauge()) &&
                          !desk.taken().coversSpot(here.box, spot, subject.order);
    if (ownPlace && crossings(desk, shape, here, subject.order, Stands::OnItsSpot, Lines::Near) == 0) {
        drawBox(desk, subject, shape, content, spot);
        return;
    }
    std::optional<Point> tip;
    const Search remote{allRound(), 50};
    const Search overTies{allRound(), 30, Ties::OverTies};
    const Search anyhow{asideDirections(), 24, Ties::Anyhow};
    for (const Search& search : {usualSearch(), wideSearch(), farSearch(), remote, overTies, anyhow}) {
        tip = tip ? tip : tipAside(desk, shape, content, search, spot, legs, subject.order);
    }
    if (tip) {
        extensionLine(desk, subject, *tip, spot, end);
        subject.isAside = true;
        drawBox(desk, subject, shape, content, *tip);
    } else if (ownPlace || fits(desk, here)) {
        drawBox(desk, subject, shape, content, spot);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

drawing::Drawing actionBox(drawing::Point tip, const std::vector<std::string>& rows, const drawing::Gauge& gauge,
                           drawing::Ink ink) {
    drawing::Drawing drawing;
    Pencil pencil(drawing, {ink, Side::Own, Standing::Present, drawing::Halo::None, false}, gauge);
    BoxContent content;
    content.rows = rows;
    const BoxShape shape = boxShape(content, gauge);
    Points ring;
    for (const Point p : shape.outline) {
        ring.push_back(p + tip);
    }
    pencil.outline(ring);
    for (std::size_t n = 0; n < shape.rows.size(); ++n) {
        pencil.letters(shape.rows[n], tip + shape.rowMiddles[n], Degrees(0));
    }
    return drawing;
}

}  // namespace crosstick::symbols
