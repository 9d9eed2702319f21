#include "core/movement/profile.h"

#include <memory>
#include <ostream>

#include "app/command.h"
#include "app/commands/csv.h"
#include "app/commands/route_sources.h"
#include "core/movement/faults.h"
#include "ui/press/pdf.h"
#include "ui/press/profile_page.h"

namespace crosstick::app {
namespace {

struct ProfileLine {
    std::string plan, route, output;
};

/// Spots and marks together, as they are met: what stands on a spot is told there.
std::string profileCsv(const movement::Profile& profile) {
    constexpr Metres kSame{1e-6};
    std::string text = csvRecord(
        {"ground_distance_so_far_m", "easting_m", "northing_m", "height_m", "slope_percent", "point", "line"});
    std::size_t next = 0;
    const auto labels = [&](std::vector<std::string> cells) {
        const movement::ProfileMark& mark = profile.marks[next++];
        const bool isPoint = mark.kind == movement::ProfileMark::Kind::RoutePoint;
        cells[isPoint ? 5 : 6] = harmless(mark.label);
        return cells;
    };
    for (std::size_t n = 0; n < profile.spots.size(); ++n) {
        const movement::ProfileSpot& spot = profile.spots[n];
        while (next < profile.marks.size() && profile.marks[next].ground < spot.ground - kSame) {
            const movement::ProfileMark& mark = profile.marks[next];
            text += csvRecord(labels({csvFigure(mark.ground, 3), "", "", csvFigure(mark.height, 1), "", "", ""}));
        }
        std::optional<double> slope;
        if (n > 0 && spot.height && profile.spots[n - 1].height && spot.ground > profile.spots[n - 1].ground) {
            slope = (*spot.height - *profile.spots[n - 1].height) / (spot.ground - profile.spots[n - 1].ground) * 100;
        }
        std::vector<std::string> cells{csvFigure(spot.ground, 3),
                                       csvFigure(spot.onGrid.easting, 2),
                                       csvFigure(spot.onGrid.northing, 2),
                                       csvFigure(spot.height, 1),
                                       csvFigure(slope, 1),
                                       "",
                                       ""};
        while (next < profile.marks.size() && profile.marks[next].ground <= spot.ground + kSame) {
            cells = labels(std::move(cells));
        }
        text += csvRecord(cells);
    }
    return text;
}

Result<std::string> bytesOf(const RouteSources& sources, const movement::RouteFigures& figures, const ProfileLine& line,
                            const Surroundings& surroundings) {
    constexpr int kDotsPerInch = 150;
    const auto form = std::filesystem::path(line.output).extension();
    if (form != ".csv" && form != ".png" && form != ".pdf") {
        return fail(movement::kProfileForm, {{"file", line.output}});
    }
    const auto profile = movement::profileOf(sources.plan, figures, sources.heights.get());
    if (!profile) {
        return tl::unexpected(profile.error());
    }
    if (form == ".csv") {
        return profileCsv(*profile);
    }
    const press::PaperPage page = press::profilePage(sources.plan, figures, *profile);
    const auto faces = surroundings.share / "faces";
    return form == ".png" ? press::pagePng(page, kDotsPerInch, faces)
                          : press::pagesPdf({page}, "profile", sources.plan.heading(), faces, surroundings.now);
}

Exit makeProfile(const ProfileLine& line, const Surroundings& surroundings) {
    const auto sources = openRouteSources(line.plan, surroundings);
    if (!sources) {
        return couldNot(surroundings, sources.error());
    }
    const auto routes = chosenRoutes(sources->plan, line.plan, {line.route});
    if (!routes) {
        return couldNot(surroundings, routes.error());
    }
    const plan::Route& route = *routes->front();
    const auto figures = movement::routeFigures(sources->plan, route, sources->modelOrNone(), sources->heights.get());
    if (!figures) {
        return couldNot(surroundings, figures.error());
    }
    const auto written = bytesOf(*sources, *figures, line, surroundings).and_then([&](const std::string& bytes) {
        return press::writeWhole(line.output, bytes);
    });
    if (!written) {
        return couldNot(surroundings, written.error());
    }
    surroundings.out << line.output << " written.\n";
    return Exit::Done;
}

}  // namespace

void addProfile(CLI::App& program, Action& action) {
    auto line = std::make_shared<ProfileLine>();
    CLI::App* command = program.add_subcommand(
        "profile",
        "The ground along a route by the plan's elevation model, or by contours read by hand: heights, route points, "
        "crossed lines, steep parts.");
    command->add_option("PLAN", line->plan, "The plan's file")->required();
    command->add_option("--route", line->route, "The route's name")->required();
    command->add_option("-o,--output", line->output, "FILE.csv, FILE.png or FILE.pdf")->required();
    command->callback([line, &action] {
        action = [line](const Surroundings& surroundings) { return makeProfile(*line, surroundings); };
    });
}

}  // namespace crosstick::app
