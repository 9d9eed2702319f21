#include "core/movement/noted_way.h"

#include <algorithm>
#include <cmath>

#include "core/movement/column_figures.h"
#include "core/movement/hiking_rules.h"
#include "core/movement/nights.h"

namespace crosstick::movement {
namespace {

/// How far a column reaches back: so far its tail is behind when its head has arrived.
Metres longestColumn(const plan::Force& force) {
    Metres longest{0};
    for (const plan::Column& column : force.columns) {
        longest = std::max(longest, columnFigures(force, column).length);
    }
    return longest;
}

using Nights = std::vector<Night>;

/// The nights that may fall on the way; nothing where nobody can know them, or nothing depends on them.
std::optional<Nights> nightsOn(const std::vector<Stretch>& way, const plan::Heading& heading,
                               std::optional<Instant> start, geodesy::GeoPoint place) {
    constexpr double kMost = 40.0 * 24 * 60;  // minutes; beyond that the light stays as it is
    if (!start || (!heading.timing && (heading.courses.empty() || !heading.rate))) {
        return std::nullopt;
    }
    const double minutes = longestTime(way, heading).value();
    const double bounded = minutes < kMost ? minutes : kMost;
    return nightsBetween(place, *start, *start + std::chrono::seconds(std::llround(bounded * 60) + 1));
}

/// What was walked of one piece.
struct PieceWalk {
    Minutes time;
    bool slowed = false;
    plan::Going going = plan::Going::CrossCountry;
    Metres byDay, byNight;
};

/// Takes the walked stretches piece by piece; without a rate they are walked in no known time and light.
class Taker {
  public:
    Taker(const std::vector<Stretch>& noted, const std::vector<std::size_t>& ends, const std::optional<WalkedWay>& way)
        : noted_(noted), ends_(ends), way_(way) {}

    PieceWalk next() {
        PieceWalk walk;
        for (; at_ < ends_[piece_]; ++at_) {
            const Stretch& stretch = noted_[at_];
            const Walked walked = way_ ? way_->stretches[at_] : Walked{Minutes(0), false, stretch.ground};
            walk.time += walked.time;
            walk.slowed = walk.slowed || walked.slowed;
            walk.going = stretch.going;
            walk.byNight += walked.byNight;
            walk.byDay += std::max(Metres(0), stretch.ground - walked.byNight);
        }
        ++piece_;
        return walk;
    }

  private:
    const std::vector<Stretch>& noted_;
    const std::vector<std::size_t>& ends_;
    const std::optional<WalkedWay>& way_;
    std::size_t at_ = 0;
    std::size_t piece_ = 0;
};

/// Counts pieces, and keeps what it has counted them by.
class Counter {
  public:
    Counter(const plan::Heading& heading, plan::Use use)
        : heading_(heading), counts_(use != plan::Use::Vehicle && paceFor(heading, PaceConditions{}).has_value()) {}

    [[nodiscard]] std::optional<double> nothing() const { return counts_ ? std::optional(0.0) : std::nullopt; }
    std::optional<double> paces(const PieceWalk& walk) {
        return counts_ ? std::optional(part(walk.byDay, {walk.going, plan::Light::Day}) +
                                       part(walk.byNight, {walk.going, plan::Light::Night}))
                       : std::nullopt;
    }
    [[nodiscard]] const std::vector<UsedPace>& used() const { return used_; }

  private:
    double part(Metres ground, PaceConditions conditions) {
        constexpr Metres kRounding{1e-6};  // where night falls at the end of a stretch
        if (ground < kRounding) {
            return 0;
        }
        const bool isGiven = heading_.courses.empty();  // one figure for every ground and light
        auto found = std::find_if(used_.begin(), used_.end(),
                                  [&](const UsedPace& one) { return isGiven || one.conditions == conditions; });
        if (found == used_.end()) {
            used_.push_back({conditions, *paceFor(heading_, conditions)});
            found = used_.end() - 1;
        }
        return ground.value() / 100 * found->pace.doublePacesPer100;
    }

    const plan::Heading& heading_;
    bool counts_;
    std::vector<UsedPace> used_;
};

void give(Piece& piece, const PieceWalk& walk, Counter& counter, const std::optional<WalkedWay>& way) {
    piece.paces = counter.paces(walk);
    if (way) {
        piece.time = walk.time;
        piece.slowed = walk.slowed;
    }
}

/// Times and arrivals of legs whose pieces have theirs.
void sumTimes(RouteFigures& figures) {
    figures.time = Minutes(0);
    for (Leg& leg : figures.legs) {
        leg.time = Minutes(0);
        for (const Piece& piece : leg.pieces) {
            *leg.time += *piece.time;
        }
        *figures.time += *leg.time;
        leg.timeSoFar = figures.time;
        leg.arrival = arrivalAfter(figures.start, figures.time);
        if (&leg != &figures.legs.back()) {
            *figures.time += leg.notes.halt.value_or(Minutes(0));
        }
    }
    figures.arrival = arrivalAfter(figures.start, figures.time);
}

}  // namespace

void NotedWay::addPiece(Metres ground, std::optional<plan::Going> going, const std::optional<Relief>& relief) {
    const auto& timing = plan_.heading().timing;
    Stretch stretch{ground, going.value_or(timing ? timing->going : plan::Going::CrossCountry), {}, halt_};
    halt_ = Minutes(0);
    const bool bySlope = timing && timing->rule != plan::TimeRule::ByLight && relief && relief->heights.size() > 1;
    const std::size_t steps = bySlope ? relief->heights.size() - 1 : 1;
    stretch.ground = ground / static_cast<double>(steps);
    for (std::size_t n = 0; n < steps; ++n) {
        if (bySlope) {
            const Metres rise = relief->heights[n + 1] - relief->heights[n];
            stretch.byRule = timing->rule == plan::TimeRule::Naismith ? naismith(stretch.ground, rise)
                                                                      : tobler(stretch.ground, rise);
        }
        stretches_.push_back(stretch);
        stretch.haltBefore = Minutes(0);
    }
    pieceEnds_.push_back(stretches_.size());
}

void NotedWay::addHalt(std::optional<Minutes> lasts) {
    halt_ += lasts.value_or(Minutes(0));
}

void NotedWay::giveTimesAndPaces(RouteFigures& figures, geodesy::GeoPoint place) const {
    const plan::Heading& heading = plan_.heading();
    std::vector<Stretch> whole = stretches_;
    if (const Metres tail = longestColumn(plan_.force()); tail.value() > 0) {
        whole.push_back({tail, whole.empty() ? plan::Going::CrossCountry : whole.back().going, {}, halt_});
    }
    const auto nights = nightsOn(whole, heading, figures.start, place);
    auto way = walk(whole, heading, nights ? figures.start : std::nullopt, nights.value_or(Nights{}));
    Taker taker(stretches_, pieceEnds_, way);
    Counter counter(heading, figures.use);
    figures.paces = counter.nothing();
    for (Leg& leg : figures.legs) {
        leg.paces = counter.nothing();
        for (Piece& piece : leg.pieces) {
            give(piece, taker.next(), counter, way);
            leg.paces = leg.paces ? std::optional(*leg.paces + *piece.paces) : std::nullopt;
        }
        figures.paces = figures.paces ? std::optional(*figures.paces + *leg.paces) : std::nullopt;
    }
    figures.counts = counter.used();
    if (figures.onward) {
        give(figures.onward->piece, taker.next(), counter, way);
    }
    if (way) {
        sumTimes(figures);
        figures.progress = std::move(way->progress);
    }
}

}  // namespace crosstick::movement
