#include "core/film/page.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "core/drawing/text_ruler.h"
#include "core/film/block.h"
#include "core/film/furniture.h"
#include "core/film/set_layout.h"
#include "tests/film/printed_plan.h"
#include "tests/places.h"

namespace crosstick::film {
namespace {

using movement::at;

movement::GmAngle printedAngle() {
    movement::GmAngle gm{};
    gm.angle = Degrees(-11.06);
    gm.source = plan::DeclinationSource::Sheet;
    gm.date = std::chrono::year(2027) / 3 / 13;
    return gm;
}

/// What holds the values that an order only refers to.
struct Ordered {
    plan::Plan plan = printedPlan();
    plan::FilmPtr film = plan.filmNamed("MOVE");
    Frame frame = *Frame::of(plan, *film);

    explicit Ordered(const char* name = "MOVE", std::optional<Scale> scale = std::nullopt)
        : film(plan.filmNamed(name)), frame(*Frame::of(plan, *film, scale)) {}
    [[nodiscard]] PageOrder order() const {
        PageOrder order{plan, *film, frame};
        order.gm = printedAngle();
        return order;
    }
};

std::vector<std::string> texts(const drawing::Drawing& drawing) {
    std::vector<std::string> out;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            out.push_back(text->text);
        }
    }
    return out;
}

bool says(const drawing::Drawing& drawing, const std::string& words) {
    const auto all = texts(drawing);
    return std::find(all.begin(), all.end(), words) != all.end();
}

TEST(Page, TakesTheSmallestOfA4AndA3ThatHoldsTheFilm) {
    const auto large = layOut(Ordered{}.order());
    ASSERT_TRUE(large.has_value());
    EXPECT_EQ(large->paper, (Paper{PaperMm(297), PaperMm(420)}));
    const Ordered half("MOVE", Scale{50000});
    const auto small = layOut(half.order());
    ASSERT_TRUE(small.has_value());
    EXPECT_EQ(small->paper, (Paper{PaperMm(210), PaperMm(297)}));
}

// Window 268 x 332 mm: with edges of 6 mm, half a pen at each side, and rows for marking and coordinates.
TEST(Page, RefusesSmallPaperWithTheSizeItNeeds) {
    const Ordered ordered;
    PageOrder order = ordered.order();
    order.papers = *parsePaper("a4");
    const auto page = layOut(order);
    ASSERT_FALSE(page.has_value());
    EXPECT_EQ(page.error().fault.name, "film/paper-too-small");
    std::map<std::string, double> sizes;
    for (const Argument& argument : page.error().arguments) {
        if (const auto* size = std::get_if<double>(&argument.value)) {
            sizes[argument.key] = *size;
        }
    }
    order.papers = *parsePaper(std::to_string(sizes.at("width_mm")) + "x" + std::to_string(sizes.at("height_mm")));
    EXPECT_TRUE(layOut(order).has_value()) << "the size that was named holds it";
    EXPECT_GE(sizes.at("width_mm"), 280);
    EXPECT_LE(sizes.at("width_mm"), 282);
    EXPECT_LE(sizes.at("height_mm"), 365);
}

TEST(Page, BlockCarriesWhatAFilmMust) {
    const auto page = layOut(Ordered{}.order());
    ASSERT_TRUE(page.has_value());
    for (const char* words :
         {"MOVE", "PHASES 1–2", "SLOW KETTLE", "ULMERAY, SHEET 4271, ZT25, ED. 2", "1:25 000 · WGS 84 · 25T FL FM",
          "EFF 131900OMAR27", "BY LT ARDEN, 2/C, 131100OMAR27", "DISTR: COPY 2 OF 6: 1 SQD", "SIDE 40.0 mm", "EXERCISE",
          "film 2 of 3", "G-M 11° W", "2027, from the sheet", "100 mm, true"}) {
        EXPECT_TRUE(says(page->furniture, words)) << words;
    }
}

