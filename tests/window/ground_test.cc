// Faults of the ground stay at the window's foot until they are mended or put away.
#include <fstream>
#include <random>

#include <unistd.h>

#include <QProcess>
#include <QPushButton>

#include "core/files/carried_files.h"
#include "core/sheets/raster.h"
#include "core/sheets/sheet_file.h"
#include "tests/places.h"
#include "tests/sheets/made_sheets.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Ground : public TheWindow {
  protected:
    /// A sheet of 4 by 4 km with heights, both beside the plan.
    void SetUp() override {
        makeSheet("sheet.tif");
        makeHeights("heights.tif");
    }
    void makeSheet(const char* name) {
        crosstick::testing::makeSheet(folder / name, {.columns = 800,
                                                      .rows = 800,
                                                      .placement = {652000, 5, 0, 5100000, 0, -5},
                                                      .value = [](int, int, int) { return 200; }});
    }
    void makeHeights(const char* name) {
        crosstick::testing::makeSheet(folder / name, {.columns = 400,
                                                      .rows = 400,
                                                      .depth = crosstick::testing::Depth::Float,
                                                      .placement = {652000, 10, 0, 5100000, 0, -10},
                                                      .value = [](int column, int, int) { return 100 + column; }});
    }
    void openOnSheet() {
        auto sheet =
            sheets::describeSheet(crosstick::testing::reader(), folder / "sheet.tif", Uuid{{9}}, {Scale{25000}, {}});
        ASSERT_TRUE(sheet) << app::words(sheet.error());
        sheet->path = "sheet.tif";
        sheet->elevationPath = "heights.tif";
        plan::PlanBuilder builder(smallPlan());
        builder.put(std::move(*sheet));
        window->work().begin(std::move(builder).build(), folder / "");
        window->work().setWorkingFilm(Uuid{{2}});
        settle();
        rest();
    }
    [[nodiscard]] std::string kept(const char* about) const { return window->notices().kept(about).toStdString(); }
    /// The fault comes by way of the table's own threads.
    void waitForFault(const char* about) {
        ASSERT_TRUE(QTest::qWaitFor([&] { return !window->notices().kept(about).isEmpty(); }, 20000));
        rest();
    }
    [[nodiscard]] QPushButton* button(const char* words) {
        for (QPushButton* each : window->findChild<Notices*>()->findChildren<QPushButton*>()) {
            if (each->isVisible() && each->text() == QLatin1String(words)) {
                return each;
            }
        }
        return nullptr;
    }
    void press(const char* words) {
        QPushButton* found = button(words);
        ASSERT_NE(found, nullptr) << words;
        QTest::mouseClick(found, Qt::LeftButton);
        QTest::qWait(1);
        rest();
    }
};

TEST_F(Ground, ThatIsWholeKeepsQuiet) {
    openOnSheet();
    EXPECT_EQ(kept("grid") + kept("heights") + kept("sheet"), "");
    EXPECT_NE(window->work().heights(), nullptr);
    EXPECT_FALSE(window->findChild<Notices*>()->isVisible());
}

TEST_F(Ground, HeightsThatAreMissingAreToldAndMendedByLookingAgain) {
    std::filesystem::remove(folder / "heights.tif");
    openOnSheet();
    EXPECT_EQ(kept("heights").rfind("No heights, so climb stays unknown: ", 0), 0U) << kept("heights");
    EXPECT_NE(kept("heights").find("heights.tif"), std::string::npos) << kept("heights");
    makeHeights("heights.tif");
    press("Look again");
    EXPECT_EQ(kept("heights"), "");
    EXPECT_NE(window->work().heights(), nullptr);
    EXPECT_FALSE(window->findChild<Notices*>()->isVisible());
}

TEST_F(Ground, HeightsThatAreBrokenAreToldAndNothingElseStops) {
    std::ofstream(folder / "heights.tif") << "no raster at all";
    openOnSheet();
    EXPECT_NE(kept("heights").find("heights.tif"), std::string::npos) << kept("heights");
    EXPECT_EQ(window->work().heights(), nullptr);
    drawRoute();
    EXPECT_EQ(window->work().figures().size(), 1U);
}

