#include <array>
#include <cmath>

#include <QStringList>

#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

/// How a class of names is lettered.
struct Hand {
    Cut cut;
    double capital;
    double spacing;
    QColor colour;
    QColor rim;
};

Hand handOf(const std::string& kind) {
    static const std::map<std::string, Hand> kHands{{"village", {Cut::Bold, 3.0, 0.02, ink::kBlack, ink::kLand}},
                                                    {"hamlet", {Cut::Bold, 2.4, 0.02, ink::kBlack, ink::kLand}},
                                                    {"farm", {Cut::Regular, 1.9, 0, ink::kBlack, ink::kLand}},
                                                    {"height", {Cut::Regular, 2.2, 0.25, ink::kBlack, ink::kLand}},
                                                    {"ridge", {Cut::Regular, 2.2, 0.6, ink::kBlack, ink::kLand}},
                                                    {"spur", {Cut::Regular, 1.9, 0.25, ink::kBlack, ink::kLand}},
                                                    {"lake", {Cut::Italic, 2.4, 0.1, ink::kWaterName, ink::kSea}},
                                                    {"brook", {Cut::Italic, 1.8, 0.08, ink::kWaterName, ink::kLand}},
                                                    {"sea", {Cut::Italic, 3.4, 0.15, ink::kWaterName, ink::kSea}},
                                                    {"cove", {Cut::Italic, 2.2, 0.05, ink::kWaterName, ink::kSea}},
                                                    {"islet", {Cut::Italic, 1.8, 0, ink::kWaterName, ink::kSea}},
                                                    {"wood", {Cut::Italic, 1.9, 0.02, ink::kWoodName, ink::kLand}}};
    const auto found = kHands.find(kind);
    return found == kHands.end() ? Hand{Cut::Regular, 1.9, 0, ink::kBlack, ink::kLand} : found->second;
}

bool isFree(const Canvas& canvas, const QRectF& box) {
    const QRectF wanted = box.adjusted(-0.4, -0.4, 0.4, 0.4);
    if (!SheetPaper::neatLine().adjusted(1.5, 1.5, -1.5, -1.5).contains(wanted)) {
        return false;
    }
    return std::none_of(canvas.taken.begin(), canvas.taken.end(),
                        [&](const QRectF& other) { return wanted.intersects(other); });
}

/// Straight rows, centred on a point; moved a little where something stands there already.
void drawStraight(const Canvas& canvas, const QString& text, const Hand& hand, QPointF middle) {
    const QStringList rows = text.split(QLatin1Char('\n'));
    QPainterPath block;
    block.setFillRule(Qt::WindingFill);
    double y = hand.capital / 2 - (static_cast<double>(rows.size()) - 1) * 0.7 * hand.capital;
    for (const QString& row : rows) {
        const double width = canvas.letters.width(row, hand.cut, hand.capital, hand.spacing);
        block.addPath(canvas.letters.row(row, hand.cut, hand.capital, hand.spacing).translated(-width / 2, y));
        y += 1.45 * hand.capital;
    }
    for (double away = 0; away <= 9; away += 0.75) {
        for (int n = 0; n < (away == 0 ? 1 : 16); ++n) {
            const double turn = n * 0.3926990817;
            const QPainterPath moved = block.translated(middle + QPointF(std::cos(turn), std::sin(turn)) * away);
            if (isFree(canvas, moved.boundingRect())) {
                canvas.letter(moved, hand.colour, hand.rim);
                canvas.taken.push_back(moved.boundingRect());
                return;
            }
        }
    }
}

QPainterPath reversed(const QPainterPath& path) {
    return path.toReversed();
}

