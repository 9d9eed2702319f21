#include "ui/press/route_card_page.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/movement/evacuation.h"
#include "core/movement/paper_figures.h"
#include "ui/press/route_card_head.h"
#include "ui/press/route_card_ladder.h"
#include "ui/press/route_card_measures.h"
#include "ui/press/route_card_words.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;

/// What all cards of one route share.
struct Work {
    const plan::Plan& plan;
    const movement::RouteFigures& figures;
    const movement::PaperRoute& paper;
    const CardWords& words;
    geodesy::AngleUnit unit;
    const CardMeasures& measures;
    std::size_t cards = 1;

    [[nodiscard]] CardHead head(std::size_t number) const {
        return {measures, words, unit, paper.paces.has_value(), number, cards};
    }
};

/// The point that a card begins with, and what was walked before it.
struct Beginning {
    std::string label, grid, tie, time;
    plan::MeasurePtr point;
    std::int64_t metres = 0;
    std::optional<std::int64_t> paces = 0;
    bool broughtOn = false;
};

/// A route point's label with its grid beside it where there is room for both, else under it.
void drawLabel(CardPen& pen, const CardMeasures& m, const std::string& label, const std::string& grid, double top,
               double width) {
    const double base = top + m.labelDrop;
    const double gridWidth = widthOf(grid, m.grid);
    const double labelRoom = width - gridWidth - 2;
    if (labelRoom < 6) {
        pen.writeWithin(label, {m.text, base}, width, m.label, Align::Left);
        pen.writeWithin(grid, {m.text, top + m.gridDrop}, width, m.grid, Align::Left);
        return;
    }
    pen.writeWithin(label, {m.text, base}, labelRoom, m.label, Align::Left);
    const double gridLeft = m.text + std::max(14.0, std::min(labelRoom, widthOf(label, m.label)) + 2);
    pen.write(grid, {std::min(gridLeft, m.text + width - gridWidth), base}, m.grid);
}

/// Figures of the columns metres and paces.
void drawSums(CardPen& pen, const CardMeasures& m, std::int64_t metres, std::optional<std::int64_t> paces, double base,
              Hand hand) {
    pen.writeWithin(fmt::format("{}", metres), {m.metresEnd, base}, m.figureWidth, hand, Align::Right);
    if (paces) {
        pen.writeWithin(fmt::format("{}", *paces), {m.pacesEnd, base}, m.figureWidth, hand, Align::Right);
    }
}

/// The point a card begins with; what was walked before it stands in the columns, "brought on" beside or under it.
void drawStart(CardPen& pen, const CardMeasures& m, const Beginning& beginning, double top) {
    constexpr double kBrought = 15;  // room for the words
    const bool beside = m.gridDrop == m.labelDrop;
    const double second = top + m.labelDrop + m.tieStep;
    const double labelEnd = beside                ? m.text + m.textWidth
                            : beginning.broughtOn ? m.metresEnd - m.figureWidth
                                                  : m.right - m.arriveWidth - 2;
    drawLabel(pen, m, beginning.label, beginning.grid, top, labelEnd - m.text);
    pen.write(beginning.time, {m.right, top + m.labelDrop}, m.figure, Align::Right);
    const double tieEnd = beginning.broughtOn && !beside ? m.pacesEnd - kBrought : m.right;
    pen.write(fitted(beginning.tie, tieEnd - m.text, kTieHand), {m.text, second}, kTieHand);
    if (beginning.broughtOn) {
        pen.write(said("brought on"), {beside ? m.azimuthEnd : m.pacesEnd, beside ? top + m.labelDrop : second},
                  kSmallHand, Align::Right);
        drawSums(pen, m, beginning.metres, beginning.paces, top + m.labelDrop, kTieHand);
    }
    pen.line({m.divide, top + m.startRow}, {m.right, top + m.startRow}, kThinRule);
}

