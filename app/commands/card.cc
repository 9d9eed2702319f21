#include <memory>
#include <ostream>

#include "app/command.h"
#include "app/commands/card_forms.h"
#include "app/commands/paper_output.h"
#include "app/commands/route_sources.h"
#include "app/commands/text_table.h"
#include "app/commands/timing_options.h"
#include "core/movement/faults.h"
#include "ui/press/pdf.h"
#include "ui/press/route_card_page.h"
#include "ui/press/route_paper.h"

namespace crosstick::app {
namespace {

struct CardLine {
    std::string plan;
    std::vector<std::string> routes, columns;
    std::string output, size = "a5";
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
    auto evacuation = movement::evacuationFrom(sources.plan, *figures);
    if (!evacuation) {
        return tl::unexpected(evacuation.error());
    }
    auto light = movement::routeLight(sources.plan, *figures);
    return CardContent{std::move(*figures), std::move(*paper), std::move(*crossings),
                       std::move(*runs),    std::move(light),  std::move(*evacuation)};
}

/// What all forms of the cards are made from.
struct Cards {
    const CardLine& line;
    const RouteSources& sources;
    const std::vector<CardContent>& contents;
    geodesy::AngleUnit unit;
    std::string modelName;
};

/// The cards as tables on A4, with the columns that are wanted. Errors: app/no-such-column.
Result<std::vector<press::PaperTable>> cardTables(const Cards& cards) {
    std::vector<press::PaperTable> tables;
    for (const CardContent& content : cards.contents) {
        const auto words = press::cardWords(cards.sources.plan, content.figures, content.paper, content.evacuation,
                                            {cards.unit, cards.modelName});
        auto table = press::routePaper(cards.sources.plan, content.figures, content.paper, words, cards.unit);
        auto chosen = withChosenColumns(std::move(table), cards.line.columns);
        if (!chosen) {
            return tl::unexpected(chosen.error());
        }
        tables.push_back(std::move(*chosen));
    }
    return tables;
}

Result<std::string> cardPdf(const Cards& cards, const Surroundings& surroundings) {
    std::vector<press::PaperPage> pages;
    const auto size = cards.line.size == "a6" ? press::CardSize::A6 : press::CardSize::A5;
    for (const CardContent& content : cards.contents) {
        auto made = press::routeCard(cards.sources.plan, content.figures, cards.unit, cards.modelName, size);
        if (!made) {
            return tl::unexpected(made.error());
        }
        for (press::CardPage& card : *made) {
            pages.push_back({film::Paper{card.width, card.height}, std::move(card.drawing)});
        }
    }
    // the plan's own time makes the same plan the same bytes; a plan without one is dated by the clock
    return press::pagesPdf(pages, "route cards", cards.sources.plan.heading(), surroundings.share / "faces",
                           surroundings.now);
}

Result<std::string> cardBytes(const Cards& cards, const Surroundings& surroundings) {
    const auto form = std::filesystem::path(cards.line.output).extension();
    if (form == ".csv") {
        return cardCsv(cards.sources.plan, cards.contents, cards.line.columns);
    }
    if (form == ".html" || (form == ".pdf" && cards.line.size == "a4")) {
        return cardTables(cards).and_then([&](const std::vector<press::PaperTable>& tables) {
            return paperBytes(cards.line.output, tables, cards.sources.plan.heading(), surroundings);
        });
    }
    if (form == ".pdf") {
        return cardPdf(cards, surroundings);
    }
    return fail(movement::kCardForm, {{"file", cards.line.output}});
}

/// A table for the terminal: all of it, or the columns that are wanted.
Result<std::string> cardTexts(const Cards& cards) {
    if (!cards.line.columns.empty()) {
        return cardTables(cards).map([](const std::vector<press::PaperTable>& tables) {
            std::string text;
            for (const press::PaperTable& table : tables) {
                text += (text.empty() ? "" : "\n") + plain(table.head.title) + '\n' + paperText(table);
            }
            return text;
        });
    }
    std::string text;
    for (const CardContent& content : cards.contents) {
        text += (text.empty() ? "" : "\n") + cardTable(cards.sources.plan, content, cards.unit, cards.modelName);
    }
    return text;
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
    const Cards cards{line, *sources, contents, unit, sources->model ? sources->model->name() : std::string{}};
    if (!line.output.empty()) {
        const auto written = cardBytes(cards, surroundings).and_then([&](const std::string& bytes) {
            return press::writeWhole(line.output, bytes);
        });
        if (!written) {
            return couldNot(surroundings, written.error());
        }
    }
    if (line.json) {
        surroundings.out << cardJson(sources->plan, contents, cards.modelName);
    } else if (line.output.empty()) {
        const auto texts = cardTexts(cards);
        if (!texts) {
            return couldNot(surroundings, texts.error());
        }
        surroundings.out << *texts;
    } else {
        surroundings.out << line.output << ": " << contents.size() << (contents.size() == 1 ? " route\n" : " routes\n");
    }
    return Exit::Done;
}

}  // namespace

void addCard(CLI::App& program, Action& action) {
    auto line = std::make_shared<CardLine>();
    CLI::App* command = program.add_subcommand("card", "Route cards: a table here, or cards as PDF, HTML or CSV.");
    command->add_option("PLAN", line->plan, "The plan's file.")->required();
    command->add_option("--route", line->routes, "Only this route; may be given again. Without it: all.");
    command->add_option("-o,--output", line->output,
                        "FILE.pdf for cards to print, FILE.html, FILE.csv for a spreadsheet.");
    command
        ->add_option("--size", line->size,
                     "Of the cards: a5, a6 for a breast pocket, a4 for a table with --columns (default a5)")
        ->check(CLI::IsMember({"a4", "a5", "a6"}, CLI::ignore_case));
    command
        ->add_option("--columns", line->columns,
                     "Only these columns in this order: of the CSV by its own names; of the table here, HTML and A4 by "
                     "leg, to, grid, tie, magnetic, ... (a wrong one lists them)")
        ->delimiter(',');
    addTimingOptions(*command, line->timing);
    command->add_flag("--mils", line->mils, "Azimuths to 10 mils, 6400 to the circle, in place of whole degrees.");
    command->add_flag("--json", line->json, "Exact figures as one JSON array: degrees and metres, null for unknown.");
    command->callback([line, &action] {
        action = [line](const Surroundings& surroundings) { return makeCards(*line, surroundings); };
    });
}

}  // namespace crosstick::app
