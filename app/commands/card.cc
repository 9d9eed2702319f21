#include <memory>
#include <ostream>

#include "app/command.h"
#include "app/commands/card_forms.h"
#include "app/commands/route_sources.h"
#include "app/commands/timing_options.h"
#include "core/movement/faults.h"
#include "ui/press/gui_start.h"
#include "ui/press/pdf.h"
#include "ui/press/route_card_page.h"

namespace crosstick::app {
namespace {

struct CardLine {
    std::string plan;
    std::vector<std::string> routes;
    std::string output;
    TimingOptions timing;
    bool mils = false;
    bool json = false;
};

Result<CardContent> contentOf(const RouteSources& sources, const plan::Route& route, geodesy::AngleUnit unit) {
    auto figures = movement::routeFigures(sources.plan, route, sources.modelOrNone(), sources.heights.get());
    if (!figures) {
        return tl::unexpected(figures.error());
    }
    auto paper = movement::paperFigures(sources.plan, *figures, unit);
    auto crossings = movement::crossings(sources.plan, *figures);
    auto runs = movement::runsAlong(sources.plan, *figures);
    if (!paper || !crossings || !runs) {
        return tl::unexpected(!paper ? paper.error() : !crossings ? crossings.error() : runs.error());
    }
    auto light = movement::routeLight(sources.plan, *figures);
    return CardContent{std::move(*figures), std::move(*paper), std::move(*crossings), std::move(*runs),
                       std::move(light)};
}

Result<std::string> cardPdf(const RouteSources& sources, const std::vector<CardContent>& contents,
                            geodesy::AngleUnit unit, const std::string& modelName, const Surroundings& surroundings) {
    const press::GuiStart gui;
    const auto faces = press::Faces::open(surroundings.share / "faces");
    if (!faces) {
        return tl::unexpected(faces.error());
    }
    std::vector<press::PdfPage> pages;
    for (const CardContent& content : contents) {
        auto cards = press::routeCard(sources.plan, content.figures, unit, modelName);
        if (!cards) {
            return tl::unexpected(cards.error());
        }
        for (press::CardPage& card : *cards) {
            press::PdfPage page;
            page.paper = film::Paper{card.width, card.height};
            page.drawing = std::move(card.drawing);
            pages.push_back(std::move(page));
        }
    }
    const plan::Heading& heading = sources.plan.heading();
    // the plan's own time makes the same plan the same bytes; a plan without one is dated by the clock
    const press::PdfFacts facts{heading.name + " route cards", heading.author, heading.marking,
                                heading.prepared.value_or(surroundings.now)};
    return press::pdfBytes(pages, facts, *faces, press::onePenInks());
}

Exit writeFile(const CardLine& line, const RouteSources& sources, const std::vector<CardContent>& contents,
               const std::string& modelName, const Surroundings& surroundings) {
    const std::filesystem::path path = line.output;
    const auto unit = line.mils ? geodesy::AngleUnit::Mils : geodesy::AngleUnit::Degrees;
    Result<std::string> bytes = fail(movement::kCardForm, {{"file", line.output}});
    if (path.extension() == ".csv") {
        bytes = cardCsv(sources.plan, contents);
    } else if (path.extension() == ".pdf") {
        bytes = cardPdf(sources, contents, unit, modelName, surroundings);
    }
    if (!bytes) {
        return couldNot(surroundings, bytes.error());
    }
    const auto written = press::writeWhole(path, *bytes);
    return written ? Exit::Done : couldNot(surroundings, written.error());
}

Exit makeCards(const CardLine& line, const Surroundings& surroundings) {
    const auto unit = line.mils ? geodesy::AngleUnit::Mils : geodesy::AngleUnit::Degrees;
    auto sources = openRouteSources(line.plan, surroundings);
    if (!sources) {
        return couldNot(surroundings, sources.error());
    }
    sources->plan = withTiming(sources->plan, line.timing);
    const auto routes = chosenRoutes(sources->plan, line.plan, line.routes);
    if (!routes) {
        return couldNot(surroundings, routes.error());
    }
    std::vector<CardContent> contents;
    for (const plan::RoutePtr& route : *routes) {
        auto content = contentOf(*sources, *route, unit);
        if (!content) {
            return couldNot(surroundings, content.error());
        }
        contents.push_back(std::move(*content));
    }
    const std::string modelName = sources->model ? sources->model->name() : std::string{};
    if (!line.output.empty()) {
        const Exit written = writeFile(line, *sources, contents, modelName, surroundings);
        if (written != Exit::Done) {
            return written;
        }
    }
    if (line.json) {
        surroundings.out << cardJson(sources->plan, contents, modelName);
    } else if (line.output.empty()) {
        for (std::size_t n = 0; n < contents.size(); ++n) {
            surroundings.out << (n == 0 ? "" : "\n") << cardTable(sources->plan, contents[n], unit, modelName);
        }
    } else {
        surroundings.out << line.output << ": " << contents.size() << (contents.size() == 1 ? " route\n" : " routes\n");
    }
    return Exit::Done;
}

}  // namespace

void addCard(CLI::App& program, Action& action) {
    auto line = std::make_shared<CardLine>();
    CLI::App* command = program.add_subcommand("card", "Route cards: a table here, or A5 cards as PDF, or CSV.");
    command->add_option("PLAN", line->plan, "The plan's file.")->required();
    command->add_option("--route", line->routes, "Only this route; may be given again. Without it: all.");
    command->add_option("-o,--output", line->output, "FILE.pdf for cards to print, FILE.csv for a spreadsheet.");
    addTimingOptions(*command, line->timing);
    command->add_flag("--mils", line->mils, "Azimuths to 10 mils, 6400 to the circle, in place of whole degrees.");
    command->add_flag("--json", line->json, "Exact figures as one JSON array: degrees and metres, null for unknown.");
    command->callback([line, &action] {
        action = [line](const Surroundings& surroundings) { return makeCards(*line, surroundings); };
    });
}

}  // namespace crosstick::app
