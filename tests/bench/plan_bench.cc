// Opening a plan of 10,000 measures beside a bare read of the same rows, and saving one edit beside a bare transaction
// that writes the same rows.
#include <filesystem>
#include <string>

#include <benchmark/benchmark.h>
#include <sqlite3.h>
#include <unistd.h>

#include "core/files/plan_file.h"

namespace crosstick {
namespace {

constexpr std::size_t kMeasures = 10000;
constexpr std::size_t kFilms = 30;
constexpr std::size_t kVertices = 20;
constexpr Instant kNow{std::chrono::seconds(1805155200)};

/// Phase lines of 20 vertices on 30 films.
plan::Plan largePlan() {
    IdSource ids(1);
    plan::Heading heading;
    heading.name = "LARGE";
    heading.plane = geodesy::Zone{25, geodesy::Hemisphere::North};
    std::vector<plan::Measure> measures;
    std::vector<plan::Film> films(kFilms);
    for (std::size_t n = 0; n < kFilms; ++n) {
        films[n].id = ids.next();
        films[n].name = "FILM " + std::to_string(n);
    }
    std::vector<std::string> keys(kFilms);
    for (std::size_t n = 0; n < kMeasures; ++n) {
        plan::Measure measure;
        measure.id = ids.next();
        measure.kind = "phase-line";
        measure.name = "LINE " + std::to_string(n);
        for (std::size_t v = 0; v < kVertices; ++v) {
            measure.points.push_back({Metres(650000 + static_cast<double>(n % 100) * 90 + static_cast<double>(v) * 40),
                                      Metres(5090000 + static_cast<double>(n) + static_cast<double>(v * v))});
        }
        std::string& key = keys[n % kFilms];
        key = plan::orderBetween(key, "");
        films[n % kFilms].shows.push_back({measure.id, key, {}, {}});
        measures.push_back(std::move(measure));
    }
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(ids.next()).heading(heading).put(std::move(measures));
    for (plan::Film& film : films) {
        builder.put(std::move(film));
    }
    return std::move(builder).build();
}

/// The plan's file, made once for all rounds and taken away at the end.
class MadeFile {
  public:
    MadeFile() : folder_(std::filesystem::temp_directory_path() / ("crosstick-bench-" + std::to_string(::getpid()))) {
        std::filesystem::create_directories(folder_);
        if (!files::PlanFile::create(file(), largePlan(), kNow)) {
            throw std::runtime_error("the plan could not be written");
        }
    }
    ~MadeFile() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    MadeFile(const MadeFile&) = delete;
    MadeFile& operator=(const MadeFile&) = delete;
    [[nodiscard]] std::filesystem::path file() const { return folder_ / "plan.gpkg"; }

  private:
    std::filesystem::path folder_;
};

const MadeFile& made() {
    static const MadeFile once;
    return once;
}

void bareReadOfTheRows(benchmark::State& state) {
    const std::string file = made().file().string();
    for (auto _ : state) {
        sqlite3* handle = nullptr;
        sqlite3_open_v2(file.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr);
        sqlite3_stmt* rows = nullptr;
        sqlite3_prepare_v2(handle,
                           "SELECT s.item, v.what, v.kind, v.name, v.number, v.states, v.body, v.geom "
                           "FROM crosstick_state_item s JOIN crosstick_version v ON v.fid=s.version WHERE s.state=1",
                           -1, &rows, nullptr);
        std::int64_t bytes = 0;
        while (sqlite3_step(rows) == SQLITE_ROW) {
            for (int column = 0; column < 8; ++column) {
                benchmark::DoNotOptimize(sqlite3_column_blob(rows, column));
                bytes += sqlite3_column_bytes(rows, column);
            }
        }
        benchmark::DoNotOptimize(bytes);
        sqlite3_finalize(rows);
        sqlite3_close(handle);
    }
}
BENCHMARK(bareReadOfTheRows)->Unit(benchmark::kMillisecond);

void openingAPlanOf10000Measures(benchmark::State& state) {
    for (auto _ : state) {
        const auto file = files::PlanFile::open(made().file(), files::Access::ReadOnly);
        if (!file || file->plan().measures().size() != kMeasures) {
            state.SkipWithError("the plan could not be opened");
            break;
        }
        benchmark::DoNotOptimize(file->plan());
    }
}
BENCHMARK(openingAPlanOf10000Measures)->Unit(benchmark::kMillisecond);

void bareTransactionOfTheSameRows(benchmark::State& state) {
    sqlite3* handle = nullptr;
    sqlite3_open_v2(made().file().string().c_str(), &handle, SQLITE_OPEN_READWRITE, nullptr);
    const char* const edit =
        "BEGIN IMMEDIATE;"
        "CREATE TEMP TABLE IF NOT EXISTS one AS SELECT item, version FROM crosstick_state_item "
        "WHERE state=1 AND length(item)=16 LIMIT 1 OFFSET 5000;"
        "INSERT INTO crosstick_version(item, what, hash, kind, name, number, states, body, geom) "
        "SELECT item, what, hash, kind, name, number, states, body, geom FROM crosstick_version "
        "WHERE fid=(SELECT version FROM crosstick_state_item WHERE state=1 AND item=(SELECT item FROM one));"
        "DELETE FROM crosstick_version "
        "WHERE fid=(SELECT version FROM crosstick_state_item WHERE state=1 AND item=(SELECT item FROM one));"
        "UPDATE crosstick_state_item SET version=last_insert_rowid() WHERE state=1 AND item=(SELECT item FROM one);"
        "UPDATE gpkg_contents SET last_change='2027-03-13T15:00:00.000Z' WHERE table_name='crosstick_version';"
        "UPDATE crosstick_plan SET value=value+1 WHERE key='saves';"
        "COMMIT;";
    for (auto _ : state) {
        if (sqlite3_exec(handle, edit, nullptr, nullptr, nullptr) != SQLITE_OK) {
            state.SkipWithError(sqlite3_errmsg(handle));
            break;
        }
    }
    sqlite3_close(handle);
}
BENCHMARK(bareTransactionOfTheSameRows)->Unit(benchmark::kMicrosecond);

void savingOneEdit(benchmark::State& state) {
    auto file = files::PlanFile::open(made().file(), files::Access::ReadWrite);
    if (!file) {
        state.SkipWithError("the plan could not be opened");
        return;
    }
    const plan::MeasurePtr measure = file->plan().measures().chunks()[40]->front();
    int n = 0;
    for (auto _ : state) {
        plan::Measure edited = *measure;
        edited.points[3].easting += Metres(++n);
        plan::PlanBuilder builder(file->plan());
        builder.put(std::move(edited));
        if (!file->save(std::move(builder).build(), kNow)) {
            state.SkipWithError("the edit could not be saved");
            break;
        }
    }
}
BENCHMARK(savingOneEdit)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace crosstick

BENCHMARK_MAIN();
