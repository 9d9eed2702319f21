#include "ui/press/route_card_ladder.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/measures/catalogue.h"
#include "symbols/engrave.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

constexpr double kLinePen = 0.5;
constexpr double kTick = 2.2;      // half the mark of a crossing
constexpr double kFootRoom = 1.4;  // a point's tip above its strip's lower edge
constexpr double kLeastBox = 8.2;  // of a point's box over its tip
constexpr double kDot = 1.3;
constexpr Hand kNameHand{1.8, drawing::Weight::Bold};

/// What stands in the box: a checkpoint's number, another point's abbreviation; a longer text would burst it.
std::vector<std::string> rowsOf(const plan::Measure& point) {
    constexpr double kBoxRoom = 6.5;
    const measures::Entry* entry = measures::find(point.kind);
    const std::string abbreviation = entry == nullptr ? std::string{} : std::string(entry->abbreviation);
    const bool byNumber = point.kind == "checkpoint" || abbreviation.empty();
    const std::string text = byNumber && !point.number.empty() ? point.number
                             : abbreviation.empty()            ? point.name
                                                               : abbreviation;
    return {fitted(text, kBoxRoom, kNameHand)};
}

/// Where the line enters and leaves a mark.
struct Passed {
    double top, bottom;
};

Passed drawPoint(CardPen& pen, const CardMeasures& m, const plan::MeasurePtr& point, double tip) {
    if (!point) {
        pen.dot({m.ladderLine, tip - kDot / 2}, kDot);
        return {tip - kDot, tip};
    }
    drawing::Gauge gauge;
    gauge.symbol = 4.8;
    const drawing::Drawing box = symbols::actionBox({m.ladderLine, tip}, rowsOf(*point), gauge, drawing::Ink::Black);
    const double top = drawing::extent(box).top;
    pen.append(box);
    return {top, tip};
}

/// Pushes rows apart to the least distance inside a space; they keep their order.
std::vector<double> spread(std::vector<double> rows, double step, double from, double to) {
    for (std::size_t n = 0; n < rows.size(); ++n) {
        rows[n] = std::max(rows[n], n == 0 ? from : rows[n - 1] + step);
    }
    for (std::size_t n = rows.size(); n-- > 0;) {
        rows[n] = std::min(rows[n], n + 1 == rows.size() ? to : rows[n + 1] - step);
    }
    return rows;
}

void drawCrossings(CardPen& pen, const CardMeasures& m, const movement::PaperLeg& leg, std::size_t piece, double from,
                   double to) {
    std::vector<const movement::PaperCrossing*> met;
    for (const movement::PaperCrossing& crossing : leg.crossings) {
        if (crossing.piece == piece) {
            met.push_back(&crossing);
        }
    }
    const double top = from + m.crossingRow / 2;
    const double foot = to - m.crossingRow / 2;
    const auto room = static_cast<std::size_t>(std::max(1.0, (foot - top) / m.crossingRow + 1));
    const std::size_t shown = met.size() > room ? room - 1 : met.size();
    std::vector<double> rows;
    for (std::size_t n = 0; n < shown; ++n) {
        rows.push_back(from + met[n]->share * (to - from));
    }
    if (shown < met.size()) {
        rows.push_back(foot);
    }
    rows = spread(std::move(rows), m.crossingRow, top, std::max(top, foot));
    for (std::size_t n = 0; n < shown; ++n) {
        const std::string metres = fmt::format("{}", met[n]->metresFromLast);
        const double base = rows[n] + kNameHand.capHeight / 2;
        pen.line({m.ladderLine - kTick, rows[n]}, {m.ladderLine + kTick, rows[n]}, kLinePen);
        if (m.metresUnder > 0) {
            const double width = m.ladderEnd - m.ladderText;
            pen.writeWithin(met[n]->label, {m.ladderText, base - 0.4}, width, kNameHand, Align::Left);
            pen.write(metres, {m.ladderText, base - 0.4 + m.metresUnder}, kInfoHand);
            continue;
        }
        pen.write(metres, {m.ladderEnd, base}, kInfoHand, Align::Right);
        pen.writeWithin(met[n]->label, {m.ladderText, base},
                        m.ladderEnd - m.ladderText - widthOf(metres, kInfoHand) - 0.8, kNameHand, Align::Left);
    }
    if (shown < met.size()) {
        pen.write(said("and %1 more", {std::to_string(met.size() - shown)}), {m.ladderText, rows.back() + 0.9},
                  kInfoHand);
    }
}

}  // namespace

void drawLadder(CardPen& pen, const LadderOf& of, const LadderStart& start, const std::vector<PlacedStrip>& strips) {
    const CardMeasures& m = of.measures;
    const double firstTip =
        start.point ? std::max(start.bottom - kFootRoom, start.top + kLeastBox) : start.bottom - kFootRoom;
    Passed last = drawPoint(pen, m, start.point, firstTip);
    for (const PlacedStrip& placed : strips) {
        const movement::PaperLeg& leg = of.paper.legs[placed.strip.leg];
        const plan::MeasurePtr point =
            placed.strip.endsLeg ? of.plan.measure(of.figures.legs[placed.strip.leg].to) : nullptr;
        const Passed next = drawPoint(pen, m, point, placed.bottom - kFootRoom);
        pen.line({m.ladderLine, last.bottom}, {m.ladderLine, next.top}, kLinePen);
        drawCrossings(pen, m, leg, placed.strip.piece, last.bottom, next.top);
        last = next;
    }
}

}  // namespace crosstick::press
