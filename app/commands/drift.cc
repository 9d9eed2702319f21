#include "core/movement/drift.h"

#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/commands/route_sources.h"
#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

struct DriftOptions {
    std::string plan, pace, compass, within;
    std::vector<std::string> routes;
    bool json = false;
};

movement::NavigatorErrors errorsOf(const plan::Plan& plan, const DriftOptions& options) {
    auto errors = plan.heading().navigator.value_or(movement::NavigatorErrors{});
    if (const auto percent = checkedNumber(options.pace)) {
        errors.pace = *percent / 100;
    }
    if (const auto degrees = checkedNumber(options.compass)) {
        errors.compass = Degrees(*degrees);
    }
    return errors;
}

/// Which of the figures are our defaults and nobody's own.
std::string oursText(const plan::Plan& plan, const DriftOptions& options) {
    const bool isOurs = !plan.heading().navigator;
    std::string text;
    for (const auto& [isDefault, name] : {std::pair{isOurs && options.pace.empty(), "5 % of pace"},
                                          std::pair{isOurs && options.compass.empty(), "2 degrees of compass"},
                                          std::pair{options.within.empty(), "50 m to be found within"}}) {
        if (isDefault) {
            text += (text.empty() ? "" : ", ") + std::string(name);
        }
    }
    return text;
}

struct RouteAnswer {
    movement::RouteFigures figures;
    movement::RouteDrift drift;
    std::string ours;  ///< what of it is our default
};

Json legJson(const movement::Leg& leg, const movement::LegDrift& drift) {
    return {{"leg", leg.number},
            {"from", leg.fromLabel},
            {"to", leg.toLabel},
            {"to_grid", leg.toGrid},
            {"ground_distance_m", number(leg.groundDistance)},
            {"ellipse_major_m", number(drift.ellipse.major)},
            {"ellipse_minor_m", number(drift.ellipse.minor)},
            {"ellipse_grid_azimuth_deg", number(drift.ellipse.gridAzimuth)},
            {"found_within_m", number(drift.foundWithin)},
            {"found_within_source", drift.by == movement::FoundBy::Plan ? "plan" : "asked or default"},
            {"larger_than_found", drift.isLarger()}};
}

Json routeJson(const RouteAnswer& answer) {
    const movement::RouteDrift& drift = answer.drift;
    Json json{{"route", answer.figures.name},
              {"pace_error_percent", number(drift.errors.pace * 100)},
              {"compass_error_deg", number(drift.errors.compass)},
              {"found_within_m", number(drift.foundWithin)},
              {"longest_safe_leg_m", number(drift.longestSafeLeg)},
              {"our_defaults", answer.ours}};
    json["legs"] = Json::array();
    for (std::size_t n = 0; n < drift.legs.size(); ++n) {
        json["legs"].push_back(legJson(answer.figures.legs[n], drift.legs[n]));
    }
    return json;
}

std::string named(const std::string& label, std::string_view without) {
    return label.empty() ? std::string(without) : label;
}

void writeForPeople(std::ostream& out, const RouteAnswer& answer) {
    const movement::RouteDrift& drift = answer.drift;
    out << fmt::format("{}: pace {} %, compass {} degrees\n", movement::routeTitle(answer.figures.name),
                       numberText(drift.errors.pace * 100), numberText(drift.errors.compass.value()));
    if (!answer.ours.empty()) {
        out << "Our own defaults, from no publication: " << answer.ours << ".\n";
    }
    out << fmt::format(
        "Longest safe leg to a point found within {} m: {} m\n\n", numberText(drift.foundWithin.value()),
        isFinite(drift.longestSafeLeg) ? numberText(std::floor(drift.longestSafeLeg.value()), 0) : "any");
    out << fmt::format("{:>3}  {:<12}  {:<12}  {:>8}  {:>13}  {:>8}  {:>7}\n", "leg", "from", "to", "ground m",
                       "off by, m", "along az", "found m");
    std::string larger;
    for (std::size_t n = 0; n < drift.legs.size(); ++n) {
        const movement::Leg& leg = answer.figures.legs[n];
        const movement::LegDrift& off = drift.legs[n];
        out << fmt::format(
            "{:>3}  {:<12}  {:<12}  {:>8}  {:>13}  {:>8}  {:>7}\n", leg.number, named(leg.fromLabel, "start"),
            named(leg.toLabel, "end"), numberText(leg.groundDistance.value(), 0),
            fmt::format("{} by {}", numberText(off.ellipse.major.value(), 1), numberText(off.ellipse.minor.value(), 1)),
            geodesy::azimuthText(off.ellipse.gridAzimuth, geodesy::AngleUnit::Degrees),
            numberText(off.foundWithin.value()));
        if (off.isLarger()) {
            larger += (larger.empty() ? "" : ", ") + std::to_string(leg.number) + " to " + named(leg.toLabel, "end");
        }
    }
    out << (larger.empty() ? "\nEvery point is found within its drift.\n"
                           : "\nMay be missed, the drift is larger than what is to be found: leg " + larger + ".\n");
}

