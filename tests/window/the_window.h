#pragma once

#include <cmath>

#include <gtest/gtest.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QLineEdit>
#include <QTest>

#include "app/wording/wording.h"
#include "core/film/new_plan.h"
#include "core/plan/edits.h"
#include "tests/files/temporary_folder.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"
#include "tests/window/slow_disk.h"
#include "ui/details/grid_entry.h"
#include "ui/details/unit_picker.h"
#include "ui/window/window.h"

namespace crosstick::window {

inline constexpr Instant kNow{std::chrono::seconds(1805155200)};

inline geodesy::PlanePoint at(double east, double north) {
    return {Metres(654000 + east), Metres(5098000 + north)};
}

/// A plan without a sheet on the grid round 25T FL 54 98, one film of one phase.
inline plan::Plan smallPlan() {
    plan::Heading heading;
    heading.name = "SMALL";
    heading.date = CalendarDate{std::chrono::year(2027), std::chrono::month(3), std::chrono::day(13)};
    heading.pace = plan::PaceProfile{62, "", {}};
    heading.rate = plan::MarchRate{KilometresPerHour(2), "", {}};
    const geodesy::GridPoint middle{{25, geodesy::Hemisphere::North}, at(0, 0)};
    plan::Plan plan = film::planOnGrid(middle, Scale{25000}, heading, Uuid{{1}});
    plan = plan::withFilm(plan, Uuid{{2}}, "MOVE", {});
    plan = plan::withFilm(plan, Uuid{{3}}, "LOOK", {});
    return plan;
}

class TheWindow : public ::testing::Test {
  protected:
    crosstick::testing::TemporaryFolder folder;
    std::shared_ptr<SlowDisk> kept = std::make_shared<SlowDisk>();  ///< a read that hangs may outlive the test
    SlowDisk& disk = *kept;
    sheets::ForeignReader reader = crosstick::testing::reader();
    std::unique_ptr<Window> window = fresh();

    void TearDown() override { disk.letGo(); }
    [[nodiscard]] Outside outside() {
        Outside outside;
        outside.share = places::share();
        outside.state = folder / "journals";
        outside.settings = folder / "window.ini";
        outside.reader = reader;
        outside.seed = 7;
        outside.now = [] { return kNow; };
        outside.say = [](const Error& error) { return QString::fromStdString(app::words(error)); };
        outside.demo = [](work::Course&) { return Result<std::filesystem::path>(std::filesystem::path{}); };
        outside.beforeErrand = [disk = kept] { disk->wait(); };
        return outside;
    }
    [[nodiscard]] std::unique_ptr<Window> fresh() {
        auto made = std::make_unique<Window>(outside());
        made->resize(1366, 768);
        made->show();
        return made;
    }
    void open() {
        window->work().begin(smallPlan(), folder / "");
        window->work().setWorkingFilm(Uuid{{2}});
        settle();
        window->table().setView(table::View(window->table().view().area(), at(0, 0), table::Zoom(0.2)));
        settle();
    }
    void settle() {
        QElapsedTimer patience;
        patience.start();
        do {
            QTest::qWait(20);
        } while (!window->table().isSettled() && patience.elapsed() < 10000);
        EXPECT_TRUE(window->table().isSettled());
    }
    /// Until nothing runs on another thread any more.
    void rest() {
        EXPECT_TRUE(QTest::qWaitFor([this] { return window->work().errands().isIdle(); }, 20000));
    }
    void save(const char* name) {
        window->saveTo(folder / name);
        rest();
        EXPECT_FALSE(window->work().isChanged()) << window->notices().said().toStdString();
    }
    [[nodiscard]] QPoint spot(geodesy::PlanePoint place) {
        const table::Spot s = window->table().view().spot(place);
        return {static_cast<int>(std::lround(s.x)), static_cast<int>(std::lround(s.y))};
    }
    void click(geodesy::PlanePoint place) {
        QTest::mouseMove(&window->table(), spot(place));
        QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(place));
    }
    void drag(geodesy::PlanePoint from, geodesy::PlanePoint to) {
        QTest::mousePress(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(from));
        QTest::mouseMove(&window->table(), spot((from)) + QPoint(20, 0));
        QTest::mouseMove(&window->table(), spot(to));
        QTest::mouseRelease(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(to));
    }
    void drawRoute() {
        window->run("route");
        click(at(-1000, -500));
        click(at(0, 0));
        click(at(1000, 200));
        QTest::keyClick(&window->table(), Qt::Key_Return);
    }
    [[nodiscard]] const plan::Plan& plan() { return window->work().plan(); }
    [[nodiscard]] ledger::Ledger& ledger() { return *window->findChild<ledger::Ledger*>(); }
    [[nodiscard]] details::Details& card() { return *window->findChild<details::Details*>(); }
};

}  // namespace crosstick::window
