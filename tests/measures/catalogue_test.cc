#include "core/measures/catalogue.h"

#include <set>
#include <string>

#include <gtest/gtest.h>

#include "core/measures/afterwards.h"
#include "core/measures/faults.h"

namespace crosstick::measures {
namespace {

TEST(Catalogue, EveryKindIsFoundByItsOwnIdentity) {
    std::set<std::string_view> kinds;
    for (const Entry& entry : catalogue()) {
        EXPECT_TRUE(kinds.insert(entry.kind).second) << entry.kind;
        EXPECT_EQ(find(entry.kind), &entry);
    }
    EXPECT_EQ(find("from-a-newer-program"), nullptr);
}

TEST(Catalogue, EveryEntrySaysWhatItIs) {
    for (const Entry& entry : catalogue()) {
        EXPECT_FALSE(entry.name.empty()) << entry.kind;
        EXPECT_TRUE(entry.help.ends_with('.')) << entry.kind;
        EXPECT_GE(entry.points.least, entry.shape == Shape::Area   ? 3
                                      : entry.shape == Shape::Line ? 2
                                                                   : 1)
            << entry.kind;
    }
}

TEST(Catalogue, CodesHaveSixDigitsOrNone) {
    for (const Entry& entry : catalogue()) {
        const std::string_view code = entry.code.entity;
        EXPECT_TRUE(code.empty() || code.size() == 6) << entry.kind;
        EXPECT_EQ(code.find_first_not_of("0123456789"), std::string_view::npos) << entry.kind;
    }
}

// FM 1-02.2 and MIL-STD-2525D as remembered: the codes that are sure.
TEST(Catalogue, SureCodesStandAsRemembered) {
    EXPECT_EQ(find("boundary")->code.entity, "110100");
    EXPECT_EQ(find("phase-line")->code.entity, "140300");
    EXPECT_EQ(find("checkpoint")->code.entity, "130300");
    EXPECT_EQ(find("start-point")->code.entity, "131600");
    EXPECT_EQ(find("release-point")->code.entity, "131500");
}

TEST(Catalogue, AnAvenueOfApproachIsNeverAbbreviatedLikeAnAssemblyArea) {
    for (const Entry& entry : catalogue()) {
        EXPECT_EQ(entry.abbreviation == "AA", entry.kind == "assembly-area");
    }
}

TEST(Catalogue, FieldsTakeWhatTheyAreForAndTheirOwnDefaults) {
    for (const Entry& entry : catalogue()) {
        for (const Field& field : entry.fields) {
            EXPECT_TRUE(checkField(field, "").has_value()) << entry.kind;
            EXPECT_TRUE(checkField(field, field.standard).has_value()) << entry.kind << ' ' << field.key;
        }
    }
    EXPECT_EQ(checkField({"enemy", "", FieldType::Azimuth, ""}, "400").error().fault, kBadNumber);
    EXPECT_EQ(checkField({"enemy", "", FieldType::Azimuth, ""}, "north").error().fault, kBadNumber);
    EXPECT_EQ(checkField({"enemy_side", "", FieldType::Side, ""}, "up").error().fault, kBadSide);
    EXPECT_EQ(checkField({"one_way", "", FieldType::Answer, "no"}, "perhaps").error().fault, kBadAnswer);
    EXPECT_EQ(checkField({"slope", "", FieldType::Percent, ""}, "0").error().fault, kBadNumber);
    EXPECT_TRUE(checkField({"one_way", "", FieldType::Answer, "no"}, "yes").has_value());
    EXPECT_EQ(checkField({"echelon", "", FieldType::Echelon, ""}, "horde").error().fault, kBadEchelon);
}

TEST(Catalogue, AMarchCrossesLinesAndNotArrows) {
    EXPECT_TRUE(isCrossedOnTheMarch(*find("phase-line")));
    EXPECT_TRUE(isCrossedOnTheMarch(*find("final-coordination-line")));
    EXPECT_TRUE(isCrossedOnTheMarch(*find("linear-danger-area")));
    EXPECT_TRUE(isCrossedOnTheMarch(*find("main-supply-route")));
    EXPECT_FALSE(isCrossedOnTheMarch(*find("direction-of-attack")));
    EXPECT_FALSE(isCrossedOnTheMarch(*find("objective")));
}

// What lives on and what is spent: our own rule, since doctrine gives none.
TEST(Catalogue, APhaseSpendsItsArrowsTasksAndWordsAndMovesItsUnits) {
    for (const Entry& entry : catalogue()) {
        EXPECT_EQ(afterwards(entry) == Afterwards::Moves, entry.kind == "unit") << entry.kind;
        if (entry.group == Group::Tasks || entry.group == Group::Words) {
            EXPECT_EQ(afterwards(entry), Afterwards::Spent) << entry.kind;
        }
        if (entry.group == Group::Terrain && entry.kind != "linear-danger-area") {
            EXPECT_EQ(afterwards(entry), Afterwards::LivesOn) << entry.kind;
        }
        if (leadsOn(entry)) {
            EXPECT_EQ(entry.shape, Shape::Line) << entry.kind;
        }
    }
    EXPECT_EQ(afterwards(*find("boundary")), Afterwards::LivesOn);
    EXPECT_EQ(afterwards(*find("phase-line")), Afterwards::BehindOnceCrossed);
    EXPECT_EQ(afterwards(*find("order-of-march")), Afterwards::Spent);
    EXPECT_TRUE(leadsOn(*find("direction-of-movement")));
    EXPECT_FALSE(leadsOn(*find("main-supply-route")));
}

}  // namespace
}  // namespace crosstick::measures
