#pragma once

#include <array>

#include "core/geodesy/points.h"

namespace crosstick::table {

/// Logical pixels for one metre of the sheet's grid.
using Zoom = Quantity<struct ZoomTag>;

/// A point of the table in logical pixels, from its upper left corner, y down.
struct Spot {
    double x = 0, y = 0;
    friend constexpr bool operator==(Spot, Spot) = default;
};

/// A part of the table in logical pixels.
struct Area {
    double left = 0, top = 0, width = 0, height = 0;
    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] double bottom() const { return top + height; }
    [[nodiscard]] Spot middle() const { return {left + width / 2, top + height / 2}; }
    friend constexpr bool operator==(const Area&, const Area&) = default;
    [[nodiscard]] bool contains(Spot s) const { return s.x >= left && s.x <= right() && s.y >= top && s.y <= bottom(); }
};

/// A part of the sheet's grid.
struct GridBox {
    geodesy::PlanePoint southWest, northEast;
    [[nodiscard]] Metres width() const { return northEast.easting - southWest.easting; }
    [[nodiscard]] Metres height() const { return northEast.northing - southWest.northing; }
    [[nodiscard]] geodesy::PlanePoint middle() const {
        return {(southWest.easting + northEast.easting) / 2, (southWest.northing + northEast.northing) / 2};
    }
    [[nodiscard]] GridBox joined(const GridBox& other) const;  ///< the smallest box round both
};

/// How the screen is taken to be where nobody has measured it: 96 px to the inch.
inline constexpr double kPixelsPerMm = 96 / 25.4;

/// What part of the sheet's grid is seen, how large, and which way up. An immutable value.
/// Laws: place(spot(p)) == p and spot(place(s)) == s within rounding.
class View {
  public:
    /// @param up  the grid azimuth that lies upward, 0: grid north
    View(Area area, geodesy::PlanePoint centre, Zoom zoom, Degrees up = Degrees(0));
    /// The largest view that holds a box with a margin of pixels round it. A box of no size is seen at `closest`.
    [[nodiscard]] static View fitting(const GridBox& box, Area area, double margin, Zoom closest,
                                      Degrees up = Degrees(0));

    /// The same ground in the middle of another area of the table.
    [[nodiscard]] View in(Area area) const { return {area, centre_, zoom_, up_}; }
    [[nodiscard]] View centredOn(geodesy::PlanePoint centre) const { return {area_, centre, zoom_, up_}; }
    [[nodiscard]] View seenAt(Zoom zoom) const { return {area_, centre_, zoom, up_}; }
    /// Turned so that another azimuth lies upward, the ground under a spot staying where it is.
    [[nodiscard]] View turnedAt(Spot spot, Degrees up) const;
    /// Slid so that what lay at one spot lies at another.
    [[nodiscard]] View dragged(Spot from, Spot to) const;
    /// Nearer (factor over 1) or farther, the ground under a spot staying where it is; zoom is kept between two limits.
    [[nodiscard]] View zoomedAt(Spot spot, double factor, Zoom least, Zoom most) const;

    [[nodiscard]] const Area& area() const { return area_; }
    [[nodiscard]] geodesy::PlanePoint centre() const { return centre_; }
    [[nodiscard]] Zoom zoom() const { return zoom_; }
    [[nodiscard]] Degrees up() const { return up_; }  ///< 0 to under 360
    [[nodiscard]] Spot spot(geodesy::PlanePoint onGrid) const;
    [[nodiscard]] geodesy::PlanePoint place(Spot spot) const;
    [[nodiscard]] std::array<Spot, 4> corners() const;  ///< of the area, clockwise from the upper left
    [[nodiscard]] GridBox seen() const;                 ///< the smallest box of the grid round what is seen
    /// The scale at which the ground is seen on a screen of so many pixels to the millimetre.
    [[nodiscard]] Scale scaleSeen(double pixelsPerMm = kPixelsPerMm) const;

    friend bool operator==(const View&, const View&) = default;

  private:
    Area area_;
    geodesy::PlanePoint centre_;
    Zoom zoom_;
    Degrees up_;
    double right_, upward_;  ///< cosine and sine of up

    [[nodiscard]] View holding(geodesy::PlanePoint place, Spot at) const;
};

[[nodiscard]] Zoom zoomFor(Scale seen, double pixelsPerMm = kPixelsPerMm);

}  // namespace crosstick::table
