// Labels that a hand placed: they stay where they were put, nothing is placed on them, and one far from what it names
// is tied to it by an extension line (engraving A13: 4 to 30 long).
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "symbols/signs.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using testing::Made;
using testing::MadeFilm;

constexpr double kThin = 0.25;

/// The item's letters whose middle is nearest to a place.
double letterNearest(const drawing::Drawing& drawn, Point place) {
    double nearest = 1e9;
    for (const drawing::TurnedBox& box : testing::letterBoxes(drawn)) {
        nearest = std::min(nearest, drawing::length(box.middle - place));
    }
    return nearest;
}

/// Length of the longest thin line that begins beside a place.
double tieFrom(const drawing::Drawing& drawn, Point place, double beside) {
    double longest = 0;
    for (const testing::InkLine& line : testing::inkLines(drawn)) {
        if (line.width <= kThin + 1e-9 && drawing::length(line.from - place) < beside) {
            longest = std::max(longest, drawing::length(line.to - line.from));
        }
    }
    return longest;
}

/// Every kind with a label of its own in one place; boxes, units and words carry their letters in themselves.
std::vector<std::string_view> labelled() {
    using measures::Sign;
    std::vector<std::string_view> kinds;
    for (const measures::Entry& entry : measures::catalogue()) {
        constexpr std::array kInThemselves{Sign::ActionBox, Sign::Unit,       Sign::OrderOfMarch, Sign::TaskWords,
                                           Sign::Words,     Sign::BoxedWords, Sign::Boundary};
        if (std::find(kInThemselves.begin(), kInThemselves.end(), entry.sign) == kInThemselves.end()) {
            MadeFilm film;
            if (!testing::texts(film.add(testing::sample(entry.kind, {100, 75})).drawn()).empty()) {
                kinds.push_back(entry.kind);
            }
        }
    }
    return kinds;
}

TEST(PlacedByHand, LettersOfEveryKindStandWhereTheyWerePut) {
    for (const std::string_view kind : labelled()) {
        const measures::Entry& entry = *measures::find(kind);
        if (entry.shape == measures::Shape::Point && entry.points.most == 1) {
            continue;  // a number inside a symbol stays there
        }
        Made made = testing::sample(kind, {100, 75});
        made.labelAt = Point{60, 30};
        MadeFilm film;
        film.add(made);
        const auto boxes = testing::letterBoxes(film.drawn());
        drawing::Box whole;
        for (const drawing::TurnedBox& box : boxes) {
            if (drawing::length(box.middle - *made.labelAt) < 6) {
                whole = whole.joined(box.bounds());
            }
        }
        ASSERT_FALSE(whole.isEmpty()) << kind;
        EXPECT_NEAR(whole.middle().x, 60, 0.2) << kind;
        EXPECT_NEAR(whole.middle().y, 30, 0.2) << kind;
    }
}

TEST(PlacedByHand, WhatIsFarIsTiedToWhatItNamesAndWhatIsNearIsNot) {
    for (const char* kind : {"phase-line", "objective", "main-supply-route", "direction-of-attack", "task-block",
                             "support-by-fire", "infiltration-lane", "axis-of-advance"}) {
        Made made = testing::sample(kind, {100, 75});
        made.labelAt = Point{100, 30};
        MadeFilm far;
        EXPECT_GT(tieFrom(far.add(made).drawn(), *made.labelAt, 12), 4) << kind;
    }
    Made line = testing::sample("phase-line", {100, 75});
    line.labelAt = Point{100, 78};
    MadeFilm near;
    EXPECT_EQ(tieFrom(near.add(line).drawn(), *line.labelAt, 12), 0);
    Made area = testing::sample("objective", {100, 75});
    area.labelAt = Point{100, 75};
    MadeFilm inside;
    EXPECT_EQ(tieFrom(inside.add(area).drawn(), *area.labelAt, 12), 0) << "inside its area a name needs no line";
}

TEST(PlacedByHand, TheTieEndsOnTheEdgeOfTheLineItNames) {
    Made line{.kind = "phase-line", .points = {{40, 80}, {160, 80}}, .name = "FLINT", .labelAt = Point{100, 40}};
    MadeFilm film;
    const drawing::Drawing drawn = film.add(line).drawn();
    bool ends = false;
    for (const testing::InkLine& ink : testing::inkLines(drawn)) {
        ends = ends ||
               (ink.width <= kThin + 1e-9 && std::abs(ink.to.y - 80) < 1e-6 && drawing::length(ink.to - ink.from) > 20);
    }
    EXPECT_TRUE(ends);
}

