#include <cmath>
#include <memory>
#include <optional>
#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/ground_files.h"
#include "app/wording/wording.h"
#include "core/files/plan_file.h"
#include "core/geodesy/declination.h"
#include "ui/press/faults.h"
#include "ui/press/film_sheet.h"
#include "ui/press/gui_start.h"

namespace crosstick::app {
namespace {

/// What was asked for, as it was written.
struct Asked {
    std::string plan;
    std::string out;
    std::vector<std::string> films;
    std::string paper;
    std::optional<double> scale;
    std::vector<double> stretch;  ///< per cent east and north, or none
    bool onePen = false;
    bool wholeLegend = false;
    bool json = false;
};

double tidy(double value) {
    // A nanometre is far below what any paper shows; the last digits of binary sums would only be noise in a file.
    return std::round(value * 1e6) / 1e6 + 0.0;
}

Json pageJson(const press::FilmPage& page, std::size_t number) {
    Json ticks = Json::array();
    for (const film::TickMark& tick : page.page.ticks) {
        ticks.push_back({{"grid", tick.grid},
                         {"easting_m", tick.at.easting.value()},
                         {"northing_m", tick.at.northing.value()},
                         {"x_mm", tidy(tick.onPage.x)},
                         {"y_mm", tidy(tick.onPage.y)}});
    }
    Json bars = Json::array();
    for (const film::Bar& bar : page.page.bars) {
        bars.push_back({{"x1_mm", tidy(bar.from.x)},
                        {"y1_mm", tidy(bar.from.y)},
                        {"x2_mm", tidy(bar.to.x)},
                        {"y2_mm", tidy(bar.to.y)}});
    }
    return {{"page", number},
            {"film", page.film->name},
            {"width_mm", page.page.paper.width.value()},
            {"height_mm", page.page.paper.height.value()},
            {"scale", page.scale.denominator},
            {"crs", page.crs},
            {"ticks", std::move(ticks)},
            {"bars", std::move(bars)}};
}

std::string filmNames(const plan::Plan& plan) {
    std::string names;
    for (const plan::FilmPtr& film : plan.films()) {
        names += (names.empty() ? "" : ", ") + film->name;
    }
    return names;
}

Result<std::vector<plan::FilmPtr>> filmsOf(const plan::Plan& plan, const std::vector<std::string>& names) {
    if (plan.films().empty()) {
        return fail(press::kNoFilms);
    }
    if (names.empty()) {
        return plan.films();
    }
    std::vector<plan::FilmPtr> films;
    for (const std::string& name : names) {
        const plan::FilmPtr film = plan.filmNamed(name);
        if (!film) {
            return fail(press::kNoSuchFilm, {{"film", name}, {"films", filmNames(plan)}});
        }
        films.push_back(film);
    }
    return films;
}

/// What a draughtsman would tell the leader about one film, with the names that the words ask for.
std::vector<Error> remarksOn(const plan::Plan& plan, const press::FilmPage& page) {
    std::vector<Error> notes;
    for (const symbols::Remark& remark : page.remarks) {
        const plan::MeasurePtr measure = plan.measure(remark.item);
        const plan::RoutePtr route = plan.route(remark.item);
        const std::string item = measure ? movement::label(*measure) : route ? "RTE " + route->name : "?";
        notes.push_back(Error{remark.about, {{"item", item}, {"film", page.film->name}}});
    }
    return notes;
}

/// Every sheet of the plan as if its paper were so much too long.
plan::Plan stretched(const plan::Plan& plan, const std::vector<double>& percent) {
    plan::PlanBuilder builder(plan);
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        plan::Sheet fitted = *sheet;
        fitted.stretch = plan::PaperStretch{percent[0], percent[1]};
        builder.put(std::move(fitted));
    }
    return std::move(builder).build();
}

/// The films as printed, and everything there is to remark about them.
struct Printed {
    press::FilmSet set;
    std::vector<Error> notes;
};

Result<Printed> print(const Asked& asked, const Surroundings& surroundings) {
    const auto file = files::PlanFile::open(asked.plan, files::Access::ReadOnly);
    if (!file) {
        return tl::unexpected(file.error());
    }
    const auto films = filmsOf(file->plan(), asked.films);
    if (!films) {
        return tl::unexpected(films.error());
    }
    const auto papers =
        asked.paper.empty() ? Result<film::PaperChoice>(film::usualPapers()) : film::parsePaper(asked.paper);
    if (!papers) {
        return tl::unexpected(papers.error());
    }
    const auto model = geodesy::MagneticModel::open(surroundings.share / "magnetic");
    // Films print without heights, too.
    const auto heights = heightsFor(file->plan(), asked.plan, surroundings).value_or(nullptr);
    press::FilmsOrder order{asked.stretch.empty() ? file->plan() : stretched(file->plan(), asked.stretch), *films,
                            *papers};
    if (asked.scale) {
        order.scale = Scale{*asked.scale};
    }
    order.pens = asked.onePen ? symbols::PenMode::OnePen : symbols::PenMode::Colour;
    order.legend = asked.wholeLegend ? symbols::LegendExtent::Everything : symbols::LegendExtent::NotStandard;
    order.model = model ? &*model : nullptr;
    order.heights = heights.get();
    const press::GuiStart gui;
    const auto faces = press::Faces::open(surroundings.share / "faces");
    if (!faces) {
        return tl::unexpected(faces.error());
    }
    auto printed = press::printFilms(order, press::pdfFacts(file->plan()), *faces,
                                     asked.onePen ? press::onePenInks() : press::paperInks());
    if (!printed) {
        return tl::unexpected(printed.error());
    }
    std::vector<Error> notes = printed->set.notes;
    for (const press::FilmPage& page : printed->set.pages) {
        for (Error& remark : remarksOn(file->plan(), page)) {
            notes.push_back(std::move(remark));
        }
    }
    return press::writeWhole(asked.out, printed->pdf).map([&] {
        return Printed{std::move(printed->set), std::move(notes)};
    });
}

Exit films(const Asked& asked, const Surroundings& surroundings) {
    const auto printed = print(asked, surroundings);
    if (!printed) {
        return couldNot(surroundings, printed.error());
    }
    const press::FilmSet* set = &printed->set;
    for (const Error& note : printed->notes) {
        surroundings.err << "note: " << words(note) << '\n';
    }
    if (asked.json) {
        Json list = Json::array();
        for (const press::FilmPage& page : set->pages) {
            list.push_back(pageJson(page, list.size() + 1));
        }
        say(surroundings.out, list);
        return Exit::Done;
    }
    for (const press::FilmPage& page : set->pages) {
        surroundings.out << fmt::format("{}: {} x {} mm, 1:{}, {} ticks\n", page.film->name,
                                        page.page.paper.width.value(), page.page.paper.height.value(),
                                        page.scale.denominator, page.page.ticks.size());
    }
    surroundings.out << asked.out << ": print at true size (100 %) and measure the bars of 100 mm\n";
    return Exit::Done;
}

}  // namespace

