// A read that hangs holds nobody up: not the end of the program, and not what is asked for after it was given up.
#include <atomic>

#include "tests/window/the_window.h"
#include "ui/work/runners.h"

namespace crosstick::window {
namespace {

using namespace std::chrono_literals;

class End : public TheWindow {
  protected:
    void waitForReaders(int count) {
        ASSERT_TRUE(QTest::qWaitFor([&] { return disk.waiting() == count; }, 20000));
    }
    /// A read that hung comes back at last: what it was for is gone, and it touches nothing.
    void letThemComeBack() {
        disk.letGo();
        ASSERT_TRUE(QTest::qWaitFor([&] { return disk.waiting() == 0; }, 20000));
        QTest::qWait(50);
    }
};

TEST_F(End, AWindowGoesWhileItsReadsHangAndTheyMayComeBackLater) {
    open();
    save("plan.gpkg");
    disk.hold();
    window->openPlan(folder / "plan.gpkg");
    window->openSheet(folder / "sheet.tif");
    window->run("copies");
    waitForReaders(3);  // one of the files' lane, two of the other
    EXPECT_EQ(window->end(), work::Ending::LeftBehind);
    window.reset();
    EXPECT_EQ(disk.waiting(), 3) << "nobody waited for them";
    letThemComeBack();
}

TEST_F(End, AWindowWhoseReadsAnswerEndsWhole) {
    open();
    save("plan.gpkg");
    window->openPlan(folder / "plan.gpkg");
    rest();
    EXPECT_EQ(window->end(), work::Ending::Whole);
}

TEST_F(End, AStepBesideAReadThatHangsIsKeptForTheNextStart) {
    open();
    drawRoute();
    const plan::Plan drawn = plan();
    disk.hold();
    window->openPlan(folder / "nothing.gpkg");
    waitForReaders(1);
    window.reset();
    disk.letOthersPass();
    window = fresh();
    const auto found = files::leftovers(folder / "journals");
    ASSERT_EQ(found.size(), 1U);
    window->work().takeUp(found.front(), [](const Result<std::size_t>& taken) { EXPECT_TRUE(taken.has_value()); });
    rest();
    EXPECT_TRUE(plan() == drawn);
    letThemComeBack();
}

TEST_F(End, AfterAReadThatHangsWasGivenUpThePlanIsStillSaved) {
    open();
    save("plan.gpkg");
    disk.hold();
    window->openPlan(folder / "plan.gpkg");
    waitForReaders(1);
    disk.letOthersPass();
    window->run("draw-checkpoint");
    click(at(0, 0));
    window->work().errands().giveUp();
    window->run("save");  // in the lane of the one that hangs
    rest();
    EXPECT_FALSE(window->work().isChanged());
    auto file = files::PlanFile::open(folder / "plan.gpkg", files::Access::ReadOnly);
    ASSERT_TRUE(file.has_value());
    EXPECT_TRUE(file->plan() == plan());
    letThemComeBack();
    EXPECT_TRUE(plan() == file->plan()) << "what was given up never comes";
}

TEST(Runners, DoWhatTheyAreGivenInOrderAndComeBack) {
    const auto runners = work::Runners::of(1);
    std::vector<int> done;  // one runner: no lock is needed
    for (int n = 0; n < 200; ++n) {
        runners->give({[&done, n] { done.push_back(n); }, [] { return false; }});
    }
    EXPECT_TRUE(runners->areBack(20s));
    ASSERT_EQ(done.size(), 200U);
    EXPECT_TRUE(std::is_sorted(done.begin(), done.end()));
    EXPECT_FALSE(runners->hasLeftBehind());
}

TEST(Runners, NeverMoreAtATimeThanTheyAre) {
    const auto runners = work::Runners::of(2);
    std::atomic<int> out = 0;
    std::atomic<int> most = 0;
    for (int n = 0; n < 60; ++n) {
        runners->give({[&] {
                           const int now = ++out;
                           int before = most;
                           while (before < now && !most.compare_exchange_weak(before, now)) {
                           }
                           std::this_thread::sleep_for(1ms);
                           --out;
                       },
                       [] { return false; }});
    }
    EXPECT_TRUE(runners->areBack(20s));
    EXPECT_EQ(most, 2);
}

TEST(Runners, OnlyWhoIsOutWithSomethingGivenUpIsLeftBehind) {
    const auto disk = std::make_shared<SlowDisk>();
    const auto givenUp = std::make_shared<std::atomic<bool>>(false);
    const auto runners = work::Runners::of(1);
    std::atomic<bool> next = false;
    disk->hold();
    runners->give({[disk] { disk->wait(); }, [givenUp] { return givenUp->load(); }});
    runners->give({[&next] { next = true; }, [] { return false; }});
    EXPECT_FALSE(runners->areBack(20ms));
    runners->leaveBehind();
    EXPECT_FALSE(runners->areBack(20ms)) << "it was not given up";
    EXPECT_FALSE(next);
    *givenUp = true;
    runners->leaveBehind();
    EXPECT_TRUE(runners->areBack(20s));
    EXPECT_TRUE(next) << "another one went on";
    EXPECT_TRUE(runners->hasLeftBehind());
    disk->letGo();
    EXPECT_TRUE(QTest::qWaitFor([&] { return disk->waiting() == 0; }, 20000));
}

}  // namespace
}  // namespace crosstick::window
