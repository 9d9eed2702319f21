#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/plan/plan.h"
#include "core/units/quantity.h"
#include "core/units/result.h"

namespace crosstick::movement {

/// What a pace count holds for.
struct PaceConditions {
    plan::Going ground = plan::Going::CrossCountry;
    plan::Light light = plan::Light::Day;
    friend bool operator==(const PaceConditions&, const PaceConditions&) = default;
};

/// A course that somebody has walked counting, typed as words in any order after the two numbers, and whose it is after
/// a comma: "600 372 cross-country night", "100 116 single road, P14". Counted are double paces, the left foot alone,
/// unless "single" says that every step was; cross-country and day where nothing is said. Training takes 100 to 600 m
/// of ground like that of the march (trade.md 4.5, TC 3-25.26).
/// Errors: movement/bad-course with "text"; movement/odd-count with "count" where it comes to less than 30 or more than
/// 150 double paces to 100 m, which nobody walks.
[[nodiscard]] Result<plan::PaceCourse> parseCourse(std::string_view text);
/// As parseCourse() reads it.
[[nodiscard]] std::string courseText(const plan::PaceCourse& course);

enum class PaceBasis {
    Given,          ///< one figure for all ground and light
    Measured,       ///< on courses walked in these conditions
    TrainingRatio,  ///< from the other ground, by 148/116 (trade.md 4.5, task 071-329-1006)
    OurFactor       ///< a factor of ours is in it: no publication has one for the night
};
struct WorkedPace {
    double doublePacesPer100 = 0;
    PaceBasis basis = PaceBasis::Measured;
    std::string how;  ///< "measured over 1200 m"; "by road 62 x 148/116"; "... x 1.1 for the night, our own factor"
    friend bool operator==(const WorkedPace&, const WorkedPace&) = default;
};

/// What we take a night to add to a count where it was not measured: our own, from no publication.
inline constexpr double kNightFactor = 1.1;

/// The count for some conditions: measured in them (all courses together), else from the other ground by the ratio of
/// the training task, else from the other light by our factor, else by both. None without a course.
[[nodiscard]] std::optional<WorkedPace> paceFor(std::span<const plan::PaceCourse> courses, PaceConditions conditions);
/// What a plan counts by: from its courses, else its one figure; none where it has neither, whatever the conditions.
[[nodiscard]] std::optional<WorkedPace> paceFor(const plan::Heading& heading, PaceConditions conditions);

/// A count that a route's legs were counted by.
struct UsedPace {
    PaceConditions conditions;
    WorkedPace pace;
    friend bool operator==(const UsedPace&, const UsedPace&) = default;
};

/// How a leg is counted with beads: one is pulled each 100 m.
struct Beads {
    int pulled = 0;
    double doublePacesAfter = 0;  ///< from the last bead to the end
};
[[nodiscard]] Beads beadsFor(Metres ground, double doublePacesPer100);

/// A count as it is written: "74", "81.4".
[[nodiscard]] std::string countText(double doublePacesPer100);
[[nodiscard]] std::string_view nameOf(plan::Going ground);  ///< "road", "cross-country"
[[nodiscard]] std::string_view nameOf(plan::Light light);   ///< "day", "night"

}  // namespace crosstick::movement