TEST_F(Ground, HeightsWithoutAUnitAreAskedForOnce) {
    crosstick::testing::makeSheet(folder / "heights.tif", {.columns = 400,
                                                           .rows = 400,
                                                           .depth = crosstick::testing::Depth::Float,
                                                           .placement = {652000, 10, 0, 5100000, 0, -10},
                                                           .value = [](int, int, int) { return 1000; },
                                                           .heightUnit = ""});
    openOnSheet();
    EXPECT_NE(kept("heights").find("does not say in what it counts"), std::string::npos) << kept("heights");
    EXPECT_EQ(window->work().heights(), nullptr);
    press("Feet");
    EXPECT_EQ(kept("heights"), "");
    ASSERT_NE(window->work().heights(), nullptr);
    EXPECT_NEAR(window->work().heights()->heightAt(at(0, 0)).value_or(Metres(0)).value(), 304.8, 0.01);
    EXPECT_EQ(plan().sheets().front()->elevationUnit, plan::HeightUnit::Foot);
    window->run("undo");
    rest();
    EXPECT_NE(kept("heights"), "");
}

TEST_F(Ground, TheStripIsInOurWashFromTheFirstShow) {
    std::filesystem::remove(folder / "heights.tif");
    openOnSheet();
    auto* strip = window->findChild<Notices*>();
    ASSERT_TRUE(strip->isVisible());
    EXPECT_EQ(strip->grab().toImage().pixelColor(2, 2), look::colours(look::Light::Day).wash);
}

TEST_F(Ground, AFaultPutAwayStaysAwayAndIsStillMended) {
    std::filesystem::remove(folder / "heights.tif");
    openOnSheet();
    press("Put away");
    EXPECT_FALSE(window->findChild<Notices*>()->isVisible());
    window->work().lookAtGround();
    rest();
    EXPECT_FALSE(window->findChild<Notices*>()->isVisible()) << "the same fault, put away already";
    makeHeights("heights.tif");
    window->work().lookAtGround();
    rest();
    EXPECT_EQ(kept("heights"), "");
    EXPECT_NE(window->work().heights(), nullptr);
}

TEST_F(Ground, ASheetThatIsGoneIsToldAndShownAgainWhereItIsFound) {
    openOnSheet();
    std::filesystem::rename(folder / "sheet.tif", folder / "moved.tif");
    window = fresh();
    auto sheet =
        sheets::describeSheet(crosstick::testing::reader(), folder / "moved.tif", Uuid{{9}}, {Scale{25000}, {}});
    ASSERT_TRUE(sheet);
    sheet->path = "sheet.tif";
    plan::PlanBuilder builder(smallPlan());
    builder.put(std::move(*sheet));
    const crosstick::testing::TemporaryFolder far;  // where nobody looks by himself
    std::filesystem::rename(folder / "moved.tif", far / "moved.tif");
    window->work().begin(std::move(builder).build(), folder / "");
    waitForFault("sheet");
    EXPECT_NE(kept("sheet").find("sheet.tif"), std::string::npos) << kept("sheet");
    EXPECT_NE(button("Say where it is..."), nullptr);
    window->sheetIsAt(far / "moved.tif");
    rest();
    settle();
    EXPECT_EQ(kept("sheet"), "");
    EXPECT_EQ(plan().sheets().front()->path, far / "moved.tif");
    EXPECT_TRUE(window->work().isChanged());
}

TEST_F(Ground, ASheetThatWasMovedNearbyIsFoundByItsBytes) {
    openOnSheet();
    save("plan.gpkg");
    std::filesystem::create_directory(folder / "maps");
    std::filesystem::rename(folder / "sheet.tif", folder / "maps" / "other name.tif");
    window = fresh();
    window->openPlan(folder / "plan.gpkg");
    rest();
    settle();
    EXPECT_EQ(kept("sheet"), "");
    EXPECT_EQ(plan().sheets().front()->path, "maps/other name.tif");
    window->run("undo");
    EXPECT_EQ(plan().sheets().front()->path, "sheet.tif");
}

