#include "core/units/number_text.h"

#include <bit>
#include <clocale>
#include <cmath>
#include <limits>
#include <random>

#include <gtest/gtest.h>

namespace crosstick {
namespace {

TEST(NumberText, IsTheShortestThatReadsBack) {
    EXPECT_EQ(numberText(0.1), "0.1");
    EXPECT_EQ(numberText(25000), "25000");
    EXPECT_EQ(numberText(-9.461137), "-9.461137");
    EXPECT_EQ(numberText(1.0 / 3), "0.3333333333333333");
}

TEST(NumberText, ZeroHasNoSign) {
    EXPECT_EQ(numberText(-0.0), "0");
    EXPECT_EQ(numberText(-0.0, 2), "0.00");
    EXPECT_EQ(numberText(-0.004, 2), "0.00");
    EXPECT_EQ(numberText(-0.4, 0), "0");
    EXPECT_EQ(numberText(-0.006, 2), "-0.01");
    EXPECT_EQ(numberText(-10, 0), "-10");
}

TEST(NumberText, DecimalsRoundAsPrintfDoes) {
    EXPECT_EQ(numberText(1080.0125, 3), "1080.013");
    EXPECT_EQ(numberText(2.675, 2), "2.67");  // the double lies below 2.675
    EXPECT_EQ(numberText(999.9996, 3), "1000.000");
}

TEST(NumberText, EveryDoubleReadsBackTheSame) {
    constexpr unsigned kSeed = 20270313;
    SCOPED_TRACE(kSeed);
    std::mt19937_64 random(kSeed);
    for (int n = 0; n < 100000; ++n) {
        const double value = std::bit_cast<double>(random());
        if (!std::isfinite(value)) {
            continue;
        }
        const auto read = parseNumber(numberText(value));
        ASSERT_TRUE(read) << value;
        ASSERT_EQ(*read, value);
    }
}

TEST(NumberText, StaysTheSameInALocaleWithDecimalCommas) {
    // NOLINTBEGIN(concurrency-mt-unsafe): this program has one thread
    const std::string before = std::setlocale(LC_ALL, nullptr);
    // Where that locale is not installed the call changes nothing and the claim still has to hold.
    std::setlocale(LC_ALL, "de_DE.UTF-8");
    EXPECT_EQ(numberText(0.5), "0.5");
    EXPECT_EQ(numberText(1234.5, 2), "1234.50");
    EXPECT_EQ(parseNumber("0.5"), 0.5);
    EXPECT_FALSE(parseNumber("0,5"));
    std::setlocale(LC_ALL, before.c_str());
    // NOLINTEND(concurrency-mt-unsafe)
}

TEST(ParseNumber, TakesTheWholeTextOrNothing) {
    EXPECT_EQ(parseNumber("+12.5"), 12.5);
    EXPECT_EQ(parseNumber("-1e3"), -1000.0);
    for (const char* bad : {"", " 1", "1 ", "1x", "+-1", "--1", "+", "-", ".", "0x10", "1e", "1,5"}) {
        EXPECT_FALSE(parseNumber(bad)) << '"' << bad << '"';
    }
}

TEST(ParseNumber, RefusesWhatIsNotFinite) {
    for (const char* bad : {"nan", "inf", "-inf", "infinity", "1e999"}) {
        EXPECT_FALSE(parseNumber(bad)) << bad;
    }
}

TEST(ParseWhole, RefusesFractionsAndWhatDoesNotFit) {
    EXPECT_EQ(parseWhole("9223372036854775807"), std::numeric_limits<std::int64_t>::max());
    EXPECT_EQ(parseWhole("-7"), -7);
    for (const char* bad : {"", "1.0", "9223372036854775808", "7 ", "1e3"}) {
        EXPECT_FALSE(parseWhole(bad)) << bad;
    }
}

}  // namespace
}  // namespace crosstick
