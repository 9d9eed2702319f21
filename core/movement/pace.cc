#include "core/movement/pace.h"

#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "core/movement/faults.h"
#include "core/units/number_text.h"
#include "core/units/trimmed.h"

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
plan::PaceCourse together(std::span<const plan::PaceCourse> courses, PaceConditions conditions) {
    plan::PaceCourse sum{{}, Metres(0), 0, conditions.ground, conditions.light};
    for (const plan::PaceCourse& course : courses) {
        if (course.going == conditions.ground && course.light == conditions.light) {
            sum.length += course.length;
            sum.doublePaces += course.doublePaces;
        }
    }
    return sum;
}

double perHundred(const plan::PaceCourse& course) {
    return course.doublePaces * 100 / course.length.value();
}

/// From what was measured in other conditions.
WorkedPace derived(const plan::PaceCourse& from, PaceConditions to) {
    WorkedPace pace{perHundred(from), PaceBasis::TrainingRatio, {}};
    pace.how =
        fmt::format("{} by {} {}", numberText(pace.doublePacesPer100, 1), nameOf(from.going), nameOf(from.light));
    if (from.going != to.ground) {
        const bool rougher = to.ground == plan::Going::CrossCountry;
        pace.doublePacesPer100 *= rougher ? kCrossCountryByRoad : 1 / kCrossCountryByRoad;
        pace.how += rougher ? " x 148/116" : " x 116/148";
    }
    if (from.light != to.light) {
        const bool darker = to.light == plan::Light::Night;
        pace.doublePacesPer100 *= darker ? kNightFactor : 1 / kNightFactor;
        pace.basis = PaceBasis::OurFactor;
        pace.how += fmt::format(" {} {} for the {}, our own factor", darker ? "x" : "/", numberText(kNightFactor),
                                nameOf(to.light));
    }
    return pace;
}

plan::Going other(plan::Going ground) {
    return ground == plan::Going::Road ? plan::Going::CrossCountry : plan::Going::Road;
}

plan::Light other(plan::Light light) {
    return light == plan::Light::Day ? plan::Light::Night : plan::Light::Day;
}

}  // namespace

Result<plan::PaceCourse> parseCourse(std::string_view text) {
    const std::size_t comma = text.find(',');
    const auto words = wordsOf(text.substr(0, comma));
    const auto bad = fail(kBadCourse, {{"text", std::string(text)}});
    const auto length = words.size() < 2 ? std::nullopt : parseNumber(words[0]);
    const auto count = words.size() < 2 ? std::nullopt : parseNumber(words[1]);
    if (!length || !count || !(*length > 0) || !(*count > 0)) {
        return bad;
    }
    plan::PaceCourse course{{}, Metres(*length), *count};
    if (comma != std::string_view::npos) {
        course.walker = trimmed(text.substr(comma + 1));
    }
    for (std::size_t n = 2; n < words.size(); ++n) {
        if (words[n] == "single") {
            course.doublePaces = *count / 2;
        } else if (words[n] == nameOf(plan::Going::Road)) {
            course.going = plan::Going::Road;
        } else if (words[n] == nameOf(plan::Light::Night)) {
            course.light = plan::Light::Night;
        } else if (words[n] != nameOf(plan::Going::CrossCountry) && words[n] != nameOf(plan::Light::Day) &&
                   words[n] != "double") {
            return bad;
        }
    }
    if (!(perHundred(course) >= kFewest && perHundred(course) <= kMost)) {
        return fail(kOddCount, {{"count", numberText(perHundred(course), 1)}, {"text", std::string(text)}});
    }
    return course;
}

std::string courseText(const plan::PaceCourse& course) {
    return fmt::format("{} {} {} {}{}{}", numberText(course.length.value()), numberText(course.doublePaces),
                       nameOf(course.going), nameOf(course.light), course.walker.empty() ? "" : ", ", course.walker);
}

std::optional<WorkedPace> paceFor(std::span<const plan::PaceCourse> courses, PaceConditions conditions) {
    const plan::PaceCourse own = together(courses, conditions);
    if (own.length > Metres(0)) {
        return WorkedPace{perHundred(own), PaceBasis::Measured,
                          fmt::format("measured over {} m", numberText(own.length.value()))};
    }
    const plan::Going ground = other(conditions.ground);
    const plan::Light light = other(conditions.light);
    for (const PaceConditions from : {PaceConditions{ground, conditions.light},
                                      PaceConditions{conditions.ground, light}, PaceConditions{ground, light}}) {
        const plan::PaceCourse measured = together(courses, from);
        if (measured.length > Metres(0)) {
            return derived(measured, conditions);
        }
    }
    return std::nullopt;
}

std::optional<WorkedPace> paceFor(const plan::Heading& heading, PaceConditions conditions) {
    if (!heading.courses.empty()) {
        return paceFor(std::span(heading.courses), conditions);
    }
    return heading.pace
               ? std::optional(WorkedPace{heading.pace->doublePacesPer100, PaceBasis::Given, heading.pace->note})
               : std::nullopt;
}

Beads beadsFor(Metres ground, double doublePacesPer100) {
    const double hundreds = std::floor(std::clamp(ground.value(), 0.0, 1e9) / 100);
    return {static_cast<int>(hundreds), (ground.value() - hundreds * 100) / 100 * doublePacesPer100};
}

std::string countText(double doublePacesPer100) {
    return numberText(std::round(doublePacesPer100 * 10) / 10);
}

std::string_view nameOf(plan::Going ground) {
    return ground == plan::Going::Road ? "road" : "cross-country";
}

std::string_view nameOf(plan::Light light) {
    return light == plan::Light::Day ? "day" : "night";
}

}  // namespace crosstick::movement
