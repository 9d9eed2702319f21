#include "sample-data/sheet/themes.h"

namespace crosstick::demo {

// The island's own name, faint, spaced over three kilometres, above the grid line it belongs to.
void drawIslandName(const Canvas& canvas, const Json& names) {
    for (const Json& name : names.at("names")) {
        if (name.at("class") != "island") {
            continue;
        }
        const QString text = QString::fromStdString(name.at("text").get<std::string>());
        constexpr double kCapitalHeight = 7;
        const double span = name.at("span").get<double>() / SheetPaper::kMetresPerMm;
        const double bare = canvas.letters.width(text, Cut::Bold, kCapitalHeight);
        const double spacing = (span - bare) / (static_cast<double>(text.size()) - 1) / (kCapitalHeight / 0.76);
        const QPointF start = SheetPaper::at(spotOf(name.at("at"))) - QPointF(span / 4, kCapitalHeight / 2);
        QColor faint(120, 110, 100);
        faint.setAlpha(70);
        canvas.fill(canvas.letters.row(text, Cut::Bold, kCapitalHeight, spacing).translated(start), faint);
    }
}

void drawNames(const Canvas& canvas, const std::vector<PlacedName>& names) {
    for (const PlacedName& name : names) {
        canvas.letter(name.letters, name.colour, name.rim);
    }
}

}  // namespace crosstick::demo
