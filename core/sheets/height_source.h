#pragma once

#include <optional>

#include "core/geodesy/points.h"

namespace crosstick::sheets {

/// Heights, where a model gives them.
class HeightSource {
  public:
    virtual ~HeightSource() = default;
    /// @param inPlan  in the plan's own plane
    /// @return height above the model's datum; nothing outside the model and on no-data
    [[nodiscard]] virtual std::optional<Metres> heightAt(geodesy::PlanePoint inPlan) const = 0;
};

}  // namespace crosstick::sheets
