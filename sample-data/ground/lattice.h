#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "sample-data/place.h"

namespace crosstick::demo {

/// Where the cells of a raster lie: rows from the north, columns from the west.
struct Lattice {
    Spot first;        ///< centre of the north-west cell
    double cell = 10;  ///< metres
    int columns = 0;
    int rows = 0;

    [[nodiscard]] std::size_t size() const {
        return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
    }
    [[nodiscard]] std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column);
    }
    [[nodiscard]] bool holds(int column, int row) const {
        return column >= 0 && row >= 0 && column < columns && row < rows;
    }
    [[nodiscard]] Spot centre(int column, int row) const {
        return {first.east + column * cell, first.north - row * cell};
    }
    [[nodiscard]] double columnOf(Spot spot) const { return (spot.east - first.east) / cell; }
    [[nodiscard]] double rowOf(Spot spot) const { return (first.north - spot.north) / cell; }
    [[nodiscard]] int nearestColumn(Spot spot) const { return static_cast<int>(std::lround(columnOf(spot))); }
    [[nodiscard]] int nearestRow(Spot spot) const { return static_cast<int>(std::lround(rowOf(spot))); }
};

/// A value for every cell.
template <class T>
struct Field {
    Lattice lattice;
    std::vector<T> values;

    explicit Field(const Lattice& where, T value = {}) : lattice(where), values(where.size(), value) {}
    [[nodiscard]] T& operator()(int column, int row) { return values[lattice.index(column, row)]; }
    [[nodiscard]] const T& operator()(int column, int row) const { return values[lattice.index(column, row)]; }
};

/// Whose the cell is before any height is known.
enum class Cover : std::uint8_t { Sea, Land, Lake, Islet };

/// Sets the cells whose centre lies inside a closed ring.
template <class T>
void fillRing(Field<T>& field, const Line& ring, T value);

/// Metres from every cell to the nearest one that counts, by two sweeps with steps of 1, sqrt 2 and sqrt 5 cells (at
/// most 2 % off). Stops growing at `most`.
[[nodiscard]] Field<float> distanceTo(const Field<std::uint8_t>& counts, double most);

/// Height between cell centres, bilinear; 0 outside.
[[nodiscard]] double sampled(const Field<float>& field, Spot at);
/// The same field drawn out by a Gaussian of so many cells.
[[nodiscard]] Field<float> blurred(const Field<float>& field, double sigmaCells);

}  // namespace crosstick::demo
