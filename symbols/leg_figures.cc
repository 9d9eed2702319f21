#include "symbols/leg_figures.h"

#include <algorithm>

#include "core/movement/leg_ends.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/route_names.h"

namespace crosstick::symbols {
namespace {

constexpr double kLetters = 1.8;
constexpr double kLeastForNumber = 4;

/// What is said of one piece, and where.
struct Figures {
    RoutePiece piece;
    Label full, number;
    std::optional<plan::LegPiece> leg;  ///< none: the leg was walked before, and a hand places the figures of that
    std::optional<Point> byHand;
    [[nodiscard]] bool hasRoom() const { return piece.length() >= full.width() + 4; }
};

std::string azimuthWords(Degrees azimuth, geodesy::AngleUnit unit) {
    return geodesy::azimuthText(azimuth, unit) + (unit == geodesy::AngleUnit::Mils ? "m" : "");
}

std::string numberOf(const movement::Leg& leg, std::size_t piece, plan::Use use) {
    std::string number = std::to_string(leg.number);
    number += use == plan::Use::Alternate ? "A" : use == plan::Use::Vehicle ? "V" : "";
    if (leg.pieces.size() > 1) {
        number += static_cast<char>('a' + piece % 26);
    }
    return number;
}

std::optional<Point> handOf(const Desk& desk, const Subject& route, const plan::LegPiece& leg) {
    const auto& placed = route.showing->figures;
    const auto found =
        std::find_if(placed.begin(), placed.end(), [&](const plan::FiguresAt& one) { return one.leg == leg; });
    if (found == placed.end()) {
        return std::nullopt;
    }
    const Point at = desk.engraving().frame.onFilm(found->at);
    return drawing::isFinite(at) ? std::optional(at) : std::nullopt;
}

/// The figures of all pieces but those that an alternate shares with a primary route, which says them.
std::vector<Figures> figuresOf(const Desk& desk, const Subject& route, const std::vector<RoutePiece>& pieces) {
    std::vector<Figures> all;
    const auto found = desk.engraving().figures.find(route.route->id);
    if (found == desk.engraving().figures.end()) {
        return all;
    }
    std::vector<std::pair<plan::ItemId, plan::ItemId>> walked;
    std::size_t at = movement::legEnds(desk.engraving().plan, *route.route).front().stop.vertex;
    for (const movement::Leg& leg : found->second.legs) {
        const std::pair ends(leg.from, leg.to);
        const bool isFirst = std::find(walked.begin(), walked.end(), ends) == walked.end();
        walked.push_back(ends);
        for (std::size_t n = 0; n < leg.pieces.size() && at < pieces.size(); ++n, ++at) {
            const bool isRoad = route.route->use == plan::Use::Vehicle && leg.pieces.size() > 1;
            if (pieces[at].sharedWithPrimary || isRoad) {
                continue;  // a driver keeps to the road and counts no bends
            }
            const std::string number = numberOf(leg, n, route.route->use);
            const std::string azimuth = azimuthWords(leg.pieces[n].magneticAzimuth, desk.engraving().angles);
            const std::string distance = geodesy::distanceText(leg.pieces[n].mapDistance) + " m";
            Figures figures{
                pieces[at], {{number + "  " + azimuth + "  " + distance}, kLetters}, {{number}, kLetters}, {}, {}};
            if (isFirst) {
                figures.leg = plan::LegPiece{leg.from, leg.to, n, leg.pieces.size() - 1};
                figures.byHand = handOf(desk, route, *figures.leg);
            }
            all.push_back(std::move(figures));
        }
    }
    return all;
}

/// The number of a leg that has no room beside it, by an extension line; a leg of no length keeps it in the card only.
void numberAside(Desk& desk, Subject& route, const Figures& figures) {
    const RoutePiece& piece = figures.piece;
    const Point middle = (piece.from + piece.to) * 0.5 + drawing::leftOf(piece.direction()) * piece.aside;
    if (piece.length() >= 0.05 && desk.window().contains(middle)) {
        // Without room even for that, the number is in the card.
        (void)letterAside(desk, route, figures.number, middle, ExtensionEnd::Tick);
    }
}

void letterByRule(Desk& desk, Subject& route, const Figures& figures) {
    const std::vector<double> kLeftFirst{1, -1};
    const RoutePiece& piece = figures.piece;
    if (figures.hasRoom() && writeBeside(desk, route, piece, figures.full, kLeftFirst, Crossed::AtWorst)) {
        return;
    }
    if (piece.length() < kLeastForNumber ||
        !writeBeside(desk, route, piece, figures.number, kLeftFirst, Crossed::AtWorst)) {
        numberAside(desk, route, figures);
    }
}

void letterByHand(Desk& desk, Subject& route, const Figures& figures) {
    constexpr double kBeside = 6;  // letters that stand farther off are level, and no longer than they need be
    const EdgeOf body{{figures.piece.from, figures.piece.to}, false};
    const drawing::Path line(body.points);
    if (line.length() < 0.05 || drawing::inside(line, desk.window()).empty()) {
        return;
    }
    const Point at = *figures.byHand;
    const bool isOpen = drawing::length(line.at(nearestOn(line, at)) - at) > kBeside;
    const Label& label = isOpen || figures.hasRoom() ? figures.full : figures.number;
    const Degrees angle = angleByHand(line, at);
    const Point middle = desk.movedInside(label.boxAt(at, angle));
    desk.write(route, label, middle, angle);
    tieLabel(desk, route, body, label.boxAt(middle, angle));
}

enum class PlacedBy { Hand, Rule };

void letter(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces, PlacedBy who) {
    for (const Figures& figures : figuresOf(desk, route, pieces)) {
        if (figures.byHand.has_value() != (who == PlacedBy::Hand)) {
            continue;
        }
        const auto before = static_cast<std::ptrdiff_t>(route.parts.size());
        who == PlacedBy::Hand ? letterByHand(desk, route, figures) : letterByRule(desk, route, figures);
        std::for_each(route.parts.begin() + before, route.parts.end(), [&](Part& part) {
            part.what = Part::What::Figures;
            part.leg = figures.leg;
        });
    }
}

}  // namespace

void letterLegs(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces) {
    letter(desk, route, pieces, PlacedBy::Rule);
}

void letterLegsByHand(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces) {
    letter(desk, route, pieces, PlacedBy::Hand);
}

}  // namespace crosstick::symbols
