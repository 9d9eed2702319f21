#include "core/movement/pace.h"

#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

using movement::PaceConditions;
using plan::Going;
using plan::Light;

struct PaceOptions {
    std::vector<std::string> courses;
    std::string leg;
    bool json = false;
};

constexpr std::array kConditions{PaceConditions{Going::Road, Light::Day}, PaceConditions{Going::Road, Light::Night},
                                 PaceConditions{Going::CrossCountry, Light::Day},
                                 PaceConditions{Going::CrossCountry, Light::Night}};

std::string_view nameOf(movement::PaceBasis basis) {
    switch (basis) {
        case movement::PaceBasis::Given:
            return "given";
        case movement::PaceBasis::Measured:
            return "measured";
        case movement::PaceBasis::TrainingRatio:
            return "training task 071-329-1006";
        case movement::PaceBasis::OurFactor:
            return "our own factor";
    }
    return "";
}

Json jsonOf(const PaceConditions& conditions, const movement::WorkedPace& pace, std::optional<double> leg) {
    Json json{{"ground", movement::nameOf(conditions.ground)},
              {"light", movement::nameOf(conditions.light)},
              {"double_paces_per_100_m", number(pace.doublePacesPer100)},
              {"basis", nameOf(pace.basis)},
              {"how", pace.how}};
    if (leg) {
        const movement::Beads beads = movement::beadsFor(Metres(*leg), pace.doublePacesPer100);
        json["beads"] = beads.pulled;
        json["double_paces_after"] = number(beads.doublePacesAfter);
    }
    return json;
}

void writeRow(std::ostream& out, const PaceConditions& conditions, const movement::WorkedPace& pace,
              std::optional<double> leg) {
    std::string beads;
    if (leg) {
        const movement::Beads counted = movement::beadsFor(Metres(*leg), pace.doublePacesPer100);
        beads = fmt::format("{} beads and {}", counted.pulled, numberText(counted.doublePacesAfter, 0));
    }
    out << fmt::format("{:<14}{:<7}{:>6}  {:<18}{}\n", movement::nameOf(conditions.ground),
                       movement::nameOf(conditions.light), numberText(pace.doublePacesPer100, 1), beads, pace.how);
}

Exit paceCommand(const PaceOptions& options, const Surroundings& surroundings) {
    std::vector<plan::PaceCourse> courses;
    for (const std::string& text : options.courses) {
        const auto course = movement::parseCourse(asTyped(text));
        if (!course) {
            return couldNot(surroundings, course.error());
        }
        courses.push_back(*course);
    }
    const auto leg = checkedNumber(options.leg);
    Json list = Json::array();
    if (!options.json) {
        surroundings.out << "ground        light  double paces to 100 m\n";
    }
    for (const PaceConditions& conditions : kConditions) {
        const movement::WorkedPace pace = movement::paceFor(std::span(courses), conditions).value();
        if (options.json) {
            list.push_back(jsonOf(conditions, pace, leg));
        } else {
            writeRow(surroundings.out, conditions, pace, leg);
        }
    }
    if (options.json) {
        say(surroundings.out, list);
    } else {
        surroundings.out << "Count a course of 100 to 600 m on ground like that of the march, with the load of it.\n";
    }
    return Exit::Done;
}

constexpr std::string_view kManual =
    R"(A person's pace count by day and night, on road and cross-country, from measured courses.

A --course is its length in metres and the double paces counted on it (the left foot alone), then
words: "road" or "cross-country", "day" or "night", "single" where every step was counted; without
words cross-country by day. Where a condition was not walked, the count comes from the other ground
by 148/116 (training task 071-329-1006), and from the other light by 1.1, our own factor: no
publication has one. One bead is pulled each 100 m.

  crosstick pace --course "600 372 road" --course "600 444 night" --leg 1080)";

}  // namespace

void addPace(CLI::App& program, Action& action) {
    auto options = std::make_shared<PaceOptions>();
    CLI::App* command = program.add_subcommand("pace", std::string(kManual));
    command
        ->add_option("--course", options->courses, "A course that was walked, such as \"600 444 cross-country night\"")
        ->type_name("COURSE")
        ->required();
    command->add_option("--leg", options->leg, "Ground metres of a leg, to count it in beads")
        ->type_name("METRES")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_flag("--json", options->json, "One array, an object a condition");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return paceCommand(*options, surroundings); };
    });
}

}  // namespace crosstick::app
