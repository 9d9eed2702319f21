#pragma once

#include <cstdint>
#include <random>

#include "core/plan/plan.h"

namespace crosstick::plan::testing {

/// Plans and edits drawn at random; the same seed gives the same ones. Every field of every kind gets a value
/// somewhere.
class RandomPlans {
  public:
    explicit RandomPlans(std::uint64_t seed) : ids_(seed), chance_(seed) {}

    [[nodiscard]] Measure measure();
    [[nodiscard]] Film film(const Plan& plan);
    [[nodiscard]] LegNotes legNotes();
    [[nodiscard]] Timing timing();
    [[nodiscard]] Route route(const Plan& plan);
    [[nodiscard]] Sheet sheet();
    [[nodiscard]] Heading heading();
    [[nodiscard]] Force force();
    [[nodiscard]] Plan plan(std::size_t measures);
    /// One small edit of a kind chosen at random: something put, changed, removed, or an order changed.
    [[nodiscard]] Plan edited(const Plan& plan);
    /// 0 to below - 1.
    [[nodiscard]] std::size_t below(std::size_t limit);

  private:
    IdSource ids_;
    std::mt19937_64 chance_;

    [[nodiscard]] bool coin();
    [[nodiscard]] double between(double low, double high);
    [[nodiscard]] std::string word();
    [[nodiscard]] geodesy::PlanePoint point();
    [[nodiscard]] Instant instant();
    [[nodiscard]] UnknownFields unknown();
    [[nodiscard]] MeasurePtr anyMeasure(const Plan& plan);
    [[nodiscard]] Plan editedLists(const Plan& plan);
};

}  // namespace crosstick::plan::testing