/// Letters along a line, each turned as the line runs there, never upside down; a little above it for brooks.
bool drawAlong(const Canvas& canvas, const QString& text, const Hand& hand, QPainterPath line, double above,
               double from) {
    const double width = canvas.letters.width(text, hand.cut, hand.capital, hand.spacing);
    if (width + 2 > line.length()) {
        return false;
    }
    const double start = (line.length() - width) * from;
    const Along first = along(line, start);
    const Along last = along(line, start + width);
    if (first.at.x() > last.at.x()) {
        line = reversed(line);
        return drawAlong(canvas, text, hand, line, above, 1 - from);
    }
    QPainterPath name;
    name.setFillRule(Qt::WindingFill);
    double d = start;
    for (const QChar c : text) {
        const Letters::Letter letter = canvas.letters.letter(c, hand.cut, hand.capital);
        const Along place = along(line, d + letter.advance / 2);
        const QTransform turn = QTransform()
                                    .translate(place.at.x(), place.at.y())
                                    .rotate(place.angle)
                                    .translate(-letter.advance / 2, above);
        name.addPath(turn.map(letter.path));
        d += letter.advance + hand.spacing * hand.capital / 0.76;
    }
    const QRectF box = name.boundingRect();
    if (std::any_of(canvas.taken.begin(), canvas.taken.end(),
                    [&](const QRectF& other) { return name.intersects(other); })) {
        return false;
    }
    canvas.letter(name, hand.colour, hand.rim);
    canvas.taken.push_back(box);
    return true;
}

void drawOnLine(const Canvas& canvas, const QString& text, const Hand& hand, const Line& line, double above) {
    const QPainterPath path = pathOf(line);
    for (const double from : {0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95}) {
        if (drawAlong(canvas, text, hand, path, above, from)) {
            return;
        }
    }
    drawStraight(canvas, text, hand, along(path, path.length() / 2).at);
}

/// The line a name runs along: its own points, a brook's or a ridge's.
Line lineFor(const Canvas& canvas, const Json& name, const Island& island) {
    if (name.contains("line")) {
        return curved(lineOf(name.at("line")));
    }
    const std::string along = name.at("along").get<std::string>();
    for (const NamedPegs& brook : canvas.ground.brooks) {
        if (brook.name == along) {
            return placesOf(brook.pegs);
        }
    }
    for (const NamedPegs& ridge : island.ridges) {
        if (ridge.name == along) {
            return curved(placesOf(ridge.pegs));
        }
    }
    return {};
}

/// The island's own name: faint, spaced over three kilometres.
void drawIslandName(const Canvas& canvas, const Json& name) {
    const QString text = QString::fromStdString(name.at("text").get<std::string>());
    constexpr double kCapitalHeight = 7;
    const double span = name.at("span").get<double>() / SheetPaper::kMetresPerMm;
    const double bare = canvas.letters.width(text, Cut::Bold, kCapitalHeight);
    const double spacing = (span - bare) / (static_cast<double>(text.size()) - 1) / (kCapitalHeight / 0.76);
    const QPointF start = SheetPaper::at(spotOf(name.at("at"))) - QPointF(span / 4, -kCapitalHeight / 2);
    canvas.fill(canvas.letters.row(text, Cut::Bold, kCapitalHeight, spacing).translated(start),
                QColor(120, 110, 100, 70));
}

}  // namespace

void drawNames(const Canvas& canvas, const Json& names, const Island& island) {
    for (const Json& name : names.at("names")) {
        const std::string kind = name.at("class").get<std::string>();
        const QString text = QString::fromStdString(name.at("text").get<std::string>());
        if (kind == "island") {
            drawIslandName(canvas, name);
        } else if (name.contains("at")) {
            Hand hand = handOf(kind);
            hand.rim = kind == "cove" && canvas.heightAt(spotOf(name.at("at"))) > 0 ? ink::kLand : hand.rim;
            drawStraight(canvas, text, hand, SheetPaper::at(spotOf(name.at("at"))));
        } else {
            const Hand hand = handOf(kind);
            drawOnLine(canvas, text, hand, lineFor(canvas, name, island), kind == "brook" ? -0.6 : hand.capital / 2);
        }
    }
}

}  // namespace crosstick::demo
