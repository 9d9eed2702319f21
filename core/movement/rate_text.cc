#include "core/movement/rate_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/units/number_text.h"

namespace crosstick::movement {
namespace {

std::string_view goingText(plan::Going going) {
    return going == plan::Going::Road ? "on roads" : "cross-country";
}

/// What differs from the span before; from when, where a clock can say it.
std::string spanText(const RateSpan& span, const RateSpan* before, const RouteFigures& figures, TimeZone zone) {
    std::string text = kilometresPerHourText(span.rate);
    if (before == nullptr || before->going != span.going) {
        text += fmt::format(" {}", goingText(span.going));
    }
    text += span.light == plan::Light::Night ? " by night" : " by day";
    if (const auto since = arrivalAfter(figures.start, span.since); before != nullptr && since) {
        text += " from " + clockTime(*since, zone);
    }
    return text;
}

}  // namespace

std::string kilometresPerHourText(KilometresPerHour rate) {
    return numberText(rate.value()) + " km/h";
}

std::string paceText(const RouteFigures& figures) {
    std::string text;
    for (const UsedPace& used : figures.counts) {
        text += fmt::format("{}{} double per 100 m", text.empty() ? "" : ", ", countText(used.pace.doublePacesPer100));
        if (used.pace.basis != PaceBasis::Given) {
            text += fmt::format(" {} by {}", goingText(used.conditions.ground), nameOf(used.conditions.light));
        }
        text += (used.pace.how.empty() ? "" : ", ") + used.pace.how;
    }
    const bool isUnlit = figures.pace == std::nullopt && !figures.progress.knowsLight;
    return text.empty() ? "not given" : text + (isUnlit ? ", since the light is not known" : "");
}

std::string shortPaceText(const RouteFigures& figures) {
    std::string counts;
    PaceBasis basis = PaceBasis::Given;
    for (const UsedPace& used : figures.counts) {
        counts += (counts.empty() ? "" : ", ") + countText(used.pace.doublePacesPer100);
        basis = std::max(basis, used.pace.basis);
    }
    if (counts.empty()) {
        return "not given";
    }
    const char* from = basis == PaceBasis::Given           ? "yours"
                       : basis == PaceBasis::Measured      ? "measured"
                       : basis == PaceBasis::TrainingRatio ? "by training ratio"
                                                           : "our factor in it";
    return fmt::format("{} paces per 100 m, {}", counts, from);
}

std::string_view ruleName(plan::TimeRule rule) {
    switch (rule) {
        case plan::TimeRule::Naismith:
            return "Naismith with Langmuir";
        case plan::TimeRule::Tobler:
            return "Tobler";
        case plan::TimeRule::ByLight:
            break;
    }
    return "rate for the light";
}

std::string rateText(const RouteFigures& figures, TimeZone zone) {
    if (!figures.timing) {
        return figures.rate ? kilometresPerHourText(figures.rate->rate) +
                                  (figures.rate->note.empty() ? "" : ", " + figures.rate->note)
                            : "not given";
    }
    std::string text;
    const RateSpan* before = nullptr;
    for (const RateSpan& span : figures.progress.spans) {
        if (before != nullptr && !(span.from < figures.groundDistance)) {
            break;
        }
        text += (text.empty() ? "" : ", ") + spanText(span, before, figures, zone);
        before = &span;
    }
    text += figures.progress.knowsLight ? ", halts within" : ", since the light is not known, halts within";
    if (figures.timing->rule != plan::TimeRule::ByLight) {
        text = fmt::format("the slower of {} (no halts within) and {}", ruleName(figures.timing->rule), text);
    }
    return text;
}

}  // namespace crosstick::movement
