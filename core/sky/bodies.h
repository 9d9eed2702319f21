#pragma once

#include <array>
#include <chrono>

#include "core/geodesy/points.h"
#include "core/units/time.h"

namespace crosstick::sky {

using Seconds = std::chrono::duration<double>;  ///< with their fraction
using Vector = std::array<double, 3>;           ///< kilometres from the earth's centre

/// A body's way for some hours: the polynomial through positions at equal steps.
class Track {
  public:
    static constexpr std::size_t kNodes = 5;

    Track() = default;
    Track(Seconds reach, std::array<Vector, kNodes> nodes) : reach_(reach), nodes_(nodes) {}
    [[nodiscard]] static Seconds nodeAt(Seconds reach, std::size_t n);
    [[nodiscard]] Vector at(Seconds sinceMiddle) const;

  private:
    Seconds reach_{1};
    std::array<Vector, kNodes> nodes_{};
};

/// Sun and moon for one observer on the ellipsoid, some hours before and after a middle.
///
/// The sun is the apparent one by eraEpv00 and eraAb (VSOP2000, some 0.01"), the moon that of eraMoon98 (Meeus ch. 47,
/// some 10"); precession and nutation IAU 2000B and the sidereal time of the middle. TT - UT is taken as 69.2 s, UT as
/// UTC: between 1970 and 2050 the moon is then wrong by up to 16". Five positions over 31 hours follow both within
/// 0.1". Altitudes are those of the observer at height 0 on WGS 84 (parallax included) over the plane of his horizon,
/// without refraction.
class Bodies {
  public:
    Bodies(geodesy::GeoPoint place, Instant middle, Seconds reach);

    [[nodiscard]] Degrees sunAltitude(Seconds sinceMiddle) const;       ///< of its centre
    [[nodiscard]] Degrees moonAltitude(Seconds sinceMiddle) const;      ///< of its centre
    [[nodiscard]] Degrees moonLimbAltitude(Seconds sinceMiddle) const;  ///< of its upper limb
    [[nodiscard]] Degrees sunAzimuth(Seconds sinceMiddle) const;        ///< true, [0, 360)
    [[nodiscard]] Degrees moonAzimuth(Seconds sinceMiddle) const;       ///< true, [0, 360)
    [[nodiscard]] Degrees sunHourAngle(Seconds sinceMiddle) const;      ///< west of the meridian, [0, 360)
    /// Share of the moon's disc that is lit, 0 to 1: (1 + cos i) / 2, i the angle at the moon between sun and earth
    /// (Meeus ch. 48).
    [[nodiscard]] double moonLit(Seconds sinceMiddle) const;

    [[nodiscard]] Vector sun(Seconds sinceMiddle) const { return sun_.at(sinceMiddle); }  ///< true equator and equinox
    [[nodiscard]] Vector moon(Seconds sinceMiddle) const { return moon_.at(sinceMiddle); }

  private:
    /// From the observer: east, north, up, in kilometres.
    [[nodiscard]] Vector seen(const Vector& body, Seconds sinceMiddle) const;
    [[nodiscard]] Vector overTheEarth(const Vector& body, Seconds sinceMiddle) const;

    geodesy::GeoPoint place_;
    Vector observer_{};  ///< turning with the earth
    Radians siderealTime_;
    Track sun_, moon_;
};

}  // namespace crosstick::sky
