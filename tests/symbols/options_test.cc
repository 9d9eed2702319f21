// What a measure's fields ask for beside the usual drawing (engraving B1, B2, E7).
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using testing::Made;
using testing::MadeFilm;

drawing::Drawing drawn(const Made& made) {
    MadeFilm film;
    return film.add(made).drawn();
}

/// Each filled ring, the first point of which is a head's tip.
std::vector<drawing::Points> fills(const drawing::Drawing& drawing) {
    std::vector<drawing::Points> rings;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* fill = std::get_if<drawing::Fill>(&mark)) {
            rings.insert(rings.end(), fill->rings.begin(), fill->rings.end());
        }
    }
    return rings;
}

// Two, three and four heads from 7, 10 and 14 per cent on: army subcourse MP1028C. One from 5 on is from memory.
TEST(Options, ASlopeHasAsManyHeadsAsItIsSteepWithTheirTipsUphill) {
    for (const auto& [slope, heads] :
         {std::pair{"", 1U}, {"5", 1U}, {"6.9", 1U}, {"7", 2U}, {"10", 3U}, {"13", 3U}, {"14", 4U}, {"40", 4U}}) {
        const drawing::Drawing drawing =
            drawn({.kind = "slope-arrows", .points = {{100, 75}, {100, 60}}, .fields = {{"slope", slope}}});
        const auto rings = fills(drawing);
        ASSERT_EQ(rings.size(), heads) << slope;
        for (const drawing::Points& head : rings) {
            EXPECT_NEAR(head[1].y - head[0].y, 1.6, 1e-9) << "the tip is the upper end";
            EXPECT_NEAR(head[2].y - head[0].y, 1.6, 1e-9);
        }
        const auto texts = testing::texts(drawing);
        ASSERT_EQ(texts.size(), *slope == 0 ? 0U : 1U);
        if (*slope != 0) {
            EXPECT_EQ(texts.front().text, std::string(slope) + " %");
            EXPECT_GT(testing::letterBoxes(drawing).front().middle.x, 100) << "to the right of the heads";
        }
    }
}

TEST(Options, ACrossStandsOverTheLettersOfACollectionPointAndClearOfThem) {
    const Made plain{.kind = "casualty-collection-point", .points = {{100, 75}}, .number = "1"};
    Made crossed = plain;
    crossed.fields = {{"cross", "yes"}};
    const drawing::Drawing drawing = drawn(crossed);
    const auto letters = testing::letterBoxes(drawing);
    ASSERT_EQ(letters.size(), 2U);
    int arms = 0;
    for (const testing::InkLine& line : testing::inkLines(drawing)) {
        if (line.width == 0.5) {
            ++arms;
            EXPECT_NEAR(drawing::length(line.to - line.from), 2.0, 1e-9);
            EXPECT_NEAR((line.from.x + line.to.x) / 2, 100, 1e-9);
            EXPECT_LE(std::max(line.from.y, line.to.y), letters.front().bounds().top - 0.6 + 1e-9);
        }
    }
    EXPECT_EQ(arms, 2);
    EXPECT_GE(testing::clearance(letters.back(), drawing), 0.4) << "the box has grown with what stands in it";
    EXPECT_NEAR(testing::reach(drawing, {100, 75}, {0, 1}, 4), 0, 0.05) << "its tip stays on the spot";
}

TEST(Options, ACheckpointIsLetteredOverItsNumberWhereThatIsAskedFor) {
    const Made plain{.kind = "checkpoint", .points = {{100, 75}}, .number = "7"};
    Made lettered = plain;
    lettered.fields = {{"lettered", "yes"}};
    const auto bare = testing::texts(drawn(plain));
    const auto both = testing::texts(drawn(lettered));
    ASSERT_EQ(bare.size(), 1U);
    ASSERT_EQ(both.size(), 2U);
    EXPECT_EQ(both.front().text, "CKP");
    EXPECT_EQ(both.back().text, "7");
}

// The heads lie on the line, point as it was drawn, and stand clear of the name.
TEST(Options, HeadsOfAOneWayRoutePointAsItWasDrawn) {
    for (const bool east : {true, false}) {
        Made made{.kind = "main-supply-route", .points = {{20, 75}, {180, 75}}, .name = "FLINT"};
        made.fields = {{"one_way", "yes"}};
        if (!east) {
            std::reverse(made.points.begin(), made.points.end());
        }
        const drawing::Drawing drawing = drawn(made);
        const auto rings = fills(drawing);
        ASSERT_EQ(rings.size(), 2U) << "160 mm are one share";
        std::vector<double> middles;
        for (const drawing::Points& head : rings) {
            EXPECT_NEAR(head[0].y, 75, 1e-9);
            EXPECT_EQ(head[0].x > head[1].x, east);
            middles.push_back((head[0].x + head[1].x) / 2);
            for (const drawing::TurnedBox& letters : testing::letterBoxes(drawing)) {
                EXPECT_GT(std::abs(letters.middle.x - head[0].x), letters.width / 2 + 2.4);
            }
        }
        std::sort(middles.begin(), middles.end());
        EXPECT_NEAR(middles.front(), 20 + 0.2 * 160, 0.01);
        EXPECT_NEAR(middles.back(), 20 + 0.8 * 160, 0.01);
    }
    EXPECT_TRUE(fills(drawn({.kind = "main-supply-route", .points = {{20, 75}, {180, 75}}})).empty());
}

// Each row bulges to the other side's force and their crowns stand 0.8 apart; ours is black, theirs red.
TEST(Options, RowsOfALineOfContactBulgeTowardEachOther) {
    for (const bool left : {true, false}) {
        Made made{.kind = "line-of-contact", .points = {{40, 75}, {160, 75}}};
        made.fields = {{"half_circles", "yes"}, {"enemy_side", left ? "left" : "right"}};
        drawing::Box ours;
        drawing::Box theirs;
        const drawing::Drawing drawing = drawn(made);
        for (const drawing::Mark& mark : drawing.marks) {
            if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
                for (const drawing::Polyline& piece : stroke->pieces) {
                    for (const Point p : piece.points) {
                        drawing::Box& row = stroke->ink == drawing::Ink::Red ? theirs : ours;
                        row = row.joined({p.x, p.y, p.x, p.y});
                    }
                }
            }
        }
        const double upward = left ? 1 : -1;  // the enemy is above a line that runs to the right, or below it
        EXPECT_NEAR((75 - theirs.middle().y) * upward, 1.9 - 0.75, 0.01);
        EXPECT_NEAR((ours.middle().y - 75) * upward, 1.9 - 0.75, 0.01);
        EXPECT_NEAR(std::max(ours.top, theirs.top) - std::min(ours.bottom, theirs.bottom), 0.8, 0.02);
        int words = 0;
        for (const drawing::Text& text : testing::texts(drawing)) {
            words += text.text == "LC" ? 1 : 0;
        }
        EXPECT_EQ(words, 2);
    }
    EXPECT_EQ(testing::texts(drawn({.kind = "line-of-contact", .points = {{40, 75}, {160, 75}}})).size(), 2U)
        << "without it a line with LC at both ends";
}

}  // namespace
}  // namespace crosstick::symbols
