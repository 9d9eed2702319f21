#include "core/sheets/plan_ground.h"

namespace crosstick::sheets {

std::filesystem::path fromFolder(const std::filesystem::path& folder, const std::string& path) {
    const std::filesystem::path own = path;
    return own.is_absolute() ? own : folder / own;
}

HeightsNamed heightsNamedIn(const plan::Plan& plan) {
    if (plan.sheets().empty()) {
        return {};
    }
    return {plan.sheets().front()->elevationPath, plan.sheets().front()->elevationUnit};
}

Result<std::shared_ptr<const Elevation>> heightsOf(const plan::Plan& plan, const FileFinder& finder,
                                                   const ForeignReader& reader, const Watch& watch) {
    const HeightsNamed named = heightsNamedIn(plan);
    if (named.path.empty()) {
        return std::shared_ptr<const Elevation>{};
    }
    return Elevation::read(reader, finder(named.path), named.unit, plan.planeCrs(), watch);
}

}  // namespace crosstick::sheets