TEST(Page, FittedToStretchedPaperSaysSoAndItsBarsStayTrue) {
    Ordered ordered;
    const auto exact = layOut(ordered.order());
    ASSERT_TRUE(exact.has_value());
    ordered.frame = ordered.frame.fitted({0.25, -0.1});
    const auto page = layOut(ordered.order());
    ASSERT_TRUE(page.has_value());
    EXPECT_TRUE(says(page->furniture, "FIT TO PAPER: E +0.25 %, N -0.10 %"));
    EXPECT_TRUE(says(page->furniture, "SIDES 40.1 x 40.0 mm"));
    ASSERT_EQ(page->bars.size(), exact->bars.size());
    for (std::size_t n = 0; n < page->bars.size(); ++n) {
        const Bar& bar = page->bars[n];
        EXPECT_NEAR(std::hypot(bar.to.x - bar.from.x, bar.to.y - bar.from.y), 100, 1e-9);
    }
    // Ticks of the demo stand 5 km and 7 km apart: 200.5 and 279.72 mm on that paper.
    double east = 0;
    double north = 0;
    for (const TickMark& a : page->ticks) {
        for (const TickMark& b : page->ticks) {
            east = std::max(east, std::abs(a.onPage.x - b.onPage.x));
            north = std::max(north, std::abs(a.onPage.y - b.onPage.y));
        }
    }
    EXPECT_NEAR(east, 200.5, 1e-6);
    EXPECT_NEAR(north, 279.72, 1e-6);
}

TEST(Page, ASheetsStretchFitsItsFilmsAtItsOwnScaleOnly) {
    plan::PlanBuilder builder(printedPlan());
    plan::Sheet sheet = *printedPlan().sheets().front();
    sheet.stretch = plan::PaperStretch{0.25, -0.1};
    builder.put(std::move(sheet));
    const plan::Plan plan = std::move(builder).build();
    SetLayout layout(plan);
    EXPECT_NEAR(layout.frame(*plan.filmNamed("MOVE"), std::nullopt)->window().width(), 268.67, 1e-9);
    EXPECT_NEAR(layout.frame(*plan.filmNamed("MOVE"), Scale{50000})->window().width(), 134, 1e-9);
    EXPECT_NEAR(Frame::of(plan, *plan.filmNamed("MOVE"))->window().width(), 268, 1e-9) << "on the table nothing is";
}

TEST(Page, MarkingStandsAtTopAndFoot) {
    const auto page = layOut(Ordered{}.order());
    ASSERT_TRUE(page.has_value());
    const auto all = texts(page->furniture);
    EXPECT_EQ(std::count(all.begin(), all.end(), "EXERCISE"), 2);
}

TEST(Page, LowerLeftTickIsLabelledInFullAndTheOthersByTheirLines) {
    const auto page = layOut(Ordered{}.order());
    ASSERT_TRUE(page.has_value());
    EXPECT_TRUE(says(page->furniture, "653000mE"));
    EXPECT_TRUE(says(page->furniture, "5097000mN"));
    const auto all = texts(page->furniture);
    EXPECT_EQ(std::count(all.begin(), all.end(), "6 58"), 2);
    EXPECT_EQ(std::count(all.begin(), all.end(), "6 53"), 1);
    EXPECT_EQ(std::count(all.begin(), all.end(), "51 04"), 2);
}

TEST(Page, SideOfASquareFollowsTheScaleWhileBarsStayTrue) {
    const Ordered half("MOVE", Scale{50000});
    const auto page = layOut(half.order());
    ASSERT_TRUE(page.has_value());
    EXPECT_TRUE(says(page->furniture, "SIDE 20.0 mm"));
    EXPECT_TRUE(says(page->furniture, "1:50 000 · WGS 84 · 25T FL FM"));
    for (const Bar& bar : page->bars) {
        EXPECT_NEAR(std::abs(bar.to.x - bar.from.x) + std::abs(bar.to.y - bar.from.y), 100, 1e-9);
    }
}

