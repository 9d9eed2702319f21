#include "ui/press/route_card_page.h"

#include <algorithm>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/text_ruler.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_strips.h"

namespace crosstick::press {
namespace {

using geodesy::AngleUnit;
using movement::kettleId;
using movement::kettlePlan;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

movement::RouteFigures figuresOf(const plan::Plan& plan, const char* name) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    return movement::routeFigures(plan, *plan.routeNamed(name), &model.value(), nullptr).value();
}

std::vector<CardPage> cards(const plan::Plan& plan, const char* name, AngleUnit unit = AngleUnit::Degrees) {
    return routeCard(plan, figuresOf(plan, name), unit, "WMM2025").value();
}

std::vector<CardPage> smallCards(const plan::Plan& plan, const char* name, AngleUnit unit = AngleUnit::Degrees) {
    return routeCard(plan, figuresOf(plan, name), unit, "WMM2025", CardSize::A6).value();
}

/// With a collection point, a pick-up and a vehicle's way from the one to the other.
plan::Plan evacuated() {
    const plan::Plan plan = kettlePlan();
    plan::Heading heading = plan.heading();
    plan::Measure point = *plan.measure(kettleId("CP 5"));
    point.id = kettleId("CCP 1");
    point.kind = "casualty-collection-point";
    point.number = "1";
    point.points = {movement::at(656890, 5102460)};
    plan::Route way;
    way.id = kettleId("RTE GROAT");
    way.name = "GROAT";
    way.use = plan::Use::Vehicle;
    way.vertices = {movement::at(656890, 5102460), movement::at(656890, 5101460)};
    heading.evacuation = plan::Evacuation{kettleId("CCP 1"), kettleId("RTE GROAT"), kettleId("CP 9"), {}, {}};
    return std::move(plan::PlanBuilder(plan).heading(heading).put(point).put(way)).build();
}

std::vector<drawing::Text> textsOf(const CardPage& page) {
    std::vector<drawing::Text> texts;
    for (const drawing::Mark& mark : page.drawing.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            texts.push_back(*text);
        }
    }
    return texts;
}

std::vector<std::string> wordsOf(const std::vector<CardPage>& pages) {
    std::vector<std::string> words;
    for (const CardPage& page : pages) {
        for (const drawing::Text& text : textsOf(page)) {
            words.push_back(text.text);
        }
    }
    return words;
}

drawing::Box boxOf(const drawing::Text& text) {
    const double width = drawing::textWidth(text.text, text.capHeight, text.weight);
    return {text.start.x, text.start.y - text.capHeight, text.start.x + width, text.start.y};
}

/// Nothing runs out of the margins, and no two texts touch.
void expectTidy(const std::vector<CardPage>& pages) {
    for (const CardPage& page : pages) {
        SCOPED_TRACE(page.name);
        const auto texts = textsOf(page);
        const bool small = page.width < PaperMm(148);
        const drawing::Box paper = small ? drawing::Box{5.9, 3.4, 99.1, 145.6} : drawing::Box{7.9, 4, 140.1, 207};
        for (std::size_t n = 0; n < texts.size(); ++n) {
            const drawing::Box box = boxOf(texts[n]);
            EXPECT_TRUE(paper.contains(box)) << texts[n].text << " at " << box.left << ' ' << box.bottom;
            for (std::size_t m = 0; m < n; ++m) {
                EXPECT_FALSE(box.grown(-0.01).meets(boxOf(texts[m]))) << texts[n].text << " on " << texts[m].text;
            }
        }
    }
}

