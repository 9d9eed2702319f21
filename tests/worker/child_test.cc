// Whatever a worker does, whoever waits for it gets a record, an end, or one fault.
#include "core/worker/child.h"

#include <csignal>
#include <fstream>
#include <thread>

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/worker/faults.h"
#include "tests/worker/wicked.h"

namespace crosstick::worker {
namespace {

using testing::Wickedness;

constexpr Limits kTight{std::int64_t{256} << 20, std::int64_t{4} << 20, std::chrono::seconds(2),
                        std::chrono::minutes(5)};
constexpr Limits kPatient{std::int64_t{256} << 20, std::int64_t{4} << 20, std::chrono::seconds(60),
                          std::chrono::minutes(5)};

Child told(Wickedness what, const Limits& limits = kTight, std::vector<std::uint8_t> body = {}) {
    auto child = Child::start(WICKED_WORKER, limits);
    EXPECT_TRUE(child.has_value());
    child->send({static_cast<std::uint8_t>(what), std::move(body)});
    return std::move(*child);
}

std::string_view faultOf(Wickedness what, const Limits& limits = kTight, std::vector<std::uint8_t> body = {}) {
    Child child = told(what, limits, std::move(body));
    const auto next = child.next();
    return next ? "none" : next.error().fault.name;
}

bool isAlive(int process) {
    return ::kill(process, 0) == 0;
}

TEST(Child, AnswersAndThenEnds) {
    std::vector<std::uint8_t> body(3000000);
    for (std::size_t n = 0; n < body.size(); ++n) {
        body[n] = static_cast<std::uint8_t>(n * 7);
    }
    Child child = told(Wickedness::Echo, kPatient, body);
    const auto answer = child.next();
    ASSERT_TRUE(answer.has_value() && answer->has_value());
    EXPECT_EQ((*answer)->kind, 9);
    EXPECT_TRUE((*answer)->body == body);
    const auto end = child.next();
    ASSERT_TRUE(end.has_value());
    EXPECT_FALSE(end->has_value());
}

TEST(Child, ACrashIsOneFaultThatNamesTheSignal) {
    Child child = told(Wickedness::Crash, kPatient);
    const auto next = child.next();
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kCrashed);
    if (!isSanitized()) {  // which ends a process by a code of its own
        EXPECT_EQ(std::get<std::string>(next.error().arguments.at(0).value), "Segmentation fault");
    }
    EXPECT_EQ(faultOf(Wickedness::Abort, kPatient), kCrashed.name);
}

TEST(Child, AHangEndsAfterTheSilenceItIsAllowed) {
    Child child = told(Wickedness::Hang);
    const int process = child.process();
    const auto next = child.next();
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kTooLong);
    EXPECT_FALSE(isAlive(process));
}

TEST(Child, OneThatTalksOnWithoutEndEndsAtTheWall) {
    Limits limits = kPatient;
    limits.wall = std::chrono::seconds(1);
    Child child = told(Wickedness::TalkOn, limits);
    auto next = child.next();
    for (int heard = 0; next && heard < 1000; ++heard) {
        next = child.next();
    }
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kTooLong);
}

TEST(Child, OneThatClosesItsLineAndLivesOnIsEnded) {
    Child child = told(Wickedness::CloseAndHang, kPatient);
    const int process = child.process();
    EXPECT_EQ(child.next().error().fault, kCrashed);
    EXPECT_FALSE(isAlive(process));
}

TEST(Child, MemoryIsLimited) {
    if (isSanitized()) {
        GTEST_SKIP() << "a sanitizer's own memory is past every limit";
    }
    EXPECT_EQ(faultOf(Wickedness::EatMemory, kPatient), kTooMuchMemory.name);
}

TEST(Child, OutputIsLimited) {
    const std::string file = ::testing::TempDir() + "wicked-output";
    EXPECT_EQ(faultOf(Wickedness::WriteMuch, kPatient, {file.begin(), file.end()}), kTooMuchOutput.name);
    EXPECT_LE(std::ifstream(file, std::ios::ate).tellg(), std::streamoff{4} << 20);
    std::remove(file.c_str());
}

TEST(Child, AnAnswerThatIsNoneIsGarbled) {
    EXPECT_EQ(faultOf(Wickedness::HalfARecord, kPatient), kGarbled.name);
    EXPECT_EQ(faultOf(Wickedness::EndlessRecord, kPatient), kGarbled.name);
}

TEST(Child, WhoeverWaitsCanStopIt) {
    Child child = told(Wickedness::Hang, kPatient);
    const int process = child.process();
    int asked = 0;
    const auto next = child.next([&] { return ++asked > 2; });
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kStopped);
    EXPECT_FALSE(isAlive(process));
}

TEST(Child, GoesWithWhoeverHoldsIt) {
    int process = 0;
    {
        const Child child = told(Wickedness::Hang, kPatient);
        process = child.process();
        EXPECT_TRUE(isAlive(process));
    }
    EXPECT_FALSE(isAlive(process));
}

TEST(Child, DiesWithTheThreadThatStartedIt) {
    int process = 0;
    std::thread([&] {
        Child child = told(Wickedness::Hang, kPatient);
        process = child.process();
        static std::vector<Child> kept;  // nobody ends it
        kept.push_back(std::move(child));
        ::usleep(200000);  // until it has heard its order
    }).join();
    for (int look = 0; look < 100; ++look) {
        siginfo_t state{};
        if (::waitid(P_PID, static_cast<id_t>(process), &state, WEXITED | WNOHANG | WNOWAIT) == 0 &&
            state.si_pid == process) {
            EXPECT_EQ(state.si_status, SIGKILL);
            return;
        }
        ::usleep(50000);
    }
    FAIL() << "it lives on";
}

TEST(Child, SeesAnEmptyFolderAndNoFileOfOurs) {
    const int mine = ::open("/dev/null", O_RDONLY);  // without close-on-exec
    Child child = told(Wickedness::SayWhatISee, kPatient);
    const auto answer = child.next();
    ::close(mine);
    ASSERT_TRUE(answer.has_value() && answer->has_value());
    Unpacker unpacker((*answer)->body);
    EXPECT_EQ(unpacker.number(), 0) << "files in its folder";
    EXPECT_EQ(unpacker.number(), 0) << "open files";
    EXPECT_EQ(unpacker.number(), 0) << "bytes of a core file";
    EXPECT_EQ(unpacker.number(), 0) << "it could leave a file behind";
}

TEST(Child, AProgramThatIsNotThereIsAFault) {
    const auto child = Child::start("/nowhere/crosstick-reader", kTight);
    ASSERT_FALSE(child.has_value());
    EXPECT_EQ(child.error().fault, kNoProgram);
}

}  // namespace
}  // namespace crosstick::worker
