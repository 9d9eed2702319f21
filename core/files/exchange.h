#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/plan/plan.h"
#include "core/units/result.h"

namespace crosstick::files {

/// What an import brought.
struct Imported {
    plan::Plan plan;
    std::size_t measures = 0;
    std::size_t routes = 0;
    std::size_t films = 0;  ///< made because a feature named them
};

/// Where features go that name no film.
struct DrawOn {
    std::optional<std::string> film;  ///< by name; made where the plan has none of it
};

/// Places measures and routes from GeoJSON (RFC 7946, WGS 84, longitude first) that carries our fields: "kind" (a
/// catalogue's or an unknown one, which is kept; "route" for routes), name, number, film, shown_on, phases, anchor,
/// state, standing, whose, relation, why, tie, from, until, fields, extension, label_at; for routes use, points (at,
/// measure), onward_to, start, if_not_found. Fields it does not know are kept with the measure. A feature whose id the
/// plan already has replaces what is there; an id that is no UUID stands for the UUID named by it within this plan, so
/// that the same file drawn twice changes nothing the second time. A feature without a kind is refused, since what it
/// means nobody said. All or nothing: on an error the plan is as it was. Errors: files/not-json, files/not-geojson,
/// files/bad-feature (with "feature", counted from 1, and "why"), files/no-kind.
[[nodiscard]] Result<Imported> readGeoJson(std::string_view text, const plan::Plan& plan, const DrawOn& drawOn);

/// The plan's measures and routes in the same form; those of one film where one is named. Ends with a line end.
/// Laws: reading what was written into the same plan gives an equal plan (coordinates within 0.1 mm).
[[nodiscard]] std::string writeGeoJson(const plan::Plan& plan, std::optional<plan::FilmId> film = std::nullopt);

}  // namespace crosstick::files
