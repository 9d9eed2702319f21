// The same laws as turn_test over points at random: turned by a right angle the ink turns and letters do not; another
// scale leaves the millimetres alone; a unit's frame keeps its ratios wherever and however large it stands.
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "symbols/signs.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::testing::RandomLines;
using testing::Made;
using testing::MadeFilm;

constexpr drawing::Box kSquare{0, 0, 200, 200};
constexpr Point kMiddle{100, 100};
constexpr std::uint64_t kSeeds = 12;

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

drawing::Drawing drawn(const Made& made, Scale scale = Stage::kScale) {
    MadeFilm film;
    film.scale(scale, kSquare).add(made);
    return film.drawn();
}

/// Strokes and fills turned with their points.
drawing::Drawing turnedInk(const drawing::Drawing& all) {
    drawing::Drawing ink;
    for (drawing::Mark mark : all.marks) {
        if (auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (drawing::Polyline& piece : stroke->pieces) {
                std::transform(piece.points.begin(), piece.points.end(), piece.points.begin(),
                               [](Point p) { return turned(p); });
            }
            ink.marks.push_back(std::move(mark));
        } else if (auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (Points& ring : fill->rings) {
                std::transform(ring.begin(), ring.end(), ring.begin(), [](Point p) { return turned(p); });
            }
            ink.marks.push_back(std::move(mark));
        }
    }
    return ink;
}

/// Anything of a kind that lies within the square however it is turned.
Made somewhere(RandomLines& random, const measures::Entry& entry) {
    Made made{.kind = std::string(entry.kind)};
    Point at = kMiddle + random.point(30);
    const int count = entry.points.most                      ? *entry.points.most
                      : entry.shape == measures::Shape::Area ? 3 + random.below(6)
                                                             : 2 + random.below(5);
    for (int n = 0; n < count; ++n) {
        made.points.push_back(at);
        at = kMiddle + random.point(55);
    }
    made.whose = random.below(3) == 0 ? plan::Whose::Enemy : plan::Whose::Own;
    return made;
}

/// Hatching lies as the paper does, a ferry floats on it, and an I stands where its circle is least upright.
bool liesAsThePaper(measures::Sign sign) {
    using measures::Sign;
    return sign == Sign::Hatched || sign == Sign::CrossHatched || sign == Sign::NoGo || sign == Sign::Ferry ||
           sign == Sign::Isolate;
}

TEST(Laws, InkWithoutLettersTurnsWithAnyPoints) {
    int tried = 0;
    for (const measures::Entry& entry : measures::catalogue()) {
        if (ruleOf(entry.sign).body == Body::Spot || liesAsThePaper(entry.sign)) {
            continue;
        }
        for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
            RandomLines random(seed);
            const Made made = somewhere(random, entry);
            const drawing::Drawing before = drawn(made);
            const drawing::Drawing after = drawn(turned(made));
            if (!testing::texts(before).empty() || !testing::texts(after).empty()) {
                continue;  // letters stay upright, so what is left free for them does not turn
            }
            ++tried;
            EXPECT_TRUE(testing::isSameInk(turnedInk(before), after)) << entry.kind << " seed " << seed;
        }
    }
    EXPECT_GT(tried, 80);
}

TEST(Laws, NoLetterIsUpsideDownOrTooSmallHoweverAFilmIsTurned) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        RandomLines random(seed);
        MadeFilm film;
        MadeFilm other;
        film.scale(Stage::kScale, kSquare);
        other.scale(Stage::kScale, kSquare);
        for (int n = 0; n < 20; ++n) {
            const auto kinds = measures::catalogue();
            const auto kind = static_cast<std::size_t>(random.below(static_cast<int>(kinds.size())));
            Made made = testing::randomMeasure(random, kinds[kind].kind);
            film.add(made);
            other.add(turned(made));
        }
        for (const MadeFilm* one : {&film, &other}) {
            for (const drawing::Text& text : testing::texts(one->engraved().all())) {
                EXPECT_GT(text.angle.value(), -90) << "seed " << seed << ' ' << text.text;
                EXPECT_LE(text.angle.value(), 90) << "seed " << seed << ' ' << text.text;
                EXPECT_GE(text.capHeight, 1.8 - 1e-9) << "seed " << seed << ' ' << text.text;
            }
        }
    }
}

TEST(Laws, AnotherScaleLeavesTheMillimetresOfAnythingAlone) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.sign == measures::Sign::RangeRing) {
            continue;  // a radius is metres of ground
        }
        for (std::uint64_t seed = 1; seed <= 5; ++seed) {
            RandomLines random(seed);
            Made made = somewhere(random, entry);
            made.name = "FLINT";
            const drawing::Drawing usual = drawn(made);
            for (const Scale scale : {Scale{50000}, Scale{10000}}) {
                const drawing::Drawing other = drawn(made, scale);
                EXPECT_TRUE(testing::isSameInk(usual, other)) << entry.kind << " seed " << seed;
                EXPECT_EQ(testing::texts(usual).size(), testing::texts(other).size()) << entry.kind << " seed " << seed;
            }
        }
    }
}

// trade.md 3.1, from memory of MIL-STD-2525D and APP-6 (confidence high, not checked against the documents): in heights
// of a symbol a friend's frame is 1.5 by 1, a hostile one's diagonals are 1.44, a neutral one is 1.1 square, an unknown
// one 1.44 over all.
TEST(Laws, FramesKeepTheirRatiosWhereverTheyStandAndHoweverLarge) {
    struct Ratio {
        const char* words;
        double wide, high;
    };
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        RandomLines random(seed);
        const drawing::Gauge gauge =
            drawing::Gauge::of(random.between(4, 8), random.between(0.25, 0.7), random.between(1.8, 3));
        for (const Ratio& ratio :
             {Ratio{"own", 1.5, 1}, Ratio{"eny", 1.44, 1.44}, Ratio{"neu", 1.1, 1.1}, Ratio{"unk", 1.44, 1.44}}) {
            MadeFilm film;
            film.gauge(gauge).add(Made{.kind = "unit",
                                       .points = {{random.between(30, 170), random.between(30, 120)}},
                                       .fields = {{"unit", ratio.words}}});
            const drawing::Box ink = drawing::extent(film.drawn());
            EXPECT_NEAR(ink.width(), ratio.wide * gauge.symbol + gauge.pen, 0.06) << ratio.words << ' ' << seed;
            EXPECT_NEAR(ink.height(), ratio.high * gauge.symbol + gauge.pen, 0.06) << ratio.words << ' ' << seed;
        }
    }
}

}  // namespace
}  // namespace crosstick::symbols
