// The table of words and what they yield: our own drafting rule, its shapes and fields from memory of the trade.
#include "core/measures/unit_words.h"

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

}  // namespace
}  // namespace crosstick::measures