TEST_F(Ground, AnotherSheetInItsPlaceIsRefused) {
    std::filesystem::remove(folder / "heights.tif");
    openOnSheet();
    crosstick::testing::makeSheet(folder / "other.tif",
                                  {.columns = 700, .rows = 800, .placement = {652000, 5, 0, 5100000, 0, -5}});
    const plan::Plan before = plan();
    window->sheetIsAt(folder / "other.tif");
    rest();
    EXPECT_TRUE(plan() == before);
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("other.tif")))
        << window->notices().said().toStdString();
}

TEST_F(Ground, ADatumWhoseBetterWayIsNotInstalledIsTold) {
    crosstick::testing::makeSheet(
        folder / "alaska.tif",
        {.columns = 600, .rows = 600, .crs = "EPSG:26705", .placement = {450000, 100, 0, 7230000, 0, -100}});
    window->openSheet(folder / "alaska.tif", {Scale{250000}, {}});
    rest();
    ASSERT_EQ(plan().sheets().size(), 1U) << window->notices().said().toStdString();
    EXPECT_EQ(kept("datum").rfind("NAD27 to WGS 84 goes by \"NAD27 to WGS 84 (7)\", good to 12 m; ", 0), 0U)
        << kept("datum");
    EXPECT_EQ(plan().sheets().front()->datumShift.name, "NAD27 to WGS 84 (7)");
    openOnSheet();
    EXPECT_EQ(kept("datum"), "");
}

TEST_F(Ground, ASpoiltCopyOfTheSheetIsMadeAnew) {
    openOnSheet();
    const auto copy = window->work().sheetGrounds().first()->copy();
    ASSERT_FALSE(copy.empty());
    std::filesystem::resize_file(copy, std::filesystem::file_size(copy) / 2);
    window = fresh();
    openOnSheet();
    EXPECT_EQ(kept("sheet"), "");
    EXPECT_EQ(window->work().sheetGrounds().first()->copy(), copy);
    EXPECT_TRUE(sheets::Raster::open(copy).has_value());
}

/// The middle pixel of a place on the table.
QColor seenAt(table::LightTable& table, geodesy::PlanePoint onGrid) {
    const table::Spot spot = table.view().spot(onGrid);
    return table.grab().toImage().pixelColor(static_cast<int>(spot.x), static_cast<int>(spot.y));
}

TEST_F(Ground, ASecondSheetLiesBesideTheFirst) {
    openOnSheet();
    crosstick::testing::makeSheet(folder / "east.tif", {.columns = 800,
                                                        .rows = 800,
                                                        .placement = {656000, 5, 0, 5100000, 0, -5},
                                                        .value = [](int, int, int) { return 120; }});
    window->layBeside(folder / "east.tif", {Scale{25000}, {}});
    rest();
    ASSERT_EQ(plan().sheets().size(), 2U) << window->notices().said().toStdString();
    // No grid is printed on either: both are shown whole, and that is said.
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("edges of the map were not found")));
    EXPECT_EQ(kept("seams"), "");
    window->table().fitSheet();
    settle();
    EXPECT_EQ(seenAt(window->table(), {Metres(653000), Metres(5097500)}).red(), 200);
    EXPECT_EQ(seenAt(window->table(), {Metres(659500), Metres(5097500)}).red(), 120);
    window->layBeside(folder / "east.tif", {Scale{25000}, {}});
    rest();
    EXPECT_EQ(plan().sheets().size(), 2U) << "the same file twice";
    window->run("undo");
    EXPECT_EQ(plan().sheets().size(), 1U);
}

TEST_F(Ground, SheetsThatDoNotMeetAreToldWithTheirOffset) {
    openOnSheet();
    crosstick::testing::makeSheet(folder / "east.tif", {.columns = 800,
                                                        .rows = 800,
                                                        .placement = {656035, 5, 0, 5100000, 0, -5},
                                                        .value = [](int, int, int) { return 120; }});
    window->layBeside(folder / "east.tif", {Scale{25000}, {}});
    rest();
    EXPECT_EQ(kept("seams"), "Sheets do not meet. sheet and east: 35 m missing.");
    plan::Sheet moved = *plan().sheets()[1];
    moved.neatline = {{100, 0}, {800, 0}, {800, 800}, {100, 800}};
    plan::PlanBuilder builder(plan());
    builder.put(std::move(moved));
    window->work().commit(std::move(builder).build(), "crop");
    rest();
    EXPECT_EQ(kept("seams"), "");
}

