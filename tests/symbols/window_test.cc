// Lines are clipped at the window, symbols and letters are whole inside it or left out with a remark (engraving A18).
#include <algorithm>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using ::testing::Contains;
using ::testing::ElementsAre;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

TEST(Window, HoldsAllInkOfAnyFilm) {
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        MadeFilm film = testing::randomFilm(seed, 40);
        if (seed % 2 == 0) {
            film.onePen();
        }
        for (const EngravedItem& item : film.engraved().items) {
            for (const testing::InkLine& line : testing::inkLines(item.drawing)) {
                const drawing::Box most = MadeFilm::kWindow.grown(1e-6);
                EXPECT_TRUE(most.contains(line.from) && most.contains(line.to)) << describe(item.drawing);
            }
        }
    }
}

// Ticks and the administrative block are no place for letters or symbols.
TEST(Window, LeavesReservedBoxesAlone) {
    const drawing::Box block{100, 100, 200, 150};
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        MadeFilm film = testing::randomFilm(seed, 30);
        film.reserve(block);
        for (const drawing::TurnedBox& letters : testing::letterBoxes(film.engraved().all())) {
            EXPECT_FALSE(letters.meets(drawing::TurnedBox{block.middle(), block.width(), block.height(), Degrees(0)}));
        }
    }
}

TEST(Window, CutsALineWhereItLeaves) {
    MadeFilm film;
    film.add(Made{.kind = "phase-line", .points = {{150, 75}, {260, 75}}, .name = "FLINT"});
    EXPECT_NEAR(drawing::extent(film.drawn()).right, 200, 0.3);
}

TEST(Window, CutsAnAreaWhoseEdgeRunsOut) {
    MadeFilm film;
    film.add(Made{.kind = "objective", .points = {{150, 40}, {250, 40}, {250, 100}, {150, 100}}, .name = "PINE"});
    const drawing::Drawing drawn = film.drawn();
    EXPECT_NEAR(testing::reach(drawn, {100, 75}, {1, 0}, 200), 100, 0.3);
    EXPECT_EQ(testing::letterBoxes(drawn).size(), 2U);
}

// Far outside, every kind is nothing on the film and one remark that says so.
TEST(Window, LeavesOutWhatLiesOutside) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.lies == measures::Lies::OnThePaper) {
            continue;  // a block lies nowhere else
        }
        MadeFilm film;
        film.add(testing::sample(entry.kind, {400, -300}));
        EXPECT_TRUE(film.drawn().isEmpty()) << entry.kind;
        EXPECT_THAT(film.remarks(), ElementsAre("symbols/outside-window")) << entry.kind;
    }
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{300, 300}, {350, 320}}, .stops = {}, .name = "QUILL"});
    EXPECT_TRUE(film.drawn().isEmpty());
    EXPECT_THAT(film.remarks(), ElementsAre("symbols/outside-window"));
}

// On the edge itself the spot is on the film: its symbol stands inside, tied by an extension line.
TEST(Window, KeepsSymbolsOnItsEdgeWhole) {
    for (const measures::Entry& entry : measures::catalogue()) {
        // A range ring is a line on the ground: like any other it is cut at the frame.
        if (entry.shape != measures::Shape::Point || entry.sign == measures::Sign::RangeRing ||
            entry.lies == measures::Lies::OnThePaper) {
            continue;
        }
        for (const Point spot : {Point{100, 0.5}, Point{199, 75}, Point{100, 149.5}, Point{3, 146}}) {
            MadeFilm film;
            film.add(testing::sample(entry.kind, spot));
            const drawing::Drawing drawn = film.drawn();
            EXPECT_FALSE(drawn.isEmpty()) << entry.kind;
            // Only the dot on the spot may come as near as that.
            for (const testing::InkLine& line : testing::inkLines(drawn)) {
                const bool atSpot = drawing::length(line.from - spot) < 0.6 || drawing::length(line.to - spot) < 0.6;
                EXPECT_TRUE(atSpot || (MadeFilm::kWindow.grown(-1.5).contains(line.from) &&
                                       MadeFilm::kWindow.grown(-1.5).contains(line.to)))
                    << entry.kind << ' ' << spot.x << ' ' << spot.y;
            }
            EXPECT_TRUE(film.remarks().empty()) << entry.kind << ' ' << spot.x << ' ' << spot.y;
        }
    }
}

// In a corner there may be no place that an extension line reaches: then it is left out, and that is said.
TEST(Window, NeverCutsASymbolInItsCorner) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.shape == measures::Shape::Point && entry.sign != measures::Sign::RangeRing &&
            entry.lies == measures::Lies::OnTheGround) {
            MadeFilm film;
            film.add(testing::sample(entry.kind, {0.5, 0.5}));
            EXPECT_EQ(film.drawn().isEmpty(), !film.remarks().empty()) << entry.kind;
        }
    }
}

TEST(Window, KeepsASymbolThatWasSetAsideOutsideIt) {
    for (const char* kind : {"checkpoint", "coordination-point", "observation-post", "target-reference-point"}) {
        Made made = testing::sample(kind, {190, 75});
        made.symbolAt = Point{240, 60};
        MadeFilm film;
        film.add(made);
        EXPECT_TRUE(MadeFilm::kWindow.contains(drawing::extent(film.drawn()))) << kind;
        EXPECT_FALSE(film.drawn().isEmpty()) << kind;
    }
}

TEST(Window, ASymbolSetAsideByHandStandsWhereItWasPut) {
    for (const char* kind : {"coordination-point", "observation-post", "target-reference-point"}) {
        Made made = testing::sample(kind, {100, 75});
        made.symbolAt = Point{120, 60};
        MadeFilm film;
        film.add(made);
        const drawing::Drawing drawn = film.drawn();
        EXPECT_GT(testing::reach(drawn, {120, 60}, {0, -1}, 8), 1.5) << kind;
        EXPECT_NEAR(testing::reach(drawn, {100, 75}, {0, 1}, 2), 0.4, 1e-6) << kind;  // the dot on the spot
    }
}

// Its middle lies off the film: the part that is seen carries the name.
TEST(Window, NamesAnAreaLargerThanTheFilmInsideIt) {
    MadeFilm film;
    film.add(Made{
        .kind = "area-of-operations", .points = {{-900, -600}, {150, -500}, {180, 120}, {-800, 900}}, .name = "HEATH"});
    const auto letters = testing::letterBoxes(film.drawn());
    ASSERT_EQ(letters.size(), 2U);
    for (const drawing::TurnedBox& box : letters) {
        EXPECT_TRUE(box.inside(MadeFilm::kWindow.grown(-2)));
    }
    EXPECT_TRUE(film.remarks().empty());
}

}  // namespace
}  // namespace crosstick::symbols
