#pragma once

#include "core/film/registration_edits.h"
#include "core/units/result.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Between the plan's plane, where the hand is, and the printed grid, where ticks and window are.
struct GridWays {
    using Way = std::function<Result<geodesy::PlanePoint>(geodesy::PlanePoint)>;
    Way onGrid;
    Way inPlan;
};

/// Ticks and window of the plan by hand, or of the inset that is worked on. A tick is dragged from crossing to
/// crossing, an edge or a corner of the window by tenths of the grid; with the second key a press on a free crossing
/// sets a tick, and a press on a tick takes it off. What a film could not hold to is refused when the hand lets go, and
/// everything stays as it was.
class RegistrationTool final : public Tool {
  public:
    explicit RegistrationTool(GridWays ways) : ways_(std::move(ways)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return grip_.has_value(); }
    [[nodiscard]] std::string hint() const override { return hint_; }

  private:
    /// Which sides of the window a hand has hold of: -1 west or south, 1 east or north, 0 neither.
    struct Sides {
        int east = 0;
        int north = 0;
        [[nodiscard]] bool isNone() const { return east == 0 && north == 0; }
    };
    struct Grip {
        std::optional<std::size_t> tick;  ///< else the sides
        Sides sides;
        geodesy::PlanePoint start;  ///< on the grid, where the hand took hold
    };
    GridWays ways_;
    std::optional<plan::Registration> shown_;
    std::optional<Result<plan::Registration>> proposed_;
    std::optional<Grip> grip_;
    bool moved_ = false;
    bool ofInset_ = false;  ///< what is shown holds for the working film alone
    std::string hint_;

    [[nodiscard]] Reply pressed(const Event& event, const Ground& ground, geodesy::PlanePoint onGrid);
    [[nodiscard]] Reply released(const Ground& ground, geodesy::PlanePoint onGrid);
    [[nodiscard]] Result<plan::Registration> dragged(const Ground& ground, geodesy::PlanePoint onGrid);
    [[nodiscard]] Result<plan::Registration> presentOf(const Ground& ground);
    [[nodiscard]] Reply kept(const Ground& ground, Result<plan::Registration> next, std::string caption);
};

}  // namespace crosstick::tools
