#include "core/terrain/inner_side.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "core/geodesy/plane_line.h"
#include "core/measures/catalogue.h"

namespace crosstick::terrain {
namespace {

using geodesy::PlanePoint;

std::string unitOn(const plan::Measure& boundary, const char* field) {
    const auto named = boundary.fields.find(field);
    return named == boundary.fields.end() ? std::string() : named->second;
}

bool isBoundary(const plan::Measure& measure) {
    return measure.kind == "boundary" && measure.points.size() > 1;
}

/// Whose plan it is: as its heading says, else the one unit that every boundary of two or more names.
std::string ourUnit(const plan::Plan& plan) {
    if (!plan.heading().unit.empty()) {
        return plan.heading().unit;
    }
    int boundaries = 0;
    std::map<std::string, int> named;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (isBoundary(*measure)) {
            ++boundaries;
            for (const std::string& unit : std::set{unitOn(*measure, "left_unit"), unitOn(*measure, "right_unit")}) {
                ++named[unit];
            }
        }
    });
    std::erase_if(named, [&](const auto& one) { return one.first.empty() || one.second < boundaries; });
    return boundaries > 1 && named.size() == 1 ? named.begin()->first : std::string();
}

/// On which side of the line as it runs our ground lies.
std::optional<Side> ourSide(const std::string& ours, const plan::Measure& boundary) {
    const auto isOurs = [&](const std::string& unit) {
        return !unit.empty() && (ours == unit || ours.starts_with(unit + ' '));
    };
    const bool left = isOurs(unitOn(boundary, "left_unit"));
    const bool right = isOurs(unitOn(boundary, "right_unit"));
    return left == right ? std::nullopt : std::optional(left ? Side::Left : Side::Right);
}

/// Is a place on the left of a line, beside the piece that it is nearest to? Past a corner that two pieces share the
/// one decides that it lies more squarely beside.
bool isLeft(const geodesy::Line& line, const geodesy::OnLine& nearest, PlanePoint at) {
    const auto turn = [&](std::size_t piece) {
        const PlanePoint a = line[piece];
        const PlanePoint b = line[piece + 1];
        const double east = (b.easting - a.easting).value();
        const double north = (b.northing - a.northing).value();
        const double length = std::hypot(east, north);
        return length > 0
                   ? (east * (at.northing - a.northing).value() - north * (at.easting - a.easting).value()) / length
                   : 0;
    };
    const auto piece = std::min(static_cast<std::size_t>(nearest.way), line.size() - 2);
    const double before = turn(piece);
    const bool isAtCorner = nearest.way == std::floor(nearest.way) && piece > 0;
    const double other = isAtCorner ? turn(piece - 1) : before;
    return (std::abs(other) > std::abs(before) ? other : before) > 0;
}

}  // namespace

std::optional<Metres> insideBoundaries(const plan::Plan& plan, PlanePoint at) {
    const std::string ours = ourUnit(plan);
    std::optional<geodesy::OnLine> best;
    Metres inside;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        const auto side = isBoundary(*measure) ? ourSide(ours, *measure) : std::nullopt;
        const auto nearest = side ? geodesy::nearestOn(measure->points, geodesy::Ends::Open, at) : std::nullopt;
        if (nearest && (!best || nearest->away < best->away)) {
            best = nearest;
            inside = isLeft(measure->points, *nearest, at) == (*side == Side::Left) ? nearest->away : -nearest->away;
        }
    });
    return best ? std::optional(inside) : std::nullopt;
}

std::optional<Metres> leastInside(const plan::Plan& plan, const std::vector<PlanePoint>& line) {
    std::optional<Metres> least;
    for (const PlanePoint at : line) {
        const auto inside = insideBoundaries(plan, at);
        least = inside ? std::min(least.value_or(*inside), *inside) : least;
    }
    return least;
}

std::optional<Side> innerSide(const plan::Plan& plan, const std::vector<PlanePoint>& onTheLeft,
                              const std::vector<PlanePoint>& onTheRight) {
    const auto mean = [&](const std::vector<PlanePoint>& line) -> std::optional<Metres> {
        constexpr int kPlaces = 9;
        Metres sum;
        for (int n = 0; n < kPlaces && line.size() > 1; ++n) {
            const double way = static_cast<double>(line.size() - 1) * (n + 0.5) / kPlaces;
            const auto inside = insideBoundaries(plan, geodesy::placeAt(line, way));
            if (!inside) {
                return std::nullopt;
            }
            sum += *inside / kPlaces;
        }
        return line.size() > 1 ? std::optional(sum) : std::nullopt;
    };
    const auto left = mean(onTheLeft);
    const auto right = mean(onTheRight);
    if (!left || !right) {
        return left ? std::optional(Side::Left) : right ? std::optional(Side::Right) : std::nullopt;
    }
    return *left > *right ? Side::Left : Side::Right;
}

}  // namespace crosstick::terrain
