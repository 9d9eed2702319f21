#pragma once

#include "core/units/result.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Between the plan's plane, where the hand is, and a sheet's raster.
struct RasterWays {
    std::function<Result<plan::RasterSpot>(geodesy::PlanePoint inPlan)> inRaster;
    std::function<Result<geodesy::PlanePoint>(plan::RasterSpot)> inPlan;
};

/// The edge of a sheet's map by hand: corners are dragged; with the second key a press on the edge sets one more, and a
/// press on a corner takes it off. What would cross itself is refused when the hand lets go.
class NeatlineTool final : public Tool {
  public:
    NeatlineTool(plan::SheetId sheet, RasterWays ways) : sheet_(sheet), ways_(std::move(ways)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return grip_.has_value(); }
    [[nodiscard]] std::string hint() const override { return "drag a corner; Shift: a corner more or less"; }

  private:
    plan::SheetId sheet_;
    RasterWays ways_;
    std::vector<plan::RasterSpot> shown_;
    std::optional<std::size_t> grip_;

    void showPresent(const plan::Plan& plan);
    [[nodiscard]] Reply pressed(const Event& event, const Ground& ground);
    [[nodiscard]] Reply kept(const plan::Plan& plan, std::vector<plan::RasterSpot> corners, std::string caption);
    [[nodiscard]] std::optional<std::size_t> cornerAt(geodesy::PlanePoint at, Metres reach) const;
    /// The corner that an edge under the hand leads to.
    [[nodiscard]] std::optional<std::size_t> edgeAt(geodesy::PlanePoint at, Metres reach) const;
    [[nodiscard]] plan::Points inPlan() const;
};

}  // namespace crosstick::tools
