#include "app/commands/timing_options.h"

#include "app/commands/answers.h"
#include "app/wording/wording.h"
#include "core/movement/typed_timing.h"

namespace crosstick::app {

void addTimingOptions(CLI::App& command, TimingOptions& options) {
    auto* rule =
        command
            .add_option("--rule", options.rule,
                        "What makes the times: rate (the plan's one rate), light (doctrine by ground, day and night), "
                        "naismith or tobler (the slower of that and doctrine)")
            ->check(CLI::IsMember({"rate", "light", "naismith", "tobler"}));
    command
        .add_option("--going", options.going,
                    "Ground of legs that do not say their own, for doctrine's rates: road or cross-country")
        ->check(CLI::IsMember({"road", "cross-country"}));
    command.add_option("--rate", options.rate, "One rate in km/h, halts of the hour within")
        ->check(CLI::Validator(numberFault, ""))
        ->check(CLI::Range(0.1, 30.0))
        ->excludes(rule);
}

plan::Heading withTiming(plan::Heading heading, const TimingOptions& options) {
    if (options.rate) {
        heading.rate = plan::MarchRate{KilometresPerHour(*options.rate), ""};
        heading.timing.reset();
    }
    if (options.rule == "rate") {
        heading.timing.reset();
    } else if (!options.rule.empty()) {
        heading.timing = heading.timing.value_or(plan::Timing{});
        heading.timing->rule = options.rule == "light"      ? plan::TimeRule::ByLight
                               : options.rule == "naismith" ? plan::TimeRule::Naismith
                                                            : plan::TimeRule::Tobler;
    }
    const bool wantsRates = !options.going.empty() && options.rule != "rate" && !options.rate;
    if (wantsRates) {
        heading.timing = heading.timing.value_or(plan::Timing{});
        heading.timing->going = options.going == "road" ? plan::Going::Road : plan::Going::CrossCountry;
    }
    return heading;
}

plan::Plan withTiming(const plan::Plan& plan, const TimingOptions& options) {
    return std::move(plan::PlanBuilder(plan).heading(withTiming(plan.heading(), options))).build();
}

Result<Instant> parseMoment(const std::string& text) {
    if (const auto iso = parseIsoTime(text)) {
        return iso;
    }
    return parseDateTimeGroup(text);
}

std::string momentFault(const std::string& text) {
    const auto moment = parseMoment(text);
    return moment ? std::string{} : words(moment.error());
}

std::string preparationFault(const std::string& text) {
    return movement::parsePreparation(text) ? std::string{}
                                            : "write what is done and how long, such as orders=60 or rehearsal=1:30";
}

}  // namespace crosstick::app
