#include <ostream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/command.h"
#include "app/commands/angle_words.h"
#include "core/files/json_form.h"
#include "core/files/plan_file.h"
#include "core/movement/gm_angle.h"
#include "core/movement/paper_figures.h"
#include "core/movement/work_grid.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

using Json = nlohmann::json;

std::string phasesText(const std::set<int>& phases) {
    std::string text;
    for (const int phase : phases) {
        text += (text.empty() ? "" : ", ") + std::to_string(phase);
    }
    return text.empty() ? "-" : text;
}

std::string stateText(const plan::Measure& measure) {
    if (measure.state == plan::PlaceState::Unplaced) {
        return "still to place";
    }
    std::string text = measure.state == plan::PlaceState::Assumed ? "assumed" : "";
    if (measure.standing == plan::Standing::Planned) {
        text += text.empty() ? "planned" : ", planned";
    }
    return text;
}

std::string gridOf(const movement::WorkGrid& grid, const std::vector<geodesy::PlanePoint>& points) {
    if (points.empty()) {
        return "-";
    }
    const auto onGrid = grid.onGrid(points.front());
    return onGrid ? grid.gridText(*onGrid) : "off the grid";
}

/// Measures as people look for them: by kind, then number or name.
std::vector<plan::MeasurePtr> sortedMeasures(const plan::Plan& plan) {
    std::vector<plan::MeasurePtr> list;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) { list.push_back(measure); });
    std::stable_sort(list.begin(), list.end(), [](const plan::MeasurePtr& a, const plan::MeasurePtr& b) {
        return std::tie(a->kind, a->number, a->name) < std::tie(b->kind, b->number, b->name);
    });
    return list;
}

/// Of the plan as a whole, in the middle of its work; nothing where it has no place, no date or no angle to take.
std::optional<movement::GmAngle> angleOf(const plan::Plan& plan, const movement::WorkGrid& grid,
                                         const Surroundings& surroundings) {
    const auto middle = movement::middleOfWork(plan, grid);
    const auto model = geodesy::MagneticModel::open(surroundings.share / "magnetic");
    if (!middle) {
        return std::nullopt;
    }
    const auto gm = movement::gmAngleAt(plan, grid, *middle, model ? &*model : nullptr, nullptr);
    return gm ? std::optional(*gm) : std::nullopt;
}

std::string printedText(const plan::Plan& plan) {
    if (plan.sheets().empty() || !plan.sheets().front()->declination) {
        return {};
    }
    const plan::PrintedDeclination& printed = *plan.sheets().front()->declination;
    return fmt::format("  the sheet prints {}° for {}, changing {}° a year\n", numberText(printed.gmAngle.value()),
                       isoDate(printed.date), numberText(printed.yearlyChange.value()));
}

void showText(const plan::Plan& plan, const movement::WorkGrid& grid, const std::optional<movement::GmAngle>& gm,
              std::ostream& out) {
    const plan::Heading& heading = plan.heading();
    out << heading.name << (heading.marking.empty() ? "" : "  " + heading.marking) << "\n";
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        out << fmt::format("sheet   {} {} {}, edition {}, 1:{:.0f}, {}: {}\n", sheet->series, sheet->number,
                           sheet->name, sheet->edition.empty() ? "-" : sheet->edition, sheet->scale.denominator,
                           sheet->datum, sheet->path);
    }
    if (gm) {
        out << angleText(*gm, geodesy::AngleUnit::Degrees, "WMM2025") << printedText(plan);
    }
    out << "\nfilms, the lowest first\n";
    for (const plan::FilmPtr& film : plan.films()) {
        out << fmt::format("  {:<16} phases {:<8} shows {}\n", film->name, phasesText(film->phases),
                           film->shows.size());
    }
    out << "\nroutes\n";
    for (const plan::RoutePtr& route : plan.routes()) {
        out << fmt::format("  {:<16} {:<10} {} points on it\n", route->name, movement::useText(route->use),
                           route->stops.size());
    }
    out << "\nmeasures\n";
    for (const plan::MeasurePtr& measure : sortedMeasures(plan)) {
        const std::string state = stateText(*measure);
        out << fmt::format("  {:<28} {:<16} {:<14} {}{}{}\n", measure->kind, movement::label(*measure),
                           gridOf(grid, measure->points), state, state.empty() || measure->tie.empty() ? "" : "; ",
                           measure->tie);
    }
}

Json showJson(const plan::Plan& plan) {
    Json list = Json::array();
    for (const plan::FilmPtr& film : plan.films()) {
        list.push_back(
            {{"type", "film"}, {"name", film->name}, {"phases", film->phases}, {"shows", film->shows.size()}});
    }
    for (const plan::RoutePtr& route : plan.routes()) {
        Json one = files::toJson(*route);
        one["type"] = "route";
        list.push_back(std::move(one));
    }
    for (const plan::MeasurePtr& measure : sortedMeasures(plan)) {
        Json one = files::toJson(*measure);
        one["type"] = "measure";
        one["label"] = movement::label(*measure);
        list.push_back(std::move(one));
    }
    return list;
}

Exit show(const std::string& planFile, bool json, const Surroundings& surroundings) {
    const auto file = files::PlanFile::open(planFile, files::Access::ReadOnly);
    if (!file) {
        return couldNot(surroundings, file.error());
    }
    if (json) {
        surroundings.out << files::jsonText(showJson(file->plan())) << '\n';
        return Exit::Done;
    }
    const auto grid = movement::WorkGrid::of(file->plan());
    if (!grid) {
        return couldNot(surroundings, grid.error());
    }
    showText(file->plan(), *grid, angleOf(file->plan(), *grid, surroundings), surroundings.out);
    return Exit::Done;
}

}  // namespace

void addShow(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("show", "List a plan's films, routes and measures");
    auto plan = std::make_shared<std::string>();
    auto json = std::make_shared<bool>(false);
    command->add_option("PLAN", *plan, "The plan's file")->required();
    command->add_flag("--json", *json, "One JSON array: films, routes, measures in the plan's own plane");
    command->callback([plan, json, &action] {
        action = [plan, json](const Surroundings& surroundings) { return show(*plan, *json, surroundings); };
    });
}

}  // namespace crosstick::app
