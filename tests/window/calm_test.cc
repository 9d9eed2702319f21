// The window's thread never waits: what reads and writes happens elsewhere, and nothing is lost meanwhile.
#include <thread>

#include "core/files/plan_file.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Calm : public TheWindow {
  protected:
    int ticks = 0;
    QTimer timer;

    Calm() {
        QObject::connect(&timer, &QTimer::timeout, [this] { ++ticks; });
        timer.start(5);
    }
    /// The window goes on while the disk does not: its timer ticks, and it paints.
    void expectAlive() {
        const int before = ticks;
        EXPECT_TRUE(QTest::qWaitFor([&] { return ticks > before + 10; }, 10000)) << "the window's thread waits";
        EXPECT_FALSE(window->grab().isNull());
    }
    void place(geodesy::PlanePoint where) {
        window->run("draw-checkpoint");
        click(where);
        QTest::keyClick(card().labelField(), Qt::Key_Return);
        QTest::keyClick(&window->table(), Qt::Key_Escape);
        window->table().setTool(nullptr);
    }
    [[nodiscard]] plan::Plan inFile(const char* name) {
        auto file = files::PlanFile::open(folder / name, files::Access::ReadOnly);
        return file ? file->plan() : plan::Plan{};
    }
    /// The plan is in its file; then a step, and a save of it that the disk keeps waiting.
    void beginASlowSave() {
        open();
        save("plan.gpkg");
        place(at(0, 0));
        disk.hold();
        window->run("save");
        ASSERT_TRUE(window->work().isSaving());
    }
};

TEST_F(Calm, APlanOpenedFromASlowDiskDoesNotHoldTheWindowUp) {
    open();
    save("plan.gpkg");
    window = fresh();
    rest();
    disk.hold();
    window->openPlan(folder / "plan.gpkg");
    expectAlive();
    EXPECT_FALSE(window->work().isOpen());
    EXPECT_TRUE(QTest::qWaitFor([this] { return window->doing().isVisible(); }));
    EXPECT_TRUE(window->doing().words().startsWith(QStringLiteral("Opening plan.gpkg")));
    disk.letGo();
    rest();
    EXPECT_TRUE(window->work().isOpen());
    EXPECT_FALSE(window->doing().isVisible()) << "nothing is being done any more";
}

TEST_F(Calm, WhatIsGivenUpNeverComes) {
    open();
    save("plan.gpkg");
    window = fresh();
    rest();
    disk.hold();
    window->openPlan(folder / "plan.gpkg");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->doing().giveUpButton()->isVisible(); }, 10000));
    QTest::mouseClick(window->doing().giveUpButton(), Qt::LeftButton);
    EXPECT_TRUE(window->work().errands().isIdle());
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("plan.gpkg")));
    disk.letGo();
    QTest::qWait(100);
    EXPECT_FALSE(window->work().isOpen());
}

TEST_F(Calm, ASaveWritesThePlanAsItWasAtThePress) {
    beginASlowSave();
    const plan::Plan pressed = plan();
    expectAlive();
    place(at(500, 500));
    EXPECT_EQ(plan().measures().size(), 2U) << "editing goes on";
    disk.letGo();
    rest();
    EXPECT_TRUE(inFile("plan.gpkg") == pressed);
    EXPECT_TRUE(window->work().isChanged()) << "the step made meanwhile is not in the file";
    window->run("save");
    rest();
    EXPECT_FALSE(window->work().isChanged());
    EXPECT_TRUE(inFile("plan.gpkg") == plan());
}

TEST_F(Calm, ASecondSaveMeanwhileFollowsTheFirst) {
    beginASlowSave();
    window->run("save");  // of the same state: it joins
    place(at(500, 500));
    window->run("save");
    const plan::Plan pressed = plan();
    place(at(-500, 500));
    disk.letGo();
    rest();
    EXPECT_TRUE(inFile("plan.gpkg") == pressed);
    EXPECT_TRUE(window->work().isChanged());
    EXPECT_EQ(files::PlanFile::open(folder / "plan.gpkg", files::Access::ReadOnly)->saves(), 3);
}

TEST_F(Calm, AStepMadeDuringASaveComesBackAfterACrash) {
    beginASlowSave();
    place(at(500, 500));
    disk.letGo();
    rest();
    place(at(-500, 500));
    const plan::Plan drawn = plan();
    window = fresh();  // the old one went without a save
    const auto found = files::leftovers(folder / "journals");
    ASSERT_EQ(found.size(), 1U);
    window->work().takeUp(found.front(), [](const Result<std::size_t>& taken) { EXPECT_EQ(taken.value_or(0), 2U); });
    rest();
    EXPECT_TRUE(plan() == drawn);
}

