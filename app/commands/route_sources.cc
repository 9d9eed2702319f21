#include "app/commands/route_sources.h"

#include "app/ground_files.h"
#include "core/files/plan_file.h"
#include "core/movement/faults.h"

namespace crosstick::app {

Result<RouteSources> openRouteSources(const std::string& plan, const Surroundings& surroundings) {
    const std::filesystem::path path = plan;
    const auto file = files::PlanFile::open(path, files::Access::ReadOnly);
    if (!file) {
        return tl::unexpected(file.error());
    }
    RouteSources sources{file->plan(), std::nullopt, nullptr};
    auto model = geodesy::MagneticModel::open(surroundings.share / "magnetic");
    if (model) {
        sources.model = std::move(*model);
    } else if (sources.plan.heading().declination == plan::DeclinationSource::Model) {
        return tl::unexpected(model.error());
    }
    auto heights = sheets::heightsOf(sources.plan, groundFinder(path, surroundings), surroundings.reader);
    if (heights) {
        sources.heights = std::move(*heights);
    } else {  // the figures are worth having without: climb is then unknown, and the reason is said
        (void)couldNot(surroundings, heights.error());
    }
    return sources;
}

Result<std::vector<plan::RoutePtr>> chosenRoutes(const plan::Plan& plan, const std::string& file,
                                                 const std::vector<std::string>& names) {
    if (plan.routes().empty()) {
        return fail(movement::kNoRoutes, {{"file", file}});
    }
    if (names.empty()) {
        return plan.routes();
    }
    std::vector<plan::RoutePtr> chosen;
    for (const std::string& name : names) {
        auto route = plan.routeNamed(name);
        if (!route && name.starts_with("RTE ")) {
            route = plan.routeNamed(name.substr(4));
        }
        if (!route) {
            std::string known;
            for (const plan::RoutePtr& other : plan.routes()) {
                known += (known.empty() ? "" : ", ") + other->name;
            }
            return fail(movement::kNoSuchRoute, {{"route", name}, {"known", known}});
        }
        chosen.push_back(std::move(route));
    }
    return chosen;
}

}  // namespace crosstick::app
