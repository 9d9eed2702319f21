// Measures to Drawings, beside putting the very same strokes, fills and letters together bare; letters of a full film.
#include <benchmark/benchmark.h>

#include "symbols/engrave.h"
#include "symbols/specimen/samples.h"

namespace crosstick {
namespace {

constexpr Scale kScale{25000};

geodesy::PlanePoint ground(drawing::Point p) {
    return {Metres(500000) + onGround(PaperMm(p.x), kScale), Metres(5000000) - onGround(PaperMm(p.y), kScale)};
}

/// Every kind of the catalogue in turn, each in a cell of its own, on one film.
struct Film {
    plan::Plan plan;
    plan::Film film;

    Film(std::size_t measures, std::size_t columns, drawing::Vector cell) {
        IdSource ids(5);
        plan::Heading heading;
        heading.plane = geodesy::Zone{31, geodesy::Hemisphere::North};
        const std::size_t rows = (measures + columns - 1) / columns;
        plan::PlanBuilder builder{plan::Plan{}};
        builder.id(ids.next()).heading(heading);
        builder.registration(plan::Registration{
            ground({0, cell.y * static_cast<double>(rows)}), ground({cell.x * static_cast<double>(columns), 0}), {}});
        film.id = ids.next();
        film.scale = kScale;
        std::vector<plan::Measure> all;
        std::string key;
        const auto kinds = measures::catalogue();
        for (std::size_t n = 0; n < measures; ++n) {
            const drawing::Point corner{cell.x * static_cast<double>(n % columns),
                                        cell.y * static_cast<double>(n / columns)};
            const symbols::Exhibit exhibit = symbols::sample(kinds[n % kinds.size()], cell);
            plan::Measure measure;
            measure.id = ids.next();
            measure.kind = exhibit.kind;
            measure.name = exhibit.name;
            measure.number = exhibit.number;
            measure.fields = exhibit.fields;
            measure.standing = n % 5 == 0 ? plan::Standing::Planned : plan::Standing::Present;
            for (const drawing::Point p : exhibit.points) {
                measure.points.push_back(ground(corner + p));
            }
            key = plan::orderBetween(key, "");
            film.shows.push_back({measure.id, key, {}, {}});
            all.push_back(std::move(measure));
        }
        builder.put(std::move(all));
        plan = std::move(builder).build();
    }
    [[nodiscard]] symbols::Engraving engraving(const film::Frame& frame) const {
        return {.plan = plan, .film = film, .frame = frame, .gauge = {}, .reserved = {}, .figures = {}};
    }
};

const Film& strewn() {
    static const Film film(10000, 100, {97, 32});
    return film;
}
/// As many on an A3 sheet as there is hardly room for.
const Film& full() {
    static const Film film(300, 15, {27, 14});
    return film;
}

void engraveAll(benchmark::State& state, const Film& film) {
    const auto frame = film::Frame::of(film.plan, film.film);
    for (auto _ : state) {
        benchmark::DoNotOptimize(symbols::engrave(film.engraving(*frame)));
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(film.film.shows.size()));
}

/// The same marks again, point by point: what nobody can do without who makes Drawings.
drawing::Drawing putTogether(const drawing::Drawing& from) {
    drawing::Drawing to;
    for (const drawing::Mark& mark : from.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            drawing::Stroke made{{}, stroke->width, stroke->ink, stroke->join, stroke->cap};
            for (const drawing::Polyline& piece : stroke->pieces) {
                drawing::Polyline line{{}, piece.closed};
                for (const drawing::Point p : piece.points) {
                    line.points.push_back(p);
                }
                made.pieces.push_back(std::move(line));
            }
            to.marks.emplace_back(std::move(made));
        } else {
            to.marks.push_back(mark);
        }
    }
    return to;
}

void BM_TenThousandMeasures(benchmark::State& state) {
    engraveAll(state, strewn());
}
void BM_TenThousandMeasures_SameMarksBare(benchmark::State& state) {
    const auto frame = film::Frame::of(strewn().plan, strewn().film);
    const symbols::EngravedFilm drawn = symbols::engrave(strewn().engraving(*frame));
    for (auto _ : state) {
        for (const symbols::EngravedItem& item : drawn.items) {
            benchmark::DoNotOptimize(putTogether(item.drawing));
        }
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(drawn.items.size()));
}
void BM_LettersOfThreeHundred(benchmark::State& state) {
    engraveAll(state, full());
}

BENCHMARK(BM_TenThousandMeasures_SameMarksBare)->Unit(benchmark::kMillisecond);
BENCHMARK(BM_TenThousandMeasures)->Unit(benchmark::kMillisecond);
BENCHMARK(BM_LettersOfThreeHundred)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace crosstick

BENCHMARK_MAIN();
