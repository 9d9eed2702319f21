#include "core/movement/pace.h"

#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "core/movement/faults.h"
#include "core/units/number_text.h"

namespace crosstick::movement {
namespace {

constexpr double kCrossCountryByRoad = 148.0 / 116.0;
constexpr double kFewest = 30;
constexpr double kMost = 150;

std::vector<std::string_view> wordsOf(std::string_view text) {
    std::vector<std::string_view> words;
    for (std::size_t at = text.find_first_not_of(' '); at != std::string_view::npos;) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        words.push_back(text.substr(at, end - at));
        at = text.find_first_not_of(' ', end);
    }
    return words;
}

/// All courses of some conditions as one; a length of 0 where there is none.
MeasuredCourse together(std::span<const MeasuredCourse> courses, PaceConditions conditions) {
    MeasuredCourse sum{Metres(0), 0, conditions};
    for (const MeasuredCourse& course : courses) {
        if (course.conditions == conditions) {
            sum.length += course.length;
            sum.doublePaces += course.doublePaces;
        }
    }
    return sum;
}

double perHundred(const MeasuredCourse& course) {
    return course.doublePaces * 100 / course.length.value();
}

/// From what was measured in other conditions.
WorkedPace derived(const MeasuredCourse& from, PaceConditions to) {
    WorkedPace pace{perHundred(from), PaceBasis::TrainingRatio, {}};
    pace.how = fmt::format("{} by {} {}", numberText(pace.doublePacesPer100, 1), nameOf(from.conditions.ground),
                           nameOf(from.conditions.light));
    if (from.conditions.ground != to.ground) {
        const bool rougher = to.ground == PaceGround::CrossCountry;
        pace.doublePacesPer100 *= rougher ? kCrossCountryByRoad : 1 / kCrossCountryByRoad;
        pace.how += rougher ? " x 148/116" : " x 116/148";
    }
    if (from.conditions.light != to.light) {
        const bool darker = to.light == PaceLight::Night;
        pace.doublePacesPer100 *= darker ? kNightFactor : 1 / kNightFactor;
        pace.basis = PaceBasis::OurFactor;
        pace.how += fmt::format(" {} {} for the {}, our own factor", darker ? "x" : "/", numberText(kNightFactor),
                                nameOf(to.light));
    }
    return pace;
}

PaceGround other(PaceGround ground) {
    return ground == PaceGround::Road ? PaceGround::CrossCountry : PaceGround::Road;
}

PaceLight other(PaceLight light) {
    return light == PaceLight::Day ? PaceLight::Night : PaceLight::Day;
}

}  // namespace

Result<MeasuredCourse> parseCourse(std::string_view text) {
    const auto words = wordsOf(text);
    const auto bad = fail(kBadCourse, {{"text", std::string(text)}});
    const auto length = words.size() < 2 ? std::nullopt : parseNumber(words[0]);
    const auto count = words.size() < 2 ? std::nullopt : parseNumber(words[1]);
    if (!length || !count || !(*length > 0) || !(*count > 0)) {
        return bad;
    }
    MeasuredCourse course{Metres(*length), *count, {}};
    for (std::size_t n = 2; n < words.size(); ++n) {
        if (words[n] == "single") {
            course.doublePaces = *count / 2;
        } else if (words[n] == nameOf(PaceGround::Road)) {
            course.conditions.ground = PaceGround::Road;
        } else if (words[n] == nameOf(PaceLight::Night)) {
            course.conditions.light = PaceLight::Night;
        } else if (words[n] != nameOf(PaceGround::CrossCountry) && words[n] != nameOf(PaceLight::Day) &&
                   words[n] != "double") {
            return bad;
        }
    }
    if (!(perHundred(course) >= kFewest && perHundred(course) <= kMost)) {
        return fail(kOddCount, {{"count", numberText(perHundred(course), 1)}, {"text", std::string(text)}});
    }
    return course;
}

std::optional<WorkedPace> paceFor(std::span<const MeasuredCourse> courses, PaceConditions conditions) {
    const MeasuredCourse own = together(courses, conditions);
    if (own.length > Metres(0)) {
        return WorkedPace{perHundred(own), PaceBasis::Measured,
                          fmt::format("measured over {} m", numberText(own.length.value()))};
    }
    const PaceGround ground = other(conditions.ground);
    const PaceLight light = other(conditions.light);
    for (const PaceConditions from : {PaceConditions{ground, conditions.light},
                                      PaceConditions{conditions.ground, light}, PaceConditions{ground, light}}) {
        const MeasuredCourse measured = together(courses, from);
        if (measured.length > Metres(0)) {
            return derived(measured, conditions);
        }
    }
    return std::nullopt;
}

Beads beadsFor(Metres ground, double doublePacesPer100) {
    const double hundreds = std::floor(std::clamp(ground.value(), 0.0, 1e9) / 100);
    return {static_cast<int>(hundreds), (ground.value() - hundreds * 100) / 100 * doublePacesPer100};
}

std::string_view nameOf(PaceGround ground) {
    return ground == PaceGround::Road ? "road" : "cross-country";
}

std::string_view nameOf(PaceLight light) {
    return light == PaceLight::Day ? "day" : "night";
}

}  // namespace crosstick::movement
