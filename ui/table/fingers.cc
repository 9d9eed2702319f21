#include "ui/table/fingers.h"

#include <cmath>

namespace crosstick::table {
namespace {

double distance(Spot a, Spot b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

Spot between(Spot a, Spot b) {
    return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

}  // namespace

std::vector<Fingers::Deed> Fingers::take(const std::vector<Finger>& down) {
    using Kind = Deed::Kind;
    std::vector<Deed> deeds;
    if (down.empty()) {
        if (state_ == State::Resting) {  // a tap
            deeds = {{Kind::Press, first_}, {Kind::Release, first_}};
        } else if (state_ == State::Dragging) {
            deeds = {{Kind::Release, first_}};
        }
        state_ = State::Away;
        return deeds;
    }
    if (down.size() >= 2) {
        const Spot middle = between(down[0].at, down[1].at);
        const double apart = distance(down[0].at, down[1].at);
        if (state_ == State::Dragging) {  // what the one dragged lies where it was let go
            deeds.push_back({Kind::Release, first_});
        } else if (state_ == State::Pinching && apart_ > 0) {
            deeds.push_back({Kind::Slide, middle_, middle, apart / apart_});
        }
        state_ = State::Pinching;
        middle_ = middle;
        apart_ = apart;
        return deeds;
    }
    const Spot at = down.front().at;
    switch (state_) {
        case State::Away:
            state_ = State::Resting;
            first_ = at;
            break;
        case State::Resting:
            if (distance(at, first_) > kSlip) {
                deeds = {{Kind::Press, first_}, {Kind::Move, at}};
                state_ = State::Dragging;
                first_ = at;
            }
            break;
        case State::Dragging:
            deeds = {{Kind::Move, at}};
            first_ = at;
            break;
        case State::Pinching:  // one of two was lifted: the other does nothing before it is lifted too
            state_ = State::Spent;
            break;
        case State::Spent:
            break;
    }
    return deeds;
}

std::vector<Fingers::Deed> Fingers::rested() {
    if (state_ != State::Resting) {
        return {};
    }
    state_ = State::Spent;
    return {{Deed::Kind::Menu, first_}};
}

}  // namespace crosstick::table
