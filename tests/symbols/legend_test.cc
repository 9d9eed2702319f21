// The legend a film must carry, and the action box that other papers borrow.
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using ::testing::ElementsAre;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

std::vector<std::string> rowsOf(const MadeFilm& film) {
    std::vector<std::string> rows;
    for (const LegendRow& row : film.legendRows()) {
        rows.push_back(row.text);
    }
    return rows;
}

TEST(Legend, ExplainsThePatternsOfTheRoutesThatAFilmShows) {
    MadeFilm film;
    film.add(testing::sample("phase-line", {100, 75}));
    EXPECT_TRUE(rowsOf(film).empty());
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .name = "MITTEN", .use = plan::Use::Alternate});
    EXPECT_THAT(rowsOf(film), ElementsAre("ALTERNATE ROUTE"));
    film.add(MadeRoute{.vertices = {{40, 90}, {140, 90}}, .name = "QUILL"});
    EXPECT_THAT(rowsOf(film), ElementsAre("PRIMARY ROUTE", "ALTERNATE ROUTE"));
    film.add(MadeRoute{.vertices = {{40, 105}, {140, 105}}, .name = "GROAT", .use = plan::Use::Vehicle});
    EXPECT_THAT(rowsOf(film), ElementsAre("PRIMARY ROUTE", "ALTERNATE ROUTE", "WAY OF VEHICLES (VEH)"));
}

TEST(Legend, ExplainsTheDotsOfAnAdministrativeMove) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{30, 75}, {70, 75}, {140, 75}}, .stops = {1, 2}, .name = "QUILL"});
    EXPECT_THAT(rowsOf(film), ElementsAre("PRIMARY ROUTE", "ADMINISTRATIVE MOVE"));
}

TEST(Legend, SamplesLieInTheirSixteenByFive) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .name = "MITTEN", .use = plan::Use::Alternate});
    film.add(MadeRoute{.vertices = {{40, 90}, {140, 90}}, .name = "QUILL"});
    for (const LegendRow& row : film.legendRows()) {
        EXPECT_TRUE((drawing::Box{-0.3, 0, 16.3, 5}.contains(drawing::extent(row.sample)))) << row.text;
        EXPECT_GT(drawing::extent(row.sample).width(), 15) << row.text;
    }
}

// A symbol that is not standard has to be explained (FM 21-26 7-2 and others: trade.md 1.1, seen).
TEST(Legend, ExplainsEveryKindThatIsNotStandardOnce) {
    for (const measures::Entry& entry : measures::catalogue()) {
        MadeFilm film;
        film.add(testing::sample(entry.kind, {60, 60}));
        film.add(testing::sample(entry.kind, {140, 100}));
        const auto rows = film.legendRows();
        ASSERT_EQ(rows.size(), entry.legend == measures::Legend::Explain ? 1U : 0U) << entry.kind;
        for (const LegendRow& row : rows) {
            EXPECT_FALSE(row.sample.isEmpty()) << entry.kind;
            EXPECT_TRUE((drawing::Box{-0.3, -0.3, 16.3, 5.3}.contains(drawing::extent(row.sample)))) << entry.kind;
            for (const drawing::Text& text : testing::texts(row.sample)) {
                EXPECT_GE(text.capHeight, 1.8 - 1e-9) << entry.kind;
            }
        }
    }
}

// A circle with an arrow is five tasks: the letter says which. Blocks are written in capitals (engraving D).
TEST(Legend, ShowsTheLetterOfEveryTaskThatIsDrawnAndSpeaksInCapitals) {
    int drawn = 0;
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.group != measures::Group::Tasks || entry.sign == measures::Sign::TaskWords) {
            continue;
        }
        for (const bool isEnemys : {false, true}) {
            for (const double symbol : {4.0, 6.0, 8.0}) {
                SCOPED_TRACE(std::string(entry.kind) + " symbols of " + std::to_string(symbol));
                Made made = testing::sample(entry.kind, {100, 75});
                made.whose = isEnemys ? plan::Whose::Enemy : plan::Whose::Own;
                MadeFilm film;
                film.gauge(drawing::Gauge::of(symbol, 0.4, 2)).add(made);
                const auto rows = film.legendRows(LegendExtent::Everything);
                ASSERT_EQ(rows.size(), 1U);
                const auto letters = testing::texts(rows.front().sample);
                ASSERT_FALSE(letters.empty());
                for (const drawing::Text& letter : letters) {
                    EXPECT_EQ(letter.text, entry.abbreviation);
                    EXPECT_GE(letter.capHeight, 1.8 - 1e-9);
                }
                for (const auto& box : testing::letterBoxes(rows.front().sample)) {
                    EXPECT_GT(testing::clearance(box, rows.front().sample), 0.2);
                }
                EXPECT_TRUE((drawing::Box{-0.3, -0.3, 16.3, 5.3}.contains(drawing::extent(rows.front().sample))));
                EXPECT_EQ(rows.front().text.find_first_of("abcdefghijklmnopqrstuvwxyz"), std::string::npos);
                ++drawn;
            }
        }
    }
    EXPECT_GT(drawn, 80);
}

TEST(Legend, NamesLinesThenAreasThenPoints) {
    MadeFilm film;
    film.add(testing::sample("rehearsal-site", {60, 60}));
    film.add(testing::sample("danger-area", {140, 60}));
    film.add(testing::sample("linear-danger-area", {100, 120}));
    EXPECT_THAT(rowsOf(film), ElementsAre("LINEAR DANGER AREA (DGR)", "DANGER AREA", "REHEARSAL SITE (RHSL)"));
}

TEST(ActionBox, ByItselfHasItsTipWhereItIsAsked) {
    for (const std::vector<std::string>& rows :
         {std::vector<std::string>{"3"}, {"SP", "1"}, {"ORP"}, {"CCP", "12"}, {}}) {
        const drawing::Drawing box = actionBox({30, 40}, rows, {}, drawing::Ink::Blue);
        EXPECT_NEAR(testing::reach(box, {30, 40}, {0, 1}, 50), 0, 0.05);
        EXPECT_EQ(testing::texts(box).size(), rows.size());
        for (const auto& letters : testing::letterBoxes(box)) {
            EXPECT_GT(testing::clearance(letters, box), 0.4);
        }
    }
}

TEST(Legend, ExplainsEverythingOnRequestButNotFreeText) {
    MadeFilm film;
    for (const char* kind : {"checkpoint", "phase-line", "checkpoint", "text", "restricted-ground"}) {
        film.add(testing::sample(kind, {100, 75}));
    }
    std::vector<std::string> rows;
    for (const LegendRow& row : film.legendRows(LegendExtent::Everything)) {
        rows.push_back(row.text);
        EXPECT_FALSE(row.sample.isEmpty()) << row.text;
    }
    EXPECT_THAT(rows, ElementsAre("PHASE LINE (PL)", "RESTRICTED GROUND", "CHECKPOINT (CP)"));
}

}  // namespace
}  // namespace crosstick::symbols
