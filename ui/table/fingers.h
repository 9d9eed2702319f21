#pragma once

#include <optional>
#include <vector>

#include "ui/table/view.h"

namespace crosstick::table {

/// A finger on the glass, by the number that it keeps while it lies there.
struct Finger {
    int number = 0;
    Spot at;
};

/// What fingers mean: one is a hand that presses, drags and lets go; two push the sheet and spread it; one that rests
/// asks for the menu. A press is held back until it is plain that no second finger comes, so that pinching in the
/// middle of a line leaves no stray point.
class Fingers {
  public:
    /// What the table is to do.
    struct Deed {
        enum class Kind { Press, Move, Release, Menu, Slide };
        Kind kind;
        Spot at;            ///< of the hand; for Slide the middle between two fingers as it was
        Spot to = {};       ///< Slide: where that middle is now
        double factor = 1;  ///< Slide: how much farther apart they are
        friend bool operator==(const Deed&, const Deed&) = default;
    };

    static constexpr double kSlip = 10;  ///< pixels a finger may slip and still rest
    static constexpr int kHoldMs = 500;  ///< a finger that rests so long asks for the menu

    /// @param down  all fingers that lie on the glass now; none: the last was lifted
    [[nodiscard]] std::vector<Deed> take(const std::vector<Finger>& down);
    /// The time of a rest is over. Gives the menu's deed where one finger still rests.
    [[nodiscard]] std::vector<Deed> rested();
    [[nodiscard]] bool isResting() const { return state_ == State::Resting; }
    [[nodiscard]] bool isDragging() const { return state_ == State::Dragging; }  ///< a press was told and not let go
    void forget() { state_ = State::Away; }                                      ///< the system took the fingers away

  private:
    enum class State { Away, Resting, Dragging, Pinching, Spent };
    State state_ = State::Away;
    Spot first_;   ///< where the hand came down, then where it is
    Spot middle_;  ///< between two fingers
    double apart_ = 0;
};

}  // namespace crosstick::table
