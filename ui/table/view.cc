#include "ui/table/view.h"

#include <algorithm>

namespace crosstick::table {

GridBox GridBox::joined(const GridBox& other) const {
    return {
        {std::min(southWest.easting, other.southWest.easting), std::min(southWest.northing, other.southWest.northing)},
        {std::max(northEast.easting, other.northEast.easting), std::max(northEast.northing, other.northEast.northing)}};
}

View View::fitting(const GridBox& box, Area area, double margin, Zoom closest) {
    const double width = std::max(1.0, area.width - 2 * margin);
    const double height = std::max(1.0, area.height - 2 * margin);
    Zoom zoom = closest;
    if (box.width() > Metres(0)) {
        zoom = std::min(zoom, Zoom(width / box.width().value()));
    }
    if (box.height() > Metres(0)) {
        zoom = std::min(zoom, Zoom(height / box.height().value()));
    }
    return {area, box.middle(), zoom};
}

Spot View::spot(geodesy::PlanePoint onGrid) const {
    const Spot middle = area_.middle();
    return {middle.x + (onGrid.easting - centre_.easting).value() * zoom_.value(),
            middle.y - (onGrid.northing - centre_.northing).value() * zoom_.value()};
}

geodesy::PlanePoint View::place(Spot spot) const {
    const Spot middle = area_.middle();
    return {centre_.easting + Metres((spot.x - middle.x) / zoom_.value()),
            centre_.northing - Metres((spot.y - middle.y) / zoom_.value())};
}

View View::dragged(Spot from, Spot to) const {
    const geodesy::PlanePoint a = place(from);
    const geodesy::PlanePoint b = place(to);
    return {area_, {centre_.easting - (b.easting - a.easting), centre_.northing - (b.northing - a.northing)}, zoom_};
}

View View::zoomedAt(Spot spot, double factor, Zoom least, Zoom most) const {
    const Zoom next = std::clamp(zoom_ * factor, least, most);
    const geodesy::PlanePoint held = place(spot);
    const Spot middle = area_.middle();
    return {area_,
            {held.easting - Metres((spot.x - middle.x) / next.value()),
             held.northing + Metres((spot.y - middle.y) / next.value())},
            next};
}

GridBox View::seen() const {
    return {place({area_.left, area_.bottom()}), place({area_.right(), area_.top})};
}

Scale View::scaleSeen(double pixelsPerMm) const {
    return {1000 * pixelsPerMm / zoom_.value()};
}

Zoom zoomFor(Scale seen, double pixelsPerMm) {
    return Zoom(1000 * pixelsPerMm / seen.denominator);
}

}  // namespace crosstick::table
