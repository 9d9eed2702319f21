#include "sample-data/ground/lattice.h"

#include <algorithm>
#include <array>

namespace crosstick::demo {
namespace {

/// Where a row's middle crosses a ring, in columns, from the west.
std::vector<double> crossings(const Lattice& lattice, const Line& ring, double north) {
    std::vector<double> columns;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot a = ring[i];
        const Spot b = ring[(i + 1) % ring.size()];
        if ((a.north > north) != (b.north > north)) {
            const double east = a.east + (b.east - a.east) * (north - a.north) / (b.north - a.north);
            columns.push_back(lattice.columnOf({east, north}));
        }
    }
    std::sort(columns.begin(), columns.end());
    return columns;
}

struct Step {
    int column, row;
    double cells;
};

void sweep(Field<float>& field, const std::array<Step, 8>& steps, bool backwards) {
    const Lattice& lattice = field.lattice;
    for (int i = 0; i < lattice.rows; ++i) {
        const int row = backwards ? lattice.rows - 1 - i : i;
        for (int j = 0; j < lattice.columns; ++j) {
            const int column = backwards ? lattice.columns - 1 - j : j;
            float best = field(column, row);
            for (const Step& step : steps) {
                const int c = backwards ? column - step.column : column + step.column;
                const int r = backwards ? row - step.row : row + step.row;
                if (lattice.holds(c, r)) {
                    best = std::min(best, field(c, r) + static_cast<float>(step.cells * lattice.cell));
                }
            }
            field(column, row) = best;
        }
    }
}

}  // namespace

template <class T>
void fillRing(Field<T>& field, const Line& ring, T value) {
    const Lattice& lattice = field.lattice;
    for (int row = 0; row < lattice.rows; ++row) {
        const auto columns = crossings(lattice, ring, lattice.centre(0, row).north);
        for (std::size_t i = 0; i + 1 < columns.size(); i += 2) {
            const int from = std::max(0, static_cast<int>(std::ceil(columns[i])));
            const int to = std::min(lattice.columns - 1, static_cast<int>(std::floor(columns[i + 1])));
            for (int column = from; column <= to; ++column) {
                field(column, row) = value;
            }
        }
    }
}
template void fillRing(Field<Cover>& field, const Line& ring, Cover value);
template void fillRing(Field<std::uint8_t>& field, const Line& ring, std::uint8_t value);

Field<float> distanceTo(const Field<std::uint8_t>& counts, double most) {
    Field<float> distance(counts.lattice, static_cast<float>(most));
    for (std::size_t i = 0; i < counts.values.size(); ++i) {
        if (counts.values[i] != 0) {
            distance.values[i] = 0;
        }
    }
    const double diagonal = std::sqrt(2.0);
    const double knight = std::sqrt(5.0);
    const std::array<Step, 8> steps{{{-1, 0, 1},
                                     {0, -1, 1},
                                     {-1, -1, diagonal},
                                     {1, -1, diagonal},
                                     {-2, -1, knight},
                                     {-1, -2, knight},
                                     {1, -2, knight},
                                     {2, -1, knight}}};
    sweep(distance, steps, false);
    sweep(distance, steps, true);
    return distance;
}

double sampled(const Field<float>& field, Spot at) {
    const double c = field.lattice.columnOf(at);
    const double r = field.lattice.rowOf(at);
    const int column = static_cast<int>(std::floor(c));
    const int row = static_cast<int>(std::floor(r));
    if (!field.lattice.holds(column, row) || !field.lattice.holds(column + 1, row + 1)) {
        return 0;
    }
    const double u = c - column;
    const double v = r - row;
    const auto value = [&](int dc, int dr) { return static_cast<double>(field(column + dc, row + dr)); };
    return (value(0, 0) * (1 - u) + value(1, 0) * u) * (1 - v) + (value(0, 1) * (1 - u) + value(1, 1) * u) * v;
}

Field<float> blurred(const Field<float>& field, double sigmaCells) {
    const int reach = static_cast<int>(std::ceil(3 * sigmaCells));
    std::vector<float> weights;
    float sum = 0;
    for (int i = -reach; i <= reach; ++i) {
        weights.push_back(static_cast<float>(std::exp(-0.5 * i * i / (sigmaCells * sigmaCells))));
        sum += weights.back();
    }
    const auto weightOf = [&weights, reach](int step) {
        const int place = step + reach;
        return weights[static_cast<std::size_t>(place)];
    };
    const Lattice& lattice = field.lattice;
    Field<float> across(lattice);
    Field<float> both(lattice);
    for (int row = 0; row < lattice.rows; ++row) {
        for (int column = 0; column < lattice.columns; ++column) {
            float value = 0;
            for (int i = -reach; i <= reach; ++i) {
                value += weightOf(i) * field(std::clamp(column + i, 0, lattice.columns - 1), row);
            }
            across(column, row) = value / sum;
        }
    }
    for (int row = 0; row < lattice.rows; ++row) {
        for (int i = -reach; i <= reach; ++i) {
            const int from = std::clamp(row + i, 0, lattice.rows - 1);
            const float weight = weightOf(i) / sum;
            for (int column = 0; column < lattice.columns; ++column) {
                both(column, row) += weight * across(column, from);
            }
        }
    }
    return both;
}

}  // namespace crosstick::demo
