// A scan that says nothing of itself: laid on its grid by clicks and what the map prints.
#include <cmath>

#include <QSignalSpy>

#include "tests/sheets/made_sheets.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

/// A scan at 1:25,000 of kilometre lines, 200 pixels apart and turned by a degree; crossing 50 05 stands at 150, 130.
class Scan : public TheWindow {
  protected:
    static constexpr double kStep = 200;
    static constexpr double kTurn = 0.0175;

    void SetUp() override {
        crosstick::testing::makeSheet(
            folder / "scan.tif",
            {.columns = 1400, .rows = 1300, .crs = "", .placement = {}, .value = [](int x, int y, int) {
                 const auto [east, north] = inSquares(x + 0.5, y + 0.5);
                 const bool isMap = east > -0.4 && east < 5.4 && north < 0.4 && north > -5.2;
                 const auto dark = [](double squares) {
                     const double away = std::abs(squares - std::round(squares)) * kStep;
                     return std::clamp(1.4 - away, 0.0, 1.0);
                 };
                 return isMap ? 245 - 190 * std::max(dark(east), dark(north)) : 250;
             }});
        window->registerScan(folder / "scan.tif");
        rest();
        ready();
    }
    /// In squares of the grid east and north of crossing 50 05.
    static std::array<double, 2> inSquares(double x, double y) {
        const double dx = (x - 150) / kStep;
        const double dy = (130 - y) / kStep;
        return {dx * std::cos(kTurn) - dy * std::sin(kTurn), dx * std::sin(kTurn) + dy * std::cos(kTurn)};
    }
    static registration::PixelPoint crossing(double east, double north) {
        const double dx = east * std::cos(kTurn) + north * std::sin(kTurn);
        const double dy = -east * std::sin(kTurn) + north * std::cos(kTurn);
        return {150 + dx * kStep, 130 - dy * kStep};
    }
    [[nodiscard]] registering::RegisterPage& page() { return window->registerPage(); }
    void ready() {
        EXPECT_TRUE(
            QTest::qWaitFor([this] { return !page().isReading() && window->work().errands().isIdle(); }, 20000));
        QTest::qWait(1);
        rest();
    }
    /// A click beside a crossing, whose name is typed then.
    void name(double east, double north, const char* printed) {
        const registration::PixelPoint at = crossing(east, north);
        const QPointF spot = page().canvas().spotOf({at.x + 5, at.y - 4});
        QTest::mouseClick(&page().canvas(), Qt::LeftButton, {}, spot.toPoint());
        ready();
        QTest::keyClicks(page().entry(), QString::fromLatin1(printed));
        QTest::keyClick(page().entry(), Qt::Key_Return);
        ready();
    }
    void expectCrossing(geodesy::PlanePoint place, double east, double north) const {
        EXPECT_NEAR(place.easting.value(), 650000 + 1000 * east, 3);
        EXPECT_NEAR(place.northing.value(), 5105000 + 1000 * north, 3);
    }
};

TEST_F(Scan, TwoNamedCrossingsProposeTheThirdAndEnterTakesIt) {
    name(0, 0, "25T FM 50 05");
    name(5, -4, "55 01");
    ASSERT_EQ(page().work().marks().size(), 2U) << page().refusal().toStdString();
    EXPECT_EQ(page().told(), "Two marks cannot be checked: add a third.");
    EXPECT_TRUE(page().asked().startsWith(QStringLiteral("Mark 3 is proposed"))) << page().asked().toStdString();
    QTest::keyClick(page().entry(), Qt::Key_Return);
    ready();
    ASSERT_EQ(page().work().marks().size(), 3U);
    ASSERT_TRUE(page().work().fit());
    EXPECT_LT(page().work().fit()->rmsPixels, 0.3);
}

