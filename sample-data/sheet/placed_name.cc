#include "sample-data/sheet/placed_name.h"

#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <optional>

#include <QStringList>

#include "core/drawing/steps.h"
#include "sample-data/sheet/canvas.h"

namespace crosstick::demo {
namespace {

/// How a class of names is lettered and where it stands.
struct Hand {
    Cut cut;
    double capital;
    double spacing;
    QColor colour;
    Footing footing = Footing::Land;
    double rim = 0.25;
};

Hand handOf(const std::string& kind) {
    static const std::map<std::string, Hand> kHands{
        {"village", {Cut::Bold, 3.0, 0.02, ink::kBlack}},
        {"hamlet", {Cut::Bold, 2.4, 0.02, ink::kBlack}},
        {"height", {Cut::Regular, 2.2, 0.25, ink::kBlack}},
        {"ridge", {Cut::Regular, 2.2, 0.6, ink::kBlack}},
        {"spur", {Cut::Regular, 1.9, 0.25, ink::kBlack}},
        {"lake", {Cut::Italic, 2.4, 0.1, ink::kWaterName, Footing::Lake}},
        {"brook", {Cut::Italic, 1.8, 0.08, ink::kWaterName}},
        {"sea", {Cut::Italic, 3.4, 0.15, ink::kWaterName, Footing::Sea}},
        {"cove", {Cut::Italic, 2.2, 0.05, ink::kWaterName, Footing::Sea}},
        {"islet", {Cut::Italic, 1.8, 0, ink::kWaterName, Footing::Sea}},
        {"wood", {Cut::Italic, 1.9, 0.02, ink::kWoodName, Footing::Land, 0.45}}};
    const auto found = kHands.find(kind);
    return found == kHands.end() ? Hand{Cut::Regular, 1.9, 0, ink::kBlack} : found->second;
}

constexpr double kNever = std::numeric_limits<double>::infinity();

/// Darkness of what is drawn in a box already, cubed, since a black line under letters is worse than a brown one; 0
/// to 1 on the mean.
double inkIn(const QImage& picture, const QRectF& box) {
    const auto pixel = [](double mm) { return static_cast<int>(std::floor(mm * SheetPaper::kDotsPerMm)); };
    double sum = 0;
    int count = 0;
    for (int y = pixel(box.top()); y <= pixel(box.bottom()); y += 2) {
        for (int x = pixel(box.left()); x <= pixel(box.right()); x += 2) {
            if (picture.valid(x, y)) {
                const int grey = qGray(reinterpret_cast<const QRgb*>(picture.constScanLine(y))[x]);
                const double dark = std::max(0, 215 - grey) / 215.0;
                sum += dark * dark * dark;
                ++count;
            }
        }
    }
    return count == 0 ? 0 : sum / count;
}

/// What it costs to stand in a box; never where it may not.
double costOf(const Canvas& canvas, const QRectF& box, Footing footing) {
    const QRectF wanted = box.adjusted(-0.4, -0.4, 0.4, 0.4);
    if (!SheetPaper::neatLine().adjusted(1.5, 1.5, -1.5, -1.5).contains(wanted)) {
        return kNever;
    }
    for (const QRectF& other : canvas.taken) {
        if (wanted.intersects(other)) {
            return kNever;
        }
    }
    const QRectF roomy = box.adjusted(-0.9, -0.6, 0.9, 0.6);
    const std::uint8_t ground = footing == Footing::Sea ? kOnSea : footing == Footing::Lake ? kOnLake : kOnLand;
    if (canvas.land.share(roomy, ground) < 1) {
        return kNever;
    }
    return 450 * inkIn(canvas.picture, wanted);
}

/// Rows of a name centred on 0, 0.
QPainterPath blockOf(const Letters& letters, const QString& text, const Hand& hand) {
    const QStringList rows = text.split(QLatin1Char('\n'));
    QPainterPath block;
    block.setFillRule(Qt::WindingFill);
    double y = hand.capital / 2 - (static_cast<double>(rows.size()) - 1) * 0.7 * hand.capital;
    for (const QString& row : rows) {
        const double width = letters.width(row, hand.cut, hand.capital, hand.spacing);
        block.addPath(letters.row(row, hand.cut, hand.capital, hand.spacing).translated(-width / 2, y));
        y += 1.45 * hand.capital;
    }
    return block;
}

/// Straight rows: the cheapest place round a point, a step away costing as much as a little ink.
std::optional<QPainterPath> standStraight(const Canvas& canvas, const QString& text, const Hand& hand, QPointF middle) {
    const QPainterPath block = blockOf(canvas.letters, text, hand);
    const QRectF bounds = block.boundingRect();
    constexpr double kStep = 0.75;
    constexpr int kSteps = 26;
    constexpr double kPerMm = 0.55;
    double least = kNever;
    QPointF best;
    for (int step = 0; step <= kSteps; ++step) {
        const double away = step * kStep;
        if (away * kPerMm >= least) {
            break;
        }
        const int directions = step == 0 ? 1 : 24;
        for (int n = 0; n < directions; ++n) {
            const double turn = n * 2 * std::numbers::pi / directions;
            const QPointF place = middle + QPointF(std::cos(turn), std::sin(turn)) * away;
            const double cost = costOf(canvas, bounds.translated(place), hand.footing) + away * kPerMm;
            if (cost < least) {
                least = cost;
                best = place;
            }
        }
    }
    return least < kNever ? std::optional(block.translated(best)) : std::nullopt;
}

/// Letters along a line from a distance on, each turned as the line runs under it.
QPainterPath alongLine(const Letters& letters, const QString& text, const Hand& hand, const Course& course,
                       double start, double base) {
    QPainterPath name;
    name.setFillRule(Qt::WindingFill);
    double d = start;
    for (const QChar c : text) {
        const Letters::Letter letter = letters.letter(c, hand.cut, hand.capital);
        const QPointF left = course.at(d - 0.5).at;
        const QPointF right = course.at(d + letter.advance + 0.5).at;
        const double angle = std::atan2(right.y() - left.y(), right.x() - left.x()) * 180 / std::numbers::pi;
        const QPointF foot = course.at(d + letter.advance / 2).at;
        const QTransform turn =
            QTransform().translate(foot.x(), foot.y()).rotate(angle).translate(-letter.advance / 2, base);
        name.addPath(turn.map(letter.path));
        d += letter.advance + hand.spacing * hand.capital / 0.76;
    }
    return name;
}

/// Cost of letters along a line: every letter stands for itself, since the box round them all is mostly empty.
double costOfLetters(const Canvas& canvas, const QPainterPath& name) {
    double cost = 0;
    int count = 0;
    for (const QPolygonF& letter : name.toSubpathPolygons()) {
        const double here = costOf(canvas, letter.boundingRect(), Footing::Land);
        cost += here;
        ++count;
    }
    return count == 0 ? kNever : cost / count;
}

std::optional<QPainterPath> standAlong(const Canvas& canvas, const QString& text, const Hand& hand,
                                       const Course& course, std::initializer_list<double> bases) {
    const double width = canvas.letters.width(text, hand.cut, hand.capital, hand.spacing);
    const double room = course.length() - width - 2;
    if (room < 0) {
        return std::nullopt;
    }
    double least = kNever;
    QPainterPath best;
    for (const double share : drawing::steps(0.05, 0.95, 0.05)) {
        const double from = 1 + room * share;
        const bool isBackwards = course.at(from).at.x() > course.at(from + width).at.x();
        const Course run = isBackwards ? course.reversed() : course;
        const double start = isBackwards ? course.length() - from - width : from;
        for (const double base : bases) {
            QPainterPath name = alongLine(canvas.letters, text, hand, run, start, base);
            const double cost = costOfLetters(canvas, name) + 4 * std::abs(share - 0.5) + (base > 1 ? 0.5 : 0);
            if (cost < least) {
                least = cost;
                best = std::move(name);
            }
        }
    }
    return least < kNever ? std::optional(best) : std::nullopt;
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

std::optional<QPainterPath> stand(const Canvas& canvas, const Json& name, const Island& island, const Hand& hand) {
    const QString text = QString::fromStdString(name.at("text").get<std::string>());
    if (name.contains("at")) {
        return standStraight(canvas, text, hand, SheetPaper::at(spotOf(name.at("at"))));
    }
    const Course course(pathOf(lineFor(canvas, name, island)));
    const bool isBrook = name.at("class") == "brook";
    const auto along = isBrook ? standAlong(canvas, text, hand, course, {-0.7, hand.capital + 0.7})
                               : standAlong(canvas, text, hand, course, {hand.capital / 2});
    return along ? along : standStraight(canvas, text, hand, course.at(course.length() / 2).at);
}

/// Letters along a line keep their own boxes, so that a slanting name does not take the ground on both sides.
void takeLetters(const Canvas& canvas, const QPainterPath& name) {
    for (const QPolygonF& letter : name.toSubpathPolygons()) {
        canvas.taken.push_back(letter.boundingRect());
    }
}

}  // namespace

std::vector<PlacedName> placeNames(const Canvas& canvas, const Json& names, const Island& island) {
    std::vector<PlacedName> placed;
    for (const Json& name : names.at("names")) {
        const std::string kind = name.at("class").get<std::string>();
        if (kind == "island") {
            continue;
        }
        const Hand hand = handOf(kind);
        if (auto letters = stand(canvas, name, island, hand)) {
            placed.push_back({name.at("text").get<std::string>(), *letters, hand.colour, hand.rim,
                              name.contains("at") ? hand.footing : Footing::Land});
            if (name.contains("at")) {
                canvas.taken.push_back(letters->boundingRect());
            } else {
                takeLetters(canvas, *letters);
            }
        }
    }
    return placed;
}

}  // namespace crosstick::demo
