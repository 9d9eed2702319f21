#include <fstream>
#include <ostream>
#include <sstream>

#include "app/command.h"
#include "app/faults.h"
#include "core/files/exchange.h"
#include "core/files/plan_file.h"
#include "core/film/registration.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan, drawing, film;
};

Result<std::string> textOf(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    if (in.peek() == std::ifstream::traits_type::eof() && in.eof() && !in.bad()) {
        return std::string{};  // an empty file is read well: what is wrong with it is said by who wants JSON
    }
    std::ostringstream text;
    if (!in || !(text << in.rdbuf())) {
        return fail(kCannotRead, {{"file", file}});
    }
    return text.str();
}

bool isInside(const plan::Registration& window, const plan::Plan& plan) {
    const auto proposed = film::proposeRegistration(plan);
    return !proposed || (proposed->southWest.easting >= window.southWest.easting &&
                         proposed->southWest.northing >= window.southWest.northing &&
                         proposed->northEast.easting <= window.northEast.easting &&
                         proposed->northEast.northing <= window.northEast.northing);
}

/// A window that nobody has drawn in yet follows what is drawn; later it stays, since films already printed hang on it.
plan::Plan withWindow(const plan::Plan& before, const plan::Plan& after) {
    const bool wasEmpty = before.measures().isEmpty() && before.routes().empty();
    if (!wasEmpty && after.registration() && isInside(*after.registration(), after)) {
        return after;
    }
    auto proposed = film::proposeRegistration(after);
    if (!proposed) {
        return after;
    }
    plan::PlanBuilder builder(after);
    builder.registration(std::move(*proposed));
    return std::move(builder).build();
}

Exit draw(const Options& options, const Surroundings& surroundings) {
    auto file = files::PlanFile::open(options.plan, files::Access::ReadWrite);
    if (!file) {
        return couldNot(surroundings, file.error());
    }
    const auto text = textOf(options.drawing);
    if (!text) {
        return couldNot(surroundings, text.error());
    }
    const files::DrawOn on{options.film.empty() ? std::nullopt : std::optional(options.film)};
    auto imported = files::readGeoJson(*text, file->plan(), on);
    if (!imported) {
        return couldNot(surroundings, imported.error());
    }
    const bool moved = !(withWindow(file->plan(), imported->plan).registration() == file->plan().registration());
    const plan::Plan next = withWindow(file->plan(), imported->plan);
    if (auto saved = file->save(next, surroundings.now); !saved) {
        return couldNot(surroundings, saved.error());
    }
    surroundings.out << imported->measures << " measures and " << imported->routes << " routes drawn";
    if (imported->films > 0) {
        surroundings.out << ", " << imported->films << (imported->films == 1 ? " film" : " films") << " made";
    }
    surroundings.out << (moved
                             ? ". Window and ticks were set to hold them: films printed before must be printed again.\n"
                             : ".\n");
    return Exit::Done;
}

}  // namespace

void addDraw(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("draw", "Draw measures and routes from GeoJSON with our fields");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file")->required();
    command->add_option("DRAWING", options->drawing, "GeoJSON (WGS 84); each feature says its \"kind\"")->required();
    command->add_option("--film", options->film, "The film for features that name none (default FILM 1)");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return draw(*options, surroundings); };
    });
}

}  // namespace crosstick::app
