#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// The way from a plane to whatever CRS a raster lies in, in degrees too: to the numbers that its placement counts in,
/// easting or longitude first, in the unit of its axes.
/// Thread: one thread at a time.
class RasterLink {
  public:
    /// @param plane  a projected CRS  @param raster  projected or geographic
    /// Errors: geodesy/unknown-crs, geodesy/crs-not-projected of the plane, geodesy/no-transformation.
    [[nodiscard]] static Result<RasterLink> between(const std::string& plane, const std::string& raster);
    RasterLink(RasterLink&&) noexcept;
    RasterLink& operator=(RasterLink&&) noexcept;
    RasterLink(const RasterLink&) = delete;
    RasterLink& operator=(const RasterLink&) = delete;
    ~RasterLink();

    /// Nothing where the projection does not reach.
    [[nodiscard]] std::optional<std::array<double, 2>> numbersAt(PlanePoint point) const;
    /// Metres of one unit eastward and northward near a place of the raster, by its ellipsoid's mean radius: for the
    /// size of a cell, good to a per cent.
    [[nodiscard]] std::array<Metres, 2> unitAt(std::array<double, 2> numbers) const;

  private:
    struct Parts;
    explicit RasterLink(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::geodesy
