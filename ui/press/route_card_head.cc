#include "ui/press/route_card_head.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/press/facts.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;

constexpr double kFactsTop = 30.4;
constexpr double kFactStep = 3.8;  // from one fact to the next
constexpr double kFactRow = 3.0;   // from row to row of one fact
constexpr double kTableTop = 50;   // at the earliest

void drawMarking(CardPen& pen, const CardHead& head) {
    const CardMeasures& m = head.measures;
    const std::string text = fitted(head.words.marking, 0.54 * m.width, m.mark);
    pen.write(text, {m.width / 2, m.markTop}, m.mark, Align::Middle);
    pen.write(text, {m.width / 2, m.markFoot}, m.mark, Align::Middle);
}

/// The film's notches: one each, from five on a wide one counts five.
void drawNotches(CardPen& pen, const CardHead& head, double top, double depth) {
    double right = head.measures.right;
    const auto cut = [&](double width) {
        pen.block({right - width, top, right, top + depth});
        right -= width + 2.5;
    };
    for (int n = 0; n < head.words.notches % 5; ++n) {
        cut(2.5);
    }
    for (int n = 0; n < std::min(head.words.notches / 5, 3); ++n) {
        cut(10);
    }
}

/// "copy __ of __", to be written in by hand.
void drawCopies(CardPen& pen, double right, double base, Hand hand) {
    pen.write(said("copy"), {right - 20, base}, hand, Align::Right);
    pen.line({right - 19, base}, {right - 11, base}, kThinRule);
    pen.write(said("of"), {right - 9.5, base}, hand, Align::Middle);
    pen.line({right - 8, base}, {right, base}, kThinRule);
}

/// A column of facts of the head.
FactColumn column(double left, double valueLeft, double right) {
    return {left, valueLeft, right, kFactsTop, kFactStep, kFactRow};
}

/// Both columns of facts, the left one's last where it costs less height. @return the base line of the last row
double drawColumns(CardPen& pen, const std::vector<CardFact>& left, const std::vector<CardFact>& right) {
    const auto draw = [](CardPen& on, const std::vector<CardFact>& one, const std::vector<CardFact>& other) {
        return std::max(drawFacts(on, one, column(kA5.left, 23, 73)), drawFacts(on, other, column(76, 90, kA5.right)));
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
        pen.write(dates[n].date, {kA5.left, base}, kSmallHand);
    }
    if (!dates.empty()) {
        pen.write(said("Light"), {kA5.left, base - kFactRow * static_cast<double>(dates.size())}, kSmallHand);
    }
    return base;
}

/// @return where the table begins
double drawWideHead(CardPen& pen, const CardHead& head) {
    const CardWords& words = head.words;
    drawNotches(pen, head, 4.4, 4);
    pen.writeWithin(words.title, {kA5.left, 17.8}, 92, {5.2, Weight::Bold}, Align::Left);
    pen.write(fitted(words.purpose, 92, {2.2, Weight::Regular}), {kA5.left, 23.2}, {2.2, Weight::Regular});
    pen.write(said("ROUTE CARD"), {kA5.right, 14.6}, {2.6, Weight::Bold}, Align::Right);
    pen.write(said("A5, card %1 of %2", {std::to_string(head.number), std::to_string(head.cards)}), {kA5.right, 18.8},
              kFactHand, Align::Right);
    drawCopies(pen, kA5.right, 23.2, kFactHand);
    pen.line({kA5.left, 26}, {kA5.right, 26}, kRule);
    const double columns = drawColumns(pen, words.left, words.right);
    return std::max(kTableTop, drawLight(pen, words.light, columns) + 2.0);
}

/// Rows of letters across a small card. @return the base line of the last one
double drawRows(CardPen& pen, const std::vector<std::string>& rows, double above) {
    constexpr double kRow = 2.7;
    for (const std::string& row : rows) {
        pen.write(row, {kA6.left, above += kRow}, kSmallHand);
    }
    return above;
}

std::vector<std::string> factRows(const CardWords& words) {
    std::vector<std::string> parts;
    for (const auto* side : {&words.left, &words.right}) {
        for (const CardFact& fact : *side) {
            if (fact.weight == Weight::Regular) {
                parts.push_back(fact.label + ' ' + fact.value);
            }
        }
    }
    return packed(parts, kA6.right - kA6.left, kSmallHand);
}

std::vector<std::string> lightRows(const CardLight& light) {
    std::vector<std::string> parts;
    for (const movement::LightFigure& figure : light.figures) {
        parts.push_back((parts.empty() ? light.date + ": " : "") + said(figure.name) + ' ' + figure.text);
    }
    return packed(parts, kA6.right - kA6.left, kSmallHand);
}

/// The G-M angle and the light stand on every card; what the figures were made from, on the first.
/// @return where the table begins
double drawSmallHead(CardPen& pen, const CardHead& head) {
    const CardWords& words = head.words;
    const Hand small{1.8, Weight::Regular};
    drawNotches(pen, head, 3.0, 3);
    pen.writeWithin(words.title, {kA6.left, 12.4}, 62, {4.2, Weight::Bold}, Align::Left);
    pen.write(fitted(words.purpose, 62, small), {kA6.left, 16.2}, small);
    pen.write(said("ROUTE CARD"), {kA6.right, 9.6}, {2.2, Weight::Bold}, Align::Right);
    pen.write(said("A6, card %1 of %2", {std::to_string(head.number), std::to_string(head.cards)}), {kA6.right, 12.9},
              small, Align::Right);
    drawCopies(pen, kA6.right, 16.2, small);
    pen.line({kA6.left, 18}, {kA6.right, 18}, kRule);
    double base = 18;
    for (const auto* side : {&words.left, &words.right}) {
        for (const CardFact& fact : *side) {
            if (fact.weight == Weight::Bold) {
                base += 3.4;
                pen.writeWithin(fact.label + ' ' + fact.value, {kA6.left, base}, kA6.right - kA6.left,
                                {2.2, Weight::Bold}, Align::Left);
            }
        }
    }
    base = head.number == 1 ? drawRows(pen, factRows(words), base + 0.3) : base;
    for (const CardLight& light : words.light) {
        base = drawRows(pen, lightRows(light), base + 0.4);
    }
    return base + 1.4;
}

}  // namespace

double drawCardHead(CardPen& pen, const CardHead& head) {
    const CardMeasures& m = head.measures;
    drawMarking(pen, head);
    const bool wide = m.gridAzimuthDrop > 0;
    const double top = wide ? drawWideHead(pen, head) : drawSmallHead(pen, head);
    const double base = top + m.headRow - (wide ? 2.3 : 1.4);
    pen.line({m.left, top}, {m.right, top}, kRule);
    pen.write(said("What you cross, m"), {m.left, base}, kSmallHand);
    pen.write(said(wide ? "To, grid, tie" : "To, grid"), {m.text, base}, kSmallHand);
    pen.write(said(head.unit == geodesy::AngleUnit::Mils ? "Mag. mils" : "Mag. az."), {m.azimuthEnd, base}, kSmallHand,
              Align::Right);
    pen.write("m", {m.metresEnd, base}, kSmallHand, Align::Right);
    if (head.hasPaces) {
        pen.write(said("paces"), {m.pacesEnd, base}, kSmallHand, Align::Right);
    }
    pen.write(said("arrive"), {m.right, base}, kSmallHand, Align::Right);
    pen.line({m.left, top + m.headRow}, {m.right, top + m.headRow}, kThinRule);
    return top + m.headRow;
}

}  // namespace crosstick::press