TEST(Page, TicksAndFurnitureInsideAreReserved) {
    const Ordered ordered;
    PageOrder order = ordered.order();
    order.papers = *parsePaper("285x365");
    const auto page = layOut(order);
    ASSERT_TRUE(page.has_value());
    const drawing::Box window = ordered.frame.window();
    EXPECT_TRUE(window.contains({page->block.left - page->windowAt.x, page->block.top - page->windowAt.y,
                                 page->block.right - page->windowAt.x, page->block.bottom - page->windowAt.y}));
    const auto reserved = [&](drawing::Point onPage) {
        const drawing::Point p = onPage - page->windowAt;
        return std::any_of(page->reserved.begin(), page->reserved.end(),
                           [&](const drawing::Box& box) { return box.contains(p); });
    };
    EXPECT_TRUE(reserved(page->block.middle()));
    for (const TickMark& tick : page->ticks) {
        for (const drawing::Vector by : {drawing::Vector{6.9, 6.9}, {-6.9, -6.9}}) {
            EXPECT_TRUE(reserved(tick.onPage + by)) << tick.grid;
        }
    }
    const Bar& upright = page->bars[1];
    EXPECT_TRUE(window.contains(upright.from - page->windowAt)) << "there is no room for it beside the window";
    EXPECT_TRUE(reserved((upright.from + upright.to) * 0.5));
}

TEST(Page, BlockIsTheSameSizeWhereTheSetKeepsRowsForLegends) {
    const Ordered ordered;
    PageOrder few = ordered.order();
    PageOrder many = ordered.order();
    many.legend.resize(3, {{}, "explained"});
    many.legend.push_back({{}, "explained in so many words that they take three rows beside the sample"});
    few.legendRoom = legendRoom(many.legend);
    EXPECT_GT(few.legendRoom.value(), legendRoom({4, {{}, "explained"}}).value());
    const auto a = layOut(few);
    const auto b = layOut(many);
    ASSERT_TRUE(a.has_value() && b.has_value());
    EXPECT_EQ(a->block, b->block);
    EXPECT_GT(a->block.height(), 36);
}

TEST(Page, FilmsOfASetLieAlikeOnTheirPapers) {
    const plan::Plan plan = printedPlan();
    SetLayout layout(plan);
    std::vector<Page> pages;
    for (const plan::FilmPtr& film : plan.films()) {
        const auto frame = layout.frame(*film, std::nullopt);
        ASSERT_TRUE(frame.has_value());
        PageOrder order{plan, *film, *frame};
        order.gm = printedAngle();
        const auto page = layout.layOut(order);
        ASSERT_TRUE(page.has_value());
        const auto alone = layOut(order);
        ASSERT_TRUE(alone.has_value());
        EXPECT_EQ(drawing::describe(page->furniture), drawing::describe(alone->furniture));
        pages.push_back(*page);
    }
    ASSERT_GT(pages.size(), 1U);
    for (const Page& page : pages) {
        EXPECT_EQ(page.paper, pages.front().paper);
        EXPECT_EQ(page.windowAt, pages.front().windowAt);
        EXPECT_EQ(page.block, pages.front().block);
        EXPECT_EQ(page.reserved, pages.front().reserved);
    }
}

TEST(Page, TickThatAMeasureRunsThroughIsLabelledAside) {
    // The left boundary begins at 653050 5097000, in the tick's upper right quadrant.
    const auto page = layOut(Ordered{}.order());
    ASSERT_TRUE(page.has_value());
    const drawing::Point tick = page->ticks.front().onPage;
    for (const drawing::Mark& mark : page->furniture.marks) {
        const auto* text = std::get_if<drawing::Text>(&mark);
        if (text != nullptr && text->text == "653000mE") {
            EXPECT_TRUE(text->start.x < tick.x || text->start.y > tick.y);
        }
    }
}

TEST(Page, PlanWithoutASheetSaysSo) {
    plan::PlanBuilder builder{printedPlan()};
    builder.removeSheet(movement::kettleId("sheet"));
    const plan::Plan plan = std::move(builder).build();
    const plan::FilmPtr film = plan.filmNamed("MOVE");
    const Frame frame = *Frame::of(plan, *film);
    const auto page = layOut({plan, *film, frame});
    ASSERT_TRUE(page.has_value());
    EXPECT_TRUE(says(page->furniture, "NO SHEET: THE PLAN'S OWN GRID"));
    EXPECT_TRUE(says(page->furniture, "1:25 000 · WGS 84 · 25T FL FM"));
}

