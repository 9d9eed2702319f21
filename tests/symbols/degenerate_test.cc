// Input that no draughtsman would give: no length, no area, too few points, no finite place (engraving A16).
#include <cmath>
#include <limits>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "core/measures/catalogue.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

bool isPlace(const measures::Entry& entry) {
    return entry.shape == measures::Shape::Point || entry.shape == measures::Shape::Text;
}

TEST(Degenerate, OfNoLengthIsADotWithItsNameByAnExtensionLine) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (isPlace(entry)) {
            continue;
        }
        Made made = testing::sample(entry.kind, {100, 75});
        made.points.assign(made.points.size(), {100, 75});
        MadeFilm film;
        film.add(made);
        EXPECT_THAT(film.remarks(), ElementsAre("symbols/no-length")) << entry.kind;
        const drawing::Drawing drawn = film.drawn();
        EXPECT_NEAR(testing::reach(drawn, {100, 75}, {0, 1}, 0.45), 0.4, 1e-6) << entry.kind;
        if (entry.kind != "boundary") {
            EXPECT_FALSE(testing::texts(drawn).empty()) << entry.kind;
        }
    }
}

TEST(Degenerate, PointsNearerThanAHalfTenthAreOne) {
    for (const char* kind : {"phase-line", "boundary", "objective", "direction-of-main-attack"}) {
        Made made = testing::sample(kind, {100, 75});
        MadeFilm plain;
        plain.add(made);
        Points doubled;
        for (const Point p : made.points) {
            doubled.push_back(p);
            doubled.push_back(p + Point{0.03, 0.01});
        }
        doubled.pop_back();
        made.points = doubled;
        MadeFilm film;
        film.add(made);
        EXPECT_EQ(describe(film.drawn()), describe(plain.drawn())) << kind;
    }
}

TEST(Degenerate, NotFiniteIsNotDrawnAndSaid) {
    for (const measures::Entry& entry : measures::catalogue()) {
        for (const double wrong : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
            Made made = testing::sample(entry.kind, {100, 75});
            made.points.back().x = wrong;
            MadeFilm film;
            film.add(made);
            EXPECT_TRUE(film.drawn().isEmpty()) << entry.kind;
            EXPECT_THAT(film.remarks(), ElementsAre("symbols/not-reached")) << entry.kind;
        }
    }
}

TEST(Degenerate, WithTooFewPointsIsStillSomething) {
    for (const measures::Entry& entry : measures::catalogue()) {
        const Made whole = testing::sample(entry.kind, {100, 75});
        for (std::size_t count = 1; count < whole.points.size(); ++count) {
            Made made = whole;
            made.points.resize(count);
            MadeFilm film;
            film.add(made);
            EXPECT_FALSE(film.drawn().isEmpty()) << entry.kind << ' ' << count;
        }
    }
}

TEST(Degenerate, WithoutPointsIsLeftAlone) {
    MadeFilm film;
    film.add(Made{.kind = "phase-line", .name = "FLINT"});
    EXPECT_TRUE(film.engraved().items.empty());
    EXPECT_THAT(film.remarks(), IsEmpty());
}

TEST(Degenerate, WithoutNameOrNumberIsDrawnWithoutARemark) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.shape == measures::Shape::Text || entry.lies == measures::Lies::OnThePaper) {
            continue;
        }
        Made made = testing::sample(entry.kind, {100, 75});
        made.name = made.number = "";
        made.fields.clear();
        MadeFilm film;
        film.add(made);
        EXPECT_FALSE(film.drawn().isEmpty()) << entry.kind;
        EXPECT_THAT(film.remarks(), IsEmpty()) << entry.kind;
    }
}

TEST(Degenerate, AThinAreaIsALine) {
    MadeFilm film;
    film.add(Made{.kind = "objective", .points = {{60, 75}, {120, 75}, {90, 75.005}}, .name = "PINE"});
    double ink = 0;
    for (const testing::InkLine& line : testing::inkLines(film.drawn())) {
        ink += line.width > 0.3 ? drawing::length(line.to - line.from) : 0;
    }
    EXPECT_NEAR(ink, 60, 0.1);
    EXPECT_FALSE(testing::texts(film.drawn()).empty());
}

