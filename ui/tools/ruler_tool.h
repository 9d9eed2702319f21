#pragma once

#include "core/geodesy/plane_angles.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// What lies between two places: azimuths at the first one, and distances.
struct Reading {
    Degrees grid, magnetic, trueNorth;
    Metres map, ground;
};
/// Where a ruler reads: the same figures as a route's leg has.
struct RulerWays {
    std::function<std::optional<Reading>(geodesy::PlanePoint from, geodesy::PlanePoint to)> read;
    std::function<geodesy::AngleUnit()> unit;
    Scale scale;  ///< of the map in the hand
};

/// Ruler and protractor: from place to place it reads azimuths from the three norths, and distance on the ground and on
/// the map. It leaves nothing on the film unless Enter keeps its line.
class RulerTool final : public Tool {
  public:
    explicit RulerTool(RulerWays ways) : ways_(std::move(ways)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !points_.empty(); }
    [[nodiscard]] std::optional<Snaps> snaps() const override { return Snaps{}; }
    [[nodiscard]] std::string hint() const override;

  private:
    RulerWays ways_;
    plan::Points points_;
    geodesy::PlanePoint hand_;
    bool laid_ = false;  ///< read to its last point: the hand no longer draws it
    std::optional<Told> told_;
    std::optional<Rose> rose_;

    [[nodiscard]] plan::Points line() const;
    void read();
    [[nodiscard]] Reply kept(const Ground& ground);
};

}  // namespace crosstick::tools
