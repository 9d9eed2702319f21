#include "core/plan/history.h"

#include <gtest/gtest.h>

#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

TEST(History, UndoAndRedoWalkThroughTheSamePlans) {
    testing::RandomPlans random(11);
    std::vector<Plan> states{random.plan(200)};
    History history(states.front());
    while (states.size() < 40) {
        const Plan next = random.edited(states.back());
        if (!(next == states.back())) {
            states.push_back(next);
            history.push(next, "edit " + std::to_string(states.size()));
        }
    }
    for (std::size_t n = states.size() - 1; n-- > 0;) {
        EXPECT_EQ(history.undoCaption(), "edit " + std::to_string(n + 2));
        EXPECT_TRUE(history.undo() == states[n]);
    }
    EXPECT_FALSE(history.canUndo());
    EXPECT_TRUE(history.undo() == states.front());
    for (std::size_t n = 1; n < states.size(); ++n) {
        EXPECT_TRUE(history.redo() == states[n]);
    }
    EXPECT_FALSE(history.canRedo());
}

TEST(History, ANewEditDropsWhatWasUndone) {
    testing::RandomPlans random(12);
    History history(random.plan(5));
    const auto add = [&](const std::string& caption) {
        PlanBuilder builder(history.present());
        builder.put(random.measure());
        history.push(std::move(builder).build(), caption);
    };
    add("one");
    add("two");
    (void)history.undo();
    add("three");
    EXPECT_FALSE(history.canRedo());
    EXPECT_EQ(history.undoCaption(), "three");
    EXPECT_EQ(history.steps(), 2U);
}

TEST(History, AnEqualPlanAddsNoStep) {
    testing::RandomPlans random(13);
    History history(random.plan(5));
    history.push(history.present(), "nothing");
    EXPECT_EQ(history.steps(), 0U);
}

TEST(History, TheOldestStepsGoWhenTheCapIsReached) {
    testing::RandomPlans random(14);
    const std::size_t cap = 200000;
    History history(random.plan(2000), cap);
    std::size_t pushed = 0;
    for (; pushed < 300; ++pushed) {
        PlanBuilder builder(history.present());
        builder.put(random.measure());
        history.push(std::move(builder).build(), "add");
        EXPECT_LE(history.bytes(), cap);
    }
    EXPECT_LT(history.steps(), pushed);
    EXPECT_GT(history.steps(), 10U);
    while (history.canUndo()) {
        (void)history.undo();
    }
    EXPECT_EQ(history.present().measures().size(), 2000 + pushed - history.steps());
}

TEST(History, TenThousandMeasuresCostAboutFourKilobytesAStep) {
    testing::RandomPlans random(15);
    History history(random.plan(10000));
    for (int n = 0; n < 100; ++n) {
        PlanBuilder builder(history.present());
        builder.put(random.measure());
        history.push(std::move(builder).build(), "add");
    }
    EXPECT_LT(history.bytes() / 100, 8000U);  // so 256 MB hold over thirty thousand steps
}

TEST(History, GoesToAnyStepOfItsListAndBack) {
    testing::RandomPlans random(18);
    History history(random.plan(20));
    std::vector<Plan> states{history.present()};
    std::vector<std::string> captions;
    while (captions.size() < 30) {
        const Plan next = random.edited(states.back());
        if (!(next == states.back())) {
            states.push_back(next);
            captions.push_back("edit " + std::to_string(captions.size()));
            history.push(next, captions.back());
        }
    }
    EXPECT_EQ(history.captions(), captions);
    for (int round = 0; round < 200; ++round) {
        const std::size_t to = random.below(states.size());
        EXPECT_TRUE(history.goTo(to) == states[to]);
        EXPECT_EQ(history.done(), to);
        EXPECT_EQ(history.state(), to);
        EXPECT_EQ(history.captions(), captions) << "jumping drops nothing";
    }
    EXPECT_TRUE(history.goTo(1000) == states.back());
}

TEST(History, AStateKeepsItsNumberWhileTheOldestStepsGo) {
    testing::RandomPlans random(19);
    History history(random.plan(200), 60000);
    for (std::size_t n = 1; n <= 100; ++n) {
        history.push(std::move(PlanBuilder(history.present()).put(random.measure())).build(), "add");
        EXPECT_EQ(history.state(), n);
    }
    ASSERT_LT(history.steps(), 100U);
    (void)history.goTo(0);
    EXPECT_EQ(history.state(), 100 - history.steps());
}

TEST(History, RewritesEveryPlanAndKeepsItsPlace) {
    testing::RandomPlans random(17);
    History history(random.plan(5));
    for (int n = 0; n < 4; ++n) {
        history.push(random.edited(history.present()), "step");
    }
    (void)history.undo();
    const std::size_t steps = history.steps();
    history.rewrite([](const Plan& plan) {
        Heading heading = plan.heading();
        heading.name = "SEEN FROM ELSEWHERE";
        PlanBuilder builder(plan);
        builder.heading(std::move(heading));
        return std::move(builder).build();
    });
    EXPECT_EQ(history.steps(), steps);
    EXPECT_TRUE(history.canRedo());
    EXPECT_EQ(history.redo().heading().name, "SEEN FROM ELSEWHERE");
    while (history.canUndo()) {
        EXPECT_EQ(history.undo().heading().name, "SEEN FROM ELSEWHERE");
    }
}

}  // namespace
}  // namespace crosstick::plan
