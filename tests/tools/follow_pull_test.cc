// Pulling over what was followed and strays.
#include <random>

#include <gtest/gtest.h>

#include "core/terrain/faults.h"
#include "tests/tools/asked_table.h"

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;
enum class Key { None, Shift };

/// A table on which printed lines bulge by 50 m in the middle.
class PullTable : public AskedTable {
  protected:
    Reply send(FollowTool& tool, Kind kind, geodesy::PlanePoint where = {}) { return take(tool, {kind, where}); }
    Reply click(FollowTool& tool, geodesy::PlanePoint where, Key key = Key::None) {
        (void)take(tool, {Kind::Press, where, true, key == Key::Shift});
        return take(tool, {Kind::Release, where, false, key == Key::Shift});
    }
    Reply pull(FollowTool& tool, geodesy::PlanePoint from, geodesy::PlanePoint to, Key key = Key::None) {
        (void)take(tool, {Kind::Press, from, true, key == Key::Shift});
        (void)take(tool, {Kind::Move, to, true, key == Key::Shift});
        return take(tool, {Kind::Release, to, false, key == Key::Shift});
    }
    /// Everything that is asked for is found, and the tool told.
    Reply answer(FollowTool& tool) {
        for (const Asked& asked : asked_) {
            asked.then(terrain::FollowedGround{{asked.from, middle(asked.from, asked.to), asked.to}, vein()});
        }
        asked_.clear();
        return send(tool, Kind::Move, far());
    }
    static terrain::Vein vein() {
        terrain::Vein vein;
        vein.halfWidth = 1.5;
        return vein;
    }
    static geodesy::PlanePoint middle(geodesy::PlanePoint a, geodesy::PlanePoint b) {
        return {(a.easting + b.easting) / 2, (a.northing + b.northing) / 2 + Metres(50)};
    }
    static geodesy::PlanePoint far() { return at(-9000, -9000); }
    /// What is wet without the hand, which is elsewhere.
    plan::Points lineOf(FollowTool& tool) {
        (void)send(tool, Kind::Move, far());
        plan::Points line = tool.wet().line;
        line.pop_back();
        return line;
    }
    /// From 0 to 1000, over 500, 50.
    FollowTool followed(std::optional<Rail> rail = std::nullopt) {
        FollowTool follow = tool(std::move(rail));
        (void)click(follow, at(0, 0));
        (void)click(follow, at(1000, 0));
        (void)answer(follow);
        return follow;
    }
};

TEST_F(PullTable, WhatStraysIsPulledOverAndLookedForAgainOnBothSides) {
    FollowTool follow = followed();
    (void)take(follow, {Kind::Press, at(500, 48), true});
    (void)take(follow, {Kind::Move, at(500, 200), true});
    EXPECT_TRUE(asked_.empty()) << "it is not looked for on the way";
    EXPECT_EQ(follow.wet().line, (plan::Points{at(0, 0), at(500, 200), at(1000, 0)})) << "straight to the hand";
    EXPECT_EQ(follow.hint(), "let go where the right line is printed");
    (void)take(follow, {Kind::Release, at(500, 210)});
    ASSERT_EQ(asked_.size(), 2U);
    EXPECT_EQ(asked_[0].from, at(0, 0));
    EXPECT_EQ(asked_[0].to, at(500, 210));
    EXPECT_EQ(asked_[1].from, at(500, 210));
    EXPECT_EQ(asked_[1].to, at(1000, 0));
    for (const Asked& asked : asked_) {
        ASSERT_TRUE(asked.like) << "like what was followed";
        EXPECT_EQ(asked.like->halfWidth, 1.5);
    }
    EXPECT_EQ(follow.hint(), "looking for the line");
    (void)answer(follow);
    const Reply reply = send(follow, Kind::Finish);
    ASSERT_TRUE(reply.commit);
    EXPECT_EQ(reply.commit->plan.measure(**reply.select)->points,
              (plan::Points{at(0, 0), at(250, 155), at(500, 210), at(750, 155), at(1000, 0)}));
}