plan::Plan changed(const plan::Plan& plan, const std::function<void(plan::Heading&)>& change) {
    plan::Heading heading = plan.heading();
    change(heading);
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

TEST(RouteCard, BothRoutesOfTheHandCheckStandOnTwoCardsEach) {
    const auto plan = kettlePlan();
    EXPECT_EQ(cards(plan, "QUILL").size(), 2U);
    EXPECT_EQ(cards(plan, "MITTEN").size(), 2U);
    expectTidy(cards(plan, "QUILL"));
    expectTidy(cards(plan, "MITTEN"));
    expectTidy(cards(plan, "QUILL", AngleUnit::Mils));
}

TEST(RouteCard, EveryBendHasItsOwnAzimuthAndDistance) {
    const auto words = wordsOf(cards(kettlePlan(), "QUILL"));
    for (const char* azimuth : {"018°", "024°", "034°", "031°", "043°", "011°", "026°", "050°", "092°", "060°"}) {
        EXPECT_THAT(words, Contains(azimuth));
    }
    for (const char* text : {"back 198°", "grid 007°", "460", "770", "343", "SP 1", "FL 5427 9806", "FL 5433 9852",
                             "2141", "0000", "0015", "RTE QUILL", "EXERCISE", "11° W, grid to magnetic: add 11"}) {
        EXPECT_THAT(words, Contains(text));
    }
    EXPECT_EQ(std::count(words.begin(), words.end(), "EXERCISE"), 4);
    EXPECT_THAT(words, Contains(HasSubstr("WMM2025")));
    EXPECT_THAT(words, Contains(HasSubstr("by the sheet")));
    EXPECT_THAT(words, Contains(HasSubstr("climb unknown")));
    EXPECT_THAT(words, Contains("PL BODKIN"));
    for (const char* text : {"Light", "13 MAR", "14 MAR", "BMNT", "0517", "moonset", "none", "0036", "27 %"}) {
        EXPECT_THAT(words, Contains(text));
    }
    EXPECT_THAT(words, Not(Contains("Caution:")));
}

TEST(RouteCard, BesideWhatALegRunsStandsWithTheLegAndLightInTheHead) {
    const auto pages = cards(movement::kettlePlanBesideOak(), "QUILL");
    expectTidy(pages);
    EXPECT_THAT(wordsOf(pages), Contains(HasSubstr("along MSR OAK 570 m from 180 m after CP 2")));
    EXPECT_THAT(wordsOf(pages), Contains("EENT"));
}

TEST(RouteCard, WarnsWhereSheetAndModelDiffer) {
    plan::Plan plan = kettlePlan();
    plan::Sheet sheet = *plan.sheets().front();
    sheet.declination->gmAngle = Degrees(-13);
    const auto pages = cards(std::move(plan::PlanBuilder(plan).put(sheet)).build(), "QUILL");
    expectTidy(pages);
    EXPECT_THAT(wordsOf(pages), Contains("Caution:"));
    EXPECT_THAT(wordsOf(pages), Contains(HasSubstr("Sheet and model differ by 1.7°.")));
}

TEST(RouteCard, MilsAreWrittenWithFourFigures) {
    const auto words = wordsOf(cards(kettlePlan(), "QUILL", AngleUnit::Mils));
    for (const char* text : {"0330", "grid 0130", "1640", "190 mils W, grid to magnetic: add 190"}) {
        EXPECT_THAT(words, Contains(text));
    }
    EXPECT_THAT(words, Not(Contains("018°")));
}

TEST(RouteCard, TheNextCardBeginsWithTheLastPointAndWhatWasBroughtOn) {
    const auto pages = cards(kettlePlan(), "QUILL");
    const auto first = wordsOf({pages[0]});
    const auto second = wordsOf({pages[1]});
    EXPECT_THAT(first, Contains("Carried on"));
    EXPECT_THAT(second, Contains("brought on"));
    EXPECT_THAT(first, Contains("CP 3"));
    EXPECT_THAT(second, Contains("CP 3"));
    EXPECT_THAT(first, Contains("2710"));
    EXPECT_THAT(second, Contains("2710"));
    EXPECT_THAT(second, Contains("5210"));
    EXPECT_THAT(first, Not(Contains("All legs")));
}

TEST(RouteCard, WithoutProfileAndRateNothingIsMadeUp) {
    const auto plan = changed(kettlePlan(), [](plan::Heading& heading) {
        heading.pace.reset();
        heading.rate.reset();
    });
    const auto words = wordsOf(cards(plan, "QUILL"));
    EXPECT_THAT(words, Not(Contains("paces")));
    EXPECT_THAT(words, Not(Contains("343")));
    EXPECT_THAT(words, Contains("time unknown: no rate"));
    EXPECT_THAT(words, Not(Contains("0")));
}

TEST(RouteCard, LongNamesTiesAndNotesStayInTheirPlaces) {
    const std::string endless(400, 'W');
    std::string many;
    for (int n = 0; n < 60; ++n) {
        many += "beside the wall ";
    }
    plan::Plan plan = changed(kettlePlan(), [&](plan::Heading& heading) {
        heading.marking = endless;
        heading.pace->note = many;
        heading.rate->note = endless;
    });
    plan::Route route = *plan.routeNamed("QUILL");
    route.name = "QUILL";
    route.ifNotFound = many + endless;
    plan::Measure point = *plan.measure(kettleId("CP 2"));
    point.tie = many;
    point.number = "12345678901234567890";
    plan::Measure other = *plan.measure(kettleId("CP 3"));
    other.tie = endless;
    plan::Measure line = *plan.measure(kettleId("PL BODKIN"));
    line.name = endless;
    plan = std::move(plan::PlanBuilder(plan).put(route).put(point).put(other).put(line)).build();
    expectTidy(cards(plan, "QUILL"));
    expectTidy(smallCards(plan, "QUILL"));
}

TEST(RouteCard, WhatIsSaidAboutALegStandsWithItAndStaysInItsPlace) {
    std::string many;
    for (int n = 0; n < 60; ++n) {
        many += "beside the wall ";
    }
    plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    route.stops[1].leg.catching = "road beyond the saddle";
    route.stops[1].leg.halt = Minutes(10);
    route.stops[2].leg.inContact = many;
    route.stops[2].leg.ifSeparated = many;
    route.stops[2].leg.remark = many;
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    const auto pages = cards(plan, "QUILL");
    expectTidy(pages);
    expectTidy(smallCards(plan, "QUILL"));
    const auto words = wordsOf(pages);
    EXPECT_THAT(words, Contains(HasSubstr("catch: road beyond the saddle")));
    EXPECT_THAT(words, Contains(HasSubstr("halt 10 min")));
    EXPECT_THAT(words, Contains(HasSubstr("in contact: beside the wall")));
}

TEST(RouteCard, ALegOfManyBendsGoesOnOnTheNextCard) {
    std::vector<geodesy::PlanePoint> points;
    for (int n = 0; n < 40; ++n) {
        points.push_back(movement::at(655000 + 150 * n, 5100000 + (n % 2) * 90));
    }
    plan::Plan plan = movement::plainRoute(points);
    plan::Route route = *plan.routeNamed("PLAIN");
    route.stops = {route.stops.front(), route.stops.back()};
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    const auto pages = cards(plan, "PLAIN");
    EXPECT_GT(pages.size(), 3U);
    expectTidy(pages);
    const auto words = wordsOf(pages);
    EXPECT_EQ(std::count(words.begin(), words.end(), "to the bend"), 38);
    for (const CardPage& page : pages) {
        double sums = 0;
        double lowest = 0;  // of the grid azimuths, which stand lowest in their rows
        for (const drawing::Mark& mark : page.drawing.marks) {
            if (const auto* text = std::get_if<drawing::Text>(&mark)) {
                sums = text->text == "Carried on" || text->text == "All legs" ? text->start.y : sums;
                lowest = text->text.starts_with("grid ") ? std::max(lowest, text->start.y) : lowest;
            }
        }
        constexpr double kRuleOverSums = 7.6 - 2.4;
        constexpr double kTail = 0.5;  // of the letter g
        ASSERT_GT(lowest, 0);
        EXPECT_LT(lowest + kTail, sums - kRuleOverSums);
    }
}

TEST(RouteCard, FiveLegsStandOnACardAtMost) {
    std::vector<geodesy::PlanePoint> points;
    for (int n = 0; n < 12; ++n) {
        points.push_back(movement::at(655000 + 400 * n, 5100000 + n * 30));
    }
    const plan::Plan plan = movement::plainRoute(points);
    const auto paper = movement::paperFigures(plan, figuresOf(plan, "PLAIN"), AngleUnit::Degrees).value();
    for (const CardStrips& card : shareOut(paper, kA5, {500, 500, 500, 500})) {
        EXPECT_LE(card.strips.size(), 5U);
    }
    EXPECT_EQ(shareOut(paper, kA5, {500, 500, 500, 500}).size(), 3U);
    expectTidy(cards(plan, "PLAIN"));
}

TEST(RouteCard, TheSmallCardHasTheSameFiguresWithoutTheGridAzimuth) {
    for (const char* route : {"QUILL", "MITTEN"}) {
        const auto pages = smallCards(kettlePlan(), route);
        expectTidy(pages);
        expectTidy(smallCards(kettlePlan(), route, AngleUnit::Mils));
        for (const CardPage& page : pages) {
            EXPECT_EQ(page.width, PaperMm(105));
            EXPECT_EQ(page.height, PaperMm(148));
            const auto words = wordsOf({page});
            EXPECT_THAT(words, Contains(HasSubstr("11° W, grid to magnetic: add 11")));
            EXPECT_THAT(words, Contains(HasSubstr("BMNT 0517"))) << "light on every card's head";
            EXPECT_THAT(words, Not(Contains("grid 007°")));
        }
    }
    const auto words = wordsOf(smallCards(kettlePlan(), "QUILL"));
    for (const char* text : {"018°", "back 198°", "460", "343", "FL 5427 9806", "2141", "0015", "5210",
                             "weir with footbridge at the lake's outlet", "Carried on", "brought on"}) {
        EXPECT_THAT(words, Contains(text));
    }
}

TEST(RouteCard, TheNextSmallCardRepeatsTheLastPointAndNoneHasMoreThanFourLegs) {
    std::vector<geodesy::PlanePoint> points;
    for (int n = 0; n < 14; ++n) {
        points.push_back(movement::at(655000 + 400 * n, 5100000 + n * 30));
    }
    const plan::Plan plan = movement::plainRoute(points);
    const auto pages = smallCards(plan, "PLAIN");
    expectTidy(pages);
    for (std::size_t n = 1; n < pages.size(); ++n) {
        const auto before = textsOf(pages[n - 1]);
        std::string last;
        int legs = 0;
        for (const drawing::Text& text : before) {
            legs += text.text.starts_with("leg ") ? 1 : 0;
            last = text.text.starts_with("CP ") && text.start.x == kA6.text ? text.text : last;
        }
        EXPECT_LE(legs, 4);
        const auto next = textsOf(pages[n]);
        const auto first = std::find_if(next.begin(), next.end(), [](const drawing::Text& text) {
            return text.text.starts_with("CP ") && text.start.x == kA6.text;
        });
        ASSERT_NE(first, next.end());
        EXPECT_EQ(first->text, last);
    }
}

TEST(RouteCard, WhereTheHurtAreFetchedStandsOnEveryCardOfBothSizes) {
    const plan::Plan plan = evacuated();
    for (const auto& pages : {cards(plan, "QUILL"), smallCards(plan, "QUILL")}) {
        expectTidy(pages);
        ASSERT_GT(pages.size(), 1U);
        for (const CardPage& page : pages) {
            EXPECT_THAT(wordsOf({page}), Contains("Pick-up:"));
            EXPECT_THAT(wordsOf({page}), Contains("CP 9 FM 5695 0190"));
        }
        EXPECT_THAT(wordsOf({pages[0]}), Contains(HasSubstr("at worst from SP 1 straight 5120 m")));
        EXPECT_THAT(wordsOf({pages[1]}), Not(Contains("Carry:"))) << "once is enough";
    }
}

TEST(RouteCard, AVehiclesCardHasNoPaces) {
    const plan::Plan plan = evacuated();
    for (const auto& pages : {cards(plan, "GROAT"), smallCards(plan, "GROAT")}) {
        expectTidy(pages);
        const auto words = wordsOf(pages);
        EXPECT_THAT(words, Not(Contains("paces")));
        EXPECT_THAT(words, Contains("a vehicle: no time"));
        EXPECT_THAT(words, Contains(HasSubstr("vehicle")));
        EXPECT_THAT(words, Not(Contains("Alternate:")));
    }
}

TEST(RouteCard, ClimbReadOffContoursSaysSo) {
    const plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    route.contours = {{route.vertices.front(), Metres(20)}, {route.vertices.back(), Metres(90)}};
    const auto by = std::move(plan::PlanBuilder(plan).put(route)).build();
    EXPECT_THAT(wordsOf(cards(by, "QUILL")), Contains(HasSubstr("from contours")));
    EXPECT_THAT(wordsOf(smallCards(by, "QUILL")), Contains(HasSubstr("from contours")));
    EXPECT_THAT(wordsOf(cards(plan, "QUILL")), Not(Contains(HasSubstr("from contours"))));
}

TEST(RouteCard, TheSamePlanGivesTheSameCard) {
    EXPECT_EQ(cards(kettlePlan(), "QUILL")[0].drawing, cards(kettlePlan(), "QUILL")[0].drawing);
}

TEST(CardLetters, RowsAreNeverWiderThanAsked) {
    constexpr std::uint32_t kSeed = 4271;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    const std::vector<std::string> alphabet{"a", "W", " ", "é", ",", "°", "i"};
    for (int round = 0; round < 300; ++round) {
        std::string text;
        for (auto n = random() % 80; n > 0; --n) {
            text += alphabet[random() % alphabet.size()];
        }
        const Hand hand{2, drawing::Weight::Bold};
        const auto rows = wrapped(text, 30, hand, 3);
        EXPECT_LE(rows.size(), 3U);
        for (const std::string& row : rows) {
            EXPECT_LE(widthOf(row, hand), 30.0001) << row;
        }
        EXPECT_LE(widthOf(fitted(text, 12, hand), hand), 12.0001);
    }
}

TEST(CardLetters, TextThatIsCutEndsWithDots) {
    const Hand hand{2, drawing::Weight::Regular};
    EXPECT_EQ(fitted("short", 50, hand), "short");
    EXPECT_THAT(fitted("a sheepfold beside the wall", 15, hand), testing::EndsWith("…"));
    EXPECT_THAT(wrapped("one two three four five six seven", 12, hand, 2).back(), testing::EndsWith("…"));
    EXPECT_EQ(wrapped("one two", 50, hand, 2), std::vector<std::string>{"one two"});
    EXPECT_EQ(atCommas("a, b,c, d"), (std::vector<std::string>{"a", "b,c", "d"}));
}

}  // namespace
}  // namespace crosstick::press
