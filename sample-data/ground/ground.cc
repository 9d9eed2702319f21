#include "sample-data/ground/ground.h"

#include <algorithm>

#include "sample-data/ground/curve.h"
#include "sample-data/ground/noise.h"
#include "sample-data/ground/surface.h"

namespace crosstick::demo {
namespace {

constexpr Metres kStep{4};
constexpr double kEdgeInland = 40;  ///< metres from the shore to the line of its edge heights
constexpr double kEdgeLowest = 3;   ///< an edge lower than this is a low shore, left free
constexpr double kStiffness = 1.5;  ///< at cells of 25 m
constexpr double kRoughShare = 0.6;
constexpr double kRoughFullAt = 150;  ///< height from which the ground is fully rough
constexpr double kRoughFade = 200;    ///< metres from pinned heights within which it fades

void pin(Pinned& given, Spot at, double height) {
    const Lattice& lattice = given.heights.lattice;
    const int column = lattice.nearestColumn(at);
    const int row = lattice.nearestRow(at);
    given.heights(column, row) = static_cast<float>(height);
    given.pinned(column, row) = 1;
}

Field<Cover> coverOf(const Ground& ground) {
    Field<Cover> cover(islandLattice(), Cover::Sea);
    fillRing(cover, ground.shore, Cover::Land);
    for (const Line& islet : ground.islets) {
        fillRing(cover, islet, Cover::Islet);
    }
    fillRing(cover, ground.lake, Cover::Lake);
    return cover;
}

void pinWater(Pinned& given, const Field<Cover>& cover, const Island& island) {
    for (std::size_t i = 0; i < cover.values.size(); ++i) {
        if (cover.values[i] != Cover::Land) {
            given.pinned.values[i] = 1;
            given.heights.values[i] = cover.values[i] == Cover::Lake    ? static_cast<float>(island.lakeLevel)
                                      : cover.values[i] == Cover::Islet ? static_cast<float>(island.isletHeight)
                                                                        : 0.0F;
        }
    }
}

/// The shore's edge: cells of land 35 to 45 m from the shore take the edge height of the nearest piece of shore.
void pinEdge(Pinned& given, const Field<Cover>& cover, const PegLine& edge) {
    const Lattice& lattice = cover.lattice;
    Field<float> nearest(lattice, 1e6F);
    Field<float> height(lattice);
    const int reach = static_cast<int>(kEdgeInland / lattice.cell) + 2;
    for (const Peg& peg : edge) {
        const int column = lattice.nearestColumn(peg.at);
        const int row = lattice.nearestRow(peg.at);
        for (int r = row - reach; r <= row + reach; ++r) {
            for (int c = column - reach; c <= column + reach; ++c) {
                const auto away = static_cast<float>(length(lattice.centre(c, r) - peg.at));
                if (away < nearest(c, r)) {
                    nearest(c, r) = away;
                    height(c, r) = static_cast<float>(peg.height);
                }
            }
        }
    }
    const auto inland = static_cast<float>(kEdgeInland);
    const auto half = static_cast<float>(lattice.cell / 2);
    for (std::size_t i = 0; i < nearest.values.size(); ++i) {
        if (cover.values[i] == Cover::Land && std::abs(nearest.values[i] - inland) <= half &&
            height.values[i] > static_cast<float>(kEdgeLowest)) {
            given.pinned.values[i] = 1;
            given.heights.values[i] = height.values[i];
        }
    }
}

void pinLines(Pinned& given, const Field<Cover>& cover, const std::vector<NamedPegs>& lines) {
    const Lattice& lattice = cover.lattice;
    for (const NamedPegs& line : lines) {
        for (const Peg& peg : line.pegs) {
            if (cover(lattice.nearestColumn(peg.at), lattice.nearestRow(peg.at)) == Cover::Land) {
                pin(given, peg.at, peg.height);
            }
        }
    }
}

/// Where one brook flows into another they share cells; no cell may lie higher than the one above it on any brook.
void letFall(Pinned& given, const Field<Cover>& cover, const std::vector<NamedPegs>& brooks) {
    const Lattice& lattice = cover.lattice;
    for (bool lowered = true; lowered;) {
        lowered = false;
        for (const NamedPegs& brook : brooks) {
            auto above = static_cast<float>(brook.pegs.front().height);
            for (const Peg& peg : brook.pegs) {
                const int column = lattice.nearestColumn(peg.at);
                const int row = lattice.nearestRow(peg.at);
                float& height = given.heights(column, row);
                if (cover(column, row) == Cover::Land && height > above) {
                    height = above;
                    lowered = true;
                }
                above = height;
            }
        }
    }
}

std::vector<NamedPegs> smoothedLines(const std::vector<NamedPegs>& lines) {
    std::vector<NamedPegs> curves;
    curves.reserve(lines.size());
    for (const NamedPegs& line : lines) {
        curves.push_back({line.name, smoothed(line.pegs, kStep)});
    }
    return curves;
}

void roughen(Field<float>& heights, const Pinned& given, std::uint64_t seed) {
    const Field<float> away = distanceTo(given.pinned, kRoughFade);
    const Lattice& lattice = heights.lattice;
    for (int row = 0; row < lattice.rows; ++row) {
        for (int column = 0; column < lattice.columns; ++column) {
            if (given.pinned(column, row) != 0) {
                continue;
            }
            const double share = static_cast<double>(away(column, row)) / kRoughFade;
            const double faded = share * share * (3 - 2 * share);
            const double z = static_cast<double>(heights(column, row));
            const double rough = kRoughShare * std::clamp(z / kRoughFullAt, 0.0, 1.0) * faded *
                                 roughness(seed, lattice.centre(column, row));
            heights(column, row) = static_cast<float>(std::max(z + rough, 0.1));
        }
    }
}

}  // namespace

Lattice islandLattice() {
    return {{648000, 5107500}, 10, 1201, 1251};
}

Ground makeGround(const Island& island) {
    Ground ground{Field<float>(islandLattice()), Field<Cover>(islandLattice()), {}, {}, {}, {}, {}};
    ground.edge = smoothed(island.shore, kStep, Ends::Closed);
    ground.shore = placesOf(ground.edge);
    for (const Line& islet : island.islets) {
        ground.islets.push_back(smoothed(islet, kStep, Ends::Closed));
    }
    ground.lake = smoothed(island.lake, kStep, Ends::Closed);
    ground.brooks = smoothedLines(island.brooks);
    ground.cover = coverOf(ground);

    Pinned given{Field<float>(islandLattice()), Field<std::uint8_t>(islandLattice())};
    pinEdge(given, ground.cover, ground.edge);
    pinWater(given, ground.cover, island);
    pinLines(given, ground.cover, smoothedLines(island.ridges));
    pinLines(given, ground.cover, ground.brooks);
    letFall(given, ground.cover, ground.brooks);
    for (const SpotHeight& spot : island.spotHeights) {
        pin(given, spot.peg.at, spot.peg.height);
    }
    ground.heights = surface(given, kStiffness);
    roughen(ground.heights, given, island.noiseSeed);
    return ground;
}

}  // namespace crosstick::demo