TEST_F(PullTable, APressOnTheLineWithoutMovementIsAClick) {
    FollowTool follow = followed();
    (void)take(follow, {Kind::Press, at(500, 50), true});
    EXPECT_TRUE(asked_.empty());
    (void)take(follow, {Kind::Move, at(502, 50), true});  // a hand is not that still
    (void)take(follow, {Kind::Release, at(502, 50)});
    ASSERT_EQ(asked_.size(), 1U);
    EXPECT_EQ(asked_[0].from, at(1000, 0));
    EXPECT_EQ(asked_[0].to, at(500, 50));
}

TEST_F(PullTable, AtItsLastPointTheLineGoesOn) {
    FollowTool follow = followed();
    (void)take(follow, {Kind::Press, at(995, 5), true});
    EXPECT_EQ(asked_.size(), 1U);
    (void)take(follow, {Kind::Move, at(1200, 300), true});
    (void)take(follow, {Kind::Release, at(1200, 300)});
    EXPECT_EQ(asked_.size(), 1U);
}

TEST_F(PullTable, APlaceTypedOnTheLineIsAClick) {
    FollowTool follow = followed();
    (void)take(follow, {Kind::Press, at(500, 50), true});  // a typed place is never let go
    (void)take(follow, {Kind::Move, at(300, 300), false});
    ASSERT_EQ(asked_.size(), 1U);
    EXPECT_EQ(asked_[0].to, at(500, 50));
    (void)answer(follow);
    (void)take(follow, {Kind::Press, at(250, 25), true});
    EXPECT_FALSE(send(follow, Kind::Finish).commit) << "the place is looked for first";
    ASSERT_EQ(asked_.size(), 1U);
    EXPECT_EQ(asked_[0].to, at(250, 25));
    EXPECT_TRUE(answer(follow).commit);
}

TEST_F(PullTable, WhatIsStillLookedForIsNotPulled) {
    FollowTool follow = tool();
    (void)click(follow, at(0, 0));
    (void)click(follow, at(1000, 0));
    (void)pull(follow, at(500, 0), at(500, 300));
    ASSERT_EQ(asked_.size(), 2U);
    EXPECT_EQ(asked_[1].from, at(1000, 0)) << "the press was a click";
}

TEST_F(PullTable, AnAnswerThatComesWhileTheHandPullsDoesNotEndThePull) {
    FollowTool follow = followed();
    (void)click(follow, at(2000, 0));
    (void)take(follow, {Kind::Press, at(500, 50), true});
    (void)take(follow, {Kind::Move, at(500, 200), true});
    asked_[0].then(terrain::FollowedGround{{at(1000, 0), at(2000, 0)}, vein()});
    (void)take(follow, {Kind::Move, at(500, 200), false});  // as the table tells of an answer
    (void)take(follow, {Kind::Release, at(500, 200)});
    EXPECT_EQ(asked_.size(), 3U);
}

TEST_F(PullTable, WithTheSecondKeyAndWhereItWasStraightBothSidesAreStraight) {
    FollowTool follow = followed();
    (void)pull(follow, at(500, 50), at(500, 200), Key::Shift);
    EXPECT_TRUE(asked_.empty());
    EXPECT_EQ(lineOf(follow), (plan::Points{at(0, 0), at(500, 200), at(1000, 0)}));
    (void)pull(follow, at(250, 100), at(250, 0));
    EXPECT_TRUE(asked_.empty());
    EXPECT_EQ(lineOf(follow), (plan::Points{at(0, 0), at(250, 0), at(500, 200), at(1000, 0)}));
}

TEST_F(PullTable, APullThatFindsNothingLeavesTheLineAsItWasAndSaysWhy) {
    FollowTool follow = followed();
    const plan::Points before = lineOf(follow);
    (void)pull(follow, at(500, 50), at(500, 200));
    (void)send(follow, Kind::Finish);
    asked_[0].then(terrain::FollowedGround{{at(0, 0), at(500, 200)}, vein()});
    asked_[1].then(fail(terrain::kBreaksOff));
    const Reply reply = send(follow, Kind::Move, far());
    ASSERT_TRUE(reply.refused);
    EXPECT_EQ(reply.refused->fault, terrain::kBreaksOff);
    EXPECT_FALSE(reply.commit) << "nothing is ended that is not as it was wished";
    EXPECT_EQ(lineOf(follow), before);
}

