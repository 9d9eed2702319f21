#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/command.h"
#include "core/geodesy/declination.h"
#include "core/plan/plan.h"
#include "core/sheets/elevation.h"

namespace crosstick::app {

/// What the figures of a plan's routes are computed from.
struct RouteSources {
    plan::Plan plan;
    std::optional<geodesy::MagneticModel> model;
    std::shared_ptr<const sheets::Elevation> heights;  ///< null: climb is unknown

    [[nodiscard]] const geodesy::MagneticModel* modelOrNone() const { return model ? &*model : nullptr; }
};

/// A height model that cannot be had is told on err and done without. Errors: those of files::PlanFile::open(); of the
/// magnetic model where the plan takes its angle from it.
[[nodiscard]] Result<RouteSources> openRouteSources(const std::string& plan, const Surroundings& surroundings);

/// Routes by name, with or without "RTE"; all where no name is given.
/// Errors: movement/no-routes with "file", movement/no-such-route with "route" and "known".
[[nodiscard]] Result<std::vector<plan::RoutePtr>> chosenRoutes(const plan::Plan& plan, const std::string& file,
                                                               const std::vector<std::string>& names);

}  // namespace crosstick::app
