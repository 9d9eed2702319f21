#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measures/meant.h"
#include "core/plan/plan.h"

namespace crosstick::plan {

// Numbers of measures: free ones, whose they are, and checkpoints that number themselves along the routes.

/// The other measure of a kind that has a number; null where it is free, and for no number.
[[nodiscard]] MeasurePtr holderOf(const Plan& plan, std::string_view kind, const std::string& number,
                                  const ItemId& except = {});
/// The first route that a measure stands on; null where there is none.
[[nodiscard]] RoutePtr routeThrough(const Plan& plan, const ItemId& measure);

/// What a new measure is called.
struct Called {
    std::string number, name;
    friend bool operator==(const Called&, const Called&) = default;
};
/// As somebody said it ("3", "bodkin", "3 bodkin"; names in capitals, as the trade writes them, but for text), else by
/// the next free number or letter.
[[nodiscard]] Called calledBy(const measures::Meant& meant, const Plan& plan);
/// A measure that is called so. What has no name but parts two units is said by these: "boundary A 2/C".
[[nodiscard]] Measure called(Measure measure, const measures::Meant& meant, const Plan& plan);
/// A name as the trade writes it: in capitals.
[[nodiscard]] std::string capitals(std::string name);
/// The number that a label says, as calledBy reads it; empty where it says none.
[[nodiscard]] std::string numberSaid(const measures::Meant& meant);

/// Papers that were given out and carry a measure's number; null where it stands on none.
[[nodiscard]] const Issue* issueOf(const Plan& plan, const ItemId& measure);
/// The numbers that stand on papers of the plan: of what its films show and of what its routes pass.
[[nodiscard]] std::vector<ItemId> numbersOnPapers(const Plan& plan);
/// The plan with papers given out.
[[nodiscard]] Plan givenOut(const Plan& plan, Issue issue);

/// What a checkpoint is called that is put between two whose numbers stand on papers given out: the next free number,
/// or the one before it with a letter ("2A"). The choice is the house's.
enum class Inserted { NextFree, Lettered };

/// Checkpoints in the order in which routes pass them: primary routes first, then alternates, then others; each once.
[[nodiscard]] std::vector<ItemId> checkpointsAlong(const Plan& plan);

/// Checkpoints numbered from 1 along the routes, in the order of checkpointsAlong. Numbers on papers given out stay, as
/// do those of checkpoints that no route passes; both are passed over.
/// Laws: (1) numbering again changes nothing; (2) no two checkpoints get one number; (3) without papers given out the
///       numbers rise along every primary route that begins with new points.
[[nodiscard]] Plan numberedAlong(const Plan& plan, Inserted inserted);

/// What an edit has in its train: where the numbers ran along the routes before it they do so after it; where they were
/// somebody's own only checkpoints that the edit put on a route are numbered. An edit that puts none on, takes none
/// off and changes no order leaves all numbers alone: a number that was typed is meant.
[[nodiscard]] Plan numbersFollow(const Plan& before, const Plan& after, Inserted inserted);

/// Numbers anew along the routes, those on papers given out, too.
struct Renumbering {
    Plan plan;                  ///< without the papers that became wrong
    std::vector<Issue> killed;  ///< papers on which other numbers stand now
    std::size_t changed = 0;    ///< checkpoints with another number
};
[[nodiscard]] Renumbering renumbered(const Plan& plan);

}  // namespace crosstick::plan
