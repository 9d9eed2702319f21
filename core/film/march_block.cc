#include "core/film/march_block.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/text_ruler.h"
#include "core/film/lettering.h"
#include "core/measures/catalogue.h"
#include "core/movement/column_figures.h"
#include "core/units/capitals.h"
#include "core/units/number_text.h"

namespace crosstick::film {
namespace {

constexpr double kTitle = 2.5;
constexpr double kMargin = 4;
constexpr double kBetween = 8;       ///< pitch of rows less the height of a symbol
constexpr double kRoleGap = 4;       ///< least white before a role where designations are long
constexpr std::size_t kDeepest = 7;  ///< rows of a stack
constexpr double kLeastWidth = 56;

/// What a row of the block has room for; all of it stands in the table.
std::string shortened(std::string text) {
    constexpr std::size_t kLongest = 18;
    if (text.size() <= kLongest) {
        return text;
    }
    std::size_t end = kLongest - 1;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {  // no letter is cut in two
        --end;
    }
    return text.substr(0, end) + "...";
}

/// To a decimetre, and no more figures than are said.
std::string metres(Metres length) {
    const double tenths = std::round(length.value() * 10);
    return numberText(length.value(), std::fmod(tenths, 10) == 0 ? 0 : 1) + " m";
}

/// Strength and length, as far as they are known.
std::string footOf(const plan::Force& force, const plan::Column& column, const movement::ColumnFigures& figures) {
    const bool isKnown = std::all_of(column.serials.begin(), column.serials.end(), [&](const plan::Serial& serial) {
        const plan::Element* element = force.element(serial.element);
        return element != nullptr && element->people > 0;
    });
    if (!isKnown || column.serials.empty()) {
        return {};
    }
    return std::to_string(figures.people) + " PEOPLE, " + std::to_string(std::lround(figures.length.value())) + " m, " +
           metres(column.apart) + " APART" +
           (column.files > 1 ? ", " + std::to_string(column.files) + " FILES" : std::string{});
}

MarchRow rowOf(const plan::Force& force, const plan::Serial& serial, std::size_t place) {
    const plan::Element* element = force.element(serial.element);
    MarchRow row;
    row.number = std::to_string(place + 1);
    row.unit = element == nullptr ? std::string{} : element->unit;
    row.designation = element == nullptr ? std::string("?") : shortened(inCapitals(element->name));
    row.role = shortened(inCapitals(serial.role));
    return row;
}

}  // namespace

MarchBlock marchBlock(const plan::Force& force, const plan::Column* column, const drawing::Gauge& gauge) {
    MarchBlock block;
    block.title = "ORDER OF MARCH";
    if (column == nullptr || column->serials.empty()) {
        block.foot = column == nullptr ? "NO COLUMN OF THIS NAME" : "NOBODY IN IT YET";
        block.footBase = kMarchTitleBase + 5;
        block.bounds = {0, 0, kLeastWidth, block.footBase + kMargin};
        block.stackWidth = kLeastWidth;
        return block;
    }
    if (!column->name.empty()) {
        block.title += "  " + shortened(inCapitals(column->name));
    }
    const movement::ColumnFigures figures = movement::columnFigures(force, *column);
    const std::size_t count = column->serials.size();
    const double pitch = gauge.symbol + kBetween;
    // Over the first symbol stands its mark, 0.12 + 0.30 of its height over the frame.
    const double first = kMarchTitleBase + kMargin + gauge.symbol * 0.95;
    double textRight = 0;
    for (std::size_t n = 0; n < count; ++n) {
        if (n % kDeepest == 0) {
            block.stacks.emplace_back();
        }
        std::vector<MarchRow>& stack = block.stacks.back();
        MarchRow row = rowOf(force, column->serials[n], n);
        row.symbol = {kMarchSymbol, first + pitch * static_cast<double>(stack.size())};
        const bool hasNext = n + 1 < count && stack.size() + 1 < kDeepest;
        row.behind = hasNext ? metres(figures.elements[n].intervalBehind) : std::string{};
        const double designation = kMarchDesignation + drawing::textWidth(row.designation, gauge.letters);
        const double role = row.role.empty() ? 0
                                             : std::max(kMarchRole, designation + kRoleGap) +
                                                   drawing::textWidth(row.role, gauge.letters);
        textRight = std::max({textRight, designation, role});
        stack.push_back(std::move(row));
    }
    block.foot = footOf(force, *column, figures);
    block.stackWidth = std::max(textRight + kMargin, kLeastWidth);
    const double rows = static_cast<double>(block.stacks.front().size());
    const double foot = first + pitch * (rows - 1) + gauge.symbol / 2 + kMargin;
    block.footBase = foot + kSmallLetters;
    const double width = std::max({block.stackWidth * static_cast<double>(block.stacks.size()),
                                   kMargin * 2 + drawing::textWidth(block.foot, kSmallLetters),
                                   kMargin * 2 + drawing::textWidth(block.title, kTitle)});
    block.bounds = {0, 0, width, block.foot.empty() ? foot : block.footBase + kMargin - 1};
    return block;
}

std::vector<std::vector<drawing::Point>> inkOnPaper(const plan::Plan& plan, const drawing::Gauge& gauge) {
    constexpr double kStep = 2;
    std::vector<std::vector<drawing::Point>> ink;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (measure->anchor != plan::Anchor::Paper || measure->points.empty()) {
            return;
        }
        const measures::Entry* entry = measures::find(measure->kind);
        const bool isMarch = entry != nullptr && entry->sign == measures::Sign::OrderOfMarch;
        const auto name = measure->fields.find("column");
        const drawing::Box box =
            isMarch ? marchBlock(plan.force(),
                                 plan.force().columnNamed(name == measure->fields.end() ? "" : name->second), gauge)
                          .bounds
                    : drawing::Box{0, 0, 1, 1};
        const drawing::Point corner{measure->points.front().easting.value(), measure->points.front().northing.value()};
        for (double y = 0; y <= box.height(); y += kStep) {
            ink.push_back({corner + drawing::Point{0, y}, corner + drawing::Point{box.width(), y}});
        }
    });
    return ink;
}

}  // namespace crosstick::film
