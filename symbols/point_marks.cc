#include "symbols/point_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "symbols/construction.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"

namespace crosstick::symbols {
namespace {

constexpr double kBeside = 0.9;

/// Number or name inside where it is short enough; else beside.
void placeLettered(Desk& desk, Subject& subject, Mark mark, std::size_t most, double capital, Point at) {
    const plan::Measure& measure = *subject.measure;
    const std::string words = measure.number.empty() ? measure.name : measure.number;
    const bool fits = !words.empty() && words.size() <= most;
    if (fits) {
        mark.inside = Label{{words}, capital};
        mark.insideAt = at;
    }
    if (const auto box = placeMark(desk, subject, mark)) {
        nameBeside(desk, subject, !fits ? words : measure.number.empty() ? std::string{} : measure.name, *box);
    }
}

}  // namespace

// Circle of 0.80 H with an X to the circle at 45 degrees, centred on the spot.
void placeCoordinationPoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double diameter = 0.8 * desk.gauge().symbol;
    const double reach = diameter / 2 / std::sqrt(2.0);
    const Mark mark{circlePoints({0, 0}, diameter),
                    {{{{-reach, -reach}, {reach, reach}}, false}, {{{-reach, reach}, {reach, -reach}}, false}},
                    drawing::Join::Round};
    if (const auto box = placeMark(desk, subject, mark)) {
        const std::string number = subject.measure->number;
        nameBeside(desk, subject, number.empty() ? subject.measure->name : "CO " + number, *box);
    }
}

// Equilateral triangle, point up, of height H on its centroid; nothing inside.
void placeObservationPost(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double h = desk.gauge().symbol;
    const double half = h / std::sqrt(3.0);
    const Mark mark{{{0, -2 * h / 3}, {half, h / 3}, {-half, h / 3}}, {}};
    if (const auto box = placeMark(desk, subject, mark)) {
        // Beside the lower half, where the triangle is widest.
        const double shoulder = box->bottom - 2 * h / 3;
        const std::string name = movement::label(*subject.measure);
        nameBeside(desk, subject, name, {box->left, shoulder, box->right, box->bottom});
    }
}

// A cross with arms of 0.60 H and a square of 0.40 H on its centre.
void placeTargetReferencePoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double arm = 0.6 * desk.gauge().symbol;
    const double side = 0.2 * desk.gauge().symbol;
    Mark mark{{{-side, -side}, {side, -side}, {side, side}, {-side, side}},
              {{{{-arm, 0}, {arm, 0}}, false}, {{{0, -arm}, {0, arm}}, false}}};
    const double half = desk.gauge().pen / 2;
    mark.body = {{-side, -side, side, side}, {-arm, -half, arm, half}, {-half, -arm, half, arm}};
    const auto box = placeMark(desk, subject, mark);
    if (!box) {
        return;
    }
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const double w = label.width() / 2;
    const Pencil ink = desk.inkOf(subject);
    const double second = ink.outlineReach() - ink.halfPen();       // stroke of the enemy's square, outside it
    const double fromArm = std::max(1.9, side + second + kBeside);  // in a quadrant of the cross
    std::vector<Desk::Place> places;
    for (const Vector quadrant : {Vector{1, -1}, Vector{1, 1}, Vector{-1, -1}, Vector{-1, 1}}) {
        places.push_back({box->middle() + Vector{quadrant.x * (fromArm + w), quadrant.y * 2.7}, Degrees(0)});
    }
    letterAt(desk, subject, label, places, Degrees(0));
}

// Square of 0.90 H; its number inside.
void placeContactPoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double half = 0.45 * desk.gauge().symbol;
    placeLettered(desk, subject, {{{-half, -half}, {half, -half}, {half, half}, {-half, half}}}, 2, 2.5, {0, 0});
}

// Five-pointed star, point up, outer radius 0.85 H, inner 0.45 of it; its number inside.
void placeDecisionPoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double outer = 0.85 * desk.gauge().symbol;
    Mark mark;
    for (int n = 0; n < 10; ++n) {
        const double turn = std::numbers::pi * n / 5;
        mark.outline.push_back(Vector{std::sin(turn), -std::cos(turn)} * (n % 2 == 0 ? outer : 0.45 * outer));
    }
    placeLettered(desk, subject, mark, 2, 1.8, {0, 0});
}

// Triangle, point down on the spot, side 1.2 H; its number inside, the legend says what it is.
void placeCriticalPoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const double side = 1.2 * desk.gauge().symbol;
    const double high = side * std::sqrt(3.0) / 2;
    const double back = desk.inkOf(subject).halfPen() / std::sin(std::numbers::pi / 6);  // so that the ink ends at 0
    Mark mark{{{0, -back}, {-side / 2, -high - back}, {side / 2, -high - back}}};
    mark.second = Second::Inside;                             // the point stays on its spot
    const std::size_t most = subject.manner.doubled ? 0 : 2;  // inside a second outline no number has room
    placeLettered(desk, subject, mark, most, 1.8, {0, -0.66 * high - back});
}

// Circle of 0.90 H with "K" and its number.
void placeKeyTerrain(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    Mark mark{circlePoints({0, 0}, 0.9 * desk.gauge().symbol), {}, drawing::Join::Round};
    const plan::Measure& measure = *subject.measure;
    const double room = 0.9 * desk.gauge().symbol - 1.4;
    const auto capital = [&](double letters) { return Label{{"K" + measure.number}, letters}.width() <= room; };
    const bool fits = measure.number.size() <= 2 && capital(1.8);
    const double letters = fits && !capital(desk.gauge().letters) ? 1.8 : desk.gauge().letters;
    mark.inside = Label{{fits ? "K" + measure.number : "K"}, letters};
    if (const auto box = placeMark(desk, subject, mark)) {
        std::string beside = fits ? std::string{} : measure.number;
        beside += beside.empty() || measure.name.empty() ? measure.name : ' ' + measure.name;
        nameBeside(desk, subject, beside, *box);
    }
}

// A small circle with a dot on the spot.
void placeWaypoint(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const Mark mark{circlePoints({0, 0}, 1.8), {}, drawing::Join::Round, {circlePoints({0, 0}, 0.5)}};
    if (const auto box = placeMark(desk, subject, mark)) {
        nameBeside(desk, subject, wordsOf(*subject.measure), *box);
    }
}

}  // namespace crosstick::symbols
