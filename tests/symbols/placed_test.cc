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

// A hand takes hold of the name; numbers, azimuths and distances stand where the legs are.
TEST(PlacedByHand, OfARoutesLettersOnlyTheNameIsAHands) {
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
