#pragma once

#include "core/plan/traces.h"
#include "ui/tools/box_tool.h"
#include "ui/tools/hit.h"

namespace crosstick::tools {

/// Traces what other films show onto the working film. A click on a thing traces all of it; the hand that goes along a
/// line with its button down traces the stretch between both places; a box drawn beside things tells its corners, for
/// what lies in it. It stays in hand for the next.
class TraceTool final : public Tool {
  public:
    using Version = std::function<std::string(const plan::Measure&)>;

    TraceTool(GridWays ways, Version version, BoxTool::Corners box)
        : ways_(std::move(ways)), version_(std::move(version)), box_(std::move(box)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return grip_.has_value(); }
    [[nodiscard]] std::string hint() const override {
        return grip_ ? std::string{} : "click: all of it; drag along it: a stretch; drag a box";
    }

  private:
    /// What the hand holds on to: a place of a line, else a corner.
    struct Grip {
        geodesy::PlanePoint start;
        std::optional<plan::TraceOrder> order;  ///< whole; none: a box
        plan::Points line;                      ///< of what may be traced in parts; empty for anything else
        std::string what;
    };
    GridWays ways_;
    Version version_;
    BoxTool::Corners box_;
    std::optional<Grip> grip_;
    geodesy::PlanePoint hand_;

    [[nodiscard]] Grip gripAt(geodesy::PlanePoint at, const Ground& ground) const;
    [[nodiscard]] plan::Points stretch() const;
    [[nodiscard]] Reply released(const Ground& ground);
};

/// The uppermost shown film but the working one that shows a thing; nothing where there is none.
[[nodiscard]] plan::FilmPtr filmToTraceFrom(const Ground& ground, const plan::ItemId& item);

}  // namespace crosstick::tools
