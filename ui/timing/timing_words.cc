#include "ui/timing/timing_words.h"

#include <cmath>

#include <QCoreApplication>

#include "core/movement/faults.h"
#include "core/movement/paper_figures.h"

namespace crosstick::timing {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Timing", words);
}

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

Rule ruleOf(const plan::Heading& heading) {
    if (!heading.timing) {
        return Rule::OneRate;
    }
    switch (heading.timing->rule) {
        case plan::TimeRule::Naismith:
            return Rule::Naismith;
        case plan::TimeRule::Tobler:
            return Rule::Tobler;
        case plan::TimeRule::ByLight:
            break;
    }
    return Rule::ByLight;
}

plan::Plan withRule(const plan::Plan& plan, Rule rule) {
    plan::Heading heading = plan.heading();
    if (rule == Rule::OneRate) {
        heading.timing.reset();
    } else {
        heading.timing = heading.timing.value_or(plan::Timing{});
        heading.timing->rule = rule == Rule::ByLight    ? plan::TimeRule::ByLight
                               : rule == Rule::Naismith ? plan::TimeRule::Naismith
                                                        : plan::TimeRule::Tobler;
    }
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

QString sourceOf(Rule rule) {
    switch (rule) {
        case Rule::OneRate:
            return tr("One rate for all ground and light, yours.");
        case Rule::ByLight:
            return tr("The rate changes at the end and the beginning of civil twilight: our own rule.");
        case Rule::Naismith:
            return tr("1 h for 5 km and for 600 m of climb, Langmuir's descents; counts where slower than the rate.");
        case Rule::Tobler:
            return tr("6 exp(-3.5 |slope + 0.05|) km/h, from memory; counts where slower than the rate.");
    }
    return {};
}

QString sourceOf(const plan::MarchRates& rates) {
    return rates == plan::MarchRates{}
               ? tr("km/h, halt of 10 min in the hour within. FM 21-18; 2.4 from memory.")
               : tr("km/h, halt of 10 min in the hour within. Yours where not 4.0, 3.2, 2.4, 1.6.");
}

Result<movement::MarchTable> tableOf(const work::Work& work, const plan::Plan& plan, plan::Route route,
                                     std::optional<Instant> start) {
    route.start = start;
    return work.figuresOf(plan, route).and_then([&](const movement::RouteFigures& figures) {
        return movement::marchTable(plan, figures, plan.force().columnNamed({}));
    });
}

Result<Instant> startFor(const work::Work& work, const plan::Route& route, Instant notLaterThan) {
    const auto latest = movement::latestStart(notLaterThan, [&](Instant start) -> Result<std::optional<Minutes>> {
        return tableOf(work, work.committed(), route, start).map([](const movement::MarchTable& table) {
            return table.closed();
        });
    });
    if (!latest) {
        return tl::unexpected(latest.error());
    }
    if (!*latest) {
        return fail(movement::kNoRate);
    }
    return Instant(std::chrono::floor<std::chrono::minutes>(**latest));
}

QString closingText(const plan::Plan& plan, const movement::MarchTable& table, std::optional<Instant> notLaterThan) {
    const auto closed = table.when(table.closed());
    if (!closed) {
        return {};
    }
    const TimeZone zone = plan.heading().zone;
    const QString closes = text(dateTimeGroup(*closed, zone));
    if (!notLaterThan) {
        return tr("Closes %1.").arg(closes);
    }
    const auto spare = std::chrono::floor<std::chrono::minutes>(*notLaterThan - *closed).count();
    const QString asked = text(clockTime(*notLaterThan, zone));
    return spare < 0 ? tr("\u25b3 Closes %1, %2 min after %3. Give the time again.").arg(closes).arg(-spare).arg(asked)
                     : tr("Closes %1, %2 min before %3.").arg(closes).arg(spare).arg(asked);
}

QString spanText(const movement::PreparationTime& time, TimeZone zone) {
    return time.from && time.until
               ? tr("%1 to %2").arg(text(clockTime(*time.from, zone)), text(clockTime(*time.until, zone)))
               : tr("no start yet");
}

QString leftText(const plan::Plan& plan, const movement::MarchTable& table) {
    const auto& known = plan.heading().prepared;
    const auto left = known ? movement::timeBeforeOrders(table, *known) : std::nullopt;
    if (!left) {
        return known ? tr("No start yet: the time left is not known.")
                     : tr("The plan has no date-time group of its making: the time left is not known.");
    }
    const QString since = text(dateTimeGroup(*known, plan.heading().zone));
    return left->value() < 0
               ? tr("\u25b3 %1 too late: this begins before %2.").arg(text(movement::timeText(-*left)), since)
               : tr("%1 left to make the order in, from %2.").arg(text(movement::timeText(*left)), since);
}

}  // namespace crosstick::timing
