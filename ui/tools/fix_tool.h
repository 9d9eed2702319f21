#pragma once

#include "core/drafting/fix.h"
#include "ui/tools/registration_tool.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// A point by azimuths: known points are clicked one after the other, the azimuth of each is asked for; from two on the
/// lines of sight cross, and with three there is a triangle of error. Enter keeps the point.
class FixTool final : public Tool {
  public:
    using Then = std::function<void(Degrees gridAzimuth)>;
    /// Asks for the grid azimuth of the line of sight from a known point and calls with it, now or later, on the tool's
    /// thread; the call may come when the tool is gone. After it an event tells the tool.
    using Ask = std::function<void(geodesy::PlanePoint known, Then then)>;

    /// @param name  "intersection"  @param entry  what is kept
    FixTool(std::string name, const measures::Entry& entry, GridWays ways, Ask ask)
        : name_(std::move(name)), entry_(entry), ways_(std::move(ways)), ask_(std::move(ask)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !known_.empty(); }
    [[nodiscard]] std::optional<Snaps> snaps() const override { return Snaps{}; }
    [[nodiscard]] std::string hint() const override;

  private:
    /// A known point, with its azimuth once that was told.
    struct Known {
        geodesy::PlanePoint at;  ///< in the plan's plane
        geodesy::PlanePoint onGrid;
        std::shared_ptr<std::optional<Degrees>> azimuth = std::make_shared<std::optional<Degrees>>();
    };
    std::string name_;
    const measures::Entry& entry_;
    GridWays ways_;
    Ask ask_;
    std::vector<Known> known_;
    std::optional<drafting::Fix> fix_;
    std::size_t sighted_ = 0;  ///< how many of the known points had an azimuth when the fix was made
    geodesy::PlanePoint hand_;

    [[nodiscard]] std::vector<drafting::Sight> sights() const;
    void clicked(const Event& event, Reply& reply);
    /// A fix with what has been told; what cannot be is the reply's refusal and its azimuth is forgotten.
    void renew(Reply& reply);
    [[nodiscard]] Reply kept(const Ground& ground);
    [[nodiscard]] plan::Points inPlan(const plan::Points& onGrid) const;
};

}  // namespace crosstick::tools