TEST(Page, LongTitleGivesWayToThePhases) {
    plan::Plan plan = printedPlan();
    plan::Film film = *plan.filmNamed("MOVE");
    film.name = "SCHEME OF MOVEMENT BY THE LAKE";
    plan::PlanBuilder builder{plan};
    builder.put(film);
    plan = std::move(builder).build();
    const Frame frame = *Frame::of(plan, film);
    const auto page = layOut({plan, film, frame});
    ASSERT_TRUE(page.has_value());
    double titleEnd = 0;
    double phases = 1e9;
    for (const drawing::Mark& mark : page->furniture.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            if (text->text == film.name) {
                titleEnd = text->start.x + drawing::textWidth(text->text, text->capHeight, text->weight);
            } else if (text->text == "PHASES 1–2") {
                phases = text->start.x;
            }
        }
    }
    EXPECT_GT(titleEnd, 0);
    EXPECT_LT(titleEnd, phases);
}

TEST(Page, PhasesAreWordedAsRunsAndLists) {
    EXPECT_EQ(phasesText({}), "");
    EXPECT_EQ(phasesText({3}), "PHASE 3");
    EXPECT_EQ(phasesText({1, 2, 3}), "PHASES 1–3");
    EXPECT_EQ(phasesText({1, 3}), "PHASES 1, 3");
    EXPECT_EQ(scaleText(Scale{25000}), "1:25 000");
    EXPECT_EQ(scaleText(Scale{1000000}), "1:1 000 000");
    EXPECT_EQ(scaleText(Scale{500}), "1:500");
}

TEST(Page, BlockAndMarksSpeakTheLanguageOfTheOrder) {
    const Ordered ordered;
    const auto english = layOut(ordered.order());
    PageOrder order = ordered.order();
    order.say = [](std::string_view words, const std::vector<std::string>& parts) {
        return "<" + filled(words, parts) + ">";
    };
    const auto foreign = layOut(order);
    ASSERT_TRUE(english.has_value() && foreign.has_value());
    for (const char* words : {"100 mm, true", "film 2 of 3", "PHASES 1–2", "2027, from the sheet"}) {
        EXPECT_TRUE(says(english->furniture, words)) << words;
        EXPECT_FALSE(says(foreign->furniture, words)) << words;
        EXPECT_TRUE(says(foreign->furniture, "<" + std::string(words) + ">")) << words;
    }
    EXPECT_TRUE(says(foreign->furniture, ordered.film->name)) << "names stay";
    const auto unsaid = texts(foreign->furniture);
    EXPECT_TRUE(std::none_of(unsaid.begin(), unsaid.end(), [](const std::string& text) {
        return text.starts_with("PLANNING") || text.starts_with("SQUARE") || text.starts_with("SIDE") ||
               text.starts_with("BY ") || text.starts_with("EFF ") || text.starts_with("DISTR");
    }));
}

TEST(Page, FiveNotchesAreOneWideOne) {
    const auto fills = [](std::size_t number) {
        const Piece piece = notches(number, 9);
        return std::count_if(piece.drawing.marks.begin(), piece.drawing.marks.end(),
                             [](const drawing::Mark& mark) { return std::holds_alternative<drawing::Fill>(mark); });
    };
    EXPECT_EQ(fills(1), 1);
    EXPECT_EQ(fills(4), 4);
    EXPECT_EQ(fills(5), 1);
    EXPECT_EQ(fills(8), 4);
}

/// The whole furniture of film MOVE as text; CROSSTICK_WRITE_GOLDENS=1 writes it anew, to be read as a difference.
TEST(Page, FurnitureIsAsItWasLastLookedAt) {
    const auto page = layOut(Ordered{}.order());
    ASSERT_TRUE(page.has_value());
    const std::string now = drawing::describe(page->furniture);
    const std::string file = places::source() / "tests/film/furniture.txt";
    const char* anew = std::getenv("CROSSTICK_WRITE_GOLDENS");
    if (anew != nullptr && std::string(anew) == "1") {
        std::ofstream(file) << now;
    }
    std::ifstream in(file);
    std::stringstream looked;
    looked << in.rdbuf();
    EXPECT_EQ(looked.str(), now);
}

}  // namespace
}  // namespace crosstick::film
