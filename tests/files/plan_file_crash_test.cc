#include <csignal>
#include <random>

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/files/plan_file.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

constexpr Instant kNow{std::chrono::seconds(1805155200)};

/// Saves one of two plans after the other until it is killed.
[[noreturn]] void saveForEver(const std::filesystem::path& file, const plan::Plan& one, const plan::Plan& other,
                              int ready) {
    auto opened = PlanFile::open(file, Access::ReadWrite);
    const char go = 'g';
    if (!opened || ::write(ready, &go, 1) != 1) {
        ::_exit(1);
    }
    for (bool turn = false;; turn = !turn) {
        if (!opened->save(turn ? one : other, kNow)) {
            ::_exit(2);
        }
    }
}

// Every save rewrites some 1,500 measures, so that pages spill into the file before the commit; kill -9 comes at a
// random moment of it.
TEST(PlanFileCrash, TwoHundredKillsInTheMiddleOfASaveLeaveTheOldOrTheNewPlan) {
    const std::uint64_t seed = 20270314;
    SCOPED_TRACE(seed);
    std::mt19937_64 chance(seed);
    const crosstick::testing::TemporaryFolder folder;
    const auto file = folder / "plan.gpkg";
    plan::testing::RandomPlans random(seed);
    const plan::Plan one = random.plan(1500);
    plan::PlanBuilder builder(one);
    std::vector<plan::Measure> changed;
    one.measures().forEach([&](const plan::MeasurePtr& m) {
        plan::Measure next = *m;
        next.why += " again";
        changed.push_back(std::move(next));
    });
    builder.put(std::move(changed)).heading(random.heading());
    const plan::Plan other = std::move(builder).build();
    { ASSERT_TRUE(PlanFile::create(file, one, kNow)); }
    int inTheMiddle = 0;
    for (int n = 0; n < 200; ++n) {
        int pipe[2];
        ASSERT_EQ(::pipe(pipe), 0);
        const pid_t child = ::fork();
        if (child == 0) {
            saveForEver(file, one, other, pipe[1]);
        }
        char go = 0;
        ASSERT_EQ(::read(pipe[0], &go, 1), 1);
        ::usleep(static_cast<useconds_t>(chance() % 60000));
        ::kill(child, SIGKILL);
        int status = 0;
        ::waitpid(child, &status, 0);
        ::close(pipe[0]);
        ::close(pipe[1]);
        inTheMiddle += std::filesystem::exists(file.string() + "-journal") ? 1 : 0;
        const auto opened = PlanFile::open(file, Access::ReadWrite);
        ASSERT_TRUE(opened) << "kill " << n << ": " << opened.error().fault.name;
        ASSERT_TRUE(opened->plan() == one || opened->plan() == other) << "kill " << n;
    }
    EXPECT_GT(inTheMiddle, 50);  // the test means nothing where no save was cut off
}

}  // namespace
}  // namespace crosstick::files