/// Azimuth with back and grid, metres and paces of one straight piece.
void drawFigures(CardPen& pen, const CardMeasures& m, const movement::PaperPiece& piece, double top,
                 geodesy::AngleUnit unit) {
    const std::string sign = unit == geodesy::AngleUnit::Degrees ? "°" : "";
    pen.write(piece.magnetic + sign, {m.azimuthEnd, top + m.figureDrop}, m.azimuth, Align::Right);
    pen.write(said("back %1", {piece.backMagnetic + sign}), {m.azimuthEnd, top + m.backDrop}, kSmallHand, Align::Right);
    if (m.gridAzimuthDrop > 0) {
        pen.write(said("grid %1", {piece.grid + sign}), {m.azimuthEnd, top + m.gridAzimuthDrop}, kSmallHand,
                  Align::Right);
    }
    drawSums(pen, m, piece.metres, piece.paces, top + m.figureDrop, m.figure);
}

/// A line to write the time on at which the point was passed.
void drawPassed(CardPen& pen, const CardMeasures& m, const PlacedStrip& placed) {
    const double base = m.passedUp > 0 ? placed.bottom - m.passedUp : placed.top + m.passedDrop;
    pen.write(said("passed"), {m.pacesEnd, base}, kSmallHand, Align::Right);
    pen.line({m.pacesEnd + 2, base}, {m.right, base}, kThinRule);
}

void drawStrip(CardPen& pen, const Work& work, const PlacedStrip& placed) {
    const CardMeasures& m = work.measures;
    const Strip& strip = placed.strip;
    const movement::PaperLeg& leg = work.paper.legs[strip.leg];
    const movement::PaperPiece& piece = leg.pieces[strip.piece];
    drawFigures(pen, m, piece, placed.top, work.unit);
    if (!strip.endsLeg) {
        pen.write(said("to the bend"), {m.text, placed.top + m.labelDrop}, kTieHand);
        const bool under = m.gridDrop > m.labelDrop;
        pen.write(piece.toGrid, {under ? m.text : m.text + 17, placed.top + m.gridDrop}, {2.0, Weight::Bold});
        return;
    }
    drawLabel(pen, m, leg.to, leg.toGrid, placed.top, m.textWidth);
    double base = placed.top + m.gridDrop;
    for (const std::string& line : strip.tie) {
        pen.write(line, {m.text, base += m.tieStep}, kTieHand);
    }
    base = placed.top + m.infoTop;
    for (const std::string& line : strip.info) {
        pen.write(line, {m.text, base}, kInfoHand);
        base += m.infoStep;
    }
    pen.writeWithin(leg.arrival, {m.right, placed.top + m.figureDrop}, m.arriveWidth, m.figure, Align::Right);
    drawPassed(pen, m, placed);
}

/// Sums up to the end of a card, and on the last one how exact they are. @return the lower edge
double drawTotals(CardPen& pen, const Work& work, const Beginning& end, bool last, double top) {
    const CardMeasures& m = work.measures;
    const double base = top + m.totalsRow - 2.4;
    pen.write(said(last ? "All legs" : "Carried on"), {m.left, base}, m.label);
    const std::string time = work.figures.use == plan::Use::Vehicle ? said("a vehicle: no time")
                             : work.paper.time.empty()              ? said("time unknown: no rate")
                                                                    : said("%1 on the move", {work.paper.time});
    pen.writeWithin(last ? time : said("to the next card"), {m.text, base}, m.textWidth, kFactHand, Align::Left);
    drawSums(pen, m, end.metres, end.paces, base, m.figure);
    pen.writeWithin(end.time, {m.right, base}, m.arriveWidth, m.figure, Align::Right);
    double foot = top + m.totalsRow;
    if (last) {
        pen.write(fitted(work.words.exact, m.right - m.exactLeft, kSmallHand), {m.exactLeft, base + m.exactRow},
                  kSmallHand);
        foot += m.exactRow;
    }
    pen.line({m.left, foot}, {m.right, foot}, kRule);
    return foot;
}

