#include "core/movement/progress.h"

#include <algorithm>
#include <limits>

namespace crosstick::movement {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

double metresAMinute(KilometresPerHour rate) {
    return rate.value() * 1000 / 60;
}

KilometresPerHour rateOf(const plan::MarchRates& rates, plan::Going going, plan::Light light) {
    if (going == plan::Going::Road) {
        return light == plan::Light::Day ? rates.roadByDay : rates.roadByNight;
    }
    return light == plan::Light::Day ? rates.crossCountryByDay : rates.crossCountryByNight;
}

/// Of the rates that a plan may march at; 0 where it has none.
KilometresPerHour slowest(const plan::Heading& heading) {
    if (!heading.timing) {
        return heading.rate ? heading.rate->rate : KilometresPerHour(0);
    }
    const plan::MarchRates& rates = heading.timing->rates;
    return std::min({rates.roadByDay, rates.roadByNight, rates.crossCountryByDay, rates.crossCountryByNight});
}

/// The one who walks: how far he is, and when.
class Walker {
  public:
    Walker(const plan::Heading& heading, std::optional<Instant> start, const std::vector<Night>& nights)
        : heading_(heading), start_(start), nights_(nights) {
        walk_.progress.knots.push_back({Metres(0), Minutes(0)});
        walk_.progress.knowsLight = start.has_value();
    }

    void take(const Stretch& stretch) {
        if (stretch.haltBefore.value() > 0) {
            time_ += stretch.haltBefore.value();
            keep();
        }
        walk_.stretches.push_back(walked(stretch));
    }
    WalkedWay done() && { return std::move(walk_); }

  private:
    Walked walked(const Stretch& stretch) {
        Walked walked{Minutes(0), false};
        double left = stretch.ground.value();
        const double byRule = stretch.byRule && stretch.byRule->value() > 0 ? left / stretch.byRule->value() : kNever;
        while (left > 0) {
            const auto [light, until] = lightNow();
            const KilometresPerHour rate = rateNow(stretch.going, light);
            const double speed = std::min(metresAMinute(rate), byRule);
            const double time = std::min(left / speed, until - time_);
            walked.slowed = walked.slowed || byRule < metresAMinute(rate);
            walked.time += Minutes(time);
            const double way = time < left / speed ? std::min(left, time * speed) : left;
            left -= way;
            ground_ += way;
            walked.byNight += Metres(light == plan::Light::Night ? way : 0);
            time_ = time < until - time_ ? time_ + time : until;
            keep();
        }
        return walked;
    }

    /// The light, and how long it lasts, in minutes from the start.
    [[nodiscard]] std::pair<plan::Light, double> lightNow() const {
        if (!start_) {
            return {plan::Light::Night, kNever};
        }
        const auto minutes = [&](Instant when) { return static_cast<double>((when - *start_).count()) / 60; };
        for (const Night& night : nights_) {
            if (time_ < minutes(night.from)) {
                return {plan::Light::Day, minutes(night.from)};
            }
            if (time_ < minutes(night.until)) {
                return {plan::Light::Night, minutes(night.until)};
            }
        }
        return {plan::Light::Day, kNever};
    }

    KilometresPerHour rateNow(plan::Going going, plan::Light light) {
        if (!heading_.timing) {
            return heading_.rate->rate;
        }
        const plan::MarchRates& rates = heading_.timing->rates;
        KilometresPerHour rate = rateOf(rates, going, light);
        if (!start_) {
            rate = std::min(rate, rateOf(rates, going, plan::Light::Day));
        }
        std::vector<RateSpan>& spans = walk_.progress.spans;
        if (spans.empty() || spans.back().going != going || spans.back().light != light) {
            spans.push_back({Metres(ground_), Minutes(time_), going, light, rate});
        }
        return rate;
    }

    void keep() { walk_.progress.knots.push_back({Metres(ground_), Minutes(time_)}); }

    const plan::Heading& heading_;
    std::optional<Instant> start_;
    const std::vector<Night>& nights_;
    WalkedWay walk_;
    double ground_ = 0;  // metres
    double time_ = 0;    // minutes
};

}  // namespace

std::optional<Minutes> Progress::at(Metres ground) const {
    constexpr Metres kRounding{1e-6};  // sums of the same parts in another order differ by less
    if (!knots.empty() && ground > knots.back().ground && ground < knots.back().ground + kRounding) {
        return knots.back().time;
    }
    const auto after = std::lower_bound(knots.begin(), knots.end(), ground,
                                        [](const Knot& knot, Metres place) { return knot.ground < place; });
    if (after == knots.end() || (after == knots.begin() && after->ground > ground)) {
        return std::nullopt;
    }
    if (after == knots.begin()) {
        return after->time;
    }
    const auto before = after - 1;
    const double share = (ground - before->ground) / (after->ground - before->ground);
    return before->time + (after->time - before->time) * share;
}

std::optional<WalkedWay> walk(const std::vector<Stretch>& stretches, const plan::Heading& heading,
                              std::optional<Instant> start, const std::vector<Night>& nights) {
    if (!(slowest(heading).value() > 0)) {
        return std::nullopt;
    }
    Walker walker(heading, start, nights);
    for (const Stretch& stretch : stretches) {
        walker.take(stretch);
    }
    return std::move(walker).done();
}

Minutes longestTime(const std::vector<Stretch>& stretches, const plan::Heading& heading) {
    Minutes time{0};
    for (const Stretch& stretch : stretches) {
        const Minutes byRate(stretch.ground.value() / metresAMinute(slowest(heading)));
        time += stretch.haltBefore + std::max(byRate, stretch.byRule.value_or(Minutes(0)));
    }
    return time;
}

}  // namespace crosstick::movement
