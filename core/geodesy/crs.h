#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/geodesy/grid_reference.h"
#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// What PROJ says of a coordinate reference system given as "EPSG:32625", WKT or PROJJSON.
struct CrsFacts {
    std::string name;        ///< "WGS 84 / UTM zone 25N"
    std::string authority;   ///< "EPSG:32625", empty where none is known
    std::string datum;       ///< short, as for a film's margin: "WGS 84", "ED50", "NAD27"
    std::string ellipsoid;   ///< "International 1924"
    std::string projection;  ///< method, with the UTM zone where it is one: "UTM zone 25 north", "Transverse Mercator"
    double metresPerUnit = 1;  ///< of its axes
    std::optional<Zone> utm;   ///< where it is a UTM zone, on whatever datum
    bool onWgs84 = false;
};

/// Errors: geodesy/unknown-crs, geodesy/crs-not-projected.
[[nodiscard]] Result<CrsFacts> describeCrs(const std::string& crs);
/// "EPSG:32625" for zone 25 north; "EPSG:5041", "EPSG:5042" for UPS (easting, northing).
[[nodiscard]] std::string crsOfZone(Zone zone);

/// Two planes and the way between them, by PROJ, datum change included. Points are in metres whatever the axis unit of
/// the CRS, easting first whatever its axis order; the conversion happens inside.
/// Accuracy: of the chosen operation; see operationAt().
/// Thread: one thread at a time; making one costs about 0.1 ms when the CRSs were met before.
class PlaneLink {
  public:
    /// Errors: geodesy/unknown-crs, geodesy/crs-not-projected, geodesy/no-transformation.
    [[nodiscard]] static Result<PlaneLink> between(const std::string& from, const std::string& to);
    PlaneLink(PlaneLink&&) noexcept;
    PlaneLink& operator=(PlaneLink&&) noexcept;
    PlaneLink(const PlaneLink&) = delete;
    PlaneLink& operator=(const PlaneLink&) = delete;
    ~PlaneLink();

    /// Errors: geodesy/outside-plane where the projection does not reach.
    /// Law: inverse(forward(p)) is p within 1e-6 m, a change of datum included.
    [[nodiscard]] Result<PlanePoint> forward(PlanePoint point) const;
    [[nodiscard]] Result<PlanePoint> inverse(PlanePoint point) const;
    /// True where both are the same, so that points pass through untouched.
    [[nodiscard]] bool isIdentity() const;
    /// The operation that serves a place, in PROJ's words ("ED50 to WGS 84 (18)"), and its accuracy where stated.
    struct Operation {
        std::string name;
        std::optional<Metres> accuracy;
    };
    [[nodiscard]] Operation operationAt(PlanePoint point) const;

  private:
    struct Parts;
    explicit PlaneLink(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

/// One plane and its places on WGS 84: latitude and longitude, and convergence and scale of the plane itself.
class Plane {
  public:
    [[nodiscard]] static Result<Plane> of(const std::string& crs);
    Plane(Plane&&) noexcept;
    Plane& operator=(Plane&&) noexcept;
    Plane(const Plane&) = delete;
    Plane& operator=(const Plane&) = delete;
    ~Plane();

    [[nodiscard]] const CrsFacts& facts() const;
    [[nodiscard]] const std::string& crs() const;
    [[nodiscard]] Result<GeoPoint> geographic(PlanePoint point) const;
    [[nodiscard]] Result<PlanePoint> plane(GeoPoint point) const;
    /// Convergence (grid north east of true positive) and scale at a point, against WGS 84: GeographicLib for UTM and
    /// UPS on WGS 84; elsewhere from a central difference of 0.001 degree along the meridian, datum change included.
    /// Accuracy: 1e-6 degree and 1e-9 there.
    [[nodiscard]] Result<PlaneFactors> factors(PlanePoint point) const;
    /// The point in the standard-zone grid on WGS 84 (forced into this plane's own zone where it is a UTM on WGS 84).
    [[nodiscard]] Result<GridPoint> grid(PlanePoint point) const;

  private:
    struct Parts;
    explicit Plane(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::geodesy
