// From the start of a process to its window: ours on the demo, usable and wholly drawn, beside an empty window. It is
// the second start that is measured: our copies of the sheet and of the height model are there. For figures that can be
// set beside each other start them by turns, one run at a time: --benchmark_enable_random_interleaving=true
// --benchmark_repetitions=60 --benchmark_min_time=0.001
#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/places.h"
#include "tests/sheets/our_reader.h"

extern char** environ;

namespace {

const std::filesystem::path& demo() {
    static const std::filesystem::path kFolder =
        std::filesystem::temp_directory_path() / ("crosstick-start-" + std::to_string(getpid()));
    return kFolder;
}

/// Our copy of the demo's sheet, as the program has it from the second start on.
const std::filesystem::path& sheetCopy() {
    static const std::filesystem::path kCopy =
        crosstick::testing::reader().sheet(demo() / "sheet.tif").value_or(std::filesystem::path());
    return kCopy;
}

/// Runs a program. @return how long it took to say that it is usable; none where it did not or failed
std::optional<std::chrono::duration<double>> started(std::vector<std::string> words) {
    std::vector<char*> arguments;
    for (std::string& word : words) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    int ends[2];
    if (pipe(ends) != 0) {
        return std::nullopt;
    }
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    posix_spawn_file_actions_addclose(&actions, ends[0]);
    const auto from = std::chrono::steady_clock::now();
    pid_t child = 0;
    const bool runs = posix_spawn(&child, arguments.front(), &actions, nullptr, arguments.data(), environ) == 0;
    posix_spawn_file_actions_destroy(&actions);
    close(ends[1]);
    char word = 0;
    const bool said = runs && read(ends[0], &word, 1) == 1;
    const auto until = std::chrono::steady_clock::now();
    close(ends[0]);
    int status = 1;
    const bool ended = runs && waitpid(child, &status, 0) == child && status == 0;
    return said && ended ? std::optional<std::chrono::duration<double>>(until - from) : std::nullopt;
}

void run(benchmark::State& state, const std::vector<std::string>& words) {
    for (auto _ : state) {
        const auto took = started(words);
        if (!took) {
            state.SkipWithError("it did not run");
            break;
        }
        state.SetIterationTime(took->count());
    }
}

void emptyWindow(benchmark::State& state) {
    run(state, {START_FLOOR, sheetCopy()});
}
void usableWindowOnTheDemo(benchmark::State& state) {
    run(state, {START_WINDOW, demo() / "plan.gpkg", demo(), "usable"});
}
void drawnWindowOnTheDemo(benchmark::State& state) {
    run(state, {START_WINDOW, demo() / "plan.gpkg", demo(), "drawn"});
}
BENCHMARK(emptyWindow)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK(usableWindowOnTheDemo)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK(drawnWindowOnTheDemo)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (!started({crosstick::places::program(), "demo", demo()})) {
        return 1;
    }
    const auto heights =
        crosstick::testing::reader().heights(demo() / "elevation.tif", crosstick::sheets::HeightUnit::Unclear);
    if (sheetCopy().empty() || !heights) {
        return 1;
    }
    benchmark::RunSpecifiedBenchmarks();
    std::filesystem::remove_all(demo());
    return 0;
}