Result<RouteAnswer> answerFor(const RouteSources& sources, const plan::Route& route, const DriftOptions& options) {
    const Metres within(checkedNumber(options.within).value_or(movement::kFoundWithin.value()));
    return movement::routeFigures(sources.plan, route, sources.modelOrNone(), sources.heights.get())
        .map([&](movement::RouteFigures figures) {
            auto drift = movement::routeDrift(sources.plan, figures, errorsOf(sources.plan, options), within);
            return RouteAnswer{std::move(figures), std::move(drift), oursText(sources.plan, options)};
        });
}

Exit driftCommand(const DriftOptions& options, const Surroundings& surroundings) {
    const auto sources = openRouteSources(options.plan, surroundings);
    if (!sources) {
        return couldNot(surroundings, sources.error());
    }
    const auto routes = chosenRoutes(sources->plan, options.plan, options.routes);
    if (!routes) {
        return couldNot(surroundings, routes.error());
    }
    Json list = Json::array();
    std::string gap;
    for (const plan::RoutePtr& route : *routes) {
        const auto answer = answerFor(*sources, *route, options);
        if (!answer) {
            return couldNot(surroundings, answer.error());
        }
        if (options.json) {
            list.push_back(routeJson(*answer));
        } else {
            surroundings.out << std::exchange(gap, "\n");
            writeForPeople(surroundings.out, *answer);
        }
    }
    if (options.json) {
        say(surroundings.out, list);
    }
    return Exit::Done;
}

std::string shareFault(const std::string& text, double most) {
    const auto value = checkedNumber(text);
    return value && *value >= 0 && *value <= most
               ? std::string{}
               : fmt::format("\"{}\" is no number from 0 to {}.", text, numberText(most));
}

constexpr std::string_view kManual = R"(How far a navigator may be off at the end of each leg.

A straight leg of length d ends somewhere in an ellipse of half axes pace error x d along it and
sin(compass error) x d across it. Over bends the pace error is the person's, the same all along the
leg, and the compass error is new with each azimuth; their squares add up. Assumed: one begins at the
leg's true start, walks each piece straight, and nothing on the way catches or corrects him. If the
errors are those that two of three tries keep (one standard deviation), the ellipse holds 39 of 100
who walk the leg, and one twice as large 86.

A route point may say from how far off it is found ("found_within" of the measure); points that do
not are taken to be found within --within. A plan may hold its navigator's own errors ("drift: 4 1.5"
of crosstick enter). 5 %, 2 degrees and 50 m are our own defaults, from no publication: measure yours
on a known course.

  crosstick drift plan.gpkg --route QUILL --pace 4 --compass 1.5)";

}  // namespace

void addDrift(CLI::App& program, Action& action) {
    auto options = std::make_shared<DriftOptions>();
    CLI::App* command = program.add_subcommand("drift", std::string(kManual));
    command->add_option("PLAN", options->plan, "The plan's file")->type_name("")->required();
    command->add_option("--route", options->routes, "A route's name, more than once for several; all if not given")
        ->type_name("NAME");
    command
        ->add_option("--pace", options->pace, "Error of the pace count, per cent of the distance; the plan's, else 5")
        ->type_name("PERCENT")
        ->check(CLI::Validator([](const std::string& text) { return shareFault(text, 50); }, ""));
    command->add_option("--compass", options->compass, "Error of the azimuth walked, degrees; the plan's, else 2")
        ->type_name("DEGREES")
        ->check(CLI::Validator([](const std::string& text) { return shareFault(text, 45); }, ""));
    command->add_option("--within", options->within, "From how far off a point is found, metres; 50 if not given")
        ->type_name("METRES")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_flag("--json", options->json, "One array, an object a route, in full precision");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return driftCommand(*options, surroundings); };
    });
}

}  // namespace crosstick::app
