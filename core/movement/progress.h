#pragma once

#include <optional>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::movement {

/// A time without daylight. A list of them is in rising order, and no two touch.
struct Night {
    Instant from, until;
    friend bool operator==(const Night&, const Night&) = default;
};

/// A part of the way that is walked without a change of ground.
struct Stretch {
    Metres ground;
    plan::Going going = plan::Going::CrossCountry;
    std::optional<Minutes> byRule;  ///< what a hiking rule gives for it; counts where it is slower than doctrine
    Minutes haltBefore{0};
};
struct Walked {
    Minutes time;         ///< without the halt before it
    bool slowed = false;  ///< by the hiking rule, in all of it or in a part
    Metres byNight{0};    ///< that much of its ground; all of it where nobody knows the light
};

/// From here on a doctrinal rate holds, until the next one.
struct RateSpan {
    Metres from;    ///< ground distance from the first stop
    Minutes since;  ///< on the move and at halts
    plan::Going going = plan::Going::CrossCountry;
    plan::Light light = plan::Light::Day;
    KilometresPerHour rate;
    friend bool operator==(const RateSpan&, const RateSpan&) = default;
};

/// When the head of the column is how far.
struct Progress {
    struct Knot {
        Metres ground;
        Minutes time;
        friend bool operator==(const Knot&, const Knot&) = default;
    };
    std::vector<Knot> knots;      ///< rising in both; a halt is two of one place
    std::vector<RateSpan> spans;  ///< none where the plan has one rate
    bool knowsLight = false;      ///< else the slower rate was taken
    /// When the head gets there; nothing before the first knot and beyond the last.
    [[nodiscard]] std::optional<Minutes> at(Metres ground) const;
    friend bool operator==(const Progress&, const Progress&) = default;
};

struct WalkedWay {
    std::vector<Walked> stretches;  ///< as they were given
    Progress progress;
};

/// Walks the stretches one after the other. By light, a rate changes in the middle of a stretch when night falls or
/// ends; at one rate only the light changes. Without a start nobody knows the light: it is taken as night, with the
/// slower of both rates. Nothing where the plan has
/// neither timing nor a rate over 0.
[[nodiscard]] std::optional<WalkedWay> walk(const std::vector<Stretch>& stretches, const plan::Heading& heading,
                                            std::optional<Instant> start, const std::vector<Night>& nights);

/// No walk over these stretches takes longer: for whoever has to know the nights before. The plan has a rate.
[[nodiscard]] Minutes longestTime(const std::vector<Stretch>& stretches, const plan::Heading& heading);

}  // namespace crosstick::movement