TEST(PlacedByHand, ANameBesideASymbolIsTiedToTheSymbol) {
    Made post = testing::sample("observation-post", {100, 75});
    post.labelAt = Point{130, 60};
    MadeFilm film;
    const drawing::Drawing drawn = film.add(post).drawn();
    EXPECT_LT(letterNearest(drawn, {130, 60}), 0.2);
    EXPECT_GT(tieFrom(drawn, {130, 60}, 8), 15);
}

// The law: whatever else lies on the film, letters stay where a hand put them, and no other letters or symbols lie on
// them.
TEST(PlacedByHand, NothingIsPlacedOnLettersOfAHandAndNothingMovesThem) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        MadeFilm film = testing::randomFilm(seed, 30);
        Made line{.kind = "phase-line", .points = {{40, 80}, {160, 80}}, .name = "FLINT"};
        line.labelAt = Point{random.between(30, 170), random.between(20, 130)};
        film.add(line);
        const EngravedFilm engraved = film.engraved();
        const auto own = std::find_if(engraved.items.begin(), engraved.items.end(),
                                      [&](const EngravedItem& item) { return item.item == film.item(); });
        ASSERT_NE(own, engraved.items.end());
        const auto letters = testing::letterBoxes(own->drawing);
        ASSERT_EQ(letters.size(), 1U);
        EXPECT_LT(drawing::length(letters.front().middle - *line.labelAt), 1e-6);
        for (const EngravedItem& item : engraved.items) {
            for (const Part& part : item.parts) {
                EXPECT_TRUE(item.item == own->item || !part.box.grown(-0.1).meets(letters.front()));
            }
        }
    }
}

TEST(PlacedByHand, ANameOfARouteKeepsItsPlaceAndIsTiedWhenFar) {
    for (const bool isFar : {false, true}) {
        Stage stage(MadeFilm::kWindow, drawing::Gauge(), PenMode::Colour);
        const Point at = isFar ? Point{100, 40} : Point{100, 76};
        stage.add(ExhibitRoute{.vertices = {{40, 80}, {160, 80}}, .name = "QUILL", .labelAt = at});
        const drawing::Drawing drawn = stage.engraved();
        EXPECT_LT(letterNearest(drawn, at), 1e-6);
        EXPECT_EQ(tieFrom(drawn, at, 12) > 4, isFar);
    }
}

/// The box of the letters that say something on what was added last, or an empty box.
drawing::TurnedBox boxOf(const drawing::Drawing& drawn, std::string_view words) {
    const auto texts = testing::texts(drawn);
    const auto boxes = testing::letterBoxes(drawn);
    for (std::size_t n = 0; n < texts.size(); ++n) {
        if (texts[n].text.starts_with(words)) {
            return boxes[n];
        }
    }
    return {};
}

TEST(PlacedByHand, FiguresOfALegStandWhereTheyWerePutAndAreTiedToTheirOwnLeg) {
    MadeFilm film;
    film.add(testing::MadeRoute{.vertices = {{20, 40}, {20, 110}, {150, 110}},
                                .stops = {0, 1, 2},
                                .name = "QUILL",
                                .figuresAt = {{0, {100, 104}}}});
    const drawing::Drawing drawn = film.drawn();
    EXPECT_LT(drawing::length(boxOf(drawn, "1  ").middle - Point{100, 104}), 1e-6);
    bool isTied = false;
    for (const testing::InkLine& ink : testing::inkLines(drawn)) {
        isTied = isTied || (ink.width <= kThin + 1e-9 && std::abs(ink.to.x - 20) < 1e-6 && ink.from.x > 80);
    }
    EXPECT_TRUE(isTied) << "to the first leg, though the second is nearer";
    EXPECT_GT(boxOf(drawn, "2  ").width, 0) << "the others go by the rules";
}

// In the open there is room for all of it; beside a short leg there is none.
TEST(PlacedByHand, FiguresOfAShortLegSayAllOfItInTheOpen) {
    for (const auto& [place, isWhole] : {std::pair{Point{60, 60}, true}, std::pair{Point{45, 83}, false}}) {
        MadeFilm film;
        film.add(testing::MadeRoute{
            .vertices = {{40, 80}, {50, 80}, {150, 80}}, .stops = {0, 1, 2}, .figuresAt = {{0, place}}});
        const drawing::TurnedBox box = boxOf(film.drawn(), isWhole ? "1  " : "1");
        EXPECT_LT(drawing::length(box.middle - place), 1e-6);
        EXPECT_EQ(box.width > 10, isWhole);
    }
}

