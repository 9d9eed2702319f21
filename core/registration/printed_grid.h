#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/geodesy/crs.h"
#include "core/geodesy/graticule.h"
#include "core/units/result.h"

namespace crosstick::registration {

/// Reads crossings as a sheet prints them, in the sheet's own grid and on its own datum:
/// - figures alone, "45 62", "453 627", "4562": of the 100 km square that was named, and after a first place of the
///   whole of the grid, the one within 50 km of that place;
/// - a square and figures, "UJ 45 62", once zone and band are known; in full, "18S UJ 45 62";
/// - easting and northing in metres, "323000 4306000.5"; UTM with its zone;
/// - latitude and longitude, of the graticule: on the sheet's datum.
/// A reference in a UTM zone is taken as it stands where the sheet's grid is that zone, whatever its datum; on any
/// other grid it is on WGS 84 and is brought over.
class PrintedGrid {
  public:
    /// @param crs     projected; empty: the standard UTM zone on WGS 84 of the square or of the first place in full
    /// @param square  grid zone and 100 km square, "18S UJ", for figures alone; may be empty
    /// Errors: geodesy/unknown-crs, geodesy/crs-not-projected; those of geodesy::parsePoint for the square.
    [[nodiscard]] static Result<PrintedGrid> of(const std::string& crs, std::string_view square = {});

    /// Remembers the first place and the zone, for figures that come after it.
    /// Errors: registration/no-square, registration/no-grid (no CRS yet); those of geodesy::parsePoint and of
    ///         geodesy::PlaneLink; geodesy/outside-plane.
    [[nodiscard]] Result<geodesy::PlanePoint> read(std::string_view text);
    /// The CRS, as far as it is known by now.
    [[nodiscard]] const std::string& crs() const { return crs_; }

  private:
    PrintedGrid() = default;

    std::string crs_;
    std::optional<geodesy::Plane> plane_;
    std::optional<geodesy::Graticule> graticule_;
    std::optional<geodesy::PlanePoint> near_;  ///< what figures alone lie within 50 km of, either way
    bool hasPlace_ = false;                    ///< that is the first place read, and no square's middle
    std::string zone_;                         ///< "18S", as last read

    [[nodiscard]] Result<void> settle(const std::string& crs);
    [[nodiscard]] Result<geodesy::PlanePoint> readPlain(const std::string& plain);
    [[nodiscard]] Result<geodesy::PlanePoint> figures(const std::string& east, const std::string& north) const;
    [[nodiscard]] Result<geodesy::PlanePoint> inPlane(const geodesy::GridPoint& point);
    [[nodiscard]] Result<geodesy::PlanePoint> inFull(const std::string& plain);
    [[nodiscard]] Result<geodesy::PlanePoint> ofGraticule(geodesy::GeoPoint angles);
};

}  // namespace crosstick::registration
