#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::app {

// A plan's timing, force, tasks and events as lines for people: "WHAT NAME: CLAUSE; CLAUSE". A clause begins with its
// own word; what no clause names stays as it was. "#" begins a remark; a semicolon parts clauses, so that no text holds
// one. Colons of clock times are safe: the one that counts has a blank or the line's end behind it.

/// A line in its parts.
struct PlanLine {
    int number = 1;    ///< in what was given, the first 1
    std::string name;  ///< between its word and the colon: "1 Sqd in 4"
    std::vector<std::string> clauses;
    std::string_view form;  ///< how such a line is written
};

/// Kinds of lines, each with how it is written and what it does to a plan.
struct LineKind {
    std::string_view word, form;
    Result<plan::Plan> (*taken)(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
};
[[nodiscard]] std::span<const LineKind> lineKinds();

/// The plan with all lines in it, each on top of those before. New things get identities from `ids`.
/// Errors: app/line-misread with "line", "text", "form"; app/line-names-nothing with "line", "name", "known".
[[nodiscard]] Result<plan::Plan> withLines(const plan::Plan& plan, const std::string& text, IdSource& ids);

/// What of a plan such lines can say, as lines. Law: withLines(plan, linesOf(plan)) == plan where names are told apart
/// and texts hold neither semicolon nor line end.
[[nodiscard]] std::string linesOf(const plan::Plan& plan);

}  // namespace crosstick::app