TEST_F(Scan, TheOtherCrossingsAreFoundAndThePlanBeginsOnIt) {
    name(0, 0, "25T FM 50 05");
    name(5, -4, "55 01");
    QTest::keyClick(page().entry(), Qt::Key_Return);
    ready();
    page().find();
    ready();
    EXPECT_GT(page().work().crossings().size(), 15U) << page().refusal().toStdString();
    QLineEdit* scale = nullptr;
    for (QLineEdit* field : page().findChildren<QLineEdit*>()) {
        if (field->accessibleName() == QStringLiteral("The number under the 1 of its scale")) {
            scale = field;
        }
    }
    ASSERT_NE(scale, nullptr);
    page().lay();
    rest();
    EXPECT_TRUE(page().refusal().startsWith(QStringLiteral("Its scale is missing"))) << page().refusal().toStdString();
    QTest::keyClicks(scale, QStringLiteral("25 000"));
    page().lay();
    rest();
    settle();
    ASSERT_TRUE(window->work().isOpen());
    ASSERT_EQ(window->work().plan().sheets().size(), 1U);
    const plan::Sheet& sheet = *window->work().plan().sheets().front();
    EXPECT_EQ(sheet.crs, "EPSG:32625");
    EXPECT_EQ(sheet.scale.denominator, 25000);
    const registration::PixelPoint far = crossing(3, -2);
    expectCrossing(plan::onGrid(sheet.placement, far.x, far.y), 3, -2);
    EXPECT_FALSE(sheet.sha256.empty());
}

TEST_F(Scan, WhatIsNoGridIsRefusedWhereItIsTyped) {
    name(0, 0, "fifty");
    EXPECT_TRUE(page().work().marks().empty());
    EXPECT_FALSE(page().refusal().isEmpty());
    EXPECT_TRUE(page().canvas().pending().has_value()) << "the spot waits for a better name";
}

TEST_F(Scan, AMarkIsTakenInHandNudgedAndTakenOff) {
    name(0, 0, "25T FM 50 05");
    name(5, -4, "55 01");
    QTest::keyClick(&page(), Qt::Key_Escape);  // the proposal
    const double before = page().work().marks()[1].at.x;
    QTest::mouseClick(&page().canvas(), Qt::LeftButton, {},
                      page().canvas().spotOf(page().work().marks()[1].at).toPoint());
    QTest::keyClick(&page().canvas(), Qt::Key_Right);
    EXPECT_DOUBLE_EQ(page().work().marks()[1].at.x, before + 0.5);
    QTest::keyClick(&page().canvas(), Qt::Key_Delete);
    EXPECT_EQ(page().work().marks().size(), 1U);
}

TEST_F(Scan, EscapeLeadsBackAndKeepsNothing) {
    name(0, 0, "25T FM 50 05");
    QTest::keyClick(&page(), Qt::Key_Escape);
    EXPECT_FALSE(page().isVisible());
    EXPECT_FALSE(window->work().isOpen());
}

// The plan keeps the marks: the scan is taken up again from them, one is moved, and the sheet lies by what they say
// now.
TEST_F(Scan, ASheetIsRegisteredAnewFromTheMarksThatThePlanKept) {
    name(0, 0, "25T FM 50 05");
    name(5, -4, "55 01");
    QTest::keyClick(page().entry(), Qt::Key_Return);
    ready();
    for (QLineEdit* field : page().findChildren<QLineEdit*>()) {
        if (field->accessibleName() == QStringLiteral("The number under the 1 of its scale")) {
            QTest::keyClicks(field, QStringLiteral("25000"));
        }
    }
    page().lay();
    rest();
    settle();
    ASSERT_TRUE(window->work().isOpen());
    const plan::Sheet first = *window->work().plan().sheets().front();
    ASSERT_EQ(first.marks.size(), 3U);
    window->registerAnew(first.id);
    rest();
    ready();
    ASSERT_TRUE(page().isVisible());
    ASSERT_EQ(page().work().marks().size(), 3U);
    EXPECT_EQ(page().work().marks()[1].place, first.marks[1].place);
    ASSERT_TRUE(page().work().fit());
    QTest::mouseClick(&page().canvas(), Qt::LeftButton, {},
                      page().canvas().spotOf(page().work().marks()[1].at).toPoint());
    QTest::keyClick(&page().canvas(), Qt::Key_Right);
    page().lay();
    rest();
    settle();
    ASSERT_EQ(window->work().plan().sheets().size(), 1U);
    const plan::Sheet& again = *window->work().plan().sheets().front();
    EXPECT_EQ(again.id, first.id);
    EXPECT_EQ(again.path, first.path);
    EXPECT_DOUBLE_EQ(again.marks[1].spot.column, first.marks[1].spot.column + 0.5);
    EXPECT_NE(again.placement, first.placement);
    window->run("undo");
    EXPECT_EQ(window->work().plan().sheets().front()->placement, first.placement);
}

}  // namespace
}  // namespace crosstick::window
