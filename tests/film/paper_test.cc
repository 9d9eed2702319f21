#include "core/film/paper.h"

#include <gtest/gtest.h>

namespace crosstick::film {
namespace {

// ISO 216: A4 210 x 297, A3 297 x 420 mm; ANSI/ASME Y14.1: Letter 8.5 x 11 inches.
TEST(Paper, KnowsA4A3AndLetterBothWays) {
    const auto a4 = parsePaper("a4");
    ASSERT_TRUE(a4.has_value());
    ASSERT_EQ(a4->sizes.size(), 1U);
    EXPECT_EQ(a4->sizes[0], (std::vector<Paper>{{PaperMm(210), PaperMm(297)}, {PaperMm(297), PaperMm(210)}}));
    EXPECT_EQ(parsePaper("A3")->sizes[0][0], (Paper{PaperMm(297), PaperMm(420)}));
    EXPECT_EQ(parsePaper("Letter")->sizes[0][0], (Paper{PaperMm(215.9), PaperMm(279.4)}));
}

TEST(Paper, TakesWidthAndHeightAsTheyStand) {
    const auto own = parsePaper("300x400.5");
    ASSERT_TRUE(own.has_value());
    EXPECT_EQ(own->sizes, (std::vector<std::vector<Paper>>{{{PaperMm(300), PaperMm(400.5)}}}));
    EXPECT_EQ(own->name, "300 x 400.5 mm");
}

TEST(Paper, TriesA4BeforeA3) {
    const PaperChoice usual = usualPapers();
    ASSERT_EQ(usual.sizes.size(), 2U);
    EXPECT_EQ(usual.sizes[0][0], (Paper{PaperMm(210), PaperMm(297)}));
    EXPECT_EQ(usual.sizes[1][0], (Paper{PaperMm(297), PaperMm(420)}));
}

TEST(Paper, RefusesWhatIsNoPaper) {
    for (const char* text : {"", "a5x", "b4", "300", "x", "300x", "x400", "300x9", "5001x300", "-300x400", "300x400x1",
                             "nanx400", "infx400", "300,5x400"}) {
        const auto paper = parsePaper(text);
        ASSERT_FALSE(paper.has_value()) << text;
        EXPECT_EQ(paper.error().fault.name, "film/no-such-paper");
        EXPECT_EQ(std::get<std::string>(paper.error().arguments[0].value), text);
    }
}

}  // namespace
}  // namespace crosstick::film