TEST_F(PullTable, AHalfThatWasPulledMeanwhileGoesWithTheOtherThatFindsNothing) {
    FollowTool follow = followed();
    (void)click(follow, at(2000, 0));
    (void)answer(follow);
    const plan::Points before = lineOf(follow);
    (void)pull(follow, at(500, 50), at(500, 200));
    asked_[0].then(terrain::FollowedGround{{at(0, 0), at(500, 200)}, vein()});
    (void)send(follow, Kind::Move, far());
    (void)pull(follow, at(250, 100), at(250, 300));
    ASSERT_EQ(asked_.size(), 4U);
    asked_[1].then(fail(terrain::kBreaksOff));
    EXPECT_TRUE(send(follow, Kind::Move, far()).refused);
    asked_[2].then(terrain::FollowedGround{{at(0, 0), at(250, 300)}, vein()});  // late, and of nothing
    EXPECT_EQ(lineOf(follow), before);
}

TEST_F(PullTable, BackspaceAndEscapeTakeBackWhatIsBeingPulledFirst) {
    for (const Kind kind : {Kind::TakeBack, Kind::Cancel}) {
        FollowTool follow = followed();
        const plan::Points before = lineOf(follow);
        (void)take(follow, {Kind::Press, at(500, 50), true});
        (void)take(follow, {Kind::Move, at(500, 200), true});
        EXPECT_FALSE(send(follow, kind).done);
        (void)take(follow, {Kind::Release, at(500, 200)});
        EXPECT_TRUE(asked_.empty());
        EXPECT_EQ(lineOf(follow), before);
    }
}

TEST_F(PullTable, AHandrailRunsBesideWhatWasPulled) {
    FollowTool follow = followed(Rail{[] { return Metres(100); }, terrain::Side::Right});
    ASSERT_EQ(follow.wet().others.size(), 1U);
    (void)take(follow, {Kind::Press, at(500, 50), true});
    (void)take(follow, {Kind::Move, at(500, 600), true});
    EXPECT_TRUE(follow.wet().others.empty()) << "beside a line that is no more";
    (void)take(follow, {Kind::Release, at(500, 600)});
    (void)answer(follow);
    ASSERT_EQ(follow.wet().others.size(), 1U);
    const plan::Points rail = follow.wet().others.front();
    const auto on = geodesy::nearestOn(rail, geodesy::Ends::Open, at(250, 350));
    ASSERT_TRUE(on);
    EXPECT_NEAR(on->away.value(), 100, 1) << "it bulges over 250, 350";
    EXPECT_EQ(follow.hint(), "click farther along, drag where it strays, Enter ends it");
    (void)send(follow, Kind::Move, at(250, 350));
    EXPECT_EQ(follow.hint(), "drag it to where the right line is printed");
}

// Whatever is clicked and pulled is taken back step by step.
TEST_F(PullTable, EveryClickAndPullIsTakenBackInTurn) {
    for (std::uint32_t seed = 1; seed < 21; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        std::mt19937 random(seed);
        const auto any = [&](double from, double to) {
            return std::uniform_real_distribution<double>(from, to)(random);
        };
        FollowTool follow = followed();
        std::vector<plan::Points> lines{lineOf(follow)};
        for (int step = 0; step < 12; ++step) {
            const plan::Points& line = lines.back();
            if (random() % 3 == 0) {
                (void)click(follow, at(1000 + 300 * step, any(-900, -500)));
            } else {
                const auto way = any(0, static_cast<double>(line.size()) - 1.5);
                const auto from = geodesy::placeAt(line, way);
                (void)pull(follow, from, {from.easting + Metres(any(20, 90)), from.northing + Metres(any(100, 400))});
            }
            (void)answer(follow);
            lines.push_back(lineOf(follow));
            ASSERT_EQ(lines.back().size(), lines[lines.size() - 2].size() + 2) << "a place and a bulge more";
            EXPECT_EQ(lines.back().front(), at(0, 0));
        }
        while (lines.size() > 1) {
            lines.pop_back();
            (void)send(follow, Kind::TakeBack);
            ASSERT_EQ(lineOf(follow), lines.back());
        }
    }
}

}  // namespace
}  // namespace crosstick::tools
