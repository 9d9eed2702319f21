#pragma once

#include <memory>
#include <optional>

#include "core/drawing/drawing.h"
#include "core/geodesy/crs.h"
#include "core/plan/plan.h"

namespace crosstick::film {

/// From the plan's plane to film millimetres: first to the ground sheet's printed grid by PROJ, then by one scale.
/// The film's origin is the window's upper left corner (x right, y down); without a window the first tick's crossing.
/// The paper sheet rules: "scale exactly", map distances and ticks are those of the sheet's grid.
/// A film may besides be fitted to a paper sheet that has worked: its places are then so much farther apart, and
/// whatever is measured in millimetres (symbols, pens, letters) is as it was.
/// Thread: one thread at a time (it holds a PROJ transformation).
class Frame {
  public:
    /// @param scale  overrides the film's own scale and the sheet's
    /// Errors: those of geodesy::PlaneLink.
    [[nodiscard]] static Result<Frame> of(const plan::Plan& plan, const plan::Film& film,
                                          std::optional<Scale> scale = std::nullopt);
    /// The same by a way from the plan's plane to the film's grid that is open already.
    [[nodiscard]] static Result<Frame> over(const plan::Plan& plan, const plan::Film& film,
                                            std::shared_ptr<const geodesy::PlaneLink> link,
                                            std::optional<Scale> scale = std::nullopt);

    /// The same film fitted to paper that is so much too long, or too short.
    [[nodiscard]] Frame fitted(const plan::PaperStretch& stretch) const;

    [[nodiscard]] Scale scale() const { return scale_; }
    [[nodiscard]] const plan::PaperStretch& stretch() const { return stretch_; }
    /// How long a distance along the grid's axes is on the film.
    [[nodiscard]] PaperMm east(Metres ground) const;
    [[nodiscard]] PaperMm north(Metres ground) const;
    [[nodiscard]] const std::string& gridCrs() const { return gridCrs_; }
    /// Upper left corner of the window in the sheet's grid: film point (0, 0).
    [[nodiscard]] geodesy::PlanePoint origin() const { return origin_; }
    /// The window in film millimetres; empty where the plan has none.
    [[nodiscard]] drawing::Box window() const { return window_; }

    /// Points that the transformation does not reach come out not finite: drawn by nobody, named by a finding.
    [[nodiscard]] drawing::Point onFilm(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] geodesy::PlanePoint onGrid(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] geodesy::PlanePoint inPlan(geodesy::PlanePoint onGrid) const;
    [[nodiscard]] drawing::Point gridToFilm(geodesy::PlanePoint onGrid) const;
    [[nodiscard]] geodesy::PlanePoint filmToGrid(drawing::Point onFilm) const;

  private:
    Frame(std::shared_ptr<const geodesy::PlaneLink> link, std::string gridCrs, Scale scale, geodesy::PlanePoint origin,
          drawing::Box window);
    std::shared_ptr<const geodesy::PlaneLink> link_;
    std::string gridCrs_;
    Scale scale_;
    geodesy::PlanePoint origin_;
    drawing::Box window_;
    plan::PaperStretch stretch_;
};

}  // namespace crosstick::film
