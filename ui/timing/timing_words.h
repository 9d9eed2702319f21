#pragma once

#include <QString>

#include "core/movement/march_table.h"
#include "ui/work/work.h"

namespace crosstick::timing {

/// What makes a plan's times.
enum class Rule { OneRate, ByLight, Naismith, Tobler };
[[nodiscard]] Rule ruleOf(const plan::Heading& heading);
[[nodiscard]] plan::Plan withRule(const plan::Plan& plan, Rule rule);

/// Where a rule's figures come from.
[[nodiscard]] QString sourceOf(Rule rule);
/// Doctrine's, or whose the rates are.
[[nodiscard]] QString sourceOf(const plan::MarchRates& rates);

/// The march table of a route at a start, for the plan's first column.
[[nodiscard]] Result<movement::MarchTable> tableOf(const work::Work& work, const plan::Plan& plan, plan::Route route,
                                                   std::optional<Instant> start);

/// The start from which the column has closed not later than a time: the whole minute before the latest one.
/// Errors: those of movement::latestStart(); movement/no-rate.
[[nodiscard]] Result<Instant> startFor(const work::Work& work, const plan::Route& route, Instant notLaterThan);

/// "Closes 140107, 8 min before 0115." Empty where nothing is known.
[[nodiscard]] QString closingText(const plan::Plan& plan, const movement::MarchTable& table,
                                  std::optional<Instant> notLaterThan);
/// "2000 to 2100"
[[nodiscard]] QString spanText(const movement::PreparationTime& time, TimeZone zone);
/// "3:30 to make the order in, from 131500O." A warning where nothing is left.
[[nodiscard]] QString leftText(const plan::Plan& plan, const movement::MarchTable& table);

}  // namespace crosstick::timing
