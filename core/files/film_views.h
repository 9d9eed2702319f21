#pragma once

#include "core/files/database.h"
#include "core/plan/difference.h"

namespace crosstick::files {

/// Keeps a registered view a film, so that any reader of GeoPackages lists and draws the films: `film_NAME` with fid,
/// kind, name, number and geometry of what the film shows in the current state.
void writeFilmViews(Database& database, const plan::Difference& difference, int srsId, Instant when);

}  // namespace crosstick::files
