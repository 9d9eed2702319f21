// From the start of a process to its window: ours on the demo, usable and wholly drawn, beside an empty window.
#include <filesystem>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>
#include <spawn.h>
#include <sys/wait.h>

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

bool ran(std::vector<std::string> words) {
    std::vector<char*> arguments;
    for (std::string& word : words) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    pid_t child = 0;
    int status = 1;
    return posix_spawn(&child, arguments.front(), nullptr, nullptr, arguments.data(), environ) == 0 &&
           waitpid(child, &status, 0) == child && status == 0;
}

void run(benchmark::State& state, const std::vector<std::string>& words) {
    for (auto _ : state) {
        if (!ran(words)) {
            state.SkipWithError("it did not run");
            break;
        }
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
BENCHMARK(emptyWindow)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(usableWindowOnTheDemo)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(drawnWindowOnTheDemo)->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (!ran({crosstick::places::program(), "demo", demo()})) {
        return 1;
    }
    if (sheetCopy().empty()) {
        return 1;
    }
    benchmark::RunSpecifiedBenchmarks();
    std::filesystem::remove_all(demo());
    return 0;
}