TEST_F(Ground, ASheetOfTheNextZoneIsLaidWhereItBelongs) {
    openOnSheet();
    // A square of 2 km inside the first sheet, written in zone 26; its middle is brought there by PROJ.
    const auto link = geodesy::PlaneLink::between("EPSG:32625", "EPSG:32626");
    ASSERT_TRUE(link);
    const auto middle = link->forward({Metres(654000), Metres(5098000)});
    ASSERT_TRUE(middle);
    crosstick::testing::makeSheet(
        folder / "inset.tif",
        {.columns = 400,
         .rows = 400,
         .crs = "EPSG:32626",
         .placement = {middle->easting.value() - 1000, 5, 0, middle->northing.value() + 1000, 0, -5},
         .value = [](int column, int row, int) {
             return std::abs(column - 200) < 60 && std::abs(row - 200) < 60 ? 40 : 90;
         }});
    window->layBeside(folder / "inset.tif", {Scale{10000}, {}});
    rest();
    ASSERT_EQ(plan().sheets().size(), 2U) << window->notices().said().toStdString();
    window->table().fitSheet();
    settle();
    EXPECT_EQ(seenAt(window->table(), {Metres(654080), Metres(5098080)}).red(), 40);
    EXPECT_EQ(seenAt(window->table(), {Metres(654000), Metres(5098600)}).red(), 90);
    EXPECT_EQ(seenAt(window->table(), {Metres(652500), Metres(5098080)}).red(), 200);
}

TEST_F(Ground, SomebodysFilmLiesSeeThroughOverTheMap) {
    openOnSheet();
    crosstick::testing::makeSheet(
        folder / "film.tif",
        {.columns = 600, .rows = 600, .placement = {652500, 5, 0, 5099500, 0, -5}, .value = [](int column, int, int) {
             return std::abs(column - 300) < 3 ? 20 : 235;
         }});
    window->layBeside(folder / "film.tif", {Scale{25000}, {}});
    rest();
    ASSERT_EQ(plan().sheets().size(), 2U);
    plan::Sheet film = *plan().sheets()[1];
    film.asFilm = 1;
    plan::PlanBuilder builder(plan());
    builder.put(std::move(film));
    window->work().commit(std::move(builder).build(), "as a film");
    window->table().fitSheet();
    settle();
    EXPECT_NEAR(seenAt(window->table(), {Metres(653200), Metres(5098080)}).red(), 200, 4);  // the map below
    EXPECT_LT(seenAt(window->table(), {Metres(654000), Metres(5098080)}).red(), 60);        // the stroke
    EXPECT_EQ(kept("seams"), "");
}

TEST_F(Ground, ASheetIsCroppedByHandAndItsCollarComesBack) {
    openOnSheet();
    const plan::SheetId id = plan().sheets().front()->id;
    plan::Sheet cropped = *plan().sheets().front();
    cropped.neatline = {{200, 200}, {600, 200}, {600, 600}, {200, 600}};
    plan::PlanBuilder builder(plan());
    builder.put(std::move(cropped));
    window->work().commit(std::move(builder).build(), "crop");
    window->table().setView(window->table().view().centredOn({Metres(654000), Metres(5098000)}));
    settle();
    const geodesy::PlanePoint inCollar{Metres(652700), Metres(5098080)};
    EXPECT_NE(seenAt(window->table(), inCollar).red(), 200);
    window->holdNeatline(id);  // whoever sets the edge sees all of the sheet
    settle();
    EXPECT_EQ(seenAt(window->table(), inCollar).red(), 200);
    window->table().setTool(nullptr);
    settle();
    EXPECT_NE(seenAt(window->table(), inCollar).red(), 200);
}

