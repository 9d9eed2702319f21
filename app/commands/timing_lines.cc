// Lines that say when and how fast: H-hour, phases, rates, what is done before, how far a navigator may be off, and how
// the hurt are brought out.
#include <algorithm>
#include <array>

#include "app/commands/line_parts.h"
#include "app/commands/timing_options.h"
#include "core/movement/typed_timing.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

/// All clauses from the second on, as one text.
std::string noteOf(const PlanLine& line) {
    std::string note;
    for (std::size_t n = 1; n < line.clauses.size(); ++n) {
        note += (n == 1 ? "" : "; ") + line.clauses[n];
    }
    return note;
}

Result<void> putRates(const PlanLine& line, const std::string& text, plan::MarchRates& rates) {
    std::array<KilometresPerHour*, 4> all{&rates.roadByDay, &rates.roadByNight, &rates.crossCountryByDay,
                                          &rates.crossCountryByNight};
    std::string rest = text;
    for (KilometresPerHour* rate : all) {
        const std::size_t end = std::min(rest.find(' '), rest.size());
        const auto number = numberIn(line, rest.substr(0, end), Least::OverNothing);
        if (!number) {
            return misread(line, text);
        }
        *rate = KilometresPerHour(*number);
        rest = trimmed(std::string_view(rest).substr(end));
    }
    return rest.empty() ? Result<void>{} : misread(line, text);
}

Result<void> putTiming(const PlanLine& line, const std::string& clause, plan::Timing& timing) {
    if (clause == "light" || clause == "naismith" || clause == "tobler") {
        timing.rule = clause == "light"      ? plan::TimeRule::ByLight
                      : clause == "naismith" ? plan::TimeRule::Naismith
                                             : plan::TimeRule::Tobler;
        return {};
    }
    if (clause == "road" || clause == "cross-country") {
        timing.going = clause == "road" ? plan::Going::Road : plan::Going::CrossCountry;
        return {};
    }
    const auto rates = after(clause, "rates");
    return rates ? putRates(line, *rates, timing.rates) : misread(line, clause);
}

Result<void> putPhase(const PlanLine& line, const std::string& clause, plan::Phase& phase) {
    for (const auto& [word, member] :
         {std::pair{"from", &plan::Phase::from}, std::pair{"until", &plan::Phase::until}}) {
        const auto text = after(clause, word);
        if (!text) {
            continue;
        }
        if (*text == "none") {
            (phase.*member).reset();
            return {};
        }
        return momentIn(line, *text).map([&, put = member](Instant moment) { phase.*put = moment; });
    }
    return misread(line, clause);
}

/// The rate stands before the first comma, what is said of it behind.
Result<void> putCarry(const PlanLine& line, const std::string& text, plan::Evacuation& evacuation) {
    if (text == "none") {
        evacuation.carry.reset();
        return {};
    }
    const std::size_t comma = std::min(text.find(','), text.size());
    return numberIn(line, trimmed(std::string_view(text).substr(0, comma)), Least::OverNothing).map([&](double rate) {
        evacuation.carry = plan::MarchRate{KilometresPerHour(rate), ""};
        evacuation.carry->note = comma < text.size() ? trimmed(std::string_view(text).substr(comma + 1)) : "";
    });
}

Result<void> putEvacuation(const PlanLine& line, const plan::Plan& plan, const std::string& clause,
                           plan::Evacuation& evacuation) {
    if (const auto text = after(clause, "carry")) {
        return putCarry(line, *text, evacuation);
    }
    const std::pair<std::string_view, std::optional<plan::ItemId> plan::Evacuation::*> things[]{
        {"to", &plan::Evacuation::collection},
        {"pick-up", &plan::Evacuation::pickUp},
        {"vehicle", &plan::Evacuation::onward}};
    for (const auto& [word, member] : things) {
        const auto text = after(clause, word);
        if (!text) {
            continue;
        }
        if (*text == "none") {
            (evacuation.*member).reset();
            return {};
        }
        const auto found = word == "vehicle" ? routeIn(line, plan, *text) : measureIn(line, plan, *text);
        return found.map([&, put = member](const plan::ItemId& id) { evacuation.*put = id; });
    }
    return misread(line, clause);
}

}  // namespace

