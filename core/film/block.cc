#include "core/film/block.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/text_ruler.h"
#include "core/film/lettering.h"
#include "core/film/registration.h"
#include "core/units/capitals.h"
#include "core/units/number_text.h"

namespace crosstick::film {
namespace {

using drawing::Point;
using drawing::Weight;

constexpr double kHead = 9.5;
constexpr double kColumn = 56;  ///< where the right column begins
constexpr double kPad = 2.2;    ///< from an edge to letters
constexpr double kFrame = 0.5;
constexpr double kTitle = 3.6;
constexpr double kPhases = 3.0;
constexpr double kRowPitch = 4.4;
constexpr double kTight = 2.8;  ///< pitch of rows that belong together
constexpr double kSampleWide = 16;
constexpr double kSampleHigh = 5;
constexpr double kLegendPitch = 5.8;
constexpr std::string_view kCautions = "Planning and training aid. Check datum and declination.";

void addPart(std::string& text, const std::string& part) {
    if (!part.empty()) {
        text += text.empty() ? "" : ", ";
        text += part;
    }
}

std::string sheetText(const plan::Sheet& sheet, const Speech& say) {
    std::string text = sheet.name;
    addPart(text, sheet.number.empty() ? "" : say("sheet %1", {sheet.number}));
    addPart(text, sheet.series);
    addPart(text, sheet.edition.empty() ? "" : say("ed. %1", {sheet.edition}));
    return text;
}

std::string signedPercent(double percent) {
    return (percent < 0 ? "-" : "+") + numberText(std::abs(percent), 2);
}

/// What the block says at the left, one paragraph a row; in capitals like every block (engraving D).
std::vector<std::string> facts(const PageOrder& order, const plan::Registration& registration, const GridNames& names) {
    const plan::Heading& heading = order.plan.heading();
    const plan::SheetPtr sheet = order.plan.groundSheet(order.film);
    std::vector<std::string> rows;
    const std::string map = sheet ? sheetText(*sheet, order.say) : order.say("No sheet: the plan's own grid", {});
    rows.push_back(map);
    if (order.film.inset) {
        const plan::FilmPtr parent = order.plan.film(order.film.inset->parent);
        rows.push_back(parent ? order.say("Inset of %1", {parent->name}) : order.say("Inset", {}));
    }
    const std::string datum = sheet && !sheet->datum.empty() ? sheet->datum : names.facts().datum;
    rows.push_back(scaleText(order.frame.scale()) + " · " + datum + " · " + names.area(registration));
    if (const plan::PaperStretch& stretch = order.frame.stretch(); stretch != plan::PaperStretch{}) {
        rows.push_back(order.say("Fit to paper: E %1 %, N %2 %",
                                 {signedPercent(stretch.eastPercent), signedPercent(stretch.northPercent)}));
    }
    if (heading.effective) {
        rows.push_back(order.say("EFF %1", {dateTimeGroup(*heading.effective, heading.zone)}));
    }
    std::string author = heading.author;
    if (author.find(heading.unit) == std::string::npos) {  // authors often sign with their unit
        addPart(author, heading.unit);
    }
    std::string prepared = author.empty() ? author : order.say("BY %1", {author});
    if (heading.prepared) {
        const std::string when = dateTimeGroup(*heading.prepared, heading.zone);
        addPart(prepared, author.empty() ? order.say("PREPARED %1", {when}) : when);
    }
    rows.push_back(prepared);
    if (!heading.distribution.empty()) {
        rows.push_back(order.say("DISTR: %1", {heading.distribution}));
    }
    std::erase_if(rows, [](const std::string& text) { return text.empty(); });
    std::transform(rows.begin(), rows.end(), rows.begin(), inCapitals);
    return rows;
}

/// Rows of letters with the base line of each from the top of their column.
struct Column {
    struct Line {
        std::string text;
        double base;
    };
    std::vector<Line> lines;
    double height = 0;
};

Column set(const std::vector<std::string>& paragraphs, double width, double capHeight) {
    Column column;
    double base = kPad + capHeight;
    for (const std::string& paragraph : paragraphs) {
        for (const std::string& text : wrapped(paragraph, width, capHeight)) {
            column.lines.push_back({text, base});
            base += kTight;
        }
        base += kRowPitch - kTight;
    }
    column.height = paragraphs.empty() ? 0 : base - kRowPitch + kPad;
    return column;
}

/// Letters of 2.0 where every row then holds its paragraph, else of 1.8.
struct Facts {
    Column column;
    double capHeight;
};

Facts setFacts(const std::vector<std::string>& rows) {
    constexpr double kWidth = kColumn - 2 * kPad;
    const bool roomy = std::all_of(
        rows.begin(), rows.end(), [](const std::string& text) { return drawing::textWidth(text, kLetters) <= kWidth; });
    const double capHeight = roomy ? kLetters : kSmallLetters;
    return {set(rows, kWidth, capHeight), capHeight};
}

std::vector<std::string> squareText(const PageOrder& order, const NamedSquare* square) {
    const Metres side = gridInterval(order.frame.scale());
    const std::string wide = numberText(order.frame.east(side).value(), 1);
    const std::string high = numberText(order.frame.north(side).value(), 1);
    const std::string size =
        wide == high ? order.say("SIDE %1 mm", {wide}) : order.say("SIDES %1 x %2 mm", {wide, high});
    return {square == nullptr ? order.say("ONE GRID SQUARE", {}) : order.say("SQUARE %1", {square->name}), size};
}

void addHead(drawing::Drawing& drawing, const PageOrder& order, double width) {
    const std::string phases = phasesText(order.film.phases, order.say);
    const double phasesWide = drawing::textWidth(phases, kPhases, Weight::Bold);
    const double room = width - 2 * kPad - (phases.empty() ? 0 : phasesWide + 3);
    const std::string name = inCapitals(order.film.name);
    double title = kTitle;
    while (title > kLetters && drawing::textWidth(name, title, Weight::Bold) > room) {
        title -= 0.2;
    }
    const double base = kHead / 2 + kTitle / 2;
    drawing.marks.emplace_back(row(name, {kPad, base}, title, Align::Left, Weight::Bold));
    drawing.marks.emplace_back(row(phases, {width - kPad, base}, kPhases, Align::Right, Weight::Bold));
    const double titleWide = drawing::textWidth(name, title, Weight::Bold);
    const std::string plan = inCapitals(order.plan.heading().name);
    if (!plan.empty() && titleWide + 3 + drawing::textWidth(plan, kLetters) <= room) {
        drawing.marks.emplace_back(row(plan, {kPad + titleWide + 3, base}, kLetters));
    }
}

constexpr double kLegendText = kColumn + 1 + kSampleWide + 1.2;

std::vector<std::string> legendWords(const LegendEntry& entry) {
    return wrapped(entry.text, 94 - kLegendText - 0.8, kSmallLetters);
}
double rowHeight(const std::vector<std::string>& words) {
    return std::max(kLegendPitch, kTight * static_cast<double>(words.size()) + 1.2);
}

void addLegend(drawing::Drawing& drawing, const PageOrder& order) {
    double top = kHead + 1.2;
    for (const LegendEntry& entry : order.legend) {
        const auto rows = legendWords(entry);
        const double high = rowHeight(rows);
        const double middle = top + (high - kLegendPitch + kSampleHigh) / 2;
        drawing.append(drawing::moved(entry.sample, {kColumn + 1, middle - kSampleHigh / 2}));
        double base = middle + kSmallLetters / 2 - (static_cast<double>(rows.size()) - 1) * kTight / 2;
        for (const std::string& text : rows) {
            drawing.marks.emplace_back(row(text, {kLegendText, base}, kSmallLetters));
            base += kTight;
        }
        top += high;
    }
}

}  // namespace

PaperMm legendRoom(const std::vector<LegendEntry>& legend) {
    PaperMm room{0};
    for (const LegendEntry& entry : legend) {
        room += PaperMm(rowHeight(legendWords(entry)));
    }
    return room;
}

std::string phasesText(const std::set<int>& phases, const Speech& say) {
    if (phases.empty()) {
        return {};
    }
    if (phases.size() == 1) {
        return say("PHASE %1", {std::to_string(*phases.begin())});
    }
    const bool run = *phases.rbegin() - *phases.begin() + 1 == static_cast<int>(phases.size());
    if (run) {
        return say("PHASES %1–%2", {std::to_string(*phases.begin()), std::to_string(*phases.rbegin())});
    }
    std::string text;
    for (const int phase : phases) {
        text += (text.empty() ? "" : ", ") + std::to_string(phase);
    }
    return say("PHASES %1", {text});
}

std::string scaleText(Scale scale) {
    const bool isWhole = std::floor(scale.denominator) == scale.denominator;
    std::string digits = isWhole ? numberText(scale.denominator, 0) : numberText(scale.denominator);
    const auto whole = std::min(digits.find('.'), digits.size());
    for (std::size_t at = whole; at > 3; at -= 3) {
        digits.insert(at - 3, 1, ' ');
    }
    return "1:" + digits;
}

Block administrativeBlock(const PageOrder& order, const plan::Registration& registration, const GridNames& names,
                          const NamedSquare* square) {
    Block block;
    const Facts left = setFacts(facts(order, registration, names));
    const std::string& own = order.plan.heading().cautions;
    const auto cautions =
        wrapped(inCapitals(own.empty() ? order.say(kCautions, {}) : own), block.width - 2 * kPad, kSmallLetters);
    const double cautionsHigh = 2 * 1.5 + kSmallLetters + kTight * (static_cast<double>(cautions.size()) - 1);
    const auto squareRows = squareText(order, square);
    const double squareHigh = kSmallLetters + kTight + 2 * 1.6;
    const double legend = std::max(legendRoom(order.legend), order.legendRoom).value();
    const double body = std::max({block.height - kHead - cautionsHigh, left.column.height, 1.2 + legend + squareHigh});
    block.height = kHead + body + cautionsHigh;

    const double foot = kHead + body;
    block.drawing.marks.emplace_back(
        lines({outline(drawing::Box{0, 0, block.width, block.height}.grown(-kFrame / 2))}, kFrame));
    block.drawing.marks.emplace_back(lines({{{{0, kHead}, {block.width, kHead}}, false},
                                            {{{0, foot}, {block.width, foot}}, false},
                                            {{{kColumn, kHead}, {kColumn, foot}}, false}}));
    addHead(block.drawing, order, block.width);
    for (const auto& line : left.column.lines) {
        block.drawing.marks.emplace_back(row(line.text, {kPad, kHead + line.base}, left.capHeight));
    }
    addLegend(block.drawing, order);
    for (std::size_t n = 0; n < squareRows.size(); ++n) {
        const double up = 1.6 + kTight * static_cast<double>(squareRows.size() - 1 - n);
        block.drawing.marks.emplace_back(row(squareRows[n], {kColumn + kPad, foot - up}, kSmallLetters));
    }
    for (std::size_t n = 0; n < cautions.size(); ++n) {
        const double base = foot + 1.5 + kSmallLetters + kTight * static_cast<double>(n);
        block.drawing.marks.emplace_back(row(cautions[n], {kPad, base}, kSmallLetters));
    }
    return block;
}

}  // namespace crosstick::film