TEST_F(Ground, APlanHandedOnAloneShowsTheSheetThatItCarries) {
    openOnSheet();
    save("plan.gpkg");
    window->run("carry");
    rest();
    EXPECT_TRUE(window->notices().said().startsWith(QStringLiteral("The plan carries its sheets now")))
        << window->notices().said().toStdString();
    EXPECT_EQ(files::carriedIn(folder / "plan.gpkg")->size(), 2U);
    EXPECT_FALSE(window->work().isChanged());
    std::filesystem::create_directory(folder / "other");
    std::filesystem::rename(folder / "plan.gpkg", folder / "other" / "plan.gpkg");
    window = fresh();
    window->openPlan(folder / "other" / "plan.gpkg");
    rest();
    EXPECT_EQ(kept("sheet") + kept("heights"), "");
    EXPECT_FALSE(window->work().sheetGrounds().first()->copy().empty());
    EXPECT_NE(window->work().heights(), nullptr);
    window->run("carry-nothing");
    rest();
    EXPECT_TRUE(files::carriedIn(folder / "other" / "plan.gpkg")->empty());
}

// Whoever kills the reader at whatever moment, the table pans on, and the sheet is there or one line says why not.
TEST_F(Ground, AReaderKilledWhileTheTablePansIsOneLine) {
    crosstick::testing::makeSheet(folder / "sheet.tif",
                                  {.columns = 3000,
                                   .rows = 3000,
                                   .placement = {652000, 1.3, 0, 5100000, 0, -1.3},
                                   .value = [](int column, int row, int) { return (column * row) % 251; }});
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    for (int turn = 0; turn < 6; ++turn) {
        reader = {places::foreignReader(), sheets::SheetCache(folder / ("cache" + std::to_string(turn)).c_str())};
        window = fresh();
        auto sheet = sheets::describeSheet(reader, folder / "sheet.tif", Uuid{{9}}, {Scale{25000}, {}});
        ASSERT_TRUE(sheet);
        sheet->path = "sheet.tif";
        plan::PlanBuilder builder(smallPlan());
        builder.put(std::move(*sheet));
        window->work().begin(std::move(builder).build(), folder / "");
        QElapsedTimer since;
        since.start();
        const auto moment = static_cast<qint64>(chance() % 300);
        for (bool killed = false; window->work().sheetGrounds().isReading() && since.elapsed() < 20000;) {
            QTest::keyClick(&window->table(), Qt::Key_Right);
            QTest::qWait(5);
            if (!killed && since.elapsed() > moment) {
                killed = true;
                EXPECT_GE(QProcess::execute("pkill", {"-KILL", "-P", QString::number(::getpid()), "crosstick-read"}),
                          0);
            }
        }
        EXPECT_TRUE(window->work().isOpen());
        EXPECT_NE(window->work().sheetGrounds().first()->copy().empty(), kept("sheet").empty());
        EXPECT_FALSE(window->grab().isNull());
    }
}

TEST_F(Ground, AGridThatCannotBeOpenedIsToldAndThePlanStillOpens) {
    auto sheet =
        sheets::describeSheet(crosstick::testing::reader(), folder / "sheet.tif", Uuid{{9}}, {Scale{25000}, {}});
    ASSERT_TRUE(sheet);
    sheet->path = "sheet.tif";
    sheet->crs = "EPSG:1";
    plan::PlanBuilder builder(smallPlan());
    builder.put(std::move(*sheet));
    window->work().begin(std::move(builder).build(), folder / "");
    rest();
    EXPECT_TRUE(window->work().isOpen());
    EXPECT_EQ(window->work().grid(), nullptr);
    EXPECT_EQ(kept("grid").rfind("No grid, so nothing can be measured: ", 0), 0U) << kept("grid");
    EXPECT_FALSE(window->grab().isNull());
}

// Paths are kept as seen from the plan's folder: those of the steps before a save elsewhere, too.
TEST_F(Ground, AnUndoAfterASaveElsewhereStillFindsTheSheet) {
    openOnSheet();
    save("plan.gpkg");
    window->run("draw-checkpoint");
    click(at(0, 0));
    std::filesystem::create_directory(folder / "other");
    window->saveTo(folder / "other" / "plan.gpkg");
    rest();
    const std::string path = plan().sheets().front()->path;
    EXPECT_NE(path, "sheet.tif");
    window->run("undo");
    rest();
    EXPECT_EQ(plan().measures().size(), 0U);
    EXPECT_EQ(plan().sheets().front()->path, path);
    EXPECT_EQ(kept("sheet") + kept("heights"), "");
    EXPECT_NE(window->work().heights(), nullptr);
}

}  // namespace
}  // namespace crosstick::window
