#include "app/commands/timing_options.h"

#include "app/commands/answers.h"
#include "app/wording/wording.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

constexpr double kLongest = 30.0 * 24 * 60;  // minutes

std::optional<Minutes> parseLength(const std::string& text) {
    const auto colon = text.find(':');
    if (colon == std::string::npos) {
        const auto minutes = parseNumber(text);
        return minutes && *minutes >= 0 && *minutes <= kLongest ? std::optional(Minutes(*minutes)) : std::nullopt;
    }
    const auto hours = parseWhole(text.substr(0, colon));
    const auto minutes = parseWhole(text.substr(colon + 1));
    if (!hours || !minutes || *hours < 0 || *hours > 24 * 30 || *minutes < 0 || *minutes > 59) {
        return std::nullopt;
    }
    return Minutes(static_cast<double>(*hours * 60 + *minutes));
}

}  // namespace

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

std::optional<plan::Preparation> parsePreparation(const std::string& text) {
    const auto equals = text.find('=');
    if (equals == std::string::npos || equals == 0) {
        return std::nullopt;
    }
    const auto lasts = parseLength(text.substr(equals + 1));
    return lasts ? std::optional(plan::Preparation{text.substr(0, equals), *lasts}) : std::nullopt;
}

std::string preparationFault(const std::string& text) {
    return parsePreparation(text) ? std::string{}
                                  : "write what is done and how long, such as orders=60 or rehearsal=1:30";
}

}  // namespace crosstick::app
