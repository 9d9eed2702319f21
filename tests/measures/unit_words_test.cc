// The table of words and what they yield: our own drafting rule, its shapes and fields from memory of the trade.
#include "core/measures/unit_words.h"

#include <array>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::measures {
namespace {

TEST(UnitWords, ASquadOfAPlatoon) {
    const UnitSymbol unit = readUnit("1/2 inf sqd");
    EXPECT_EQ(unit.affiliation, Affiliation::Friend);
    EXPECT_EQ(unit.icons, std::vector{UnitIcon::Infantry});
    EXPECT_EQ(unit.echelon, "sqd");
    EXPECT_EQ(unit.designation, "1");
    EXPECT_EQ(unit.higher, "2");
}

TEST(UnitWords, PartAtTheFirstStrokeAndKeepDashes) {
    const UnitSymbol company = readUnit("hq B/1-9 inf coy");
    EXPECT_TRUE(company.isHeadquarters);
    EXPECT_EQ(company.designation, "B");
    EXPECT_EQ(company.higher, "1-9");
    const UnitSymbol team = readUnit("A/1/2 inf tm");
    EXPECT_EQ(team.designation, "A");
    EXPECT_EQ(team.higher, "1/2");
}

TEST(UnitWords, StateStatusTimeAndNote) {
    const UnitSymbol unit = readUnit("3/2 inf sqd (-) plan @260400Z \"QRF\"");
    EXPECT_TRUE(unit.isDashed);
    EXPECT_EQ(unit.state, "(-)");
    EXPECT_EQ(unit.time, "260400Z");
    EXPECT_EQ(unit.note, "QRF");
}

TEST(UnitWords, TheEnemySuspected) {
    const UnitSymbol unit = readUnit("eny mech inf coy ?");
    EXPECT_EQ(unit.affiliation, Affiliation::Hostile);
    EXPECT_TRUE(unit.isDashed);
    EXPECT_EQ(unit.icons, (std::vector{UnitIcon::Infantry, UnitIcon::Armour}));
}

TEST(UnitWords, DirectionInDegreesAndMils) {
    EXPECT_DOUBLE_EQ(readUnit("inf >045").direction->value(), 45);
    EXPECT_DOUBLE_EQ(readUnit("inf >0800m").direction->value(), 45);
    EXPECT_FALSE(readUnit("inf >900").direction);
}

TEST(UnitWords, WhatIsNotUnderstoodGoesToTheNote) {
    const UnitSymbol unit = readUnit("mor sec of B stragglers");
    EXPECT_EQ(unit.higher, "B");
    EXPECT_EQ(unit.note, "stragglers");
    EXPECT_EQ(unit.unread, std::vector<std::string>{"stragglers"});
    EXPECT_TRUE(readUnit("").icons.empty());
}

TEST(UnitWords, OfTwoSizesTheLaterCounts) {
    EXPECT_EQ(readUnit("sqd plt").echelon, "plt");
}

UnitSymbol withoutUnread(UnitSymbol unit) {
    unit.unread.clear();
    return unit;
}

TEST(UnitWords, SayAUnitAgainAsItWasRead) {
    EXPECT_EQ(unitWords(readUnit("squad infantry 1/2")), "1/2 inf sqd");
    EXPECT_EQ(unitWords(readUnit("hq B/1-9 inf coy")), "hq B/1-9 inf coy");
    EXPECT_EQ(unitWords(readUnit("susp mech eny coy")), "eny inf arm coy plan");
    EXPECT_EQ(unitWords(readUnit("abn inf coy >045 \"QRF\"")), "abn inf coy >045 \"QRF\"");
    EXPECT_EQ(unitWords(readUnit("")), "");
}

// Law: words of a unit read again give the unit, whatever was typed.
TEST(UnitWords, AreReadAsTheUnitTheyWereMadeFrom) {
    constexpr std::array kWords{"own",  "eny",  "neu",   "unk",  "tm",       "squad",   "plt",    "coy",  "inf",
                                "mech", "mor",  "MP",    "sf",   "hq",       "tf",      "(+)",    "(-)",  "plan",
                                "?",    "1/2",  "B/1-9", "7",    "C",        "ALPHA/2", "ALPHA/", "/9",   "of",
                                "12-3", ">045", ">800m", ">7.5", "@260400Z", "\"QRF\"", "wpn",    "word", "inf+mor"};
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    for (int round = 0; round < 3000; ++round) {
        std::string typed;
        for (int n = std::uniform_int_distribution<int>(0, 7)(random); n > 0; --n) {
            typed +=
                std::string(kWords[std::uniform_int_distribution<std::size_t>(0, kWords.size() - 1)(random)]) + ' ';
        }
        const UnitSymbol unit = withoutUnread(readUnit(typed));
        const UnitSymbol again = withoutUnread(readUnit(unitWords(unit)));
        EXPECT_EQ(again, unit) << typed << " -> " << unitWords(unit);
    }
}

TEST(UnitWords, ListsToChooseFromAreReadAsWhatTheySay) {
    for (const UnitWord& side : unitSides()) {
        EXPECT_TRUE(readUnit(side.word).unread.empty()) << side.word;
    }
    for (const UnitWord& size : unitSizes()) {
        EXPECT_EQ(readUnit(size.word).echelon, size.word);
    }
    for (const UnitWord& icon : unitIcons()) {
        const UnitSymbol unit = readUnit(icon.word);
        EXPECT_TRUE(unit.unread.empty() && (!unit.icons.empty() || !unit.letters.empty())) << icon.word;
    }
}

}  // namespace
}  // namespace crosstick::measures