void addFilms(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("films", "Print a plan's films to exact scale, as PDF");
    auto asked = std::make_shared<Asked>();
    command->add_option("PLAN", asked->plan, "The plan's file")->required();
    command->add_option("-o,--out", asked->out, "The PDF to write")->required();
    command->add_option("--film", asked->films, "Only this film; may be given several times")->allow_extra_args(false);
    command->add_option("--paper", asked->paper,
                        "a4, a3, letter, or WIDTHxHEIGHT in mm; else the smaller of A4 and A3");
    command->add_option("--scale", asked->scale, "N of 1:N, in place of the films' own")
        ->check(CLI::Validator(positiveFault, ""));
    command
        ->add_option("--stretch", asked->stretch,
                     "EAST,NORTH in per cent: fit the films to paper that is so much too long (default: as the plan "
                     "says, else exactly to scale)")
        ->delimiter(',')
        ->expected(2)
        ->check(CLI::Validator(numberFault, ""))
        ->check(CLI::Range(-plan::kMostStretchPercent, plan::kMostStretchPercent));
    command->add_flag("--whole-legend", asked->wholeLegend,
                      "Explain each kind of measure in the legend, not only what is not standard");
    command->add_flag("--one-pen", asked->onePen, "Everything in black, the enemy by double lines");
    command->add_flag("--json", asked->json, "One JSON array: a page a film, millimetres from the page's upper left");
    command->callback([asked, &action] {
        action = [asked](const Surroundings& surroundings) { return films(*asked, surroundings); };
    });
}

}  // namespace crosstick::app
