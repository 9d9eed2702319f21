#include "core/terrain/handrail.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include <geos_c.h>

#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

using Points = std::vector<geodesy::PlanePoint>;

constexpr Metres kFarthest{10000};
constexpr int kCornersToAQuarter = 6;
constexpr double kFlat = 0.005;  // of the distance: bends smaller than that are left out

/// GEOS with what it made; everything goes when this does.
class Geos {
  public:
    Geos() : context_(GEOS_init_r()) {}
    ~Geos() { GEOS_finish_r(context_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    struct Drop {
        GEOSContextHandle_t context;
        void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(context, geometry); }
    };
    using Shape = std::unique_ptr<GEOSGeometry, Drop>;

    [[nodiscard]] Shape line(const Points& points, geodesy::PlanePoint origin) const {
        GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(context_, static_cast<unsigned>(points.size()), 2);
        for (unsigned n = 0; n < points.size(); ++n) {
            GEOSCoordSeq_setXY_r(context_, sequence, n, (points[n].easting - origin.easting).value(),
                                 (points[n].northing - origin.northing).value());
        }
        return held(GEOSGeom_createLineString_r(context_, sequence));
    }
    [[nodiscard]] Shape beside(const GEOSGeometry& line, double signedDistance) const {
        constexpr double kMitre = 2;  // not used for rounds
        const Shape curve =
            held(GEOSOffsetCurve_r(context_, &line, signedDistance, kCornersToAQuarter, GEOSBUF_JOIN_ROUND, kMitre));
        return curve ? held(GEOSSimplify_r(context_, curve.get(), std::abs(signedDistance) * kFlat)) : held(nullptr);
    }
    /// All lines of a shape, in its order.
    [[nodiscard]] std::vector<Points> lines(const GEOSGeometry& shape, geodesy::PlanePoint origin) const {
        std::vector<Points> all;
        for (int n = 0; n < GEOSGetNumGeometries_r(context_, &shape); ++n) {
            const GEOSGeometry* part = GEOSGetGeometryN_r(context_, &shape, n);
            const GEOSCoordSequence* sequence = GEOSGeom_getCoordSeq_r(context_, part);
            unsigned count = 0;
            if (sequence == nullptr || GEOSCoordSeq_getSize_r(context_, sequence, &count) == 0 || count < 2) {
                continue;
            }
            Points& points = all.emplace_back();
            for (unsigned k = 0; k < count; ++k) {
                double x = 0;
                double y = 0;
                GEOSCoordSeq_getXY_r(context_, sequence, k, &x, &y);
                points.push_back({origin.easting + Metres(x), origin.northing + Metres(y)});
            }
        }
        return all;
    }

  private:
    GEOSContextHandle_t context_;
    [[nodiscard]] Shape held(GEOSGeometry* geometry) const { return {geometry, Drop{context_}}; }
};

double apart(geodesy::PlanePoint a, geodesy::PlanePoint b) {
    return std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value());
}

Points withoutRepeats(const Points& line) {
    Points once;
    for (const geodesy::PlanePoint point : line) {
        if (isFinite(point.easting) && isFinite(point.northing) && (once.empty() || apart(once.back(), point) > 1e-3)) {
            once.push_back(point);
        }
    }
    return once;
}

/// Pieces one behind the other, each turned so that it begins where the one before ends.
Points joined(std::vector<Points> pieces, geodesy::PlanePoint start) {
    Points whole;
    geodesy::PlanePoint end = start;
    while (!pieces.empty()) {
        const auto away = [&](const Points& p) { return std::min(apart(end, p.front()), apart(end, p.back())); };
        const auto next = std::min_element(pieces.begin(), pieces.end(),
                                           [&](const Points& a, const Points& b) { return away(a) < away(b); });
        if (apart(end, next->back()) < apart(end, next->front())) {
            std::reverse(next->begin(), next->end());
        }
        whole.insert(whole.end(), next->begin(), next->end());
        end = whole.back();
        pieces.erase(next);
    }
    return whole;
}

}  // namespace

Result<Points> handrail(const Points& line, Metres distance, Side side) {
    const auto none = [&] { return fail(kNoOffset, {{"metres", distance.value()}}); };
    const Points once = withoutRepeats(line);
    if (once.size() < 2 || !(distance > Metres(0)) || distance > kFarthest) {
        return none();
    }
    // Where the handrail begins, straight beside the line's beginning: tells in which direction the curve came back.
    const double length = apart(once[0], once[1]);
    const double away = side == Side::Left ? distance.value() : -distance.value();
    const geodesy::PlanePoint start{once[0].easting - (once[1].northing - once[0].northing) * (away / length),
                                    once[0].northing + (once[1].easting - once[0].easting) * (away / length)};
    const Geos geos;
    const auto shape = geos.line(once, once.front());
    const auto curve = shape ? geos.beside(*shape, away) : nullptr;
    auto pieces = curve ? geos.lines(*curve, once.front()) : std::vector<Points>{};
    return pieces.empty() ? Result<Points>(none()) : joined(std::move(pieces), start);
}

}  // namespace crosstick::terrain
