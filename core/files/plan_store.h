#pragma once

#include "core/files/database.h"
#include "core/plan/difference.h"

namespace crosstick::files {

/// Reads the current state. The database must have the present schema.
/// Errors: files/damaged-plan, files/bad-field, files/bad-geometry, files/plan-too-large, SQLite's.
[[nodiscard]] Result<plan::Plan> readPlan(Database& database);

/// Writes what changed, inside an open transaction: new versions, the current state's list, the films' views.
void writeDifference(Database& database, const plan::Difference& difference, const plan::Plan& after, Instant when);

/// Content hash of a measure as a trace remembers it: SHA-256 of its canonical JSON, in hex.
[[nodiscard]] std::string contentHash(const plan::Measure& measure);

}  // namespace crosstick::files
