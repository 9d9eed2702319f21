#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "core/geodesy/points.h"
#include "core/measures/catalogue.h"
#include "core/units/result.h"

namespace crosstick::files {

using Blob = std::vector<std::uint8_t>;
using Points = std::vector<geodesy::PlanePoint>;

/// A GeoPackage geometry (OGC 12-128r18, 2.1.3): little endian, no envelope. One point gives a POINT, an area of three
/// and more a POLYGON (closed by its first point), anything else a LINESTRING. No points give no bytes: stored as NULL.
[[nodiscard]] Blob geometryBlob(const Points& points, measures::Shape shape, int srsId);

/// The points of a POINT, LINESTRING or one-ring POLYGON (without its closing point), whatever byte order and envelope.
/// Every length is checked against the bytes that are there. Errors: files/bad-geometry.
[[nodiscard]] Result<Points> pointsFromBlob(std::span<const std::uint8_t> bytes);

}  // namespace crosstick::files
