#pragma once

#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Draws a route: the first click is the start point, every further one a checkpoint (with the second key a bend), the
/// last becomes the release point at Finish. A click on a point that stands there uses it.
class RouteTool final : public Tool {
  public:
    explicit RouteTool(plan::Use use) : use_(use) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] std::optional<Preview> preview(const Ground& ground) const override;
    [[nodiscard]] bool isBusy() const override { return !corners_.empty(); }
    [[nodiscard]] std::optional<Snaps> snaps() const override { return Snaps{}; }
    [[nodiscard]] std::string hint() const override;

  private:
    struct Corner {
        geodesy::PlanePoint at;
        bool bend = false;
        std::optional<plan::ItemId> stands;  ///< a measure that was there before
    };
    plan::Use use_;
    std::vector<Corner> corners_;
    geodesy::PlanePoint hand_;
    std::string what_;

    /// While it is drawn the line ends in the hand, whose next click makes a checkpoint.
    enum class Ending { InTheHand, AtReleasePoint };
    [[nodiscard]] Preview built(const std::vector<Corner>& corners, const Ground& ground, Ending ending) const;
    [[nodiscard]] Reply finished(const Ground& ground);
    [[nodiscard]] std::string nextLabel(const Ground& ground) const;
};

}  // namespace crosstick::tools
