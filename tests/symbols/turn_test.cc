// What holds for all kinds however they lie: turned by a right angle the ink turns and letters do not, another scale
// leaves the millimetres alone, what stands on a spot stands upright wherever the spot is.
#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "symbols/signs.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using testing::Made;
using testing::MadeFilm;

constexpr Point kMiddle{100.0137, 75.0219};

/// Drawn by itself, without a name.
drawing::Drawing drawn(const Made& made) {
    MadeFilm film;
    film.add(made);
    return film.drawn();
}

Point turned(Point p) {
    const Vector from = p - kMiddle;
    return kMiddle + Vector{-from.y, from.x};
}

Made turned(Made made) {
    for (Point& p : made.points) {
        p = turned(p);
    }
    return made;
}

drawing::Drawing turnedInk(drawing::Drawing all) {
    drawing::Drawing ink;
    for (drawing::Mark& mark : all.marks) {
        if (auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (drawing::Polyline& piece : stroke->pieces) {
                std::transform(piece.points.begin(), piece.points.end(), piece.points.begin(),
                               [](Point p) { return turned(p); });
            }
            ink.marks.emplace_back(std::move(*stroke));
        } else if (auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (Points& ring : fill->rings) {
                std::transform(ring.begin(), ring.end(), ring.begin(), [](Point p) { return turned(p); });
            }
            ink.marks.emplace_back(std::move(*fill));
        }
    }
    return ink;
}

/// Signs whose ink is not that of their points alone: hatching lies as the paper lies.
bool liesAsThePaper(measures::Sign sign) {
    return sign == measures::Sign::Hatched || sign == measures::Sign::CrossHatched || sign == measures::Sign::NoGo;
}

Made nameless(const measures::Entry& entry) {
    Made made = testing::sample(entry.kind, kMiddle);
    made.name.clear();
    made.number.clear();
    made.fields.clear();
    return made;
}

TEST(Turned, InkWithoutLettersTurnsWithItsPoints) {
    int tried = 0;
    for (const measures::Entry& entry : measures::catalogue()) {
        const SignRule& rule = ruleOf(entry.sign);
        if (rule.body == Body::Spot || liesAsThePaper(entry.sign)) {
            continue;
        }
        const Made made = nameless(entry);
        const drawing::Drawing before = drawn(made);
        if (!testing::texts(before).empty()) {
            continue;
        }
        ++tried;
        EXPECT_TRUE(testing::isSameInk(turnedInk(before), drawn(turned(made)))) << entry.kind;
    }
    EXPECT_GE(tried, 9);
}

TEST(Turned, LettersStayAsHighAndAsManyAndAreReadable) {
    for (const measures::Entry& entry : measures::catalogue()) {
        const Made made = testing::sample(entry.kind, kMiddle);
        std::vector<double> before;  // what a label says may turn with it: the limits of a field of view
        std::vector<double> after;
        for (const drawing::Text& text : testing::texts(drawn(made))) {
            before.push_back(text.capHeight);
        }
        for (const drawing::Text& text : testing::texts(drawn(turned(made)))) {
            after.push_back(text.capHeight);
            EXPECT_GT(text.angle.value(), -90) << entry.kind;
            EXPECT_LE(text.angle.value(), 90) << entry.kind;
        }
        std::sort(before.begin(), before.end());
        std::sort(after.begin(), after.end());
        EXPECT_EQ(before, after) << entry.kind;
    }
}

TEST(Turned, WhatStandsOnASpotIsTheSameWhereverTheSpotIs) {
    const Vector by{-31.4, 22.7};
    for (const measures::Entry& entry : measures::catalogue()) {
        if (ruleOf(entry.sign).body != Body::Spot || entry.lies == measures::Lies::OnThePaper) {
            continue;
        }
        Made made = testing::sample(entry.kind, kMiddle);
        const drawing::Drawing before = drawn(made);
        made.points = {kMiddle + by};
        EXPECT_TRUE(testing::isSameInk(drawing::moved(before, by), drawn(made))) << entry.kind;
    }
}

// The film of 1:50,000 shows twice as much ground in a millimetre; what is drawn is given in millimetres.
TEST(Scaled, AnotherScaleLeavesTheMillimetresAlone) {
    const Point at{50.0137, 37.0219};
    for (const measures::Entry& entry : measures::catalogue()) {
        const Made made = testing::sample(entry.kind, at);
        MadeFilm usual;
        usual.scale(Stage::kScale, {0, 0, 100, 75}).add(made);
        MadeFilm half;
        half.scale(Scale{50000}, {0, 0, 100, 75}).add(made);
        const drawing::Drawing a = usual.drawn();
        const drawing::Drawing b = half.drawn();
        // A radius is metres of ground, so a range ring is half as wide; all else is the same.
        if (entry.sign != measures::Sign::RangeRing) {
            EXPECT_TRUE(testing::isSameInk(a, b)) << entry.kind;
        }
        EXPECT_EQ(testing::texts(a).size(), testing::texts(b).size()) << entry.kind;
    }
}

}  // namespace
}  // namespace crosstick::symbols