TEST_F(Calm, ACrashBeforeASaveCameToPassLosesNoStep) {
    beginASlowSave();
    place(at(500, 500));
    std::filesystem::path journal;
    for (const auto& entry : std::filesystem::directory_iterator(folder / "journals")) {
        journal = entry.path();
    }
    const auto recovered = files::replay(journal, inFile("plan.gpkg"), 1);
    ASSERT_TRUE(recovered);
    EXPECT_TRUE(recovered->plan == plan());
}

TEST_F(Calm, AnEditDuringASaveElsewhereGoesOnThere) {
    open();
    save("plan.gpkg");
    std::filesystem::create_directory(folder / "other");
    disk.hold();
    window->saveTo(folder / "other" / "plan.gpkg");
    place(at(0, 0));
    window->run("save");  // of the step, into the other file
    const plan::Plan pressed = plan();
    place(at(500, 0));
    const plan::Plan drawn = plan();
    disk.letGo();
    rest();
    EXPECT_EQ(window->work().file(), folder / "other" / "plan.gpkg");
    EXPECT_TRUE(inFile("other/plan.gpkg") == pressed);
    EXPECT_EQ(inFile("plan.gpkg").measures().size(), 0U);
    window = fresh();
    const auto found = files::leftovers(folder / "journals");
    ASSERT_EQ(found.size(), 1U);
    window->work().takeUp(found.front(), [](const Result<std::size_t>& taken) { EXPECT_EQ(taken.value_or(0), 1U); });
    rest();
    EXPECT_TRUE(plan() == drawn);
}

TEST_F(Calm, ASaveElsewhereWaitsForADragToEnd) {
    open();
    place(at(0, 0));
    const plan::ItemId item = *window->work().selected();
    QTest::mousePress(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(0, 0)));
    QTest::mouseMove(&window->table(), spot(at(0, 0)) + QPoint(20, 0));
    window->saveTo(folder / "plan.gpkg");
    rest();
    EXPECT_TRUE(window->work().isSaving()) << "the hand holds a plan with the old paths";
    QTest::mouseRelease(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(500, 0)));
    EXPECT_FALSE(window->work().isSaving());
    EXPECT_EQ(window->work().file(), folder / "plan.gpkg");
    EXPECT_TRUE(window->work().isChanged());
    EXPECT_NEAR((plan().measure(item)->points[0].easting - at(500, 0).easting).value(), 0, 6);
}

TEST_F(Calm, ClosingWaitsForASaveWithoutFreezing) {
    beginASlowSave();
    EXPECT_FALSE(window->close());
    EXPECT_TRUE(window->isVisible());
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("closes when")));
    expectAlive();
    const plan::Plan drawn = plan();
    disk.letGo();
    EXPECT_TRUE(QTest::qWaitFor([this] { return !window->isVisible(); }));
    EXPECT_TRUE(inFile("plan.gpkg") == drawn);
}

TEST_F(Calm, ASaveThatFailsKeepsTheWindowOpen) {
    beginASlowSave();
    std::filesystem::remove(folder / "plan.gpkg");
    EXPECT_FALSE(window->close());
    disk.letGo();
    rest();
    QTest::qWait(50);
    EXPECT_TRUE(window->isVisible());
    EXPECT_TRUE(window->work().isChanged());
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("moved away")))
        << window->notices().said().toStdString();
}

TEST_F(Calm, LayingAwayWaitsForASave) {
    beginASlowSave();
    const plan::Plan drawn = plan();
    window->run("close");
    EXPECT_TRUE(window->work().isOpen());
    disk.letGo();
    rest();
    EXPECT_FALSE(window->work().isOpen());
    EXPECT_TRUE(inFile("plan.gpkg") == drawn);
    EXPECT_TRUE(files::leftovers(folder / "journals").empty()) << "all of it is in the file";
}

TEST_F(Calm, AWindowThatGoesInTheMiddleOfASaveLeavesTheWholePlan) {
    beginASlowSave();
    const plan::Plan drawn = plan();
    std::thread other([this] {
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
        disk.letGo();
    });
    window.reset();
    other.join();
    EXPECT_TRUE(inFile("plan.gpkg") == drawn);
    EXPECT_TRUE(files::leftovers(folder / "journals").empty());
}

TEST_F(Calm, AWindowThatGoesWhileItReadsIsSafe) {
    open();
    save("plan.gpkg");
    disk.hold();
    window->openPlan(folder / "plan.gpkg");
    window->run("copies");
    std::thread other([this] {
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
        disk.letGo();
    });
    window.reset();
    other.join();
    EXPECT_EQ(disk.waiting(), 0);
}

}  // namespace
}  // namespace crosstick::window
