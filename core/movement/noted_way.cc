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

/// The nights that may fall on the way; nothing where nobody can know them.
std::optional<Nights> nightsOn(const std::vector<Stretch>& way, const plan::Heading& heading,
                               std::optional<Instant> start, geodesy::GeoPoint place) {
    constexpr double kMost = 40.0 * 24 * 60;  // minutes; beyond that the light stays as it is
    if (!heading.timing || !start) {
        return std::nullopt;
    }
    const double minutes = longestTime(way, heading.timing->rates).value();
    const double bounded = minutes < kMost ? minutes : kMost;
    return nightsBetween(place, *start, *start + std::chrono::seconds(std::llround(bounded * 60) + 1));
}

/// Takes the walked stretches piece by piece.
class Taker {
  public:
    Taker(const std::vector<Walked>& walked, const std::vector<std::size_t>& ends) : walked_(walked), ends_(ends) {}

    void next(Piece& piece) {
        Minutes time{0};
        for (; at_ < ends_[piece_]; ++at_) {
            time += walked_[at_].time;
            piece.slowed = piece.slowed || walked_[at_].slowed;
        }
        ++piece_;
        piece.time = time;
    }

  private:
    const std::vector<Walked>& walked_;
    const std::vector<std::size_t>& ends_;
    std::size_t at_ = 0;
    std::size_t piece_ = 0;
};

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

void NotedWay::giveTimes(RouteFigures& figures, geodesy::GeoPoint place) const {
    std::vector<Stretch> whole = stretches_;
    if (const Metres tail = longestColumn(plan_.force()); tail.value() > 0) {
        whole.push_back({tail, whole.empty() ? plan::Going::CrossCountry : whole.back().going, {}, halt_});
    }
    const auto nights = nightsOn(whole, plan_.heading(), figures.start, place);
    auto walked = walk(whole, plan_.heading(), nights ? figures.start : std::nullopt, nights.value_or(Nights{}));
    if (!walked) {
        return;
    }
    Taker taker(walked->stretches, pieceEnds_);
    figures.time = Minutes(0);
    for (Leg& leg : figures.legs) {
        leg.time = Minutes(0);
        for (Piece& piece : leg.pieces) {
            taker.next(piece);
            *leg.time += *piece.time;
        }
        *figures.time += *leg.time;
        leg.timeSoFar = figures.time;
        leg.arrival = arrivalAfter(figures.start, figures.time);
        if (&leg != &figures.legs.back()) {
            *figures.time += leg.notes.halt.value_or(Minutes(0));
        }
    }
    if (figures.onward) {
        taker.next(figures.onward->piece);
    }
    figures.arrival = arrivalAfter(figures.start, figures.time);
    figures.progress = std::move(walked->progress);
}

}  // namespace crosstick::movement
