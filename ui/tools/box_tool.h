#pragma once

#include "ui/tools/registration_tool.h"

namespace crosstick::tools {

/// A part of the ground by two opposite corners, upright in the printed grid: dragged from one to the other, or clicked
/// one after the other. That is all it tells.
class BoxTool final : public Tool {
  public:
    /// Two corners in the printed grid.
    using Corners = std::function<void(geodesy::PlanePoint, geodesy::PlanePoint)>;
    /// What it would become, in a few words, while it is drawn.
    using Words = std::function<std::string(geodesy::PlanePoint, geodesy::PlanePoint)>;

    BoxTool(GridWays ways, std::string hint, Words words, Corners take)
        : ways_(std::move(ways)), hint_(std::move(hint)), words_(std::move(words)), take_(std::move(take)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return corner_.has_value(); }
    [[nodiscard]] std::string hint() const override { return corner_ ? "click the opposite corner" : hint_; }

  private:
    GridWays ways_;
    std::string hint_;
    Words words_;
    Corners take_;
    std::optional<geodesy::PlanePoint> corner_;  ///< on the grid, as is the hand
    geodesy::PlanePoint hand_;

    [[nodiscard]] Reply ended();
};

/// The corners of an upright part of the grid, going round, in the plan's plane.
[[nodiscard]] plan::Points boxInPlan(const GridWays& ways, geodesy::PlanePoint corner, geodesy::PlanePoint opposite);

}  // namespace crosstick::tools