LineTaken takeHHour(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    heading.hHour.reset();
    if (!saysNone(line)) {
        const auto moment = momentIn(line, line.clauses.front());
        if (!moment || line.clauses.size() > 1) {
            return misread(line, line.clauses.back());
        }
        heading.hHour = *moment;
    }
    return withHeading(plan, std::move(heading));
}

LineTaken takePhase(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    const std::size_t blank = std::min(line.name.find(' '), line.name.size());
    const auto number = parseWhole(line.name.substr(0, blank));
    if (!number || *number < 1 || *number > 1000) {
        return misread(line, line.name);
    }
    std::vector<plan::Phase> phases = plan.phases();
    auto phase = std::find_if(phases.begin(), phases.end(), [&](const auto& one) { return one.number == *number; });
    if (saysNone(line)) {
        std::erase_if(phases, [&](const plan::Phase& one) { return one.number == *number; });
    } else {
        if (phase == phases.end()) {
            phase = std::find_if(phases.begin(), phases.end(), [&](const auto& one) { return one.number > *number; });
            phase = phases.insert(phase, plan::Phase{static_cast<int>(*number), "", {}, {}});
        }
        if (blank < line.name.size()) {
            phase->name = trimmed(std::string_view(line.name).substr(blank));
        }
        for (const std::string& clause : line.clauses) {
            if (const auto put = putPhase(line, clause, *phase); !put) {
                return tl::unexpected(put.error());
            }
        }
    }
    return std::move(plan::PlanBuilder(plan).phases(std::move(phases))).build();
}

LineTaken takePace(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    if (saysNone(line)) {
        heading.pace.reset();
        return withHeading(plan, std::move(heading));
    }
    const auto paces = numberIn(line, line.clauses.front(), Least::OverNothing);
    constexpr double kFewest = 30;  // as the option --pace has it
    constexpr double kMost = 150;
    if (!paces || *paces < kFewest || *paces > kMost) {
        return misread(line, line.clauses.front());
    }
    heading.pace = heading.pace.value_or(plan::PaceProfile{});
    heading.pace->doublePacesPer100 = *paces;
    heading.pace->note = noteOf(line);
    return withHeading(plan, std::move(heading));
}

LineTaken takeRate(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    if (saysNone(line)) {
        heading.rate.reset();
        return withHeading(plan, std::move(heading));
    }
    const auto rate = numberIn(line, line.clauses.front(), Least::OverNothing);
    if (!rate) {
        return tl::unexpected(rate.error());
    }
    heading.rate = heading.rate.value_or(plan::MarchRate{});
    heading.rate->rate = KilometresPerHour(*rate);
    heading.rate->note = noteOf(line);
    return withHeading(plan, std::move(heading));
}

LineTaken takeTiming(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    if (line.clauses.size() == 1 && line.clauses.front() == "rate") {
        heading.timing.reset();
        return withHeading(plan, std::move(heading));
    }
    heading.timing = heading.timing.value_or(plan::Timing{});
    for (const std::string& clause : line.clauses) {
        if (const auto put = putTiming(line, clause, *heading.timing); !put) {
            return tl::unexpected(put.error());
        }
    }
    return withHeading(plan, std::move(heading));
}

LineTaken takeBefore(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    heading.preparations.clear();
    if (!saysNone(line)) {
        for (const std::string& clause : line.clauses) {
            auto preparation = movement::parsePreparation(clause);
            if (!preparation) {
                return misread(line, clause);
            }
            heading.preparations.push_back(std::move(*preparation));
        }
    }
    return withHeading(plan, std::move(heading));
}

LineTaken takeDrift(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    if (saysNone(line)) {
        return movement::withNavigatorTyped(plan, {});
    }
    const auto next = movement::withNavigatorTyped(plan, line.clauses.front());
    return next ? next : misread(line, line.clauses.front());
}

LineTaken takeEvacuation(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    plan::Heading heading = plan.heading();
    if (saysNone(line)) {
        heading.evacuation.reset();
        return withHeading(plan, std::move(heading));
    }
    heading.evacuation = heading.evacuation.value_or(plan::Evacuation{});
    for (const std::string& clause : line.clauses) {
        if (const auto put = putEvacuation(line, plan, clause, *heading.evacuation); !put) {
            return tl::unexpected(put.error());
        }
    }
    return withHeading(plan, std::move(heading));
}

}  // namespace crosstick::app
