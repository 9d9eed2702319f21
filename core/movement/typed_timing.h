#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/movement/pace.h"
#include "core/plan/plan.h"

namespace crosstick::movement {

// What somebody types about times and paces, read and put into the plan. What cannot be read leaves no plan at all.
// In lists a place at their end adds one, and nothing typed takes one out.

/// A date-time group, an ISO time, or a clock time alone ("2100", "21:00"): that is on the plan's day, or on the day
/// after where it would lie before `notBefore`.
/// Errors: units' for times.
[[nodiscard]] Result<Instant> momentTyped(const plan::Heading& heading, std::string_view typed,
                                          std::optional<Instant> notBefore = std::nullopt);
/// The same of something that has happened: a clock time alone is the one nearest to when it was to happen.
[[nodiscard]] Result<Instant> momentNear(const plan::Heading& heading, std::string_view typed,
                                         std::optional<Instant> near);
/// Before this no time of the work is meant: when the plan was prepared, else the start given.
[[nodiscard]] std::optional<Instant> notBefore(const plan::Heading& heading, std::optional<Instant> start);

/// "62": one count for everything, in place of all courses. "600 372 night": one course more.
/// Errors: movement/bad-count with "typed"; those of parseCourse().
[[nodiscard]] Result<plan::Plan> withPaceTyped(const plan::Plan& plan, std::string_view typed);
/// Errors: those of parseCourse().
[[nodiscard]] Result<plan::Plan> withCourseTyped(const plan::Plan& plan, std::size_t place, std::string_view typed);

/// One rate, in km/h, 0.1 to 20; the plan's timing, where it has one, goes.
/// Errors: movement/bad-rate with "typed".
[[nodiscard]] Result<plan::Plan> withRateTyped(const plan::Plan& plan, std::string_view typed);
/// One of the four rates of the plan's timing; nothing typed is doctrine's again.
/// Errors: movement/bad-rate with "typed".
[[nodiscard]] Result<plan::Plan> withRateTyped(const plan::Plan& plan, PaceConditions conditions,
                                               std::string_view typed);
/// A rate of the four, for some conditions.
[[nodiscard]] KilometresPerHour rateFor(const plan::MarchRates& rates, PaceConditions conditions);

/// Minutes, or hours and minutes: "60", "1:30"; up to 30 days.
[[nodiscard]] std::optional<Minutes> parseLength(std::string_view typed);
/// What is done before the start and how long: "orders 60", "rehearsal=1:30".
[[nodiscard]] std::optional<plan::Preparation> parsePreparation(std::string_view typed);
/// As parsePreparation() reads it: "rehearsal 90".
[[nodiscard]] std::string preparationText(const plan::Preparation& preparation);
/// Errors: movement/bad-preparation with "typed".
[[nodiscard]] Result<plan::Plan> withPreparationTyped(const plan::Plan& plan, std::size_t place,
                                                      std::string_view typed);

/// Errors of pace, per cent, and of compass, degrees: "4 1.5", "4 % 1.5°"; nothing typed is our defaults again.
/// Errors: movement/bad-navigator with "typed".
[[nodiscard]] Result<plan::Plan> withNavigatorTyped(const plan::Plan& plan, std::string_view typed);
/// As it is typed: "4 % 1.5°".
[[nodiscard]] std::string navigatorText(const plan::NavigatorErrors& errors);

/// Nothing typed takes it out. Errors: units' for times.
[[nodiscard]] Result<plan::Plan> withHHourTyped(const plan::Plan& plan, std::string_view typed);
[[nodiscard]] Result<plan::Plan> withStartTyped(const plan::Plan& plan, const plan::ItemId& route,
                                                std::string_view typed);
/// A start as somebody gave it: no time by which the column is to have closed stands behind it.
[[nodiscard]] plan::Plan withStart(const plan::Plan& plan, const plan::ItemId& route, std::optional<Instant> start);
/// A start that was worked out from the time by which the column is to have closed, which the plan keeps.
[[nodiscard]] plan::Plan withStartInTime(const plan::Plan& plan, const plan::ItemId& route, Instant start,
                                         Instant notLaterThan);

/// The plan with its heading changed.
template <class Change>
[[nodiscard]] plan::Plan withHeading(const plan::Plan& plan, Change&& change) {
    plan::Heading heading = plan.heading();
    change(heading);
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

}  // namespace crosstick::movement
