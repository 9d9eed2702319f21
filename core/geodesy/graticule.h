#pragma once

#include <memory>
#include <optional>
#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// A place by the latitude and longitude that a sheet prints: on the sheet's own datum, north and east positive.
struct PrintedAngles {
    Degrees latitude;
    Degrees longitude;
};

/// The lines of latitude and longitude of a projected CRS's own datum, in its plane: no datum changes on the way.
/// Thread: one thread at a time.
class Graticule {
  public:
    /// Errors: geodesy/unknown-crs, geodesy/crs-not-projected, geodesy/no-transformation.
    [[nodiscard]] static Result<Graticule> of(const std::string& crs);
    Graticule(Graticule&&) noexcept;
    Graticule& operator=(Graticule&&) noexcept;
    Graticule(const Graticule&) = delete;
    Graticule& operator=(const Graticule&) = delete;
    ~Graticule();

    /// Nothing where the projection does not reach.
    [[nodiscard]] std::optional<PlanePoint> plane(PrintedAngles place) const;
    [[nodiscard]] std::optional<PrintedAngles> angles(PlanePoint point) const;

  private:
    struct Parts;
    explicit Graticule(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::geodesy
