#include <ostream>

#include <fmt/format.h>

#include "app/beside.h"
#include "app/command.h"
#include "app/commands/answers.h"
#include "app/ground_files.h"
#include "app/sheet_options.h"
#include "app/wording/wording.h"
#include "core/files/plan_file.h"
#include "core/film/registration.h"
#include "core/sheets/neatline.h"
#include "core/sheets/seams.h"
#include "core/sheets/sheet_file.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan, sheet;
    SheetOptions facts;
    bool whole = false;
};

std::string nameOf(const plan::Sheet& sheet) {
    return sheet.name.empty() ? std::filesystem::path(sheet.path).filename().string() : sheet.name;
}

Result<plan::Sheet> sheetGiven(const Options& options, const plan::Plan& plan, const Surroundings& surroundings) {
    IdSource ids(surroundings.seed);
    plan::SheetId id = ids.next();
    while (plan.sheet(id)) {
        id = ids.next();
    }
    const auto scale = options.facts.scale ? std::optional(Scale{*options.facts.scale}) : std::nullopt;
    return sheets::describeSheet(surroundings.reader, options.sheet, id, {scale, options.facts.crs})
        .and_then([&](plan::Sheet found) { return withOptions(std::move(found), options.facts); })
        .map([&](plan::Sheet sheet) {
            sheet.path = asSeenFrom(std::filesystem::absolute(options.plan).parent_path(), options.sheet);
            sheet.elevationPath.clear();  // heights are those of the first
            return sheet;
        });
}

/// The sheet cropped where its map ends; one whose edge is not found stays whole, and that is said.
plan::Sheet cropped(plan::Sheet sheet, const Options& options, const Surroundings& surroundings) {
    auto corners = sheetFor(sheet, options.plan, surroundings).and_then([&](const sheets::Raster& copy) {
        return sheets::proposeNeatline(copy, sheet, film::gridInterval(sheet.scale));
    });
    if (corners) {
        sheet.neatline = std::move(*corners);
        surroundings.out << nameOf(sheet) << ": cropped where its map ends.\n";
    } else {
        surroundings.out << nameOf(sheet) << ": shown whole. " << words(corners.error()) << '\n';
    }
    return sheet;
}

void saySeams(const plan::Plan& plan, const Surroundings& surroundings) {
    const auto seams = sheets::seamsOf(plan);
    if (!seams) {
        (void)couldNot(surroundings, seams.error());
        return;
    }
    for (const sheets::Seam& seam : *seams) {
        const double metres = seam.offset.value();
        surroundings.out << fmt::format("{} and {}: {}\n", nameOf(*plan.sheet(seam.one)),
                                        nameOf(*plan.sheet(seam.other)),
                                        seam.meets() ? fmt::format("they meet, {:.1f} m", metres)
                                        : metres > 0 ? fmt::format("{:.1f} m are missing between them", metres)
                                                     : fmt::format("they overlap by {:.1f} m", -metres));
    }
}

Exit lay(const Options& options, const Surroundings& surroundings) {
    auto file = files::PlanFile::open(options.plan, files::Access::ReadWrite);
    if (!file) {
        return couldNot(surroundings, file.error());
    }
    auto sheet = sheetGiven(options, file->plan(), surroundings);
    if (!sheet) {
        return couldNot(surroundings, sheet.error());
    }
    plan::PlanBuilder builder(file->plan());
    const plan::SheetId added = sheet->id;
    builder.put(std::move(*sheet));
    plan::Plan plan = std::move(builder).build();
    for (const plan::SheetPtr& one : std::vector<plan::SheetPtr>(plan.sheets())) {
        if (one->neatline.empty() && !(options.whole && one->id == added)) {
            plan::PlanBuilder next(plan);
            next.put(cropped(*one, options, surroundings));
            plan = std::move(next).build();
        }
    }
    if (const auto saved = file->save(plan, surroundings.now); !saved) {
        return couldNot(surroundings, saved.error());
    }
    surroundings.out << options.plan << ": " << plan.sheets().size() << " sheets.\n";
    saySeams(plan, surroundings);
    return Exit::Done;
}

}  // namespace

void addLay(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand(
        "lay", "Lay one more map sheet into a plan, cropped where its map ends, and tell how it joins the others");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file")->required();
    command->add_option("SHEET", options->sheet, "The map sheet; it may be of another scale, grid and datum")
        ->required();
    command->add_flag("--whole", options->whole, "Show it with its collar");
    addSheetOptions(*command, options->facts);
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return lay(*options, surroundings); };
    });
}

}  // namespace crosstick::app
