#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "core/sheets/foreign_reader.h"
#include "core/sheets/height_source.h"
#include "core/units/result.h"

namespace crosstick::sheets {

/// An elevation model in memory, asked by bilinear interpolation between cell centres.
class Elevation final : public HeightSource {
  public:
    /// @param copy     from ForeignReader::heights()
    /// @param planCrs  the plane in which heightAt() will be asked
    /// Errors: sheets/damaged, geodesy/unknown-crs, geodesy/no-transformation.
    [[nodiscard]] static Result<std::shared_ptr<const Elevation>> open(const std::filesystem::path& copy,
                                                                       const std::string& planCrs);
    /// The same from a foreign file, by its copy. Errors: those of ForeignReader::heights() besides.
    [[nodiscard]] static Result<std::shared_ptr<const Elevation>> read(const ForeignReader& reader,
                                                                       const std::filesystem::path& file,
                                                                       HeightUnit unit, const std::string& planCrs,
                                                                       const Watch& watch = {});
    ~Elevation() override;
    Elevation(const Elevation&) = delete;
    Elevation& operator=(const Elevation&) = delete;
    [[nodiscard]] std::optional<Metres> heightAt(geodesy::PlanePoint inPlan) const override;
    [[nodiscard]] Metres cell() const;  ///< the longer side of a cell, in the middle of the model

  private:
    struct Parts;
    explicit Elevation(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::sheets
