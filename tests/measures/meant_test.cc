#include "core/measures/meant.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::measures {
namespace {

std::vector<std::string_view> kindsBy(std::string_view words, const std::vector<std::string>& recent = {},
                                      std::size_t most = 200) {
    std::vector<std::string_view> kinds;
    for (const Meant& meant : meantBy(words, recent, most)) {
        kinds.push_back(meant.entry->kind);
    }
    return kinds;
}

bool has(const std::vector<std::string_view>& kinds, std::string_view kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

/// Kinds drawn at random, as if they had been used lately.
std::vector<std::string> someRecent(std::mt19937& chance) {
    std::vector<std::string> recent;
    for (int n = 0; n < 5; ++n) {
        recent.emplace_back(catalogue()[chance() % catalogue().size()].kind);
    }
    return recent;
}

TEST(Meant, EveryAbbreviationFindsItsOwnMeasureFirstWhateverWasUsedLately) {
    const std::uint32_t seed = 3301;
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    for (const Entry& entry : catalogue()) {
        if (entry.abbreviation.empty()) {
            continue;
        }
        const auto sharing = std::count_if(catalogue().begin(), catalogue().end(), [&](const Entry& other) {
            return other.abbreviation == entry.abbreviation;
        });
        const auto found = meantBy(entry.abbreviation, someRecent(chance), 5);
        ASSERT_GE(found.size(), static_cast<std::size_t>(sharing)) << entry.kind;
        bool own = false;
        for (std::ptrdiff_t n = 0; n < sharing; ++n) {
            EXPECT_EQ(found[static_cast<std::size_t>(n)].entry->abbreviation, entry.abbreviation) << entry.kind;
            own = own || found[static_cast<std::size_t>(n)].entry == &entry;
        }
        EXPECT_TRUE(own) << entry.kind;
    }
}

TEST(Meant, EveryNameFindsItsOwnMeasureFirst) {
    std::mt19937 chance(3302);
    for (const Entry& entry : catalogue()) {
        const auto found = meantBy(entry.name, someRecent(chance), 5);
        ASSERT_FALSE(found.empty()) << entry.kind;
        EXPECT_EQ(found.front().entry->name, entry.name) << entry.kind;
    }
}

TEST(Meant, TheTradesShortWordsMeanWhatTheTradeMeans) {  // trade.md: abbreviations of the field
    EXPECT_EQ(kindsBy("cp").front(), "checkpoint");
    EXPECT_EQ(kindsBy("boundary").front(), "boundary");
    EXPECT_EQ(kindsBy("sbf").front(), "support-by-fire");
    EXPECT_EQ(kindsBy("aa").front(), "assembly-area");
    EXPECT_EQ(kindsBy("ld").front(), "line-of-departure");
    EXPECT_EQ(kindsBy("ldlc").front(), "line-of-departure-and-contact");
    EXPECT_EQ(kindsBy("ld/lc").front(), "line-of-departure-and-contact");
    EXPECT_EQ(kindsBy("obj").front(), "objective");
    EXPECT_EQ(kindsBy("orp").front(), "objective-rally-point");
}

TEST(Meant, AnAssemblyAreaIsNeverOfferedAsAnAvenueOfApproachNorTheOtherWayRound) {
    EXPECT_FALSE(has(kindsBy("aa"), "avenue-of-approach"));
    EXPECT_FALSE(has(kindsBy("AA"), "avenue-of-approach"));
    EXPECT_FALSE(has(kindsBy("avenue"), "assembly-area"));
    EXPECT_FALSE(has(kindsBy("aa", {"avenue-of-approach"}), "avenue-of-approach"));
}

TEST(Meant, PartsOfNamesAndInitialsFindToo) {
    EXPECT_EQ(kindsBy("bound").front(), "boundary");
    EXPECT_EQ(kindsBy("cas col").front(), "casualty-collection-point");
    EXPECT_EQ(kindsBy("collection").front(), "casualty-collection-point");
    EXPECT_EQ(kindsBy("fcl").front(), "final-coordination-line");
    EXPECT_EQ(kindsBy("severe").front(), "severely-restricted-ground");
    EXPECT_TRUE(has(kindsBy("cp", {}, 8), "casualty-collection-point"));
    EXPECT_TRUE(has(kindsBy("cp", {}, 8), "contact-point"));
    EXPECT_TRUE(kindsBy("xyzzy").empty());
}

TEST(Meant, ANameShortenedAsHandsShortenItIsFound) {
    EXPECT_EQ(kindsBy("bdy").front(), "boundary");
    EXPECT_EQ(meantBy("bdy A 2/C", {}, 5).front().label, "A 2/C");
    EXPECT_EQ(kindsBy("chkpt").front(), "checkpoint");
    EXPECT_EQ(kindsBy("fob").empty() || kindsBy("fob").front() != "boundary", true) << "the first letter is kept";
}

TEST(Meant, WordsSayAKindBeyondDoubtOnlyByItsAbbreviationOrItsWholeName) {
    ASSERT_TRUE(meantExactly("ld trivet"));
    EXPECT_EQ(meantExactly("ld trivet")->entry->kind, "line-of-departure");
    EXPECT_EQ(meantExactly("ld trivet")->label, "trivet");
    EXPECT_EQ(meantExactly("Phase line bodkin")->entry->kind, "phase-line");
    EXPECT_EQ(meantExactly("boundary")->entry->kind, "boundary");
    for (const char* words : {"bound", "old mill", "A", "", "trivet", "1/2 inf sqd", "lead company"}) {
        EXPECT_FALSE(meantExactly(words)) << words;
    }
}

TEST(Meant, OfPartsThoseUsedLatelyComeFirst) {
    EXPECT_EQ(kindsBy("point").front(), kindsBy("point", {}).front());
    EXPECT_EQ(kindsBy("point", {"passage-point"}).front(), "passage-point");
    EXPECT_EQ(kindsBy("cp", {"traffic-post"})[0], "checkpoint");
    EXPECT_EQ(kindsBy("cp", {"traffic-post"})[1], "traffic-post");
    EXPECT_EQ(kindsBy("b", {"task-bypass"}).front(), "task-bypass") << "three measures have that letter";
    const auto idle = kindsBy("", {"objective", "boundary"});
    EXPECT_EQ(idle.size(), catalogue().size());
    EXPECT_EQ(idle[0], "objective");
    EXPECT_EQ(idle[1], "boundary");
}

TEST(Meant, UnitWordsMeanAUnitSymbolWithAllThatTheySay) {
    for (const char* words : {"1/2 inf sqd", "hq B/1-9 inf coy", "eny inf plt ?", "mor sec of B", "inf"}) {
        const auto found = meantBy(words, {}, 5);
        ASSERT_FALSE(found.empty()) << words;
        EXPECT_EQ(found.front().entry->kind, "unit") << words;
        EXPECT_EQ(found.front().unit, words);
    }
    EXPECT_NE(kindsBy("sp").front(), "unit");
}

TEST(Meant, BehindAnAbbreviationOrANameStandsANumberOrAName) {
    const auto third = meantBy("cp 3", {}, 5);
    ASSERT_FALSE(third.empty());
    EXPECT_EQ(third.front().entry->kind, "checkpoint");
    EXPECT_EQ(third.front().label, "3");
    EXPECT_EQ(meantBy("pl bodkin", {}, 5).front().label, "bodkin");
    EXPECT_EQ(meantBy("phase line bodkin", {}, 5).front().label, "bodkin");
    EXPECT_EQ(meantBy("assembly area old moss", {}, 5).front().label, "old moss");
    EXPECT_EQ(meantBy("cl iii 2", {}, 5).front().entry->kind, "supply-class-3");
    EXPECT_TRUE(meantBy("bodkin 3", {}, 5).empty());
}

}  // namespace
}  // namespace crosstick::measures
