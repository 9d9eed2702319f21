#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"
#include "core/units/time.h"

namespace crosstick::geodesy {

struct Declination {
    Degrees declination;   ///< magnetic north from true north, east positive
    Degrees sigma;         ///< one sigma: sqrt(0.26^2 + (5417 nT / H)^2), trade 9c
    Nanotesla horizontal;  ///< horizontal field; under 6000 nT a compass is sluggish
    friend bool operator==(const Declination&, const Declination&) = default;
};

/// The World Magnetic Model 2025, degree 12, read from the folder that the build makes (share/crosstick/magnetic).
class MagneticModel {
  public:
    /// Errors: geodesy/no-magnetic-model with "where".
    [[nodiscard]] static Result<MagneticModel> open(const std::filesystem::path& folder);

    /// Declination at a place and date.
    /// @param height above the ellipsoid, -1000 to 850000 m
    /// Errors: geodesy/date-outside-model outside 2025.0 to 2030.0 (1 January 2030 is the last day);
    ///         geodesy/height-outside-model; geodesy/weak-field where H is under 2000 nT.
    /// Source: WMM2025 (NOAA/NCEI and BGS); evaluated by GeographicLib.
    /// Thread: any thread on const.
    [[nodiscard]] Result<Declination> at(GeoPoint place, CalendarDate date, Metres height) const;
    [[nodiscard]] std::string name() const;  ///< "WMM2025"

  private:
    struct Model;
    explicit MagneticModel(std::shared_ptr<const Model> model) : model_(std::move(model)) {}
    std::shared_ptr<const Model> model_;
};

}  // namespace crosstick::geodesy