std::vector<std::string> noteRows(const CardMeasures& m, const CardNote& note) {
    // the lead stands in the first row: its room is kept by a blank of its width
    return wrapped(note.lead + ' ' + note.text, m.right - m.left - 4, m.lead, 4);
}

/// Where a card stands among a route's cards.
struct Turn {
    bool first, last;
    [[nodiscard]] bool has(OnCard on) const {
        return on == OnCard::Every || (on == OnCard::First && first) || (on == OnCard::Last && last);
    }
};

double notesHeight(const Work& work, Turn turn) {
    double height = 0;
    for (const CardNote& note : work.words.notes) {
        if (turn.has(note.on)) {
            height += work.measures.notesStep * static_cast<double>(noteRows(work.measures, note).size());
        }
    }
    return height + 1.5;
}

void drawNotes(CardPen& pen, const Work& work, Turn turn, double top) {
    const CardMeasures& m = work.measures;
    double base = top + 0.9;
    for (const CardNote& note : work.words.notes) {
        if (!turn.has(note.on)) {
            continue;
        }
        const auto rows = noteRows(m, note);
        for (std::size_t n = 0; n < rows.size(); ++n) {
            base += m.notesStep;
            const bool lead = n == 0 && rows[n].starts_with(note.lead);
            const double indent = lead ? widthOf(note.lead + ' ', m.lead) : 0;
            if (lead) {
                pen.write(note.lead, {m.left, base}, m.lead);
            }
            const std::string rest = lead ? rows[n].substr(std::min(rows[n].size(), note.lead.size() + 1)) : rows[n];
            pen.write(rest, {m.left + indent, base}, m.note);
        }
    }
}

std::vector<std::string> sourceRows(const Work& work) {
    const CardMeasures& m = work.measures;
    return wrapped(m.gridAzimuthDrop > 0 ? work.words.source : work.words.briefSource, m.right - m.left, m.source, 3);
}

double tableFoot(const Work& work, Turn turn) {
    const CardMeasures& m = work.measures;
    const double source = m.sourceFoot - m.sourceStep * static_cast<double>(sourceRows(work).size()) - 1;
    return source - notesHeight(work, turn) - m.totalsRow - (turn.last ? m.exactRow : 0);
}

void drawFoot(CardPen& pen, const Work& work) {
    const CardMeasures& m = work.measures;
    const auto rows = sourceRows(work);
    double base = m.sourceFoot - m.sourceStep * static_cast<double>(rows.size() - 1);
    for (const std::string& row : rows) {
        pen.write(row, {m.left, base}, m.source);
        base += m.sourceStep;
    }
    pen.line({0, m.height / 2}, {3.5, m.height / 2}, kThinRule);
    pen.line({m.width - 3.5, m.height / 2}, {m.width, m.height / 2}, kThinRule);
}

/// Strips under each other, grown evenly where the card has room to spare.
std::vector<PlacedStrip> placed(const CardMeasures& m, const std::vector<Strip>& strips, double top, double foot) {
    double used = 0;
    double wanted = 0;
    for (const Strip& strip : strips) {
        used += strip.height;
        wanted += strip.endsLeg ? std::max(0.0, m.fullStrip - strip.height) : 0;
    }
    const double grow = wanted > 0 ? std::clamp((foot - top - used) / wanted, 0.0, 1.0) : 0;
    std::vector<PlacedStrip> out;
    for (const Strip& strip : strips) {
        const double height = strip.height + (strip.endsLeg ? grow * std::max(0.0, m.fullStrip - strip.height) : 0);
        out.push_back({strip, top, top + height});
        top += height;
    }
    return out;
}

