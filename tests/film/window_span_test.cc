#include "core/film/window_span.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::film {
namespace {

constexpr Metres kKilometre{1000};

TEST(WindowSpan, CountsLinesWithBothEnds) {
    EXPECT_EQ(linesIn({Metres(1000), Metres(3000)}, kKilometre),
              (std::vector<Metres>{Metres(1000), Metres(2000), Metres(3000)}));
    EXPECT_TRUE(linesIn({Metres(1001), Metres(1999)}, kKilometre).empty());
    EXPECT_EQ(linesIn({Metres(-1500), Metres(100)}, kKilometre), (std::vector<Metres>{Metres(-1000), Metres(0)}));
}

TEST(WindowSpan, RoundsOutwardAndInwardToWholeSteps) {
    const Window window{{Metres(1010), Metres(2990)}, {Metres(100), Metres(250)}};
    const Window out = window.roundedOut(Metres(100));
    EXPECT_EQ(out.east.low, Metres(1000));
    EXPECT_EQ(out.east.high, Metres(3000));
    const Window in = window.roundedIn(Metres(100));
    EXPECT_EQ(in.east.low, Metres(1100));
    EXPECT_EQ(in.east.high, Metres(2900));
    EXPECT_EQ(in.north.high, Metres(200));
}

TEST(WindowSpan, GrowsAtTheCheaperSide) {
    // One line, 5000, lies inside; 4000 is 400 m away from the low end, 6000 is 700 m from the high one.
    const Span span = holdingTwoLines({Metres(4400), Metres(5300)}, {Metres(0), Metres(9000)}, kKilometre, Metres(100));
    EXPECT_EQ(span.low, Metres(3900));
    EXPECT_EQ(span.high, Metres(5300));
}

// Laws: the result holds the span, stays in the limits, and holds two lines wherever the limits do.
TEST(WindowSpan, HoldsTwoLinesWhereverTheLimitsDo) {
    const unsigned seed = 7;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> place(0, 80);
    for (int n = 0; n < 500; ++n) {
        const Metres low{place(random) * 100.0};
        const Span span{low, low + Metres(100.0 * (1 + place(random) % 20))};
        const Span limits{span.low - Metres(100.0 * (place(random) % 12)),
                          span.high + Metres(100.0 * (place(random) % 12))};
        const Span grown = holdingTwoLines(span, limits, kKilometre, Metres(200));
        EXPECT_LE(grown.low, span.low);
        EXPECT_GE(grown.high, span.high);
        EXPECT_GE(grown.low, limits.low);
        EXPECT_LE(grown.high, limits.high);
        const auto within = [](Span s) {
            return linesIn({s.low + Metres(200), s.high - Metres(200)}, kKilometre).size();
        };
        if (within(limits) >= 2) {
            EXPECT_GE(within(grown), 2U) << span.low.value() << ' ' << span.high.value() << " in " << limits.low.value()
                                         << ' ' << limits.high.value();
        }
    }
}

}  // namespace
}  // namespace crosstick::film
