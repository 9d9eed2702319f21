#include "core/units/uuid.h"

#include <set>

#include <gtest/gtest.h>

namespace crosstick {
namespace {

TEST(Uuid, TextAndBackIsTheSame) {
    IdSource ids(42);
    for (int n = 0; n < 1000; ++n) {
        const Uuid id = ids.next();
        ASSERT_EQ(parseUuid(text(id)), id);
    }
}

TEST(Uuid, ReadsEitherCaseAndWritesLower) {
    const auto id = parseUuid("0123ABCD-4567-89ef-ABCD-0123456789AB");
    ASSERT_TRUE(id);
    EXPECT_EQ(text(*id), "0123abcd-4567-89ef-abcd-0123456789ab");
}

TEST(Uuid, RefusesWhatIsNotOne) {
    for (const char* bad : {"", "0123abcd456789efabcd0123456789ab", "0123abcd-4567-89ef-abcd-0123456789a",
                            "0123abcd-4567-89ef-abcd-0123456789abc", "0123abcg-4567-89ef-abcd-0123456789ab",
                            "0123abcd-4567-89efaabcd-0123456789ab", "{123abcd-4567-89ef-abcd-0123456789ab"}) {
        EXPECT_FALSE(parseUuid(bad)) << bad;
    }
}

TEST(Uuid, NoneIsAllZero) {
    EXPECT_TRUE(Uuid{}.isNone());
    EXPECT_EQ(text(Uuid{}), "00000000-0000-0000-0000-000000000000");
    EXPECT_FALSE(IdSource(0).next().isNone());
}

TEST(IdSource, SameSeedGivesTheSameIdentities) {
    IdSource a(7);
    IdSource b(7);
    IdSource c(8);
    const Uuid first = a.next();
    EXPECT_EQ(first, b.next());
    EXPECT_NE(first, c.next());
}

TEST(IdSource, NeverRepeatsItself) {
    IdSource ids(1);
    std::set<Uuid> seen;
    for (int n = 0; n < 20000; ++n) {
        ASSERT_TRUE(seen.insert(ids.next()).second) << n;
    }
}

// RFC 9562, sections 4.1 and 4.2: variant 10 in byte 8, version in the high half of byte 6.
TEST(Uuid, BearsTheMarksOfItsVersion) {
    const std::string random = text(IdSource(3).next());
    const std::string named = text(namedUuid(Uuid{}, "PL TRIVET"));
    EXPECT_EQ(random[14], '4');
    EXPECT_EQ(named[14], '8');
    for (const std::string& id : {random, named}) {
        EXPECT_NE(std::string("89ab").find(id[19]), std::string::npos) << id;
    }
}

TEST(NamedUuid, SameNameInTheSameSpaceIsTheSame) {
    const Uuid space = IdSource(5).next();
    EXPECT_EQ(namedUuid(space, "CP 1"), namedUuid(space, "CP 1"));
    EXPECT_NE(namedUuid(space, "CP 1"), namedUuid(space, "CP 2"));
    EXPECT_NE(namedUuid(space, "CP 1"), namedUuid(Uuid{}, "CP 1"));
}

}  // namespace
}  // namespace crosstick
