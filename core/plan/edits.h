#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

// Edits: functions from a plan to a new plan that shares all they did not touch. What an edit names and the plan has
// not leaves the plan as it is. Points are in the plan's plane.

using Points = std::vector<geodesy::PlanePoint>;

/// A measure put into the plan and shown on top of a film.
[[nodiscard]] Plan withMeasure(const Plan& plan, Measure measure, const FilmId& film);
/// A route with the measures that are to stand on it, shown on top of a film; those the plan has already stay.
[[nodiscard]] Plan withRoute(const Plan& plan, Route route, std::vector<Measure> stops, const FilmId& film);

/// A point of a measure or a route moved. Where a route point sits on a route's vertex, measure and vertices of every
/// route that it sits on move together. A unit whose place was assumed is confirmed where it is put.
[[nodiscard]] Plan withPoint(const Plan& plan, const ItemId& item, std::size_t index, geodesy::PlanePoint to);
/// The whole of a measure or a route moved, route points and vertices together.
[[nodiscard]] Plan movedBy(const Plan& plan, const ItemId& item, Metres east, Metres north);
/// A point put in before another one of a line, an area or a route.
[[nodiscard]] Plan withPointBefore(const Plan& plan, const ItemId& item, std::size_t index, geodesy::PlanePoint at);
/// A point taken out; a line keeps two, an area three, a route two. A route point on it stays as a measure.
[[nodiscard]] Plan withoutPoint(const Plan& plan, const ItemId& item, std::size_t index);

/// A measure or route taken out of the plan, of every film and of the routes that it stood on.
[[nodiscard]] Plan without(const Plan& plan, const ItemId& item);

[[nodiscard]] bool isShownOn(const Film& film, const ItemId& item);
[[nodiscard]] Plan shownOn(const Plan& plan, const ItemId& item, const FilmId& film);
/// Taken off one film; a thing that no film shows any more stays in the plan.
[[nodiscard]] Plan notShownOn(const Plan& plan, const ItemId& item, const FilmId& film);
/// Shown on one film in place of another.
[[nodiscard]] Plan movedToFilm(const Plan& plan, const ItemId& item, const FilmId& from, const FilmId& to);
/// A new film on top of the stack.
[[nodiscard]] Plan withFilm(const Plan& plan, const FilmId& id, std::string name, std::set<int> phases);
enum class Step { Up, Down };
/// A film one place up or down in the stack.
[[nodiscard]] Plan restacked(const Plan& plan, const FilmId& film, Step step);

/// The next number that no measure of a kind has: "3".
[[nodiscard]] std::string nextNumber(const Plan& plan, std::string_view kind);
/// The next name that no measure of a kind has, from A to Z, then AA: a suggestion to be written over.
[[nodiscard]] std::string nextName(const Plan& plan, std::string_view kind);

}  // namespace crosstick::plan
