#pragma once

#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Reads a route's profile off the sheet: a click where the route crosses a contour, whose height is then typed. A mark
/// stands on the route, wherever the hand is. Backspace takes the last contour back, Enter ends.
class ContourTool final : public Tool {
  public:
    /// Asks for the height of the contour at a place of the route, in the plan's plane.
    using Ask = std::function<void(geodesy::PlanePoint onRoute)>;

    ContourTool(plan::ItemId route, Ask ask) : route_(route), ask_(std::move(ask)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] std::string hint() const override;

  private:
    plan::ItemId route_;
    Ask ask_;
    std::optional<geodesy::PlanePoint> onRoute_;
    plan::Points read_;  ///< where contours have been read
};

}  // namespace crosstick::tools
