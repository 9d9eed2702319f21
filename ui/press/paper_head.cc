#include "ui/press/paper_head.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/press/facts.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;

constexpr double kFactsTop = 33.2;
constexpr double kFactStep = 4.1;
constexpr double kFactRow = 3.2;
constexpr double kSourceFoot = 201.4;
constexpr double kSourceStep = 2.7;
constexpr double kNoteStep = 3.6;
constexpr std::size_t kNoteRows = 3;
constexpr Hand kFact{2.0, Weight::Regular};
constexpr Hand kLead{2.0, Weight::Bold};
constexpr Hand kSource{1.7, Weight::Regular};

/// A column of facts of the head.
FactColumn column(double left, double valueLeft, double right) {
    return {left, valueLeft, right, kFactsTop, kFactStep, kFactRow};
}

double indentOf(const CardNote& note) {
    return widthOf(note.lead + ' ', kLead);
}

std::vector<std::string> rowsOf(const CardNote& note) {
    auto rows = wrapped(note.text, kPageRight - kPageLeft - indentOf(note), kFact, kNoteRows);
    return rows.empty() ? std::vector<std::string>(1) : rows;
}

}  // namespace

double drawHead(CardPen& pen, const PaperHead& head, std::size_t page, std::size_t pages) {
    const Hand marking{2.6, Weight::Bold};
    const Hand purpose{2.2, Weight::Regular};
    const std::string mark = fitted(head.marking, 160, marking);
    pen.write(mark, {kPageWidth / 2, 7.6}, marking, Align::Middle);
    pen.write(mark, {kPageWidth / 2, 206.6}, marking, Align::Middle);
    pen.writeWithin(head.title, {kPageLeft, 18.6}, 200, {5.2, Weight::Bold}, Align::Left);
    pen.write(fitted(head.purpose, 200, purpose), {kPageLeft, 25}, purpose);
    pen.write(head.kind, {kPageRight, 15.4}, {2.6, Weight::Bold}, Align::Right);
    pen.write(said("A4, page %1 of %2", {std::to_string(page), std::to_string(pages)}), {kPageRight, 20.2}, kFact,
              Align::Right);
    pen.line({kPageLeft, 28.5}, {kPageRight, 28.5}, kThickPen);
    return std::max(drawFacts(pen, head.left, column(kPageLeft, 29, 140)),
                    drawFacts(pen, head.right, column(148, 170, kPageRight))) +
           2.4;
}

void drawSource(CardPen& pen, const std::string& source) {
    const auto rows = wrapped(source, kPageRight - kPageLeft, kSource, 2);
    double base = kSourceFoot - kSourceStep * (static_cast<double>(rows.size()) - 1);
    for (const std::string& row : rows) {
        pen.write(row, {kPageLeft, base}, kSource);
        base += kSourceStep;
    }
}

double drawNotes(CardPen& pen, const std::vector<CardNote>& notes, double top) {
    double base = top + 1;
    for (const CardNote& note : notes) {
        pen.write(note.lead, {kPageLeft, base + kNoteStep}, kLead);
        for (const std::string& row : rowsOf(note)) {
            pen.write(row, {kPageLeft + indentOf(note), base += kNoteStep}, kFact);
        }
    }
    return base;
}

double notesHeight(const std::vector<CardNote>& notes) {
    double height = 1;
    for (const CardNote& note : notes) {
        height += kNoteStep * static_cast<double>(rowsOf(note).size());
    }
    return height;
}

}  // namespace crosstick::press
