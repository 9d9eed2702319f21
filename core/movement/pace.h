#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/units/quantity.h"
#include "core/units/result.h"

namespace crosstick::movement {

/// What a pace count holds for.
enum class PaceGround { Road, CrossCountry };
enum class PaceLight { Day, Night };
struct PaceConditions {
    PaceGround ground = PaceGround::CrossCountry;
    PaceLight light = PaceLight::Day;
    friend bool operator==(const PaceConditions&, const PaceConditions&) = default;
};

/// A course of known length that somebody has walked counting. Training takes 100 to 600 m of ground like that of the
/// march (trade.md 4.5, TC 3-25.26).
struct MeasuredCourse {
    Metres length;
    double doublePaces = 0;
    PaceConditions conditions;
};
/// Words in any order after the two numbers: "600 372 cross-country night", "100 116 single road". Counted are double
/// paces, the left foot alone, unless "single" says that every step was; cross-country and day where nothing is said.
/// Errors: movement/bad-course with "text"; movement/odd-count with "count" where it comes to less than 30 or more than
/// 150 double paces to 100 m, which nobody walks.
[[nodiscard]] Result<MeasuredCourse> parseCourse(std::string_view text);

enum class PaceBasis {
    Measured,       ///< on courses walked in these conditions
    TrainingRatio,  ///< from the other ground, by 148/116 (trade.md 4.5, task 071-329-1006)
    OurFactor       ///< a factor of ours is in it: no publication has one for the night
};
struct WorkedPace {
    double doublePacesPer100 = 0;
    PaceBasis basis = PaceBasis::Measured;
    std::string how;  ///< "measured over 1200 m"; "by road 62 x 148/116"; "... x 1.1 for the night, our own factor"
};

/// What we take a night to add to a count where it was not measured: our own, from no publication.
inline constexpr double kNightFactor = 1.1;

/// The count for some conditions: measured in them (all courses together), else from the other ground by the ratio of
/// the training task, else from the other light by our factor, else by both. None without a course.
[[nodiscard]] std::optional<WorkedPace> paceFor(std::span<const MeasuredCourse> courses, PaceConditions conditions);

/// How a leg is counted with beads: one is pulled each 100 m.
struct Beads {
    int pulled = 0;
    double doublePacesAfter = 0;  ///< from the last bead to the end
};
[[nodiscard]] Beads beadsFor(Metres ground, double doublePacesPer100);

[[nodiscard]] std::string_view nameOf(PaceGround ground);  ///< "road", "cross-country"
[[nodiscard]] std::string_view nameOf(PaceLight light);    ///< "day", "night"

}  // namespace crosstick::movement
