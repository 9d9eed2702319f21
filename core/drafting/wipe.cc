#include "core/drafting/wipe.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include <geos_c.h>

namespace crosstick::drafting {
namespace {

using geodesy::PlanePoint;

constexpr Metres kNothing{0.001};

bool isSomething(const Line& line, Stretch stretch) {
    return stretch.from < stretch.to && lengthOf(lineOf(line, stretch)) >= kNothing;
}

/// GEOS with what it made; everything goes when this does. Places are told from an origin, so that they keep their
/// millimetres.
class Geos {
  public:
    explicit Geos(PlanePoint origin) : context_(GEOS_init_r()), origin_(origin) {}
    ~Geos() { GEOS_finish_r(context_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    struct Drop {
        GEOSContextHandle_t context;
        void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(context, geometry); }
    };
    using Shape = std::unique_ptr<GEOSGeometry, Drop>;

    /// A ring that crosses itself becomes the shapes that it encloses.
    [[nodiscard]] Shape area(const Line& ring) const {
        GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(context_, static_cast<unsigned>(ring.size() + 1), 2);
        for (unsigned n = 0; n <= ring.size(); ++n) {
            const PlanePoint at = ring[n % ring.size()];
            GEOSCoordSeq_setXY_r(context_, sequence, n, (at.easting - origin_.easting).value(),
                                 (at.northing - origin_.northing).value());
        }
        GEOSGeometry* edge = GEOSGeom_createLinearRing_r(context_, sequence);
        const Shape whole =
            edge == nullptr ? held(nullptr) : held(GEOSGeom_createPolygon_r(context_, edge, nullptr, 0));
        return whole ? held(GEOSMakeValid_r(context_, whole.get())) : held(nullptr);
    }
    [[nodiscard]] Shape less(const Shape& a, const Shape& b) const {
        return a && b ? held(GEOSDifference_r(context_, a.get(), b.get())) : held(nullptr);
    }
    [[nodiscard]] double size(const GEOSGeometry* shape) const {
        double area = 0;
        return GEOSArea_r(context_, shape, &area) == 1 ? area : 0;
    }
    /// The outer rings of all areas in a shape, the largest first.
    [[nodiscard]] std::vector<Line> rings(const Shape& shape) const {
        std::vector<const GEOSGeometry*> areas;
        for (int n = 0; shape && n < GEOSGetNumGeometries_r(context_, shape.get()); ++n) {
            const GEOSGeometry* part = GEOSGetGeometryN_r(context_, shape.get(), n);
            if (GEOSGeomTypeId_r(context_, part) == GEOS_POLYGON && size(part) > 1e-3) {
                areas.push_back(part);
            }
        }
        std::stable_sort(areas.begin(), areas.end(),
                         [this](const auto* a, const auto* b) { return size(a) > size(b); });
        std::vector<Line> all;
        std::transform(areas.begin(), areas.end(), std::back_inserter(all),
                       [this](const GEOSGeometry* part) { return ring(GEOSGetExteriorRing_r(context_, part)); });
        return all;
    }

  private:
    GEOSContextHandle_t context_;
    PlanePoint origin_;
    [[nodiscard]] Shape held(GEOSGeometry* geometry) const { return {geometry, Drop{context_}}; }
    [[nodiscard]] Line ring(const GEOSGeometry* edge) const {
        const GEOSCoordSequence* sequence = GEOSGeom_getCoordSeq_r(context_, edge);
        unsigned count = 0;
        GEOSCoordSeq_getSize_r(context_, sequence, &count);
        Line line;
        for (unsigned n = 0; n + 1 < count; ++n) {
            double x = 0;
            double y = 0;
            GEOSCoordSeq_getXY_r(context_, sequence, n, &x, &y);
            line.push_back({origin_.easting + Metres(x), origin_.northing + Metres(y)});
        }
        return line;
    }
};

bool edgeIsMet(const Line& ring, const Line& region) {
    for (std::size_t n = 0; n < ring.size(); ++n) {
        for (std::size_t k = 0; k < region.size(); ++k) {
            const auto met = crossing(ring[n], ring[(n + 1) % ring.size()], region[k], region[(k + 1) % region.size()]);
            if (met && met->ofFirst >= 0 && met->ofFirst <= 1 && met->ofSecond >= 0 && met->ofSecond <= 1) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace

std::vector<Stretch> restOf(const Line& line, Stretch wiped) {
    std::vector<Stretch> rest;
    if (line.size() < 2) {
        return rest;
    }
    const Stretch gone{std::min(wiped.from, wiped.to), std::max(wiped.from, wiped.to)};
    for (const Stretch part : {Stretch{0, gone.from}, Stretch{gone.to, static_cast<double>(line.size() - 1)}}) {
        if (isSomething(line, part)) {
            rest.push_back(part);
        }
    }
    return rest;
}

std::vector<Stretch> stretchesOutside(const Line& line, const Line& region) {
    std::vector<Stretch> outside;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        std::vector<double> cuts{0, 1};
        for (std::size_t k = 0; k < region.size(); ++k) {
            const auto met = crossing(line[n], line[n + 1], region[k], region[(k + 1) % region.size()]);
            if (met && met->ofFirst > 0 && met->ofFirst < 1 && met->ofSecond >= 0 && met->ofSecond <= 1) {
                cuts.push_back(met->ofFirst);
            }
        }
        std::sort(cuts.begin(), cuts.end());
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            const auto start = static_cast<double>(n);
            const Stretch part{start + cuts[k], start + cuts[k + 1]};
            if (part.from == part.to || isInside(placeAt(line, (part.from + part.to) / 2), region)) {
                continue;
            }
            if (!outside.empty() && outside.back().to == part.from) {
                outside.back().to = part.to;
            } else {
                outside.push_back(part);
            }
        }
    }
    std::erase_if(outside, [&](Stretch part) { return !isSomething(line, part); });
    return outside;
}

std::vector<Line> ringsOutside(const Line& ring, const Line& region) {
    if (ring.size() < 3 || region.size() < 3) {
        return {ring};
    }
    if (!edgeIsMet(ring, region)) {
        return isInside(ring.front(), region) ? std::vector<Line>{} : std::vector<Line>{ring};
    }
    const Geos geos(ring.front());
    return geos.rings(geos.less(geos.area(ring), geos.area(region)));
}

}  // namespace crosstick::drafting
