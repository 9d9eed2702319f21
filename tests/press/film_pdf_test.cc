#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/film/inset.h"
#include "tests/files/temporary_folder.h"
#include "tests/press/desk.h"
#include "tests/press/trace.h"

namespace crosstick::press {
namespace {

using drawing::Point;
using testing::TracedPage;

constexpr double kTolerance = 0.05;  // millimetres, anywhere on A3
constexpr double kArm = 5;

/// The printed films of a plan in a folder of their own.
struct Printed {
    testing::TemporaryFolder folder;
    FilmSet set;
    std::filesystem::path file = folder / "films.pdf";

    explicit Printed(const plan::Plan& plan) : Printed(plan, testing::composed(plan)) {}
    Printed(const plan::Plan& plan, FilmSet films) : set(std::move(films)) {
        EXPECT_TRUE(writeWhole(file, testing::pdfOf(plan, set)).has_value());
    }
    [[nodiscard]] TracedPage traced(std::size_t page = 0) const {
        return testing::trace(file, static_cast<int>(page) + 1);
    }
};

bool hasCross(const TracedPage& page, Point at) {
    return testing::hasStroke(page, {at.x - kArm, at.y}, {at.x + kArm, at.y}, kTolerance) &&
           testing::hasStroke(page, {at.x, at.y - kArm}, {at.x, at.y + kArm}, kTolerance);
}

TEST(FilmPdf, TickCrossesStandWhereThePageListSays) {
    const Printed printed(film::printedPlan());
    ASSERT_EQ(printed.set.pages.size(), 3U);
    for (std::size_t n = 0; n < 3; ++n) {
        const TracedPage page = printed.traced(n);
        const auto& ticks = printed.set.pages[n].page.ticks;
        ASSERT_EQ(ticks.size(), 4U);
        for (const film::TickMark& tick : ticks) {
            EXPECT_TRUE(hasCross(page, tick.onPage)) << tick.grid;
        }
    }
}

// 5 km and 7 km at 1:25,000 are 200 mm and 280 mm.
TEST(FilmPdf, TicksLieApartByTheGroundDistanceAtScale) {
    const Printed printed(film::printedPlan());
    const auto& ticks = printed.set.pages.front().page.ticks;
    const TracedPage page = printed.traced();
    const Point first = ticks[0].onPage;
    EXPECT_TRUE(hasCross(page, first));
    EXPECT_TRUE(hasCross(page, first + Point{200, 0}));
    EXPECT_TRUE(hasCross(page, first + Point{0, -280}));
    EXPECT_TRUE(hasCross(page, first + Point{200, -280}));
}

// An inset round the works at 1:5,000: its ticks stand within 0.05 mm of their crossings, 100 m are 20 mm apart, its
// frame lies on its parent, and what it shows lies where its grid says (OBJ COBNUT's corner 657060 5103200).
TEST(FilmPdf, AnInsetHasItsOwnTicksAndItsFrameOnItsParent) {
    const plan::Plan base = film::printedPlan();
    const plan::Film& move = *base.filmNamed("MOVE");
    const auto place = film::proposeInset(base, move, movement::at(656800, 5103350), movement::at(657420, 5102700));
    ASSERT_TRUE(place.has_value());
    const plan::Plan plan = film::withInset(base, move, *place, movement::kettleId("works"), "WORKS");
    const Printed printed(plan);
    ASSERT_EQ(printed.set.pages.size(), 4U);
    const TracedPage inset = printed.traced(3);
    const FilmPage& page = printed.set.pages[3];
    EXPECT_EQ(page.scale, Scale{5000});
    const Point corner{page.page.windowAt.x, page.page.windowAt.y};
    ASSERT_EQ(page.page.ticks.size(), 4U);
    for (const film::TickMark& tick : page.page.ticks) {
        const Point crossing =
            corner + Point{(tick.at.easting.value() - 656800) / 5, (5103350 - tick.at.northing.value()) / 5};
        EXPECT_TRUE(hasCross(inset, crossing)) << tick.grid;
    }
    const Point works = corner + Point{(657060 - 656800) / 5.0, (5103350 - 5103200) / 5.0};
    EXPECT_TRUE(std::any_of(inset.lines.begin(), inset.lines.end(), [&](const testing::TracedLine& line) {
        return std::any_of(line.points.begin(), line.points.end(), [&](Point p) {
            return std::abs(p.x - works.x) < kTolerance && std::abs(p.y - works.y) < kTolerance;
        });
    }));
    const Point onParent = printed.set.pages[1].page.windowAt + Point{180, 46};
    EXPECT_TRUE(testing::hasStroke(printed.traced(1), onParent, onParent + Point{24.8, 0}, kTolerance));
    EXPECT_NE(
        testing::outputOf("pdftotext -f 2 -l 2 " + printed.file.string() + " - 2>/dev/null").find("WORKS 1:5 000"),
        std::string::npos);
}

TEST(FilmPdf, BarsAreAHundredMillimetresBothWays) {
    const Printed printed(film::printedPlan());
    const TracedPage page = printed.traced();
    const auto& bars = printed.set.pages.front().page.bars;
    ASSERT_EQ(bars.size(), 2U);
    for (const film::Bar& bar : bars) {
        EXPECT_TRUE(testing::hasStroke(page, bar.from, bar.to, kTolerance));
    }
    EXPECT_NEAR(bars[0].to.x - bars[0].from.x, 100, kTolerance);
    EXPECT_NEAR(bars[0].to.y, bars[0].from.y, 1e-9);
    EXPECT_NEAR(bars[1].from.y - bars[1].to.y, 100, kTolerance);
}

TEST(FilmPdf, PageBoxIsThePaperItself) {
    const plan::Plan plan = film::printedPlan();
    const Printed printed(plan);
    const std::string info = testing::outputOf("pdfinfo -box " + printed.file.string() + " 2>/dev/null");
    EXPECT_NE(info.find("MediaBox:            0.00     0.00   841.89  1190.55"), std::string::npos) << info;
    const std::string json = testing::outputOf("qpdf --json --json-key=qpdf " + printed.file.string());
    EXPECT_NE(json.find("841.889764"), std::string::npos);   // 297 mm
    EXPECT_NE(json.find("1190.551181"), std::string::npos);  // 420 mm
}

// PL BODKIN's second point, 653950 5099950, from the tick at 653000 5097000: 38 mm right, 118 mm up.
TEST(FilmPdf, MeasuresLieWhereTheirGridSays) {
    const Printed printed(film::printedPlan());
    const TracedPage page = printed.traced();
    const Point tick = printed.set.pages.front().page.ticks[0].onPage;
    const Point expected = tick + Point{38, -118};
    const bool found = std::any_of(page.lines.begin(), page.lines.end(), [&](const testing::TracedLine& line) {
        return std::any_of(line.points.begin(), line.points.end(), [&](Point p) {
            return std::abs(p.x - expected.x) < kTolerance && std::abs(p.y - expected.y) < kTolerance;
        });
    });
    EXPECT_TRUE(found);
}

TEST(FilmPdf, NothingIsDrawnNearerThanSixMillimetresToTheEdge) {
    const Printed printed(film::printedPlan());
    for (std::size_t n = 0; n < printed.set.pages.size(); ++n) {
        const TracedPage page = printed.traced(n);
        ASSERT_GT(page.lines.size(), 10U);
        for (const testing::TracedLine& line : page.lines) {
            for (const Point p : line.points) {
                EXPECT_TRUE(p.x > 5.99 && p.y > 5.99 && p.x < page.width - 5.99 && p.y < page.height - 5.99)
                    << p.x << ' ' << p.y;
            }
        }
        const drawing::Box ink = drawing::extent(printed.set.pages[n].drawing);
        EXPECT_GE(ink.left, 5.9);
        EXPECT_GE(ink.top, 5.9);
        EXPECT_LE(ink.right, page.width - 5.9);
        EXPECT_LE(ink.bottom, page.height - 5.9);
    }
}

TEST(FilmPdf, NoPenIsThinnerThanAQuarterMillimetre) {
    const Printed printed(film::printedPlan());
    for (const testing::TracedLine& line : printed.traced(1).lines) {
        EXPECT_GE(line.pen, 0.2499);
    }
}

TEST(FilmPdf, HoldsLettersOfTheEmbeddedFaceAndNoImages) {
    const Printed printed(film::printedPlan());
    const TracedPage page = printed.traced(1);
    EXPECT_EQ(page.images, 0);
    ASSERT_GT(page.texts.size(), 10U);
    for (const testing::TracedText& text : page.texts) {
        EXPECT_TRUE(text.font == "B612-Regular" || text.font == "B612-Bold") << text.font;
    }
    const std::string fonts = testing::outputOf("pdffonts " + printed.file.string() + " 2>/dev/null");
    EXPECT_NE(fonts.find("B612-Regular"), std::string::npos);
    EXPECT_EQ(fonts.find(" no  no  "), std::string::npos) << "a face is not embedded:\n" << fonts;
    const std::string words = testing::outputOf("pdftotext -f 2 -l 2 " + printed.file.string() + " - 2>/dev/null");
    for (const char* word : {"EXERCISE", "PHASES 1–2", "653000mE", "5097000mN", "film 2 of 3", "HASSOCK"}) {
        EXPECT_NE(words.find(word), std::string::npos) << word;
    }
}

TEST(FilmPdf, LettersAdvanceAsTheCoresTableSays) {
    const Printed printed(film::printedPlan());
    const TracedPage page = printed.traced(1);
    const auto row = std::find_if(page.texts.begin(), page.texts.end(),
                                  [](const testing::TracedText& text) { return text.text == "5097000mN"; });
    ASSERT_NE(row, page.texts.end());
    const auto places = drawing::setRow("5097000mN", drawing::Weight::Regular);
    ASSERT_EQ(row->places.size(), places.size());
    for (std::size_t n = 0; n < places.size(); ++n) {
        EXPECT_NEAR(row->places[n], places[n].at * 1.8 / drawing::kCapital, 0.01);
    }
}

TEST(FilmPdf, IsTheSameBytesTwice) {
    const plan::Plan plan = film::printedPlan();
    const std::string once = testing::pdfOf(plan, testing::composed(plan));
    EXPECT_EQ(once, testing::pdfOf(plan, testing::composed(plan)));
    EXPECT_GT(once.size(), 10000U);
}

TEST(FilmPdf, IsTheSameWhetherFilmsAreComposedBeforeOrWhileTheyArePainted) {
    const plan::Plan plan = film::printedPlan();
    const press::FilmsOrder order{plan, plan.films()};
    const auto printed = press::printFilms(order, press::pdfFacts(plan), testing::faces(), press::paperInks());
    ASSERT_TRUE(printed.has_value());
    const press::FilmSet set = testing::composed(plan);
    EXPECT_EQ(printed->pdf, testing::pdfOf(plan, set));
    ASSERT_EQ(printed->set.pages.size(), set.pages.size());
    for (std::size_t n = 0; n < set.pages.size(); ++n) {
        EXPECT_EQ(drawing::describe(printed->set.pages[n].drawing), drawing::describe(set.pages[n].drawing));
    }
}

TEST(FilmPdf, FaultOfALaterFilmEndsThePrintingInWords) {
    const plan::Plan plan = film::printedPlan();
    press::FilmsOrder order{plan, plan.films()};
    order.papers = *film::parsePaper("100x100");
    const auto printed = press::printFilms(order, press::pdfFacts(plan), testing::faces(), press::paperInks());
    ASSERT_FALSE(printed.has_value());
    EXPECT_EQ(printed.error().fault.name, "film/paper-too-small");
}

TEST(FilmPdf, PassesTheCheckerAndAsksForTrueSize) {
    const Printed printed(film::printedPlan());
    const std::string check = testing::outputOf("qpdf --check " + printed.file.string() + " 2>&1");
    EXPECT_NE(check.find("No syntax or stream encoding errors found"), std::string::npos) << check;
    const std::string json = testing::outputOf("qpdf --json --json-key=qpdf " + printed.file.string());
    EXPECT_NE(json.find("\"/PrintScaling\": \"/None\""), std::string::npos);
    EXPECT_NE(json.find("D:20270313130000Z"), std::string::npos);  // 131100OMAR27
}

TEST(FilmPdf, HasOneLayerForEachFilm) {
    const Printed printed(film::printedPlan());
    const std::string json = testing::outputOf("qpdf --json --json-key=qpdf " + printed.file.string());
    std::size_t layers = 0;
    for (auto at = json.find("\"/OCG\""); at != std::string::npos; at = json.find("\"/OCG\"", at + 1)) {
        ++layers;
    }
    EXPECT_EQ(layers, 3U);
    for (const char* name : {"u:HIGHER", "u:MOVE", "u:LOOK"}) {
        EXPECT_NE(json.find(name), std::string::npos) << name;
    }
}

// 25.4 mm of 1:25,000 are 635 m; GDAL opens the page at the pixels asked for.
TEST(FilmPdf, OtherReadersFindTheGroundAgain) {
    const Printed printed(film::printedPlan());
    const std::string facts =
        testing::outputOf("gdalinfo --config GDAL_PDF_DPI 254 " + printed.file.string() + " 2>/dev/null");
    EXPECT_NE(facts.find("ID[\"EPSG\",32625]"), std::string::npos) << facts;
    const auto at = facts.find("Pixel Size = (");
    ASSERT_NE(at, std::string::npos);
    EXPECT_NEAR(std::stod(facts.substr(at + 14)), 2.5, 0.001);
    const auto polygon = facts.find("POLYGON ((");
    ASSERT_NE(polygon, std::string::npos);
    EXPECT_NEAR(std::stod(facts.substr(polygon + 10)), 652300, 0.01);
}

}  // namespace
}  // namespace crosstick::press
