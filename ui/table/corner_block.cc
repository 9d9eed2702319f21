#include "ui/table/corner_block.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <QPainter>

#include "ui/table/lettering.h"
#include "ui/table/plain_letters.h"

namespace crosstick::table {
namespace {

constexpr double kWide = 310;
constexpr double kHigh = 38;
constexpr double kFromEdge = 8;
constexpr double kInside = 10;
constexpr double kLetters = 11;

void addPart(std::string& row, const std::string& part, std::string_view between) {
    if (!part.empty()) {
        row += row.empty() ? part : std::string(between) + part;
    }
}

std::string sheetRow(const plan::Sheet& sheet) {
    std::string named = sheet.number.empty() ? "" : "sheet " + sheet.number;
    addPart(named, sheet.name, " ");
    std::string row = sheet.series;
    addPart(row, named, ", ");
    addPart(row, sheet.edition.empty() ? "" : "edition " + sheet.edition, ", ");
    return row;
}

}  // namespace

std::string scaleText(Scale scale) {
    std::string digits = std::to_string(std::llround(scale.denominator));
    for (auto at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3) {
        digits.insert(static_cast<std::size_t>(at), 1, ',');
    }
    return "1:" + digits;
}

std::string seenScaleText(Scale scale) {
    if (!(scale.denominator > 0) || !std::isfinite(scale.denominator)) {
        return scaleText({});
    }
    const double unit = std::pow(10, std::floor(std::log10(scale.denominator)) - 2);
    return scaleText({std::round(scale.denominator / unit) * unit});
}

std::string upText(Degrees up) {
    const auto whole = std::lround(up.value()) % 360;
    return up.value() == 0 ? "north up" : fmt::format("{:03}\u00b0 grid up", whole);
}

CornerRows cornerRows(const plan::Plan& plan, const View& view, symbols::PenMode pens) {
    CornerRows rows;
    rows.ours = pens == symbols::PenMode::OnePen ? "one pen" : "";
    if (!plan.sheets().empty()) {
        const plan::Sheet& sheet = *plan.sheets().front();
        rows.first = sheetRow(sheet);
        rows.second = sheet.datum;
        addPart(rows.second, scaleText(sheet.scale), " \u00b7 ");
    }
    if (rows.first.empty()) {
        rows.first = plan.sheets().empty() ? "No sheet" : plan.heading().name;
    }
    addPart(rows.second, "seen at " + seenScaleText(view.scaleSeen()), " \u00b7 ");
    addPart(rows.second, upText(view.up()), " \u00b7 ");
    return rows;
}

void paintCornerBlock(QPainter& painter, const View& view, const CornerRows& rows, const press::Faces& faces,
                      const Palette& palette) {
    const LetterStyle bold{kLetters, drawing::Weight::Bold, palette.ink};
    const LetterStyle plain{kLetters, plainLetters(), palette.inkTwo};
    const double needed = std::max(lettersWide(rows.first, bold), lettersWide(rows.second, plain)) + 2 * kInside +
                          (rows.ours.empty() ? 0 : lettersWide(rows.ours, bold) + kInside);
    const double room = view.area().width - 2 * kFromEdge;
    const double wide = std::min(std::max(kWide, std::ceil(needed)), room);
    if (wide < 4 * kInside || view.area().height < kHigh + 2 * kFromEdge) {
        return;
    }
    const QRectF block(std::round(view.area().right() - kFromEdge - wide), view.area().bottom() - kFromEdge - kHigh,
                       wide, kHigh);
    painter.fillRect(block, palette.well);
    painter.setPen(QPen(palette.edge, 1));
    painter.drawRect(block.adjusted(0.5, 0.5, -0.5, -0.5));
    const double most = wide - 2 * kInside;
    letter(painter, faces, {block.left() + kInside, block.top() + 16}, cutToWidth(rows.first, bold, most), bold);
    const LetterStyle own{kLetters, drawing::Weight::Bold, palette.ours};
    const double ours = rows.ours.empty() ? 0 : lettersWide(rows.ours, own) + kInside;
    letter(painter, faces, {block.left() + kInside, block.top() + 30}, rows.ours, own);
    letter(painter, faces, {block.left() + kInside + ours, block.top() + 30},
           cutToWidth(rows.second, plain, most - ours), plain);
}

}  // namespace crosstick::table
