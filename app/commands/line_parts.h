#pragma once

#include "app/commands/plan_lines.h"

namespace crosstick::app {

// What the kinds of lines share: reading clauses, and finding what they name.

[[nodiscard]] std::string trimmed(std::string_view text);
/// What follows a clause's own word; nothing where it begins with another.
[[nodiscard]] std::optional<std::string> after(const std::string& clause, std::string_view word);
/// The only clause is "none": what the line speaks of is taken out.
[[nodiscard]] bool saysNone(const PlanLine& line);
/// Parts between commas, trimmed.
[[nodiscard]] std::vector<std::string> listed(const std::string& text);

[[nodiscard]] tl::unexpected<Error> misread(const PlanLine& line, const std::string& text);

/// A number over 0, or over and equal to 0.
enum class Least { OverNothing, Nothing };
[[nodiscard]] Result<double> numberIn(const PlanLine& line, const std::string& text, Least least);
[[nodiscard]] Result<Instant> momentIn(const PlanLine& line, const std::string& text);

/// By name, in any case of letters. Errors: app/line-names-nothing.
[[nodiscard]] Result<Uuid> elementIn(const PlanLine& line, const plan::Plan& plan, const std::string& name);
/// With or without "RTE".
[[nodiscard]] Result<plan::ItemId> routeIn(const PlanLine& line, const plan::Plan& plan, const std::string& name);
/// A measure by what lists call it: "PL TRIVET".
[[nodiscard]] Result<plan::ItemId> measureIn(const PlanLine& line, const plan::Plan& plan, const std::string& name);

[[nodiscard]] plan::Plan withHeading(const plan::Plan& plan, plan::Heading heading);
[[nodiscard]] plan::Plan withForce(const plan::Plan& plan, plan::Force force);

using LineTaken = Result<plan::Plan>;
LineTaken takeElement(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeColumn(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeTask(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeEvent(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takePhase(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeHHour(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takePace(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeRate(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeTiming(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeBefore(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeStart(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeContours(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeDrift(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeLeg(const PlanLine& line, const plan::Plan& plan, IdSource& ids);
LineTaken takeEvacuation(const PlanLine& line, const plan::Plan& plan, IdSource& ids);

}  // namespace crosstick::app
