#pragma once

#include "core/files/database.h"
#include "core/units/time.h"

namespace crosstick::files {

/// The version of our own tables that this program writes. (GeoPackage's own version stands in user_version.)
///   1  a measure's state, anchor and side stood as words in its body
///   2  they are packed in the column `states`, with standing beside them
inline constexpr int kSchemaVersion = 2;

/// Makes an empty plan's tables: GeoPackage 1.3's and ours. @param when  goes to gpkg_contents
void makeSchema(Database& database, Instant when);

/// Which version a file has: nothing where it is no plan. Errors: what SQLite says, files/no-plan-inside.
[[nodiscard]] Result<int> schemaVersion(Database& database);

/// Climbs the ladder to kSchemaVersion, inside whatever transaction is open. Errors: files/newer-plan, SQLite's.
[[nodiscard]] Result<void> migrate(Database& database, int from);

/// The plane of the geometries as a row of gpkg_spatial_ref_sys, and every geometry column on it.
void useSrs(Database& database, int epsg, const std::string& name, const std::string& wkt);

}  // namespace crosstick::files
