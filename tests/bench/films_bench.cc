// Films of 3,600 measures from plan to PDF, beside painting the very same Drawings onto bare PDF pages.
#include <cmath>

#include <benchmark/benchmark.h>

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "tests/places.h"
#include "ui/press/film_sheet.h"
#include "ui/press/gui_start.h"

namespace crosstick {
namespace {

constexpr std::size_t kFilms = 30;
constexpr std::size_t kOnEach = 120;

/// 30 A3 films at 1:25,000, each with 40 phase lines, 40 areas and 40 checkpoints.
plan::Plan manyFilms() {
    IdSource ids(3);
    plan::Heading heading;
    heading.name = "MANY";
    heading.date = CalendarDate{std::chrono::year(2027), std::chrono::month(3), std::chrono::day(13)};
    heading.plane = geodesy::Zone{25, geodesy::Hemisphere::North};
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(ids.next()).heading(heading);
    builder.registration(plan::Registration{
        {Metres(650000), Metres(5094000)},
        {Metres(657500), Metres(5099000)},
        {{Metres(651000), Metres(5095000)}, {Metres(657000), Metres(5095000)}, {Metres(657000), Metres(5098000)}}});
    const auto at = [](std::size_t n, double right, double up) {
        const double column = static_cast<double>(n % 12);
        const double row = std::floor(static_cast<double>(n) / 12);
        return geodesy::PlanePoint{Metres(650250 + column * 600 + right), Metres(5094250 + row * 470 + up)};
    };
    for (std::size_t f = 0; f < kFilms; ++f) {
        plan::Film film;
        film.id = ids.next();
        film.name = "FILM " + std::to_string(f + 1);
        std::string key;
        for (std::size_t n = 0; n < kOnEach; ++n) {
            plan::Measure measure;
            measure.id = ids.next();
            const double shift = static_cast<double>(f);
            if (n % 3 == 0) {
                measure.kind = "phase-line";
                measure.name = "P" + std::to_string(n);
                measure.points = {at(n, 20 + shift, 20), at(n, 120, 180 + shift), at(n, 40, 380)};
            } else if (n % 3 == 1) {
                measure.kind = "assembly-area";
                measure.name = "Q" + std::to_string(n);
                measure.points = {at(n, 60 + shift, 60), at(n, 420, 80), at(n, 400, 300 + shift), at(n, 80, 280)};
            } else {
                measure.kind = "checkpoint";
                measure.number = std::to_string(n);
                measure.points = {at(n, 300 + shift, 100)};
            }
            key = plan::orderBetween(key, "");
            film.shows.push_back({measure.id, key, {}, {}});
            builder.put(std::move(measure));
        }
        builder.put(std::move(film));
    }
    return std::move(builder).build();
}

struct Desk {
    press::GuiStart gui;
    Result<press::Faces> faces = press::Faces::open(places::share() / "faces");
    plan::Plan plan = manyFilms();
    Result<film::PaperChoice> paper = film::parsePaper("a3");
    [[nodiscard]] press::FilmsOrder order() const { return {plan, plan.films(), *paper}; }
};

const Desk& desk() {
    static const Desk once;
    return once;
}

void paintingTheSameDrawingsBare(benchmark::State& state) {
    const auto set = press::composeFilms(desk().order());
    if (!set || !desk().faces) {
        state.SkipWithError("the films could not be composed");
        return;
    }
    const press::Brushes brushes{*desk().faces, press::paperInks(), press::Letters::AsText, press::HaloRule::LeftOut};
    for (auto _ : state) {
        QBuffer buffer;
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer(&buffer);
        writer.setResolution(1200);
        writer.setPageSize(QPageSize(QPageSize::A3));
        writer.setPageMargins(QMarginsF());
        QPainter painter(&writer);
        painter.scale(1200 / 25.4, 1200 / 25.4);
        for (std::size_t n = 0; n < set->pages.size(); ++n) {
            if (n > 0) {
                writer.newPage();
            }
            press::paint(painter, set->pages[n].drawing, brushes);
        }
        painter.end();
        benchmark::DoNotOptimize(buffer.data().size());
    }
}
BENCHMARK(paintingTheSameDrawingsBare)->UseRealTime()->Unit(benchmark::kMillisecond);

void filmsOf3600Measures(benchmark::State& state) {
    for (auto _ : state) {
        const auto printed =
            press::printFilms(desk().order(), press::pdfFacts(desk().plan), *desk().faces, press::paperInks());
        if (!printed) {
            state.SkipWithError("the films could not be printed");
            break;
        }
        benchmark::DoNotOptimize(printed->pdf.size());
    }
}
BENCHMARK(filmsOf3600Measures)->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace crosstick

BENCHMARK_MAIN();
