#include "symbols/order_of_march.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/steps.h"
#include "core/film/march_block.h"
#include "core/measures/unit_words.h"
#include "core/units/number_text.h"
#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/unit_symbol.h"

namespace crosstick::symbols {
namespace {

constexpr double kTitle = 2.5;
constexpr double kTitleLeft = 4;
constexpr double kSmall = 1.8;
constexpr double kRoleGap = 4;

void inkRow(Desk& desk, Subject& subject, const film::MarchRow& row, Point corner) {
    const double h = desk.gauge().letters;
    UnitSketch sketch =
        sketchUnit(measures::withoutAmplifiers(measures::readUnit(row.unit)), subject.manner, desk.gauge());
    const double foot = sketch.frame.bottom;  // a staff stands beside the stem
    const Point middle = corner + row.symbol;
    subject.ink.append(drawing::moved(std::move(sketch.ink), middle));
    subject.letters.append(drawing::moved(std::move(sketch.letters), middle));
    const auto write = [&](const std::string& text, Point left, double capital) {
        if (!text.empty()) {
            desk.lettersOf(subject).lettersFrom(text, left, capital);
        }
    };
    write(row.number, {corner.x + film::kMarchNumber, middle.y}, h);
    write(row.designation, {corner.x + film::kMarchDesignation, middle.y}, h);
    const double end = film::kMarchDesignation + drawing::textWidth(row.designation, h) + kRoleGap;
    write(row.role, {corner.x + std::max(film::kMarchRole, end), middle.y}, h);
    if (row.behind.empty()) {
        return;
    }
    // To 1.0 above the next mark, whose top is 0.12 + 0.30 of a symbol over its frame.
    constexpr double kOver = 0.42;
    const double next = middle.y + desk.gauge().symbol + 8 - desk.gauge().symbol * (0.5 + kOver) - 1.0;
    const Point from = middle + Vector{0, foot + 0.4};
    if (next > from.y) {
        desk.plainInkOf(subject).thin({from, {middle.x, next}});
    }
    write(row.behind, {middle.x + 1.2, (from.y + std::max(next, from.y)) / 2}, kSmall);
}

/// "042 GRID" of a field in degrees, or of the first leg of the route that the block is tied to.
std::string directionWords(const Desk& desk, const Subject& subject) {
    const auto typed = parseNumber(fieldOf(*subject.measure, "direction"));
    std::optional<Degrees> azimuth = typed ? std::optional(Degrees(*typed)) : std::nullopt;
    if (!azimuth && subject.showing->pointsTo) {
        const auto figures = desk.engraving().figures.find(*subject.showing->pointsTo);
        if (figures != desk.engraving().figures.end() && !figures->second.legs.empty() &&
            !figures->second.legs.front().pieces.empty()) {
            azimuth = figures->second.legs.front().pieces.front().gridAzimuth;
        }
    }
    if (!azimuth || !isFinite(*azimuth)) {
        return {};
    }
    std::string digits = numberText(std::round(fullCircle(*azimuth).value()), 0);
    digits = digits == "360" ? "0" : digits;
    return std::string(3 - std::min<std::size_t>(3, digits.size()), '0') + digits + " GRID";
}

/// Up the whole stack, its head on top; what it says runs along it, left of it.
void inkArrow(Desk& desk, Subject& subject, const std::vector<film::MarchRow>& stack, Point corner,
              const std::string& words) {
    constexpr double kBeside = 1.3;
    const double half = desk.gauge().symbol / 2;
    const double x = corner.x + film::kMarchArrow;
    const Point tail{x, corner.y + stack.back().symbol.y + half};
    const Point tip{x, corner.y + stack.front().symbol.y - half};
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = filledHead(ink, tip, {0, -1});
    ink.line({tail, end.at});
    if (!words.empty()) {
        const Label label{{words}, kSmall};
        if (label.width() + 2 < tail.y - tip.y) {
            desk.lettersOf(subject).letters(label, {x - kBeside, (tail.y + tip.y) / 2}, Degrees(90));
        }
    }
}

/// From the block's edge to the nearest place of what it is tied to.
void tie(Desk& desk, Subject& subject, const drawing::Box& box) {
    if (!subject.tip || subject.tip->points.size() < 2) {
        return;
    }
    const drawing::Path path(subject.tip->points, subject.tip->closed);
    const auto onEdge = [&](Point p) {
        return Point{std::clamp(p.x, box.left, box.right), std::clamp(p.y, box.top, box.bottom)};
    };
    Point best = path.at(0);
    for (const double s : drawing::steps(0, path.length(), std::max(0.5, path.length() / 400))) {
        const Point p = path.at(s);
        if (desk.window().contains(p) && drawing::length(p - onEdge(p)) < drawing::length(best - onEdge(best))) {
            best = p;
        }
    }
    const Point from = onEdge(best);
    if (drawing::length(best - from) > 0.5) {
        extensionLine(desk, subject, from, best, ExtensionEnd::Tick);
    }
}

/// Where a hand laid it, moved into the window; where ticks or another block lie there, the nearest free place.
std::optional<TurnedBox> freeBox(const Desk& desk, const TurnedBox& asked) {
    constexpr double kStep = 4;
    TurnedBox box = asked;
    box.middle = desk.movedInside(asked);
    if (desk.fits(box)) {
        return box;
    }
    const drawing::Box room = desk.lettersWindow();
    std::optional<TurnedBox> best;
    for (double y = room.top + box.height / 2; y <= room.bottom - box.height / 2; y += kStep) {
        for (double x = room.left + box.width / 2; x <= room.right - box.width / 2; x += kStep) {
            const TurnedBox other{{x, y}, box.width, box.height, box.angle};
            const bool isNearer =
                !best || drawing::length(other.middle - asked.middle) < drawing::length(best->middle - asked.middle);
            if (isNearer && desk.fits(other)) {
                best = other;
            }
        }
    }
    return best;
}

}  // namespace

void placeOrderOfMarch(Desk& desk, Subject& subject) {
    const plan::Force& force = desk.engraving().plan.force();
    if (force.columnNamed(fieldOf(*subject.measure, "column")) == nullptr) {
        desk.remark(subject, kNoColumn);
    }
    const film::MarchBlock block =
        film::marchBlock(force, force.columnNamed(fieldOf(*subject.measure, "column")), desk.gauge());
    const drawing::Box& size = block.bounds;
    const Point asked = subject.points.front();
    const TurnedBox there{asked + size.middle(), size.width(), size.height(), Degrees(0)};
    const auto box = freeBox(desk, there);
    if (!box) {
        desk.remark(subject, kLabelLeftOut);
        return;
    }
    const Point corner = box->middle - size.middle();
    const drawing::Box edge = box->bounds();
    tie(desk, subject, edge);
    Pencil ink = desk.plainInkOf(subject);
    ink.lines(
        {{{{edge.left, edge.top}, {edge.right, edge.top}, {edge.right, edge.bottom}, {edge.left, edge.bottom}}, true}},
        desk.gauge().thin());
    Pencil letters = desk.lettersOf(subject);
    letters.lettersFrom(block.title, corner + Vector{kTitleLeft, film::kMarchTitleBase - kTitle / 2}, kTitle);
    if (!block.foot.empty()) {
        letters.lettersFrom(block.foot, corner + Vector{kTitleLeft, block.footBase - kSmall / 2}, kSmall);
    }
    const std::string words = directionWords(desk, subject);
    Point at = corner;
    for (const std::vector<film::MarchRow>& stack : block.stacks) {
        for (const film::MarchRow& row : stack) {
            inkRow(desk, subject, row, at);
        }
        inkArrow(desk, subject, stack, at, &stack == &block.stacks.front() ? words : std::string{});
        at.x += block.stackWidth;
    }
    subject.handle = corner;
    desk.take(subject, *box);
}

}  // namespace crosstick::symbols
