#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "core/sheets/height_source.h"
#include "core/units/result.h"

namespace crosstick::sheets {

/// An elevation model in memory, asked by bilinear interpolation between cell centres.
class Elevation final : public HeightSource {
  public:
    /// @param planCrs  the plane in which heightAt() will be asked
    /// Errors: sheets/file-missing, sheets/not-a-raster, sheets/damaged, sheets/no-crs, sheets/too-large (over 100
    /// million cells).
    [[nodiscard]] static Result<std::shared_ptr<const Elevation>> open(const std::filesystem::path& file,
                                                                       const std::string& planCrs);
    ~Elevation() override;
    Elevation(const Elevation&) = delete;
    Elevation& operator=(const Elevation&) = delete;
    [[nodiscard]] std::optional<Metres> heightAt(geodesy::PlanePoint inPlan) const override;
    [[nodiscard]] Metres cell() const;  ///< side of a cell, the larger of both

  private:
    struct Parts;
    explicit Elevation(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::sheets
