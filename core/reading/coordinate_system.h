#pragma once

#include <string>

class GDALDataset;
class OGRSpatialReference;

namespace crosstick::reading {

/// The CRS as "EPSG:n" where the file says so or PROJ is sure of it, else as WKT 2; empty where it has none. A vertical
/// part is left out.
[[nodiscard]] std::string crsText(const OGRSpatialReference* reference);
/// The name of a compound CRS's vertical part ("EGM96 height"); empty where there is none.
[[nodiscard]] std::string verticalName(const OGRSpatialReference* reference);
/// Metres in a unit of that part; 0 where there is none.
[[nodiscard]] double verticalUnit(const OGRSpatialReference* reference);

}  // namespace crosstick::reading
