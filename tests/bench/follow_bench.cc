// Following a printed line of 3 km at 1:25,000 on a made sheet after scanner and JPEG, beside reading the pixels that
// lie about it. Aim: under 300 ms a segment.
#include <algorithm>
#include <cmath>

#include <benchmark/benchmark.h>

#include "core/terrain/follow.h"
#include "tests/terrain/known_walks.h"

namespace crosstick {
namespace {

using namespace testing;

constexpr double kSegmentMm = 120;

const MadeSheet& sheet() {
    static const MadeSheet kSheet = [] {
        MadeSheet made = madeSheet({33});
        made.pixels = scanned(made.pixels, 85, 3, 33);
        return made;
    }();
    return kSheet;
}

const HeldPixels& picture() {
    static const HeldPixels kPicture(sheet().pixels);
    return kPicture;
}

void follow(benchmark::State& state, const std::string& style) {
    const auto known = std::find_if(sheet().lines.begin(), sheet().lines.end(),
                                    [&](const KnownLine& line) { return line.style == style; });
    const double all = lengthOf(known->line);
    const double length = std::min(kSegmentMm, style == "contour" || style == "shore" ? 0.3 * all : 0.7 * all);
    const PaperLine truth = stretch(known->line, 0.1 * all, 0.1 * all + length);
    const double k = sheet().pixelsPerMm;
    const terrain::PicturePoint from{truth.front().x * k, truth.front().y * k};
    const terrain::PicturePoint to{truth.back().x * k, truth.back().y * k};
    for (auto _ : state) {
        const auto found = terrain::followedLine(picture(), {k}, from, to);
        if (!found) {
            state.SkipWithError("no line was found");
            break;
        }
        benchmark::DoNotOptimize(found->line.data());
    }
}
BENCHMARK_CAPTURE(follow, orange_road, "orange road")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, white_road, "white road")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, track, "track")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, path, "path")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, stream, "stream")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, shore, "shore")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(follow, contour, "contour")->Unit(benchmark::kMillisecond);

/// What the law counts on 4 sheets (tests/terrain/follow_law_test.cc), on 20 others: of 500 random pairs, per cent.
void pairsOfManySheets(benchmark::State& state) {
    constexpr int kSheets = 20;
    constexpr int kPairs = 25;
    const auto firstSeed = static_cast<std::uint32_t>(state.range(0));
    int atOnce = 0;
    int halfWay = 0;
    int whereItStrays = 0;
    for (auto _ : state) {
        for (std::uint32_t seed = firstSeed; seed < firstSeed + kSheets; ++seed) {
            const MadeSheet made = madeSheet({seed});
            const HeldPixels scan(scanned(made.pixels, 85, 3, seed));
            const terrain::PenSize size{made.pixelsPerMm};
            Walks walks(made, seed);
            for (int n = 0; n < kPairs; ++n) {
                const Walk walk = walks.next();
                const auto isRight = [&](Clicks clicks) {
                    return gradeOf(foundAlong(scan, size, walk, clicks), walk, size.pixelsPerMm).isRight;
                };
                const bool isAtOnce = isRight(Clicks::Two);
                atOnce += isAtOnce ? 1 : 0;
                halfWay += isAtOnce || isRight(Clicks::HalfWay) ? 1 : 0;
                whereItStrays += isAtOnce || isRight(Clicks::WhereItStrays) ? 1 : 0;
            }
        }
    }
    const auto perCent = [](int count) { return 100.0 * count / (kSheets * kPairs); };
    state.counters["at once, %"] = perCent(atOnce);
    state.counters["a click half way, %"] = perCent(halfWay);
    state.counters["where it strays, %"] = perCent(whereItStrays);
}
BENCHMARK(pairsOfManySheets)->Arg(5001)->Arg(6001)->Unit(benchmark::kSecond)->Iterations(1);

/// The floor: every pixel of a square about the segment, once.
void readingThePixels(benchmark::State& state) {
    const int side = static_cast<int>(kSegmentMm * sheet().pixelsPerMm);
    for (auto _ : state) {
        auto pixels = picture().read({0, 0, side, side}, side, side);
        benchmark::DoNotOptimize(pixels->rgb.data());
    }
}
BENCHMARK(readingThePixels)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace crosstick

BENCHMARK_MAIN();
