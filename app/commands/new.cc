#include <ostream>

#include "app/beside.h"
#include "app/command.h"
#include "app/commands/answers.h"
#include "app/commands/timing_options.h"
#include "app/progress_line.h"
#include "app/sheet_options.h"
#include "core/files/plan_file.h"
#include "core/film/new_plan.h"
#include "core/sheets/sheet_file.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan, sheet, name, zone = "Z", date, marking, author, unit, distribution, declination = "model";
    SheetOptions facts;
    std::optional<double> pace;
    TimingOptions timing;
};

Result<plan::Heading> headingFrom(const Options& options, const Surroundings& surroundings) {
    plan::Heading heading;
    heading.name = options.name.empty() ? std::filesystem::path(options.plan).stem().string() : options.name;
    heading.marking = options.marking;
    heading.author = options.author;
    heading.unit = options.unit;
    heading.distribution = options.distribution;
    const auto zone = timeZone(options.zone[0]);
    if (!zone) {
        return tl::unexpected(zone.error());
    }
    heading.zone = *zone;
    heading.date = localDate(surroundings.now, *zone);
    if (!options.date.empty()) {
        const auto date = parseIsoDate(options.date);
        if (!date) {
            return tl::unexpected(date.error());
        }
        heading.date = *date;
    }
    heading.prepared = surroundings.now;
    heading.declination =
        options.declination == "sheet" ? plan::DeclinationSource::Sheet : plan::DeclinationSource::Model;
    if (options.pace) {
        heading.pace = plan::PaceProfile{*options.pace, ""};
    }
    return withTiming(std::move(heading), options.timing);
}

Result<plan::Plan> planFrom(const Options& options, const Surroundings& surroundings) {
    IdSource ids(surroundings.seed);
    const auto given = options.facts.scale ? std::optional(Scale{*options.facts.scale}) : std::nullopt;
    auto sheet = sheets::describeSheet(surroundings.reader, options.sheet, ids.next(), {given, options.facts.crs})
                     .and_then([&](plan::Sheet found) { return withOptions(std::move(found), options.facts); });
    if (!sheet) {
        return tl::unexpected(sheet.error());
    }
    // Read to its end once, so that no plan is begun on a sheet that breaks off; the copy serves whoever comes next.
    {
        ProgressLine line(surroundings.err, "preparing the map sheet");
        if (const auto copy = surroundings.reader.sheet(options.sheet, line.watch()); !copy) {
            return tl::unexpected(copy.error());
        }
    }
    auto heading = headingFrom(options, surroundings);
    if (!heading) {
        return tl::unexpected(heading.error());
    }
    const auto folder = std::filesystem::absolute(options.plan).parent_path();
    sheet->path = asSeenFrom(folder, options.sheet);
    return film::planOnSheet(std::move(*sheet), std::move(*heading), ids.next());
}

Exit makeNew(const Options& options, const Surroundings& surroundings) {
    auto plan = planFrom(options, surroundings);
    if (!plan) {
        return couldNot(surroundings, plan.error());
    }
    const auto file = files::PlanFile::create(options.plan, *plan, surroundings.now);
    if (!file) {
        return couldNot(surroundings, file.error());
    }
    const plan::Sheet& sheet = *plan->sheets().front();
    surroundings.out << options.plan << ": a new plan on sheet "
                     << (sheet.name.empty() ? std::filesystem::path(options.sheet).filename().string() : sheet.name)
                     << ", 1:" << static_cast<std::int64_t>(sheet.scale.denominator) << ", " << sheet.datum << ".\n";
    return Exit::Done;
}

}  // namespace

void addNew(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("new", "Begin a plan on a map sheet in a projected grid");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file to make, such as plan.gpkg; never overwritten")
        ->required();
    command->add_option("--sheet", options->sheet, "The map sheet: GeoTIFF, or a picture with a world file")
        ->required();
    command->add_option("--name", options->name, "The plan's name (default: the file's)");
    command->add_option("--zone", options->zone, "Letter of the zone that times are written in (default Z)")
        ->check(CLI::Validator([](std::string& text) { return text.size() == 1 ? "" : "one letter is expected"; },
                               "LETTER"));
    command->add_option("--date", options->date, "Day the work is for, YYYY-MM-DD (default: today)");
    command->add_option("--marking", options->marking, "Marking on every paper, such as EXERCISE");
    command->add_option("--author", options->author, "Who prepares it");
    command->add_option("--unit", options->unit, "The unit");
    command->add_option("--distribution", options->distribution, "Who gets it");
    command
        ->add_option("--declination", options->declination,
                     "Which angle goes on all papers: model or sheet (default model)")
        ->check(CLI::IsMember({"model", "sheet"}));
    command->add_option("--pace", options->pace, "Double paces per 100 m")
        ->check(CLI::Validator(numberFault, ""))
        ->check(CLI::Range(30.0, 150.0));
    addTimingOptions(*command, options->timing);
    addSheetOptions(*command, options->facts);
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return makeNew(*options, surroundings); };
    });
}

}  // namespace crosstick::app
