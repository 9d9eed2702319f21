#include "core/sheets/seams.h"

#include <algorithm>
#include <cmath>

#include "core/geodesy/crs.h"

namespace crosstick::sheets {
namespace {

using geodesy::PlanePoint;

constexpr int kPieces = 16;      // an edge that is straight on one grid is bent on another
constexpr double kWidestMm = 6;  // farther apart they are no neighbours
constexpr double kSlackMm = 0.3;
constexpr double kLeastShare = 0.25;  // of the shorter edge, side by side
constexpr double kParallel = 0.9986;  // cosine of 3 degrees

struct Vector {
    double east = 0, north = 0;
};
Vector between(PlanePoint a, PlanePoint b) {
    return {(b.easting - a.easting).value(), (b.northing - a.northing).value()};
}
double dot(Vector a, Vector b) {
    return a.east * b.east + a.north * b.north;
}
double cross(Vector a, Vector b) {
    return a.east * b.north - a.north * b.east;
}

/// One edge of a sheet's map in the plan's plane, the map on its left.
struct EdgeLine {
    std::vector<PlanePoint> points;
    [[nodiscard]] Vector whole() const { return between(points.front(), points.back()); }
    [[nodiscard]] double length() const { return std::hypot(whole().east, whole().north); }
};

struct Outlined {
    plan::SheetId id;
    Scale scale;
    std::vector<EdgeLine> edges;
};

Result<Outlined> outlined(const plan::Plan& plan, const plan::Sheet& sheet) {
    const auto link = geodesy::PlaneLink::between(sheet.crs, plan.planeCrs());
    if (!link) {
        return tl::unexpected(link.error());
    }
    std::vector<plan::RasterSpot> corners = plan::outline(sheet);
    Outlined found{sheet.id, sheet.scale, {}};
    double area = 0;
    for (std::size_t n = 0; n < corners.size(); ++n) {
        const plan::RasterSpot a = corners[n];
        const plan::RasterSpot b = corners[(n + 1) % corners.size()];
        EdgeLine edge;
        for (int piece = 0; piece <= kPieces; ++piece) {
            const double t = static_cast<double>(piece) / kPieces;
            const auto point = link->forward(
                plan::onGrid(sheet.placement, a.column + t * (b.column - a.column), a.row + t * (b.row - a.row)));
            if (!point) {
                return tl::unexpected(point.error());
            }
            edge.points.push_back(*point);
        }
        area += cross(between({}, edge.points.front()), between({}, edge.points.back()));
        found.edges.push_back(std::move(edge));
    }
    if (area < 0) {  // clockwise: the map would lie on the right
        for (EdgeLine& edge : found.edges) {
            std::reverse(edge.points.begin(), edge.points.end());
        }
    }
    return found;
}

/// Metres from an edge to the line that runs the other way beside it, at one of its points: above 0 outside its map.
std::optional<double> away(const EdgeLine& edge, PlanePoint from) {
    for (std::size_t n = 1; n < edge.points.size(); ++n) {
        const Vector piece = between(edge.points[n - 1], edge.points[n]);
        const Vector to = between(edge.points[n - 1], from);
        const double length = std::hypot(piece.east, piece.north);
        const double along = length > 0 ? dot(piece, to) / length : -1;
        if (along >= 0 && along <= length) {
            return -cross(piece, to) / length;
        }
    }
    return std::nullopt;
}

std::optional<Seam> seamBetween(const Outlined& one, const EdgeLine& edge, const Outlined& other,
                                const EdgeLine& across) {
    const double shorter = std::min(edge.length(), across.length());
    if (!(shorter > 0) || dot(edge.whole(), across.whole()) > -kParallel * edge.length() * across.length()) {
        return std::nullopt;
    }
    const double mm = std::max(one.scale.denominator, other.scale.denominator) / 1000;
    // Points of either edge, each measured from the other: the longer one may have none beside the shorter.
    std::vector<std::pair<PlanePoint, double>> measured;
    for (const PlanePoint point : edge.points) {
        if (const auto metres = away(across, point)) {
            measured.emplace_back(point, *metres);
        }
    }
    for (const PlanePoint point : across.points) {
        if (const auto metres = away(edge, point)) {
            measured.emplace_back(point, *metres);
        }
    }
    if (measured.size() < 2) {
        return std::nullopt;
    }
    const Vector way = edge.whole();
    const auto before = [&](const auto& a, const auto& b) {
        return dot(way, between(edge.points.front(), a.first)) < dot(way, between(edge.points.front(), b.first));
    };
    const auto [first, last] = std::minmax_element(measured.begin(), measured.end(), before);
    const Vector together = between(first->first, last->first);
    const auto widest = std::max_element(measured.begin(), measured.end(), [](const auto& a, const auto& b) {
        return std::abs(a.second) < std::abs(b.second);
    });
    if (std::hypot(together.east, together.north) < kLeastShare * shorter ||
        std::abs(widest->second) > kWidestMm * mm) {
        return std::nullopt;
    }
    return Seam{one.id, other.id, first->first, last->first, Metres(widest->second), Metres(kSlackMm * mm)};
}

}  // namespace

Result<std::vector<Seam>> seamsOf(const plan::Plan& plan) {
    std::vector<Outlined> sheets;
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        if (sheet->asFilm) {
            continue;
        }
        auto found = outlined(plan, *sheet);
        if (!found) {
            return tl::unexpected(found.error());
        }
        sheets.push_back(std::move(*found));
    }
    std::vector<Seam> seams;
    for (std::size_t a = 0; a < sheets.size(); ++a) {
        for (std::size_t b = a + 1; b < sheets.size(); ++b) {
            for (const EdgeLine& edge : sheets[a].edges) {
                for (const EdgeLine& across : sheets[b].edges) {
                    if (auto seam = seamBetween(sheets[a], edge, sheets[b], across)) {
                        seams.push_back(*seam);
                    }
                }
            }
        }
    }
    return seams;
}

}  // namespace crosstick::sheets
