// Copies go to a printer's queue by the system's lp: here one of the test's own, first on the PATH.
#include <fstream>
#include <iterator>

#include <signal.h>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

std::string contents(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

class Queue : public TheWindow {
  protected:
    QByteArray path = qgetenv("PATH");

    void TearDown() override {
        std::ofstream(folder / "go").flush();
        TheWindow::TearDown();
        rest();
        qputenv("PATH", path);
    }
    /// An lp that keeps what it is told and given, then does as a test wants.
    void layLp(const std::string& does) {
        const std::filesystem::path bin = folder / "bin";
        std::filesystem::create_directory(bin);
        const std::string here = folder / "";
        std::ofstream(bin / "lp") << "#!/bin/sh\n"
                                  << "cd " << here << "\n"
                                  << "echo $$ > pid.draft && mv pid.draft pid\n"
                                  << "echo \"$@\" >> told\n"
                                  << "n=$(wc -l < told)\n"
                                  << "cat > given-$n.pdf\n"
                                  << does << "\n";
        std::filesystem::permissions(bin / "lp", std::filesystem::perms::owner_all);
        qputenv("PATH", QByteArray::fromStdString(bin.string()) + ':' + path);
    }
    /// Films and a card lie on the copies page.
    void makeCopies() {
        open();
        drawRoute();
        window->run("copies");
        ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 30000));
        rest();
    }
    [[nodiscard]] std::string said() const { return window->notices().said().toStdString(); }
};

TEST_F(Queue, TakesTheVeryPagesThatAreSavedNeverScaled) {
    layLp("exit 0");
    makeCopies();
    window->copies().savePdf(QString::fromStdString((folder / "films.pdf").string()),
                             QString::fromStdString((folder / "cards.pdf").string()));
    rest();
    window->copies().printOn(QStringLiteral("office"));
    rest();
    EXPECT_EQ(
        contents(folder / "told"),
        "-d office -t SMALL films -o print-scaling=none -\n-d office -t SMALL route cards -o print-scaling=none -\n");
    ASSERT_FALSE(contents(folder / "films.pdf").empty());
    EXPECT_TRUE(contents(folder / "given-1.pdf") == contents(folder / "films.pdf"));
    EXPECT_TRUE(contents(folder / "given-2.pdf") == contents(folder / "cards.pdf"));
    EXPECT_EQ(said(), "Sent to office at true size.");
}

// lp(1): -n is the number of copies, collate=true prints each whole before the next.
TEST_F(Queue, TakesAsManySetsAsAreAskedForEachWholeBeforeTheNext) {
    layLp("exit 0");
    makeCopies();
    auto* sets = window->copies().findChild<QSpinBox*>();
    ASSERT_TRUE(sets);
    sets->setFocus();
    sets->selectAll();
    QTest::keyClicks(sets, "6");
    window->copies().printOn(QStringLiteral("office"));
    rest();
    EXPECT_EQ(contents(folder / "told"),
              "-d office -t SMALL films -o print-scaling=none -n 6 -o collate=true -\n"
              "-d office -t SMALL route cards -o print-scaling=none -n 6 -o collate=true -\n");
    EXPECT_EQ(said(), "6 sets sent to office at true size.");
}

TEST_F(Queue, ThatTakesItsTimeDoesNotHoldTheWindowUp) {
    layLp("while [ ! -e go ]; do sleep 0.02; done");
    makeCopies();
    window->copies().printOn(QStringLiteral("office"));
    int ticks = 0;
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, [&ticks] { ++ticks; });
    ASSERT_TRUE(QTest::qWaitFor([this] { return std::filesystem::exists(folder / "pid"); }, 30000));
    timer.start(5);
    EXPECT_TRUE(QTest::qWaitFor([&ticks] { return ticks > 10; }, 10000)) << "the window's thread waits";
    EXPECT_TRUE(window->copies().isWriting());
    // Short work is not told at all, so the head says it a moment after it has begun.
    EXPECT_TRUE(QTest::qWaitFor(
        [this] { return window->doing().words().startsWith(QStringLiteral("Sending to office")); }, 10000));
    std::ofstream(folder / "go").flush();
    rest();
    EXPECT_EQ(said(), "Sent to office at true size.");
}

TEST_F(Queue, ThatRefusesIsToldInItsOwnWords) {
    layLp("echo 'office: no such place' >&2; exit 1");
    makeCopies();
    window->copies().printOn(QStringLiteral("office"));
    rest();
    EXPECT_EQ(said(), "The printer's queue did not take it: office: no such place");
    EXPECT_FALSE(window->copies().isWriting());
    EXPECT_FALSE(std::filesystem::exists(folder / "given-2.pdf"));
}

TEST_F(Queue, ThatTakesTheFilmsAloneIsToldSo) {
    layLp("[ $n = 1 ] || { echo 'out of paper' >&2; exit 1; }");
    makeCopies();
    window->copies().printOn(QStringLiteral("office"));
    rest();
    EXPECT_EQ(said(), "The films were sent, the cards not. The printer's queue did not take it: out of paper");
}

TEST_F(Queue, ThatTheSystemHasNoCommandForIsToldWithAWayRound) {
    makeCopies();
    qputenv("PATH", QByteArray::fromStdString((folder / "empty").string()));
    window->copies().printOn(QStringLiteral("office"));
    rest();
    EXPECT_NE(said().find("Save as PDF"), std::string::npos) << said();
}

TEST_F(Queue, ThatIsGivenUpIsLeftAtOnce) {
    layLp("exec sleep 100");
    makeCopies();
    window->copies().printOn(QStringLiteral("office"));
    ASSERT_TRUE(QTest::qWaitFor([this] { return std::filesystem::exists(folder / "given-1.pdf"); }, 30000));
    const auto lp = static_cast<pid_t>(std::stol(contents(folder / "pid")));
    ASSERT_EQ(kill(lp, 0), 0);
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->doing().giveUpButton()->isVisible(); }, 10000));
    QTest::mouseClick(window->doing().giveUpButton(), Qt::LeftButton);
    EXPECT_FALSE(window->copies().isWriting());
    EXPECT_TRUE(QTest::qWaitFor([lp] { return kill(lp, 0) != 0; }, 10000)) << "lp goes on by itself";
    EXPECT_FALSE(std::filesystem::exists(folder / "given-2.pdf"));
}

}  // namespace
}  // namespace crosstick::window