/// Where a card's last strip leaves the navigator: the next one begins there.
Beginning ending(const Work& work, const std::vector<Strip>& strips, Beginning from) {
    for (const Strip& strip : strips) {
        const movement::PaperPiece& piece = work.paper.legs[strip.leg].pieces[strip.piece];
        from.metres += piece.metres;
        from.paces = from.paces && piece.paces ? std::optional(*from.paces + *piece.paces) : std::nullopt;
    }
    const Strip& last = strips.back();
    const movement::PaperLeg& leg = work.paper.legs[last.leg];
    from.label = last.endsLeg ? leg.to : said("bend");
    from.grid = leg.pieces[last.piece].toGrid;
    from.tie = last.endsLeg ? leg.tie : "";
    from.time = last.endsLeg ? leg.arrival : "";
    from.point = last.endsLeg ? work.plan.measure(work.figures.legs[last.leg].to) : nullptr;
    from.broughtOn = true;
    return from;
}

drawing::Drawing drawCard(const Work& work, const CardStrips& card, const Beginning& from, const Beginning& end,
                          std::size_t number) {
    const CardMeasures& m = work.measures;
    CardPen pen;
    const Turn turn{number == 1, number == work.cards};
    const double top = drawCardHead(pen, work.head(number));
    const double startFoot = top + m.startRow;
    drawStart(pen, m, from, top);
    const auto strips = placed(m, card.strips, startFoot, tableFoot(work, turn));
    for (const PlacedStrip& strip : strips) {
        drawStrip(pen, work, strip);
        if (strip.strip.endsLeg && &strip != &strips.back()) {
            pen.line({m.divide, strip.bottom}, {m.right, strip.bottom}, kThinRule);
        }
    }
    const double foot = strips.back().bottom;
    pen.line({m.divide, top - m.headRow}, {m.divide, foot}, kThinRule);
    pen.line({m.left, foot}, {m.right, foot}, kRule);
    drawLadder(pen, {work.plan, work.figures, work.paper, m}, {top, startFoot, from.point}, strips);
    const double totals = drawTotals(pen, work, end, turn.last, foot);
    drawNotes(pen, work, turn, totals);
    drawFoot(pen, work);
    return std::move(pen).take();
}

/// How much height the first card has for its strips, and those after it.
CardRoom roomOf(const Work& work) {
    const auto under = [&](std::size_t number) {
        CardPen trial;
        return drawCardHead(trial, work.head(number)) + work.measures.startRow;
    };
    const double first = under(1);
    const double later = under(2);
    return {tableFoot(work, {true, false}) - first, tableFoot(work, {false, false}) - later,
            tableFoot(work, {true, true}) - first, tableFoot(work, {false, true}) - later};
}

}  // namespace

Result<std::vector<CardPage>> routeCard(const plan::Plan& plan, const movement::RouteFigures& figures,
                                        geodesy::AngleUnit unit, const std::string& modelName, CardSize size) {
    const auto paper = movement::paperFigures(plan, figures, unit);
    const auto evacuation = movement::evacuationFrom(plan, figures);
    if (!paper || !evacuation) {
        return tl::unexpected(paper ? evacuation.error() : paper.error());
    }
    const CardMeasures& measures = measuresOf(size);
    const CardWords words = cardWords(plan, figures, *paper, *evacuation, {unit, modelName});
    Work work{plan, figures, *paper, words, unit, measures, 1};
    const std::vector<CardStrips> cards = shareOut(*paper, measures, roomOf(work));
    work.cards = cards.size();

    Beginning from{paper->startLabel, paper->startGrid, paper->startTie, paper->startTime, nullptr, 0, 0, false};
    from.point = plan.measure(figures.legs.front().from);
    std::vector<CardPage> pages;
    for (const CardStrips& card : cards) {
        const Beginning end = ending(work, card.strips, from);
        CardPage page;
        page.name =
            said("%1, card %2 of %3", {paper->name, std::to_string(pages.size() + 1), std::to_string(cards.size())});
        page.width = PaperMm(measures.width);
        page.height = PaperMm(measures.height);
        page.drawing = drawCard(work, card, from, end, pages.size() + 1);
        pages.push_back(std::move(page));
        from = end;
    }
    return pages;
}

}  // namespace crosstick::press
