#pragma once

#include <functional>

#include "symbols/desk.h"

namespace crosstick::symbols {

// What constructed signs have in common: tasks, arrows, fire positions.

/// A line of a constructed sign: dashed 3.0/1.5 where planned, all its corners inked.
void inkSign(Pencil& pencil, const Points& points);

/// The same with the thin pen.
void inkThinSign(Pencil& pencil, const drawing::Polyline& line);

/// A line of a sign with its task letter upright in a break at a place (engraving B4); whole where the letter has no
/// room.
void inkLettered(Desk& desk, Subject& subject, const Points& points, double s, const std::string& letter);

/// The stretches of a line that lie under a label, with clear space beyond both of its ends.
[[nodiscard]] std::vector<drawing::Stretch> gapsUnder(const drawing::Path& path, const TurnedBox& box, double clear);

/// The angle of letters that a hand placed beside a line: along its nearest piece, level where they stand off it.
[[nodiscard]] Degrees angleByHand(const drawing::Path& path, Point at);

/// The place of a line nearest to a point, as arc length from its start.
[[nodiscard]] double nearestOn(const drawing::Path& path, Point to);

/// The middle of a dash, between its strokes where it is doubled, and where it runs.
struct DashMiddle {
    Point at;
    Vector along;
};
/// Of the dashes of a line that are long and straight enough to carry a tick.
[[nodiscard]] std::vector<DashMiddle> dashMiddles(const drawing::Mark& line, const Manner& manner);

/// Where a line of a sign ends at an arrow head: points whose last are cut back to the shaft's end.
[[nodiscard]] Points cutBack(Points shaft, Point end, Vector u);

/// A label 0.9 beside a line (+1: left of travel), clear of it also where it bends under the letters.
[[nodiscard]] Desk::Place besideAt(const drawing::Path& path, double s, const Label& label, double halfInk,
                                   double side);

/// Places on both sides of a line, at its middle first.
[[nodiscard]] std::vector<Desk::Place> besidePlaces(const drawing::Path& path, const Label& label, double halfInk);

/// What a label says when its row finds no room: the same in two rows, parted at the blank that evens them.
[[nodiscard]] std::vector<Label> wordings(const std::string& words, double capital);
/// Where a wording may stand.
using PlacesOf = std::function<std::vector<Desk::Place>(const Label&)>;
/// Letters where a hand placed them, else the first wording in the first place that is free, else aside by an extension
/// line to the symbol or the line that they name; a remark where there is no room at all (engraving A14).
/// @param angle  of the letters where a hand placed them
void letterAt(Desk& desk, Subject& subject, const std::vector<Label>& wordings, const PlacesOf& placesOf,
              Degrees angle);
/// The same for places that do not depend on the wording: what is longer than a row goes aside.
void letterAt(Desk& desk, Subject& subject, const Label& label, const std::vector<Desk::Place>& places, Degrees angle);

/// What a measure's label says, in one row; empty where it has neither name nor number and its sign needs none.
[[nodiscard]] std::string wordsOf(const plan::Measure& measure);
/// The letter of a task: the catalogue's abbreviation.
[[nodiscard]] std::string letterOf(const plan::Measure& measure);
[[nodiscard]] std::string fieldOf(const plan::Measure& measure, std::string_view key);
/// A field's number; the catalogue's default where it is empty or no number.
[[nodiscard]] double numberOf(const plan::Measure& measure, std::string_view key, double low, double high);
/// Was a field that takes yes or no answered with yes?
[[nodiscard]] bool isYes(const plan::Measure& measure, std::string_view key);
/// +1 where the enemy is left of travel, -1 where right.
[[nodiscard]] double enemySide(const plan::Measure& measure);

}  // namespace crosstick::symbols
