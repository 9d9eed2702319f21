#include "ui/table/picture.h"

#include <charconv>
#include <ostream>

#include "app/command.h"
#include "app/ground_files.h"
#include "core/files/plan_file.h"
#include "core/geodesy/declination.h"
#include "core/geodesy/grid_reference.h"
#include "ui/press/gui_start.h"
#include "ui/table/faults.h"

namespace crosstick::app {
namespace {

constexpr int kLeastSide = 240;
constexpr int kMostSide = 8192;

struct Options {
    std::string plan, out, size = "1366x768", at, working;
    std::vector<std::string> films;
    bool night = false;
    double seen = 0;  ///< 0: not given
    double below = 100;
};

/// "1366x768", both sides within what a screen or a poster has.
std::optional<QSize> parseSize(std::string_view text) {
    int width = 0;
    int height = 0;
    const char* end = text.data() + text.size();
    const auto [cross, first] = std::from_chars(text.data(), end, width);
    if (first != std::errc{} || cross == end || *cross != 'x') {
        return std::nullopt;
    }
    const auto [rest, second] = std::from_chars(cross + 1, end, height);
    const auto fits = [](int side) { return side >= kLeastSide && side <= kMostSide; };
    return second == std::errc{} && rest == end && fits(width) && fits(height) ? std::optional(QSize(width, height))
                                                                               : std::nullopt;
}

std::string sizeFault(const std::string& text) {
    return parseSize(text) ? "" : "Write the size as WIDTHxHEIGHT in pixels, 240 to 8192 each, such as 1366x768";
}

/// Figures for the labels of legs, as the card has them. A route whose figures cannot be had is drawn without.
std::map<plan::ItemId, movement::RouteFigures> figuresOf(const plan::Plan& plan, const std::filesystem::path& file,
                                                         const Surroundings& surroundings) {
    std::map<plan::ItemId, movement::RouteFigures> all;
    const auto model = geodesy::MagneticModel::open(surroundings.share / "magnetic");
    if (!model && !plan.routes().empty() && plan.heading().declination == plan::DeclinationSource::Model) {
        (void)couldNot(surroundings, model.error());  // legs are drawn all the same, without their figures
    }
    std::shared_ptr<const sheets::Elevation> heights;
    if (auto opened = heightsFor(plan, file, surroundings)) {
        heights = std::move(*opened);
    } else {
        (void)couldNot(surroundings, opened.error());
    }
    for (const plan::RoutePtr& route : plan.routes()) {
        if (auto figures = movement::routeFigures(plan, *route, model ? &*model : nullptr, heights.get())) {
            all.emplace(route->id, std::move(*figures));
        }
    }
    return all;
}

Result<std::vector<plan::FilmId>> filmsNamed(const plan::Plan& plan, const std::vector<std::string>& names) {
    std::vector<plan::FilmId> films;
    for (const plan::FilmPtr& film : plan.films()) {
        if (names.empty() || std::find(names.begin(), names.end(), film->name) != names.end()) {
            films.push_back(film->id);
        }
    }
    for (const std::string& name : names) {
        if (!plan.filmNamed(name)) {
            return fail(table::kNoSuchFilm, {{"film", name}});
        }
    }
    return films;
}

Result<table::Scene> sceneOf(const plan::Plan& plan, const Options& options, const Surroundings& surroundings) {
    table::Scene scene;
    auto films = filmsNamed(plan, options.films);
    if (!films) {
        return tl::unexpected(films.error());
    }
    scene.plan = plan;
    scene.films = std::move(*films);
    if (!options.working.empty()) {
        const plan::FilmPtr film = plan.filmNamed(options.working);
        if (!film) {
            return fail(table::kNoSuchFilm, {{"film", options.working}});
        }
        if (std::find(scene.films.begin(), scene.films.end(), film->id) == scene.films.end()) {
            scene.films.push_back(film->id);
        }
        scene.working = film->id;
    } else if (!scene.films.empty()) {
        scene.working = scene.films.back();
    }
    scene.figures = figuresOf(plan, options.plan, surroundings);
    return scene;
}

/// A point as anybody writes it, on the grid of the plan's first sheet.
Result<geodesy::PlanePoint> centreOf(const plan::Plan& plan, const std::string& text) {
    const auto reference = geodesy::parsePoint(text);
    if (!reference) {
        return tl::unexpected(reference.error());
    }
    const std::string grid = plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
    const auto link = geodesy::PlaneLink::between(geodesy::crsOfZone(reference->southWest.zone), grid);
    if (!link) {
        return tl::unexpected(link.error());
    }
    return link->forward(reference->southWest.at);
}

Result<table::Wish> wishOf(const plan::Plan& plan, const Options& options) {
    table::Wish wish;
    wish.size = parseSize(options.size).value_or(wish.size);
    wish.theme = options.night ? table::Theme::Night : table::Theme::Day;
    wish.below = options.below / 100;
    if (options.seen > 0) {
        wish.seen = Scale{options.seen};
    }
    if (!options.at.empty()) {
        auto centre = centreOf(plan, options.at);
        if (!centre) {
            return tl::unexpected(centre.error());
        }
        wish.centre = *centre;
    }
    return wish;
}

Result<void> makePicture(const Options& options, const Surroundings& surroundings) {
    const auto file = files::PlanFile::open(options.plan, files::Access::ReadOnly);
    if (!file) {
        return tl::unexpected(file.error());
    }
    const plan::Plan& plan = file->plan();
    const auto wish = wishOf(plan, options);
    if (!wish) {
        return tl::unexpected(wish.error());
    }
    const auto scene = sceneOf(plan, options, surroundings);
    if (!scene) {
        return tl::unexpected(scene.error());
    }
    std::vector<std::unique_ptr<table::FileTiles>> files;
    table::TileSources tiles;
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        auto raster = sheetFor(*sheet, options.plan, surroundings);
        if (!raster) {
            return tl::unexpected(raster.error());
        }
        files.push_back(std::make_unique<table::FileTiles>(std::move(*raster), wish->theme,
                                                           sheet->asFilm ? table::Ground::Film : table::Ground::Map));
        tiles.push_back(files.back().get());
    }
    const press::GuiStart gui;
    const auto faces = press::Faces::open(surroundings.share / "faces");
    if (!faces) {
        return tl::unexpected(faces.error());
    }
    const auto image = table::picture(*scene, *wish, tiles, *faces);
    return image ? table::writePng(*image, options.out) : tl::unexpected(image.error());
}

Exit paint(const Options& options, const Surroundings& surroundings) {
    if (const auto made = makePicture(options, surroundings); !made) {
        return couldNot(surroundings, made.error());
    }
    surroundings.out << options.out << " written.\n";
    return Exit::Done;
}

}  // namespace

void addPicture(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("picture", "Paint the light table with its films as a PNG");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file")->required();
    command->add_option("-o,--out", options->out, "The picture to write (PNG)")->required();
    command->add_option("--size", options->size, "WIDTHxHEIGHT in pixels (default 1366x768)")
        ->check(CLI::Validator(sizeFault, ""));
    command->add_option("--film", options->films, "A film to lay on, again for more (default: all)");
    command->add_option("--working", options->working, "The film on top, with its edge (default: the uppermost)");
    command->add_option("--below", options->below, "Strength of the films under it in per cent (default 100)")
        ->check(CLI::Range(0.0, 100.0));
    command->add_option("--at", options->at, "The middle of the picture, any POINT (default: what the films show)");
    command->add_option("--seen", options->seen, "Scale at which it is seen on a screen of 96 dpi, such as 12500")
        ->check(CLI::Range(500.0, 10000000.0));
    command->add_flag("--night", options->night, "Night light: red only");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return paint(*options, surroundings); };
    });
}

}  // namespace crosstick::app