TEST(Degenerate, ATinyAreaIsASquareOfTwo) {
    MadeFilm film;
    film.add(Made{.kind = "objective", .points = {{100, 75}, {100.9, 75}, {100.5, 75.8}}, .name = "PINE"});
    drawing::Drawing edge = film.drawn();
    edge.marks.resize(1);  // then come the name and its extension line
    const Point middle{(100 + 100.9 + 100.5) / 3, (75 + 75 + 75.8) / 3};
    for (const Point side : {Point{1, 0}, Point{-1, 0}, Point{0, 1}, Point{0, -1}}) {
        EXPECT_NEAR(testing::reach(edge, middle, side, 2.0), 1.2, 1e-6);
    }
    EXPECT_THAT(testing::texts(film.drawn()), ::testing::SizeIs(1));
}

TEST(Degenerate, AnAreaThatCrossesItselfKeepsItsNameInside) {
    MadeFilm film;
    film.add(Made{.kind = "objective", .points = {{60, 50}, {120, 100}, {120, 50}, {60, 100}}, .name = "PINE"});
    const auto boxes = testing::letterBoxes(film.drawn());
    ASSERT_EQ(boxes.size(), 2U);
    for (const auto& box : boxes) {
        EXPECT_GT(std::abs(box.middle.x - 90), 8);  // in one of the two parts, not on the crossing
    }
}

TEST(Degenerate, SupportByFireWithoutABarStandsSquareToItsAim) {
    Made made = testing::sample("support-by-fire", {100, 75});
    made.points = {{100, 90}, {100, 90}, {90, 60}, {110, 60}};
    MadeFilm film;
    film.add(made);
    EXPECT_GE(testing::reach(film.drawn(), {100, 90}, {1, 0}, 5), 0.45 * 6);
    made.points = {{100, 90}, {100, 90}, {90, 90}, {110, 90}};  // the limits' middle is the position itself
    MadeFilm level;
    level.add(made);
    EXPECT_GT(drawing::extent(level.drawn()).width(), 19);
    for (const testing::InkLine& line : testing::inkLines(level.drawn())) {
        EXPECT_GT(drawing::length(line.to - line.from), 0.05);
    }
}

TEST(Degenerate, SupportByFireWithCrossedLimitsIsUncrossed) {
    Made made = testing::sample("support-by-fire", {100, 75});
    MadeFilm plain;
    plain.add(made);
    std::swap(made.points[2], made.points[3]);
    MadeFilm crossed;
    crossed.add(made);
    EXPECT_EQ(describe(crossed.drawn()), describe(plain.drawn()));
}

TEST(Degenerate, UnknownKindIsDrawnInWordsWithARemark) {
    MadeFilm film;
    film.add(Made{.kind = "kettle-of-fish", .points = {{60, 75}, {120, 75}}, .name = "FLINT"});
    EXPECT_THAT(film.remarks(), ElementsAre("symbols/unknown-kind"));
    EXPECT_EQ(testing::texts(film.drawn()).size(), 1U);
}

TEST(Degenerate, RouteWithRepeatedPointsKeepsItsLegs) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {80, 75}, {80, 75}, {130, 75}}, .stops = {0, 1, 3}, .name = "QUILL"});
    EXPECT_FALSE(film.drawn().isEmpty());
    EXPECT_THAT(film.remarks(), IsEmpty());
}

TEST(Degenerate, RouteOfNoLengthIsADotAndSaid) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{80, 75}, {80, 75}}, .stops = {}, .name = "QUILL"});
    EXPECT_THAT(film.remarks(), ElementsAre("symbols/no-length"));
}

TEST(Degenerate, AnyPointsOfAnyKindAreBorne) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        MadeFilm film;
        for (const measures::Entry& entry : measures::catalogue()) {
            Made made = testing::sample(entry.kind, {100, 75});
            made.points.clear();
            for (int n = random.below(6); n >= 0; --n) {  // many of them equal, in line, or turning back
                made.points.push_back({60.0 + 20 * random.below(3), 60.0 + 10 * random.below(3)});
            }
            film.add(made);
        }
        for (const EngravedItem& item : film.engraved().items) {
            for (const testing::InkLine& line : testing::inkLines(item.drawing)) {
                EXPECT_TRUE(drawing::isFinite(line.from) && drawing::isFinite(line.to)) << describe(item.drawing);
            }
        }
    }
}

}  // namespace
}  // namespace crosstick::symbols
