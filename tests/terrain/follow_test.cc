#include "core/terrain/follow.h"

#include <cmath>
#include <functional>
#include <numbers>

#include <gtest/gtest.h>

#include "core/terrain/faults.h"
#include "tests/terrain/printed_paper.h"

namespace crosstick::terrain {
namespace {

using namespace testing;

constexpr Colour kLand{252, 250, 242}, kBlack{30, 28, 28}, kBrown{178, 116, 62}, kBlue{40, 116, 170},
    kYellow{250, 226, 150}, kWhite{255, 255, 255};
constexpr double kDots = 300 / 25.4;

/// A line that swings across a page of 60 by 30 mm.
PaperLine swing(double middle = 15, double reach = 6) {
    PaperLine line;
    for (double x = 0; x <= 60; x += 0.1) {
        line.push_back({x, middle + reach * std::sin(x / 6)});
    }
    return line;
}

PaperPoint on(const PaperLine& line, double share) {
    return line[static_cast<std::size_t>(share * static_cast<double>(line.size() - 1))];
}

struct Page {
    sheets::Pixels pixels;
    double pixelsPerMm = kDots;
};

Page printed(double pixelsPerMm, const std::function<void(PrintedPaper&)>& print) {
    PrintedPaper paper(60, 30, pixelsPerMm, kLand);
    print(paper);
    return {paper.pixels(), pixelsPerMm};
}

Result<FollowedLine> followed(const Page& page, PaperPoint from, PaperPoint to) {
    const HeldPixels picture(page.pixels);
    const double k = page.pixelsPerMm;
    return followedLine(picture, {k}, {from.x * k, from.y * k}, {to.x * k, to.y * k});
}

double meanBeside(const FollowedLine& found, const PaperLine& truth, double pixelsPerMm) {
    PaperLine line;
    for (const PicturePoint p : found.line) {
        line.push_back({p.column / pixelsPerMm, p.row / pixelsPerMm});
    }
    double sum = 0;
    const PaperLine places = paced(line, 0.2);
    for (const PaperPoint place : places) {
        sum += besideLine(place, truth);
    }
    return sum / static_cast<double>(places.size());
}

TEST(Follow, FindsTheMiddleOfEveryStyleOnCleanPaper) {
    const PaperLine line = swing();
    const std::vector<std::pair<const char*, std::function<void(PrintedPaper&)>>> styles{
        {"single line", [&](PrintedPaper& paper) { paper.stroke(line, kBlack, 0.3); }},
        {"road with a fill",
         [&](PrintedPaper& paper) {
             paper.stroke(line, kBlack, 0.9);
             paper.stroke(line, kYellow, 0.6);
         }},
        {"road without",
         [&](PrintedPaper& paper) {
             paper.stroke(line, kBlack, 0.8);
             paper.stroke(line, kWhite, 0.5);
         }},
        {"track",
         [&](PrintedPaper& paper) {
             paper.stroke(line, kBlack, 0.25, {3.0, 0.8});
         }},
        {"path",
         [&](PrintedPaper& paper) {
             paper.stroke(line, kBlack, 0.18, {1.2, 0.8});
         }},
        {"contour", [&](PrintedPaper& paper) { paper.stroke(line, kBrown, 0.12); }},
        {"stream that grows", [&](PrintedPaper& paper) { paper.strokeGrowing(line, kBlue, 0.15, 0.4); }},
        {"pen on film", [&](PrintedPaper& paper) {
             paper.stroke(line, {176, 18, 27}, 0.55);
         }}};
    for (const auto& [style, print] : styles) {
        const Page page = printed(kDots, print);
        const auto found = followed(page, on(line, 0.05), on(line, 0.93));
        ASSERT_TRUE(found.has_value()) << style << ": " << found.error().fault.name;
        EXPECT_LT(meanBeside(*found, line, kDots), 0.1) << style;
        EXPECT_LT(found->line.size(), 200U) << style;
    }
}

TEST(Follow, ReadsPicturesFromCoarseToVeryFine) {
    const PaperLine line = swing();
    for (const double dotsToTheInch : {150.0, 200.0, 400.0, 600.0, 1200.0}) {
        const Page page = printed(dotsToTheInch / 25.4, [&](PrintedPaper& paper) { paper.stroke(line, kBlack, 0.4); });
        const auto found = followed(page, on(line, 0.1), on(line, 0.9));
        ASSERT_TRUE(found.has_value()) << dotsToTheInch << ": " << found.error().fault.name;
        EXPECT_LT(meanBeside(*found, line, page.pixelsPerMm), 0.1) << dotsToTheInch;
    }
}

TEST(Follow, KeepsToItsColourWhereAnotherLineRunsAlongAndAcross) {
    const PaperLine stream = swing(15, 6);
    const PaperLine road = swing(14, -5);
    const Page page = printed(kDots, [&](PrintedPaper& paper) {
        paper.stroke(stream, kBlue, 0.3);
        paper.stroke(road, kBlack, 0.3);
    });
    for (const PaperLine& line : {stream, road}) {
        const auto found = followed(page, on(line, 0.06), on(line, 0.94));
        ASSERT_TRUE(found.has_value());
        EXPECT_LT(meanBeside(*found, line, kDots), 0.1);
    }
}

TEST(Follow, GoesStraightOnUnderLetters) {
    const PaperLine line{{0, 15}, {60, 15}};
    const Page page = printed(kDots, [&](PrintedPaper& paper) {
        paper.stroke(line, kBrown, 0.15);
        paper.letters("NORTON", {22, 16}, 2, kBlack);
    });
    const auto found = followed(page, {5, 15}, {55, 15});
    ASSERT_TRUE(found.has_value());
    EXPECT_LT(meanBeside(*found, line, kDots), 0.1);
}

// The next contours lie 1.2 mm away on both sides, and it costs less to change over to one beside the word than to go
// on under its strokes.
TEST(Follow, DoesNotHopToTheNextContourUnderAWord) {
    int right = 0;
    for (const double beside : {0.0, 0.4, 0.8, 1.2}) {
        const Page page = printed(kDots, [&](PrintedPaper& paper) {
            for (int n = -4; n <= 4; ++n) {
                paper.stroke(swing(15 + 1.2 * n, 3), kBrown, 0.12);
            }
            paper.letters("ALTER", {20, 15 + beside}, 2.4, kBlack);
            paper.letters("NORTON", {30, 14 + beside}, 2.4, {40, 116, 170});
        });
        const PaperLine line = swing(15, 3);
        const auto found = followed(page, on(line, 0.1), on(line, 0.9));
        right += found && meanBeside(*found, line, kDots) < 0.15 ? 1 : 0;
    }
    EXPECT_EQ(right, 4);
}

TEST(Follow, BlankPaperHasNothingToFollow) {
    const Page page = printed(kDots, [](PrintedPaper& paper) { paper.stroke({{5, 5}, {55, 5}}, kBlack, 0.3); });
    const auto start = followed(page, {10, 20}, {50, 5});
    ASSERT_FALSE(start.has_value());
    EXPECT_EQ(start.error().fault, kNothingPrinted);
    EXPECT_EQ(std::get<std::string>(start.error().arguments.at(0).value), "first");
    const auto end = followed(page, {10, 5}, {50, 20});
    ASSERT_FALSE(end.has_value());
    EXPECT_EQ(std::get<std::string>(end.error().arguments.at(0).value), "last");
}

TEST(Follow, ARoadAndAStreamAreNotOneLine) {
    const Page page = printed(kDots, [](PrintedPaper& paper) {
        paper.stroke({{0, 8}, {60, 8}}, {176, 18, 27}, 0.5);
        paper.stroke({{0, 22}, {60, 22}}, kBlue, 0.2);
    });
    const auto found = followed(page, {10, 8}, {50, 22});
    ASSERT_FALSE(found.has_value());
    EXPECT_EQ(found.error().fault, kUnlikeEnds);
}

TEST(Follow, WhatIsCoveredAtOneEndIsFollowedFromTheOther) {
    const PaperLine line = swing();
    const Page page = printed(kDots, [&](PrintedPaper& paper) {
        paper.stroke(line, kBrown, 0.15);
        paper.stroke({{48, 0}, {48, 30}}, kBlack, 0.9);
    });
    const PaperPoint under = on(line, 0.8);  // x 48
    for (const auto& [from, to] : {std::pair(on(line, 0.1), under), std::pair(under, on(line, 0.1))}) {
        const auto found = followed(page, from, to);
        ASSERT_TRUE(found.has_value()) << found.error().fault.name;
        EXPECT_LT(meanBeside(*found, line, kDots), 0.1);
        EXPECT_LT(std::hypot(found->line.back().column - to.x * kDots, found->line.back().row - to.y * kDots), kDots)
            << "beside what covers it";
    }
}

TEST(Follow, TwoLinesThatNeverMeetBreakOff) {
    const Page page = printed(kDots, [](PrintedPaper& paper) {
        paper.stroke({{0, 5}, {25, 5}}, kBlack, 0.3);
        paper.stroke({{35, 25}, {60, 25}}, kBlack, 0.3);
    });
    const auto found = followed(page, {5, 5}, {55, 25});
    ASSERT_FALSE(found.has_value());
    EXPECT_EQ(found.error().fault, kBreaksOff);
}

TEST(Follow, APlaceOffThePictureIsAFault) {
    const Page page = printed(kDots, [](PrintedPaper& paper) { paper.stroke({{0, 5}, {60, 5}}, kBlack, 0.3); });
    const double nan = std::nan("");
    for (const PaperPoint at : {PaperPoint{-1, 5}, PaperPoint{61, 5}, PaperPoint{5, 31}, PaperPoint{nan, 5}}) {
        const auto found = followed(page, at, {50, 5});
        ASSERT_FALSE(found.has_value());
        EXPECT_EQ(found.error().fault, kOffPicture);
    }
}

// A sheet that is seen small is clicked at less surely: what lies within the hand's reach is taken where nothing nearer
// is printed, and what is printed nearer comes first.
TEST(Follow, AHandThatSeesTheSheetSmallReachesFarther) {
    const PaperLine line = swing();
    const PaperLine near = [&] {
        PaperLine moved = line;
        for (PaperPoint& point : moved) {
            point.y += 1.9;
        }
        return moved;
    }();
    const auto off = [&](double share) { return PaperPoint{on(line, share).x, on(line, share).y + 1.6}; };
    const auto seen = [&](const Page& page, PaperMm hand) {
        const HeldPixels picture(page.pixels);
        const double k = page.pixelsPerMm;
        return followedLine(picture, {k, hand}, {off(0.1).x * k, off(0.1).y * k}, {off(0.9).x * k, off(0.9).y * k});
    };
    const Page alone = printed(kDots, [&](PrintedPaper& paper) { paper.stroke(line, kBlack, 0.3); });
    const auto missed = seen(alone, kSure);
    ASSERT_FALSE(missed.has_value());
    EXPECT_EQ(missed.error().fault, kNothingPrinted);
    const auto reached = seen(alone, PaperMm(2));
    ASSERT_TRUE(reached.has_value());
    EXPECT_LT(meanBeside(*reached, line, kDots), 0.15);
    const Page two = printed(kDots, [&](PrintedPaper& paper) {
        paper.stroke(line, kBlack, 0.3);
        paper.stroke(near, kBlack, 0.3);
    });
    const auto nearest = seen(two, PaperMm(2));
    ASSERT_TRUE(nearest.has_value());
    EXPECT_LT(meanBeside(*nearest, near, kDots), 0.15);
}

TEST(Follow, OnTheGroundTheLineLiesWhereThePlacementSays) {
    const PaperLine line = swing();
    const Page page = printed(kDots, [&](PrintedPaper& paper) { paper.stroke(line, kBlack, 0.3); });
    const HeldPixels picture(page.pixels);
    // 1:25,000 and turned by 30 degrees: a millimetre of paper is 25 m.
    const double metres = 25 / kDots;
    const double turn = std::numbers::pi / 6;
    const plan::Placement placement{{Metres(650000), Metres(5100000)},
                                    metres * std::cos(turn),
                                    -metres * std::sin(turn),
                                    -metres * std::sin(turn),
                                    -metres * std::cos(turn)};
    const auto ground = [&](PaperPoint p) {
        return geodesy::PlanePoint{Metres(650000 + 25 * (p.x * std::cos(turn) - p.y * std::sin(turn))),
                                   Metres(5100000 - 25 * (p.x * std::sin(turn) + p.y * std::cos(turn)))};
    };
    const auto found =
        followedLine(PrintedGround{picture, placement, Scale{25000}}, ground(on(line, 0.1)), ground(on(line, 0.9)));
    ASSERT_TRUE(found.has_value());
    for (const geodesy::PlanePoint point : found->line) {
        const double east = (point.easting.value() - 650000) / 25;
        const double south = (5100000 - point.northing.value()) / 25;
        const PaperPoint paper{east * std::cos(turn) + south * std::sin(turn),
                               south * std::cos(turn) - east * std::sin(turn)};
        EXPECT_LT(besideLine(paper, line), 0.15);
    }
    EXPECT_NEAR(found->line.front().easting.value(), ground(on(line, 0.1)).easting.value(), 5);
    EXPECT_NEAR(found->line.back().northing.value(), ground(on(line, 0.9)).northing.value(), 5);
}

}  // namespace
}  // namespace crosstick::terrain
