#include "sample-data/ground/surface.h"

#include <algorithm>
#include <array>

namespace crosstick::demo {
namespace {

using Values = std::vector<float>;

/// The operator on one lattice. Values of pinned cells are taken as 0 in every vector it works on.
class Plate {
  public:
    Plate(const Lattice& lattice, const std::vector<std::uint8_t>& pinned, double stiffness)
        : lattice_(lattice),
          free_(lattice.size()),
          bent_(lattice.size()),
          stiffness_(static_cast<float>(stiffness * (25 / lattice.cell) * (25 / lattice.cell))) {
        for (std::size_t i = 0; i < free_.size(); ++i) {
            free_[i] = pinned[i] != 0 ? 0.0F : 1.0F;
        }
    }

    /// out = free * (-L z + k L (free * L z)); z is whole, pinned cells with their heights.
    void apply(const Values& z, Values& out) {
        laplacian(z, bent_);
        const auto columns = static_cast<std::size_t>(lattice_.columns);
        for (std::size_t i = columns; i + columns < z.size(); ++i) {
            const float second = bent_[i - 1] + bent_[i + 1] + bent_[i - columns] + bent_[i + columns] - 4 * bent_[i];
            out[i] = free_[i] * (stiffness_ * second - bent_[i]);
        }
    }
    /// The operator's diagonal in open ground: 4 + 20 k.
    [[nodiscard]] float diagonal() const { return 4 + 20 * stiffness_; }

  private:
    Lattice lattice_;
    Values free_;
    Values bent_;
    float stiffness_;

    void laplacian(const Values& z, Values& out) const {
        const auto columns = static_cast<std::size_t>(lattice_.columns);
        for (std::size_t i = columns; i + columns < z.size(); ++i) {
            out[i] = free_[i] * (z[i - 1] + z[i + 1] + z[i - columns] + z[i + columns] - 4 * z[i]);
        }
    }
};

double product(const Values& a, const Values& b) {
    // Rows of 1024 in single precision, their sums in double: fast and the same on every machine.
    double sum = 0;
    for (std::size_t from = 0; from < a.size(); from += 1024) {
        const std::size_t to = std::min(from + 1024, a.size());
        std::array<float, 8> lanes{};
        std::size_t i = from;
        for (; i + 8 <= to; i += 8) {
            for (std::size_t lane = 0; lane < 8; ++lane) {
                lanes[lane] += a[i + lane] * b[i + lane];
            }
        }
        for (; i < to; ++i) {
            lanes[0] += a[i] * b[i];
        }
        for (const float lane : lanes) {
            sum += static_cast<double>(lane);
        }
    }
    return sum;
}

/// Conjugate gradients from a start that holds the pinned heights.
void relax(Plate& plate, Values& z, int steps) {
    Values residual(z.size());
    Values image(z.size());
    plate.apply(z, residual);
    for (float& value : residual) {
        value = -value;
    }
    Values direction = residual;
    double strength = product(residual, residual);
    const double enough = strength * 1e-12;
    for (int step = 0; step < steps && strength > enough; ++step) {
        plate.apply(direction, image);
        const auto along = static_cast<float>(strength / product(direction, image));
        for (std::size_t i = 0; i < z.size(); ++i) {
            z[i] += along * direction[i];
            residual[i] -= along * image[i];
        }
        const double next = product(residual, residual);
        const auto keep = static_cast<float>(next / strength);
        for (std::size_t i = 0; i < z.size(); ++i) {
            direction[i] = residual[i] + keep * direction[i];
        }
        strength = next;
    }
}

Lattice halved(const Lattice& fine) {
    return {fine.first, fine.cell * 2, (fine.columns + 1) / 2, (fine.rows + 1) / 2};
}

/// Coarse cells stand on every second fine cell; one is pinned where any of the nine cells round it is.
Pinned coarser(const Pinned& fine) {
    Pinned coarse{Field<float>(halved(fine.heights.lattice)), Field<std::uint8_t>(halved(fine.heights.lattice))};
    const Lattice& lattice = coarse.heights.lattice;
    for (int row = 0; row < lattice.rows; ++row) {
        for (int column = 0; column < lattice.columns; ++column) {
            float sum = 0;
            int count = 0;
            for (int i = 0; i < 9; ++i) {
                const int c = 2 * column + i % 3 - 1;
                const int r = 2 * row + i / 3 - 1;
                if (fine.heights.lattice.holds(c, r) && fine.pinned(c, r) != 0) {
                    sum += fine.heights(c, r);
                    ++count;
                }
            }
            const bool edge = row == 0 || column == 0 || row == lattice.rows - 1 || column == lattice.columns - 1;
            coarse.pinned(column, row) = count > 0 || edge ? 1 : 0;
            coarse.heights(column, row) = count > 0 ? sum / static_cast<float>(count) : 0;
        }
    }
    return coarse;
}

}  // namespace

Field<float> surface(const Pinned& given, double stiffness) {
    const Lattice& lattice = given.heights.lattice;
    Field<float> z = given.heights;
    int steps = 1500;
    if (lattice.cell < 79) {
        const Field<float> start = surface(coarser(given), stiffness);
        for (int row = 0; row < lattice.rows; ++row) {
            for (int column = 0; column < lattice.columns; ++column) {
                if (given.pinned(column, row) == 0) {
                    z(column, row) = static_cast<float>(sampled(start, lattice.centre(column, row)));
                }
            }
        }
        steps = lattice.cell < 15 ? 160 : lattice.cell < 25 ? 400 : 800;
    }
    Plate plate(lattice, given.pinned.values, stiffness);
    relax(plate, z.values, steps);
    return z;
}

}  // namespace crosstick::demo
