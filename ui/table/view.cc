#include "ui/table/view.h"

#include <algorithm>
#include <cmath>

namespace crosstick::table {

GridBox GridBox::joined(const GridBox& other) const {
    return {
        {std::min(southWest.easting, other.southWest.easting), std::min(southWest.northing, other.southWest.northing)},
        {std::max(northEast.easting, other.northEast.easting), std::max(northEast.northing, other.northEast.northing)}};
}

View::View(Area area, geodesy::PlanePoint centre, Zoom zoom, Degrees up)
    : area_(area), centre_(centre), zoom_(zoom), up_(up.value() - 360 * std::floor(up.value() / 360)) {
    // Exactly straight where it is meant to be: what lies straight is painted a quick way.
    const double quarter = up_.value() / 90;
    if (quarter == std::round(quarter)) {
        constexpr std::array kCosines{1.0, 0.0, -1.0, 0.0};
        const auto n = static_cast<std::size_t>(quarter) % 4;
        right_ = kCosines[n];
        upward_ = kCosines[(n + 3) % 4];
    } else {
        right_ = std::cos(radians(up_).value());
        upward_ = std::sin(radians(up_).value());
    }
}

View View::fitting(const GridBox& box, Area area, double margin, Zoom closest, Degrees up) {
    const View turned(area, box.middle(), Zoom(1), up);
    double wide = 0;
    double high = 0;
    for (const geodesy::PlanePoint corner :
         {box.northEast, geodesy::PlanePoint{box.northEast.easting, box.southWest.northing}}) {
        const Spot spot = turned.spot(corner);
        wide = std::max(wide, 2 * std::abs(spot.x - area.middle().x));
        high = std::max(high, 2 * std::abs(spot.y - area.middle().y));
    }
    Zoom zoom = closest;
    if (wide > 0) {
        zoom = std::min(zoom, Zoom(std::max(1.0, area.width - 2 * margin) / wide));
    }
    if (high > 0) {
        zoom = std::min(zoom, Zoom(std::max(1.0, area.height - 2 * margin) / high));
    }
    return turned.seenAt(zoom);
}

Spot View::spot(geodesy::PlanePoint onGrid) const {
    const Spot middle = area_.middle();
    const double east = (onGrid.easting - centre_.easting).value();
    const double north = (onGrid.northing - centre_.northing).value();
    return {middle.x + (east * right_ - north * upward_) * zoom_.value(),
            middle.y - (east * upward_ + north * right_) * zoom_.value()};
}

geodesy::PlanePoint View::place(Spot spot) const {
    const Spot middle = area_.middle();
    const double x = (spot.x - middle.x) / zoom_.value();
    const double y = (middle.y - spot.y) / zoom_.value();
    return {centre_.easting + Metres(x * right_ + y * upward_), centre_.northing + Metres(y * right_ - x * upward_)};
}

/// Slid so that a place lies at a spot.
View View::holding(geodesy::PlanePoint place, Spot at) const {
    const geodesy::PlanePoint there = this->place(at);
    return centredOn(
        {centre_.easting + (place.easting - there.easting), centre_.northing + (place.northing - there.northing)});
}

View View::dragged(Spot from, Spot to) const {
    return holding(place(from), to);
}

View View::zoomedAt(Spot spot, double factor, Zoom least, Zoom most) const {
    return seenAt(std::clamp(zoom_ * factor, least, most)).holding(place(spot), spot);
}

View View::turnedAt(Spot spot, Degrees up) const {
    return View(area_, centre_, zoom_, up).holding(place(spot), spot);
}

std::array<Spot, 4> View::corners() const {
    return {Spot{area_.left, area_.top}, Spot{area_.right(), area_.top}, Spot{area_.right(), area_.bottom()},
            Spot{area_.left, area_.bottom()}};
}

GridBox View::seen() const {
    const geodesy::PlanePoint first = place(corners().front());
    GridBox box{first, first};
    for (const Spot corner : corners()) {
        const geodesy::PlanePoint p = place(corner);
        box = box.joined({p, p});
    }
    return box;
}

Scale View::scaleSeen(double pixelsPerMm) const {
    return {1000 * pixelsPerMm / zoom_.value()};
}

Zoom zoomFor(Scale seen, double pixelsPerMm) {
    return Zoom(1000 * pixelsPerMm / seen.denominator);
}

}  // namespace crosstick::table
