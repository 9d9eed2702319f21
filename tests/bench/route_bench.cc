// Recomputing a route of 500 legs, beside the GeographicLib calls that its numbers cannot do without.
#include <array>
#include <cmath>
#include <string>

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/MagneticModel.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <benchmark/benchmark.h>

#include "core/movement/measured_pieces.h"
#include "core/movement/route_figures.h"
#include "core/movement/work_grid.h"
#include "core/plan/edits.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick {
namespace {

constexpr std::size_t kVertices = 501;
constexpr std::size_t kBendsALeg = 1;

std::vector<geodesy::PlanePoint> vertices() {
    std::vector<geodesy::PlanePoint> points;
    for (std::size_t n = 0; n < kVertices; ++n) {
        const double along = static_cast<double>(n);
        points.push_back(movement::at(652000 + 40 * along, 5098000 + 900 * std::sin(along / 9)));
    }
    return points;
}

plan::Plan longRoute() {
    return movement::plainRoute(vertices());
}

void bareGeographicLib(benchmark::State& state) {
    const auto points = vertices();
    const GeographicLib::MagneticModel field("wmm2025", places::share() / "magnetic");
    const GeographicLib::Geodesic& ellipsoid = GeographicLib::Geodesic::WGS84();
    for (auto _ : state) {
        std::array<double, kVertices> latitudes{};
        std::array<double, kVertices> longitudes{};
        double sum = 0;
        std::string grid;
        for (std::size_t n = 0; n < kVertices; ++n) {
            double convergence = 0;
            double scale = 0;
            GeographicLib::UTMUPS::Reverse(25, true, points[n].easting.value(), points[n].northing.value(),
                                           latitudes[n], longitudes[n], convergence, scale);
            if (n % kBendsALeg == 0) {
                GeographicLib::MGRS::Forward(25, true, points[n].easting.value(), points[n].northing.value(),
                                             latitudes[n], 4, grid);
            }
            sum += convergence;
        }
        for (std::size_t n = 0; n + 1 < kVertices; ++n) {
            double distance = 0;
            double there = 0;
            double onward = 0;
            ellipsoid.Inverse(latitudes[n], longitudes[n], latitudes[n + 1], longitudes[n + 1], distance, there,
                              onward);
            sum += distance + std::atan2(points[n + 1].easting.value() - points[n].easting.value(),
                                         points[n + 1].northing.value() - points[n].northing.value());
        }
        double east = 0;
        double north = 0;
        double up = 0;
        field(2027.2, latitudes[kVertices / 2], longitudes[kVertices / 2], 0, east, north, up);
        benchmark::DoNotOptimize(sum + east + north);
    }
}
BENCHMARK(bareGeographicLib)->Unit(benchmark::kMicrosecond);

void routeOf500Legs(benchmark::State& state) {
    const plan::Plan plan = longRoute();
    const plan::Route& route = *plan.routes().front();
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    for (auto _ : state) {
        auto figures = movement::routeFigures(plan, route, &model.value(), nullptr);
        if (!figures) {
            state.SkipWithError("the route has no figures");
            break;
        }
        benchmark::DoNotOptimize(figures->groundDistance);
    }
}
BENCHMARK(routeOf500Legs)->Unit(benchmark::kMicrosecond);

/// As while a vertex is dragged: the work grid stays open between the rounds.
void routeOf500LegsOnAnOpenGrid(benchmark::State& state) {
    const plan::Plan plan = longRoute();
    const plan::Route& route = *plan.routes().front();
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto grid = movement::WorkGrid::of(plan);
    for (auto _ : state) {
        auto figures = movement::routeFigures(plan, route, grid.value(), &model.value(), nullptr);
        if (!figures) {
            state.SkipWithError("the route has no figures");
            break;
        }
        benchmark::DoNotOptimize(figures->groundDistance);
    }
}
BENCHMARK(routeOf500LegsOnAnOpenGrid)->Unit(benchmark::kMicrosecond);

/// As while a vertex is dragged, with what was measured before kept: two legs are measured anew.
void oneMovedVertexOf500Legs(benchmark::State& state) {
    plan::Plan plan = longRoute();
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto grid = movement::WorkGrid::of(plan);
    movement::KeptPieces kept;
    double north = 0;
    for (auto _ : state) {
        state.PauseTiming();
        north = north > 100 ? 0 : north + 1;
        plan = plan::withPoint(plan, plan.routes().front()->id, 250, movement::at(662000, 5098000 + north));
        state.ResumeTiming();
        auto figures =
            movement::routeFigures(plan, *plan.routes().front(), grid.value(), &model.value(), nullptr, kept);
        if (!figures) {
            state.SkipWithError("the route has no figures");
            break;
        }
        benchmark::DoNotOptimize(figures->groundDistance);
    }
}
BENCHMARK(oneMovedVertexOf500Legs)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace crosstick

BENCHMARK_MAIN();