TEST(PlacedByHand, AnEditOfAnotherLegLeavesTheFiguresOfALegWhereTheyAre) {
    const Point place{120, 60};
    for (const Points& vertices :
         {Points{{20, 80}, {60, 80}, {100, 80}, {150, 80}}, Points{{20, 80}, {40, 95}, {60, 80}, {100, 80}, {150, 80}},
          Points{{20, 20}, {60, 20}, {100, 80}, {150, 80}}}) {
        MadeFilm film;
        const std::size_t last = vertices.size() - 1;
        film.add(testing::MadeRoute{
            .vertices = vertices, .stops = {0, last - 2, last - 1, last}, .figuresAt = {{2, place}}});
        EXPECT_LT(drawing::length(boxOf(film.drawn(), "3  ").middle - place), 1e-6);
    }
}

TEST(PlacedByHand, NothingIsPlacedOnFiguresOfAHandAndNothingMovesThem) {
    for (std::uint64_t seed = 101; seed <= 140; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        MadeFilm film = testing::randomFilm(seed, 30);
        const Point place{random.between(30, 170), random.between(20, 130)};
        film.add(testing::MadeRoute{
            .vertices = {{30, 80}, {90, 85}, {165, 75}}, .stops = {0, 1, 2}, .figuresAt = {{1, place}}});
        const drawing::TurnedBox letters = boxOf(film.drawn(), "2  ");
        EXPECT_LT(drawing::length(letters.middle - place), 1e-6);
        const EngravedFilm engraved = film.engraved();
        for (const EngravedItem& item : engraved.items) {
            for (const Part& part : item.parts) {
                EXPECT_TRUE((item.item == film.item() && part.leg) || !part.box.grown(-0.1).meets(letters));
            }
        }
    }
}

// A hand takes hold of the name, and of the figures leg by leg; of a leg walked again only of the first time's.
TEST(PlacedByHand, FiguresAreAHandsByTheirLegAndOnceForALeg) {
    Stage stage(MadeFilm::kWindow, drawing::Gauge(), PenMode::Colour);
    stage.add(Exhibit{.kind = "checkpoint", .points = {{40, 80}}, .number = "1"});
    stage.add(Exhibit{.kind = "checkpoint", .points = {{140, 80}}, .number = "2"});
    stage.add(ExhibitRoute{.vertices = {{40, 80}, {140, 80}, {90, 130}, {40, 80}, {140, 80}},
                           .stops = {{0, 0}, {1, 1}, {3, 0}, {4, 1}}});
    std::vector<plan::LegPiece> legs;
    for (const EngravedItem& item : stage.film().items) {
        for (const Part& part : item.parts) {
            if (part.leg) {
                EXPECT_EQ(part.what, Part::What::Figures);
                legs.push_back(*part.leg);
            }
        }
    }
    const plan::ItemId one = stage.shown()[0].item;
    const plan::ItemId two = stage.shown()[1].item;
    EXPECT_EQ(legs, (std::vector<plan::LegPiece>{{one, two, 0, 0}, {two, one, 0, 1}, {two, one, 1, 1}}));
}

TEST(PlacedByHand, ARoutesNameIsToldFromFigures) {
    MadeFilm film;
    film.add(
        testing::MadeRoute{.vertices = {{20, 40}, {60, 80}, {110, 80}, {170, 50}}, .stops = {1, 2}, .name = "QUILL"});
    int names = 0;
    int figures = 0;
    const EngravedFilm engraved = film.engraved();
    for (const EngravedItem& item : engraved.items) {
        if (item.item != film.item()) {
            continue;
        }
        const auto texts = testing::texts(item.drawing);
        const auto boxes = testing::letterBoxes(item.drawing);
        for (const Part& part : item.parts) {
            for (std::size_t n = 0; n < texts.size(); ++n) {
                if (drawing::length(boxes[n].middle - part.box.middle) < 1e-6) {
                    const bool isName = texts[n].text == "RTE QUILL";
                    EXPECT_EQ(part.what, isName ? Part::What::Letters : Part::What::Figures) << texts[n].text;
                    (isName ? names : figures) += 1;
                }
            }
        }
    }
    EXPECT_EQ(names, 1);
    EXPECT_GE(figures, 1);
}

}  // namespace
}  // namespace crosstick::symbols
