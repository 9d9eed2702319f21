#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "core/registration/crossing_trace.h"
#include "core/registration/lattice.h"

namespace crosstick::registration {

using Index = std::pair<int, int>;  ///< of a crossing: lines northward, eastward
[[nodiscard]] LatticePoint countOf(Index index);
[[nodiscard]] Index indexOf(LatticePoint count);
[[nodiscard]] double apart(LatticePoint a, LatticePoint b);  ///< intervals

/// A crossing that others are predicted from.
struct Known {
    LatticePoint count;
    Mark mark;
};

struct Predicted {
    PixelPoint at;
    double doubt = 0;            ///< pixels by which its neighbours differ among themselves
    std::size_t neighbours = 0;  ///< that it goes by
};

/// What is known of a sheet's crossings, and where by that the others lie.
class KnownCrossings {
  public:
    explicit KnownCrossings(const Lattice& lattice) : lattice_(lattice) {}

    /// Takes these for what is known: a model by all of them, affine, from six on projective; what they do not
    /// determine, by the next simpler. Errors: those of solve(); everything then stays as it was.
    Result<void> learn(std::vector<Known> known);
    [[nodiscard]] const std::vector<Known>& all() const { return known_; }

    /// By the model alone. Nothing where the projection or the model ends; so it is with the others.
    [[nodiscard]] std::optional<PixelPoint> modelled(LatticePoint count) const;
    /// By the model, and by what its nearest neighbours differ from it. @param without  a crossing that is not asked
    [[nodiscard]] std::optional<Predicted> predict(LatticePoint count,
                                                   std::optional<LatticePoint> without = std::nullopt) const;
    /// Where the lines of a crossing run in the picture, and how far apart they lie.
    [[nodiscard]] std::optional<CrossSight> sight(LatticePoint count, PixelPoint at) const;

  private:
    Lattice lattice_;
    std::optional<Model> model_;
    std::vector<Known> known_;
    std::map<Index, std::vector<std::size_t>> cells_;  ///< of known_, by the nearest crossing
};

}  // namespace crosstick::registration
