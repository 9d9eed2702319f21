#include "ui/tools/registration_tool.h"

#include <algorithm>
#include <cmath>

#include "core/film/inset.h"
#include "ui/tools/hit.h"

namespace crosstick::tools {
namespace {

using geodesy::PlanePoint;

constexpr std::string_view kWhatToDo = "drag a tick or an edge; Shift: a tick more or less";

film::TickGrid ticksOf(const Ground& ground) {
    return film::ticksFor(ground.plan, ground.plan.film(ground.film).get());
}

std::optional<std::size_t> tickAt(const plan::Registration& registration, PlanePoint at, Metres reach) {
    std::optional<std::size_t> nearest;
    Metres least = reach;
    for (std::size_t n = 0; n < registration.ticks.size(); ++n) {
        if (const Metres away = apart(registration.ticks[n], at); away <= least) {
            nearest = n;
            least = away;
        }
    }
    return nearest;
}

/// The side of a stretch that a place lies on: -1 at its lower end, 1 at its upper, 0 between them.
int sideOf(Metres at, Metres low, Metres high, Metres reach) {
    const Metres below = Metres(std::abs((at - low).value()));
    const Metres above = Metres(std::abs((at - high).value()));
    return std::min(below, above) > reach ? 0 : below < above ? -1 : 1;
}

bool isAlong(Metres at, Metres low, Metres high, Metres reach) {
    return at >= low - reach && at <= high + reach;
}

}  // namespace

/// What holds now: the inset's or the plan's own, else what it would be proposed, worked out once and not at every move
/// of the hand.
Result<plan::Registration> RegistrationTool::presentOf(const Ground& ground) {
    const plan::FilmPtr film = ground.plan.film(ground.film);
    ofInset_ = film && film->inset;
    if (ofInset_) {
        return film->inset->place;
    }
    if (ground.plan.registration()) {
        return *ground.plan.registration();
    }
    if (!proposed_) {
        proposed_ = film::proposeRegistration(ground.plan);
    }
    return *proposed_;
}

Result<plan::Registration> RegistrationTool::dragged(const Ground& ground, PlanePoint onGrid) {
    return presentOf(ground).and_then([&](const plan::Registration& present) {
        if (grip_->tick) {
            return film::withTickMoved(present, *grip_->tick, onGrid, ticksOf(ground));
        }
        const Metres east = onGrid.easting - grip_->start.easting;
        const Metres north = onGrid.northing - grip_->start.northing;
        const auto pull = [](int side, int which, Metres by) { return side == which ? by : Metres(0); };
        return film::withWindowPulled(present,
                                      {pull(grip_->sides.east, -1, east), pull(grip_->sides.north, -1, north),
                                       pull(grip_->sides.east, 1, east), pull(grip_->sides.north, 1, north)},
                                      ticksOf(ground));
    });
}

/// The edit, or why there is none; afterwards what holds is shown.
Reply RegistrationTool::kept(const Ground& ground, Result<plan::Registration> next, std::string caption) {
    Reply reply;
    grip_.reset();
    moved_ = false;
    const auto plan = next.and_then(
        [&](const plan::Registration& held) { return film::withRegistration(ground.plan, ground.film, held); });
    if (!plan) {
        reply.refused = plan.error();
        if (auto present = presentOf(ground)) {
            shown_ = std::move(*present);
        }
        return reply;
    }
    shown_ = *next;
    if (!(*plan == ground.plan)) {
        reply.commit = Commit{*plan, std::move(caption), false};
        hint_ = "films printed before no longer fit";
    }
    return reply;
}

Reply RegistrationTool::pressed(const Event& event, const Ground& ground, PlanePoint onGrid) {
    moved_ = false;
    const auto present = presentOf(ground);
    if (!present) {
        return {};
    }
    const auto tick = tickAt(*present, onGrid, ground.reach);
    if (event.second) {
        return tick ? kept(ground, film::withTickRemoved(*present, *tick, ticksOf(ground)), "take a tick off")
                    : kept(ground, film::withTickAdded(*present, onGrid, ticksOf(ground)), "set a tick");
    }
    Sides sides;
    if (isAlong(onGrid.northing, present->southWest.northing, present->northEast.northing, ground.reach)) {
        sides.east = sideOf(onGrid.easting, present->southWest.easting, present->northEast.easting, ground.reach);
    }
    if (isAlong(onGrid.easting, present->southWest.easting, present->northEast.easting, ground.reach)) {
        sides.north = sideOf(onGrid.northing, present->southWest.northing, present->northEast.northing, ground.reach);
    }
    if (tick || !sides.isNone()) {
        grip_ = Grip{tick, sides, onGrid};
    }
    return {};
}

Reply RegistrationTool::released(const Ground& ground, PlanePoint onGrid) {
    if (!grip_ || !moved_) {
        grip_.reset();
        return {};
    }
    std::string caption = grip_->tick ? "move a tick" : "move the window";
    return kept(ground, dragged(ground, onGrid), std::move(caption));
}

Reply RegistrationTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    const auto onGrid = ways_.onGrid(event.at);
    if (!grip_) {
        if (auto present = presentOf(ground)) {
            shown_ = std::move(*present);
        }
    }
    switch (event.kind) {
        case Event::Kind::Press:
        case Event::Kind::Again:
            hint_ = kWhatToDo;
            return onGrid ? pressed(event, ground, *onGrid) : reply;
        case Event::Kind::Move:
            if (hint_.empty()) {
                hint_ = kWhatToDo;
            }
            if (grip_ && event.held && onGrid &&
                (moved_ || apart(*onGrid, grip_->start).value() > ground.reach.value() * 0.4)) {
                moved_ = true;
                if (auto next = dragged(ground, *onGrid)) {
                    shown_ = std::move(*next);
                }
            }
            return reply;
        case Event::Kind::Release:
            return onGrid ? released(ground, *onGrid) : reply;
        case Event::Kind::Cancel:
            reply.done = !grip_;
            grip_.reset();
            if (auto present = presentOf(ground)) {
                shown_ = std::move(*present);
            }
            return reply;
        case Event::Kind::Finish:
            reply.done = true;
            return reply;
        case Event::Kind::TakeBack:
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
            break;
    }
    return reply;
}

Wet RegistrationTool::wet() const {
    Wet wet;
    wet.what = grip_ ? (grip_->tick ? "tick" : "window") : "ticks and window";
    wet.belongs = ofInset_ ? Wet::Belongs::ToTheFilm : Wet::Belongs::ToThePlan;
    if (!shown_) {
        return wet;
    }
    const auto inPlan = [this](Metres easting, Metres northing) {
        return ways_.inPlan({easting, northing}).value_or(PlanePoint{});
    };
    const PlanePoint low = shown_->southWest;
    const PlanePoint high = shown_->northEast;
    const Metres middleEast = (low.easting + high.easting) / 2;
    const Metres middleNorth = (low.northing + high.northing) / 2;
    wet.line = {inPlan(low.easting, low.northing), inPlan(low.easting, high.northing),
                inPlan(high.easting, high.northing), inPlan(high.easting, low.northing)};
    wet.closes = true;
    wet.marks = wet.line;
    for (const PlanePoint at : {PlanePoint{low.easting, middleNorth}, PlanePoint{high.easting, middleNorth},
                                PlanePoint{middleEast, low.northing}, PlanePoint{middleEast, high.northing}}) {
        wet.marks.push_back(inPlan(at.easting, at.northing));
    }
    for (const PlanePoint tick : shown_->ticks) {
        wet.marks.push_back(inPlan(tick.easting, tick.northing));
    }
    return wet;
}

}  // namespace crosstick::tools
