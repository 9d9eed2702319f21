#include "ui/press/route_card_page.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/movement/paper_figures.h"
#include "ui/press/facts.h"
#include "ui/press/route_card_ladder.h"
#include "ui/press/route_card_measures.h"
#include "ui/press/route_card_words.h"

namespace crosstick::press {
namespace {

using drawing::Weight;

constexpr double kFactsTop = 30.4;
constexpr double kFactStep = 3.8;  // from one fact to the next
constexpr double kFactRow = 3.0;   // from row to row of one fact
constexpr double kTableTop = 50;   // at the earliest
constexpr double kHeadRow = 6.5;   // height of the row of column heads
constexpr double kNotesStep = 3.6;
constexpr double kSourceStep = 2.7;
constexpr double kSourceFoot = 201.4;  // base line of the last row of the source
constexpr double kStartRow = 10.8;     // label, tie, and the box of the first point beside them
constexpr double kTotalsRow = 7.6;
constexpr double kExactRow = 3.8;
constexpr Hand kNoteHand{2.0, Weight::Regular};
constexpr Hand kLeadHand{2.0, Weight::Bold};
constexpr Hand kSourceHand{1.7, Weight::Regular};

/// What all cards of one route share.
struct Work {
    const plan::Plan& plan;
    const movement::RouteFigures& figures;
    const movement::PaperRoute& paper;
    const CardWords& words;
    geodesy::AngleUnit unit;
    std::size_t cards = 1;
};

/// The point that a card begins with, and what was walked before it.
struct Beginning {
    std::string label, grid, tie, time;
    plan::MeasurePtr point;
    std::int64_t metres = 0;
    std::optional<std::int64_t> paces = 0;
    bool broughtOn = false;
};

void drawMarking(CardPen& pen, const std::string& marking) {
    const Hand hand{2.6, Weight::Bold};
    const std::string text = fitted(marking, 80, hand);
    pen.write(text, {kCardWidth / 2, 7.6}, hand, Align::Middle);
    pen.write(text, {kCardWidth / 2, 206.6}, hand, Align::Middle);
}

/// The film's notches: one each, from five on a wide one counts five.
void drawNotches(CardPen& pen, int count) {
    double right = kRight;
    const auto cut = [&](double width) {
        pen.block({right - width, 4.4, right, 8.4});
        right -= width + 2.5;
    };
    for (int n = 0; n < count % 5; ++n) {
        cut(2.5);
    }
    for (int n = 0; n < std::min(count / 5, 3); ++n) {
        cut(10);
    }
}

void drawTitle(CardPen& pen, const Work& work, std::size_t number) {
    pen.writeWithin(work.words.title, {kLeft, 17.8}, 92, {5.2, Weight::Bold}, Align::Left);
    pen.write(fitted(work.words.purpose, 92, {2.2, Weight::Regular}), {kLeft, 23.2}, {2.2, Weight::Regular});
    pen.write("ROUTE CARD", {kRight, 14.6}, {2.6, Weight::Bold}, Align::Right);
    pen.write(fmt::format("A5, card {} of {}", number, work.cards), {kRight, 18.8}, kFactHand, Align::Right);
    pen.write("copy", {kRight - 20, 23.2}, kFactHand, Align::Right);
    pen.line({kRight - 19, 23.2}, {kRight - 11, 23.2}, kThinRule);
    pen.write("of", {kRight - 9.5, 23.2}, kFactHand, Align::Middle);
    pen.line({kRight - 8, 23.2}, {kRight, 23.2}, kThinRule);
    pen.line({kLeft, 26}, {kRight, 26}, kRule);
}

/// A column of facts of the head.
FactColumn column(double left, double valueLeft, double right) {
    return {left, valueLeft, right, kFactsTop, kFactStep, kFactRow};
}

/// Both columns of facts, the left one's last where it costs less height. @return the base line of the last row
double drawColumns(CardPen& pen, const std::vector<CardFact>& left, const std::vector<CardFact>& right) {
    const auto draw = [](CardPen& on, const std::vector<CardFact>& one, const std::vector<CardFact>& other) {
        return std::max(drawFacts(on, one, column(kLeft, 23, 73)), drawFacts(on, other, column(76, 90, kRight)));
    };
    const std::vector<CardFact> shorter(left.begin(), left.end() - 1);
    std::vector<CardFact> longer = right;
    longer.push_back(left.back());
    CardPen trial;
    CardPen other;
    const bool moved = draw(trial, shorter, longer) < draw(other, left, right);
    return moved ? draw(pen, shorter, longer) : draw(pen, left, right);
}

/// A date a row under the names of what happens. @return the base line of the last row
double drawLight(CardPen& pen, const std::vector<CardLight>& dates, double above) {
    constexpr double kColumn = 13;
    constexpr double kFirst = 23;
    double base = above;
    for (std::size_t n = 0; n < dates.size(); ++n) {
        base += n == 0 ? kFactStep : 0;
        const auto& figures = dates[n].figures;
        for (std::size_t column = 0; column < figures.size(); ++column) {
            const double left = kFirst + kColumn * static_cast<double>(column);
            if (n == 0) {
                pen.write(std::string(figures[column].name), {left, base}, kSmallHand);
            }
            pen.writeWithin(figures[column].text, {left, base + kFactRow}, kColumn - 0.6, kFactHand, Align::Left);
        }
        base += kFactRow;
        pen.write(dates[n].date, {kLeft, base}, kSmallHand);
    }
    if (!dates.empty()) {
        pen.write("Light", {kLeft, base - kFactRow * static_cast<double>(dates.size())}, kSmallHand);
    }
    return base;
}

/// Everything above the table's rows. @return where the first row begins
double drawHead(CardPen& pen, const Work& work, std::size_t number) {
    drawMarking(pen, work.words.marking);
    drawNotches(pen, work.words.notches);
    drawTitle(pen, work, number);
    const double columns = drawColumns(pen, work.words.left, work.words.right);
    const double facts = drawLight(pen, work.words.light, columns);
    const double top = std::max(kTableTop, facts + 2.0);
    const double base = top + 4.2;
    pen.line({kLeft, top}, {kRight, top}, kRule);
    pen.write("What you cross, m", {kLeft, base}, kSmallHand);
    pen.write("To, grid, tie", {kText, base}, kSmallHand);
    pen.write(work.unit == geodesy::AngleUnit::Mils ? "Mag. mils" : "Mag. az.", {kAzimuthEnd, base}, kSmallHand,
              Align::Right);
    pen.write("m", {kMetresEnd, base}, kSmallHand, Align::Right);
    if (work.paper.paces) {
        pen.write("paces", {kPacesEnd, base}, kSmallHand, Align::Right);
    }
    pen.write("arrive", {kRight, base}, kSmallHand, Align::Right);
    pen.line({kLeft, top + kHeadRow}, {kRight, top + kHeadRow}, kThinRule);
    return top + kHeadRow;
}

/// A route point's label with its grid beside it.
void drawLabel(CardPen& pen, const std::string& label, const std::string& grid, double base) {
    const Hand gridHand{2.2, Weight::Bold};
    const Hand labelHand{2.8, Weight::Bold};
    const double gridWidth = widthOf(grid, gridHand);
    const double labelRoom = kTextWidth - gridWidth - 2;
    pen.writeWithin(label, {kText, base}, labelRoom, labelHand, Align::Left);
    const double gridLeft = kText + std::max(14.0, std::min(labelRoom, widthOf(label, labelHand)) + 2);
    pen.write(grid, {std::min(gridLeft, kText + kTextWidth - gridWidth), base}, gridHand);
}

void drawStart(CardPen& pen, const Beginning& beginning, double top) {
    const double base = top + kLabelDrop;
    drawLabel(pen, beginning.label, beginning.grid, base);
    pen.write(beginning.time, {kRight, base}, kFigureHand, Align::Right);
    pen.write(fitted(beginning.tie, kRight - kText, kTieHand), {kText, base + kTieStep}, kTieHand);
    if (beginning.broughtOn) {
        pen.write("brought on", {kAzimuthEnd, base}, kSmallHand, Align::Right);
        pen.writeWithin(fmt::format("{}", beginning.metres), {kMetresEnd, base}, kFigureWidth, kTieHand, Align::Right);
        if (beginning.paces) {
            pen.writeWithin(fmt::format("{}", *beginning.paces), {kPacesEnd, base}, kFigureWidth, kTieHand,
                            Align::Right);
        }
    }
    pen.line({kDivide, top + kStartRow}, {kRight, top + kStartRow}, kThinRule);
}

/// Azimuth with back and grid, metres and paces of one straight piece.
void drawFigures(CardPen& pen, const movement::PaperPiece& piece, double top, geodesy::AngleUnit unit) {
    const std::string sign = unit == geodesy::AngleUnit::Degrees ? "°" : "";
    pen.write(piece.magnetic + sign, {kAzimuthEnd, top + 6.2}, kAzimuthHand, Align::Right);
    pen.write("back " + piece.backMagnetic + sign, {kAzimuthEnd, top + 9.3}, kSmallHand, Align::Right);
    pen.write("grid " + piece.grid + sign, {kAzimuthEnd, top + 12.1}, kSmallHand, Align::Right);
    pen.writeWithin(fmt::format("{}", piece.metres), {kMetresEnd, top + 6.2}, kFigureWidth, kFigureHand, Align::Right);
    if (piece.paces) {
        pen.writeWithin(fmt::format("{}", *piece.paces), {kPacesEnd, top + 6.2}, kFigureWidth, kFigureHand,
                        Align::Right);
    }
}

void drawStrip(CardPen& pen, const Work& work, const PlacedStrip& placed) {
    const Strip& strip = placed.strip;
    const movement::PaperLeg& leg = work.paper.legs[strip.leg];
    const movement::PaperPiece& piece = leg.pieces[strip.piece];
    drawFigures(pen, piece, placed.top, work.unit);
    if (!strip.endsLeg) {
        pen.write("to the bend", {kText, placed.top + kLabelDrop}, kTieHand);
        pen.write(piece.toGrid, {kText + 17, placed.top + kLabelDrop}, {2.0, Weight::Bold});
        return;
    }
    double base = placed.top + kLabelDrop;
    drawLabel(pen, leg.to, leg.toGrid, base);
    for (const std::string& line : strip.tie) {
        pen.write(line, {kText, base += kTieStep}, kTieHand);
    }
    base = placed.top + kInfoTop;
    for (const std::string& line : strip.info) {
        pen.write(line, {kText, base}, kInfoHand);
        base += kInfoStep;
    }
    pen.writeWithin(leg.arrival, {kRight, placed.top + 6.2}, 15, kFigureHand, Align::Right);
    pen.write("passed", {kPacesEnd, placed.bottom - 2.2}, kSmallHand, Align::Right);
    pen.line({kPacesEnd + 2, placed.bottom - 2.2}, {kRight, placed.bottom - 2.2}, kThinRule);
}

/// Sums up to the end of a card, and on the last one how exact they are. @return the lower edge
double drawTotals(CardPen& pen, const Work& work, const Beginning& end, bool last, double top) {
    const double base = top + 5.2;
    pen.write(last ? "All legs" : "Carried on", {kLeft, base}, {2.8, Weight::Bold});
    if (last) {
        const std::string time = work.paper.time.empty() ? "time unknown: no rate" : work.paper.time + " on the move";
        pen.write(fitted(time, kTextWidth, kFactHand), {kText, base}, kFactHand);
    } else {
        pen.write("to the next card", {kText, base}, kFactHand);
    }
    pen.writeWithin(fmt::format("{}", end.metres), {kMetresEnd, base}, kFigureWidth, kFigureHand, Align::Right);
    if (end.paces) {
        pen.writeWithin(fmt::format("{}", *end.paces), {kPacesEnd, base}, kFigureWidth, kFigureHand, Align::Right);
    }
    pen.writeWithin(end.time, {kRight, base}, 15, kFigureHand, Align::Right);
    double foot = top + kTotalsRow;
    if (last) {
        pen.write(fitted(work.words.exact, kRight - kText, kSmallHand), {kText, base + kExactRow}, kSmallHand);
        foot += kExactRow;
    }
    pen.line({kLeft, foot}, {kRight, foot}, kRule);
    return foot;
}

std::vector<std::string> noteRows(const CardNote& note) {
    // the lead stands in the first row: its room is kept by a blank of its width
    return wrapped(note.lead + ' ' + note.text, kRight - kLeft - 4, kLeadHand, 4);
}

double notesHeight(const CardWords& words, bool last) {
    double height = 0;
    for (const CardNote& note : words.notes) {
        if (last || note.onEveryCard) {
            height += kNotesStep * static_cast<double>(noteRows(note).size());
        }
    }
    return height + 1.5;
}

void drawNotes(CardPen& pen, const CardWords& words, bool last, double top) {
    double base = top + 0.9;
    for (const CardNote& note : words.notes) {
        if (!last && !note.onEveryCard) {
            continue;
        }
        const auto rows = noteRows(note);
        for (std::size_t n = 0; n < rows.size(); ++n) {
            base += kNotesStep;
            const bool lead = n == 0 && rows[n].starts_with(note.lead);
            const double indent = lead ? widthOf(note.lead + ' ', kLeadHand) : 0;
            if (lead) {
                pen.write(note.lead, {kLeft, base}, kLeadHand);
            }
            const std::string rest = lead ? rows[n].substr(std::min(rows[n].size(), note.lead.size() + 1)) : rows[n];
            pen.write(rest, {kLeft + indent, base}, kNoteHand);
        }
    }
}

std::vector<std::string> sourceRows(const CardWords& words) {
    return wrapped(words.source, kRight - kLeft, kSourceHand, 3);
}

double tableFoot(const CardWords& words, bool last) {
    const double source = kSourceFoot - kSourceStep * static_cast<double>(sourceRows(words).size()) - 1;
    return source - notesHeight(words, last) - kTotalsRow - (last ? kExactRow : 0);
}

void drawFoot(CardPen& pen, const CardWords& words) {
    const auto rows = sourceRows(words);
    double base = kSourceFoot - kSourceStep * static_cast<double>(rows.size() - 1);
    for (const std::string& row : rows) {
        pen.write(row, {kLeft, base}, kSourceHand);
        base += kSourceStep;
    }
    pen.line({0, kCardHeight / 2}, {3.5, kCardHeight / 2}, kThinRule);
    pen.line({kCardWidth - 3.5, kCardHeight / 2}, {kCardWidth, kCardHeight / 2}, kThinRule);
}

/// Strips under each other, grown evenly where the card has room to spare.
std::vector<PlacedStrip> placed(const std::vector<Strip>& strips, double top, double foot) {
    double used = 0;
    double wanted = 0;
    for (const Strip& strip : strips) {
        used += strip.height;
        wanted += strip.endsLeg ? std::max(0.0, kFullStrip - strip.height) : 0;
    }
    const double grow = wanted > 0 ? std::clamp((foot - top - used) / wanted, 0.0, 1.0) : 0;
    std::vector<PlacedStrip> out;
    for (const Strip& strip : strips) {
        const double height = strip.height + (strip.endsLeg ? grow * std::max(0.0, kFullStrip - strip.height) : 0);
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
    from.label = last.endsLeg ? leg.to : "bend";
    from.grid = leg.pieces[last.piece].toGrid;
    from.tie = last.endsLeg ? leg.tie : "";
    from.time = last.endsLeg ? leg.arrival : "";
    from.point = last.endsLeg ? work.plan.measure(work.figures.legs[last.leg].to) : nullptr;
    from.broughtOn = true;
    return from;
}

drawing::Drawing drawCard(const Work& work, const CardStrips& card, const Beginning& from, const Beginning& end,
                          std::size_t number) {
    CardPen pen;
    const bool last = number == work.cards;
    const double top = drawHead(pen, work, number);
    const double startFoot = top + kStartRow;
    drawStart(pen, from, top);
    const auto strips = placed(card.strips, startFoot, tableFoot(work.words, last));
    for (const PlacedStrip& strip : strips) {
        drawStrip(pen, work, strip);
        if (strip.strip.endsLeg && &strip != &strips.back()) {
            pen.line({kDivide, strip.bottom}, {kRight, strip.bottom}, kThinRule);
        }
    }
    const double foot = strips.back().bottom;
    pen.line({kDivide, top - kHeadRow}, {kDivide, foot}, kThinRule);
    pen.line({kLeft, foot}, {kRight, foot}, kRule);
    drawLadder(pen, work.plan, work.figures, work.paper, top, startFoot, from.point, strips);
    const double totals = drawTotals(pen, work, end, last, foot);
    drawNotes(pen, work.words, last, totals);
    drawFoot(pen, work.words);
    return std::move(pen).take();
}

}  // namespace

Result<std::vector<CardPage>> routeCard(const plan::Plan& plan, const movement::RouteFigures& figures,
                                        geodesy::AngleUnit unit, const std::string& modelName) {
    const auto paper = movement::paperFigures(plan, figures, unit);
    if (!paper) {
        return tl::unexpected(paper.error());
    }
    const CardWords words = cardWords(plan, figures, *paper, unit, modelName);
    Work work{plan, figures, *paper, words, unit, 1};
    CardPen trial;
    const double top = drawHead(trial, work, 1);
    const std::vector<CardStrips> cards =
        shareOut(*paper, {tableFoot(words, false) - top - kStartRow, tableFoot(words, true) - top - kStartRow});
    work.cards = cards.size();

    Beginning from{paper->startLabel, paper->startGrid, paper->startTie, paper->startTime, nullptr, 0, 0, false};
    from.point = plan.measure(figures.legs.front().from);
    std::vector<CardPage> pages;
    for (const CardStrips& card : cards) {
        const Beginning end = ending(work, card.strips, from);
        CardPage page;
        page.name = fmt::format("{}, card {} of {}", paper->name, pages.size() + 1, cards.size());
        page.drawing = drawCard(work, card, from, end, pages.size() + 1);
        pages.push_back(std::move(page));
        from = end;
    }
    return pages;
}

}  // namespace crosstick::press
