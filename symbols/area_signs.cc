#include "symbols/area_signs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/hatch.h"
#include "core/drawing/steps.h"
#include "symbols/area_names.h"
#include "symbols/areas.h"
#include "symbols/construction.h"
#include "symbols/echelons.h"
#include "symbols/pole.h"

namespace crosstick::symbols {
namespace {

constexpr double kRoundLetters = 0.8;  ///< of hatching to a label

/// Hatching goes below the edge's strokes in the same ink; an enemy's second stroke is for the edge alone.
void inkThin(Desk& desk, Subject& subject, std::vector<drawing::Polyline> lines) {
    desk.plainInkOf(subject).lines(std::move(lines), desk.gauge().thin());
}

void placeHatched(Desk& desk, Subject& subject, const std::vector<drawing::Hatching>& hatchings) {
    const drawing::Polyline edge = areaEdge(subject);
    inkEdge(desk, subject, edge);
    const auto box = nameArea(desk, subject, edge, areaWordings(*subject.measure, desk.gauge().letters));
    if (!edge.closed) {
        return;
    }
    std::vector<TurnedBox> clear;
    if (box) {
        clear.push_back(box->grown(kRoundLetters));
    }
    const Points ring = insideRing(subject, edge.points);
    std::vector<drawing::Polyline> lines;
    for (const drawing::Hatching& hatching : hatchings) {
        for (drawing::Polyline& line : drawing::hatched(ring, hatching, clear)) {
            lines.push_back(std::move(line));
        }
    }
    inkThin(desk, subject, std::move(lines));
}

/// Is no corner of the edge nearer to a place than that? Where the edge only curves there is none.
bool isOffCorners(const drawing::Path& path, double at, double clear) {
    constexpr double kCorner = 30 * std::numbers::pi / 180;
    const Points& points = path.points();
    for (std::size_t n = 1; n + 1 < points.size(); ++n) {
        const double turn = drawing::turn(points[n] - points[n - 1], points[n + 1] - points[n]);
        if (std::abs(path.position(n) - at) < clear && std::abs(turn) > kCorner) {
            return false;
        }
    }
    return at - clear >= 0 && at + clear <= path.length();
}

/// A place on the edge at least so far from every corner, as near to the wanted one as there is on that side.
double awayFromCorners(const drawing::Path& path, double wanted, double clear) {
    for (const double aside : drawing::steps(0, path.length() / 4, std::max(0.5, path.length() / 800))) {
        for (const double s : {wanted + aside, wanted - aside}) {
            const double at = std::fmod(s + path.length(), path.length());
            if (isOffCorners(path, at, clear)) {
                return at;
            }
        }
    }
    return wanted;
}

}  // namespace

void placeBattlePosition(Desk& desk, Subject& subject) {
    const drawing::Polyline edge = areaEdge(subject);
    const auto echelon =
        echelonOf(fieldOf(*subject.measure, "echelon").empty() ? "plt" : fieldOf(*subject.measure, "echelon"));
    std::vector<drawing::Stretch> gaps;
    if (edge.closed && echelon) {
        const double e = 0.4 * desk.gauge().symbol;
        const double azimuth = radians(Degrees(numberOf(*subject.measure, "enemy", 0, 360))).value();
        const drawing::Path path(edge.points, true);
        const double half = echelonWidth(*echelon, e, desk.gauge().pen) / 2 + 1;
        const Vector toEnemy{std::sin(azimuth), -std::cos(azimuth)};
        if (const auto end = drawing::leaves(edge.points, poleOf(edge.points), toEnemy)) {
            const double s = awayFromCorners(path, end->along, half + 3);
            const Point mark = (path.at(s - half) + path.at(s + half)) * 0.5;
            const TurnedBox box{mark, 2 * half - 2, e, drawing::readable(path.chord(s, 2 * half))};
            if (s - half > 0 && s + half < path.length() && desk.fits(box)) {
                Pencil ink = desk.inkOf(subject).single();
                drawEchelon(ink, *echelon, mark, path.chord(s, 2 * half), e);
                desk.take(subject, box);
                gaps.push_back({s - half, s + half});
            }
        }
    }
    inkEdge(desk, subject, edge, gaps);
    (void)nameArea(desk, subject, edge, areaWordings(*subject.measure, desk.gauge().letters));
}

void placeKeyTerrainArea(Desk& desk, Subject& subject) {
    const drawing::Polyline edge = areaEdge(subject);
    inkEdge(desk, subject, edge);
    const std::string number = subject.measure->number.empty() ? subject.measure->name : subject.measure->number;
    const Label label{{"K" + number}, desk.gauge().letters};
    const auto box = nameArea(desk, subject, edge, {label});
    const double diameter = 0.9 * desk.gauge().symbol;
    if (box && label.width() + 1 <= diameter) {
        desk.lettersOf(subject).circle(box->middle, diameter, desk.gauge().pen);
        desk.take(subject, {box->middle, diameter, diameter, Degrees(0)});
    }
}

void placeDangerArea(Desk& desk, Subject& subject) {
    const drawing::Polyline edge = areaEdge(subject);
    inkEdge(desk, subject, edge);
    const std::string number = subject.measure->number.empty() ? subject.measure->name : subject.measure->number;
    const double letters = desk.gauge().letters;
    const Label two{{"DANGER", number.empty() ? "AREA" : "AREA " + number}, letters};
    const Label one{{two.rows[0] + ' ' + two.rows[1]}, letters};
    (void)nameArea(desk, subject, edge, {two, one});
    if (edge.closed) {
        constexpr double kTick = 1.5;
        constexpr double kPitch = 3.0;
        inkThin(desk, subject, drawing::combed(insideRing(subject, edge.points), kTick, kPitch));
    }
}

void placeRestricted(Desk& desk, Subject& subject) {
    placeHatched(desk, subject, {{.angle = Degrees(45)}});
}
void placeSeverelyRestricted(Desk& desk, Subject& subject) {
    placeHatched(desk, subject, {{.angle = Degrees(45)}, {.angle = Degrees(135)}});
}
void placeNoGo(Desk& desk, Subject& subject) {
    constexpr double kNarrow = 1.5;
    placeHatched(desk, subject, {{.angle = Degrees(45), .pitch = kNarrow}, {.angle = Degrees(135), .pitch = kNarrow}});
}

}  // namespace crosstick::symbols
