// Figures of a leg in the hand: real events in the real window.
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class LegFigures : public TheWindow {
  protected:
    [[nodiscard]] std::vector<plan::FiguresAt> placed(const plan::ItemId& route) {
        for (const plan::Showing& showing : plan().film(Uuid{{2}})->shows) {
            if (showing.item == route) {
                return showing.figures;
            }
        }
        return {};
    }
};

TEST_F(LegFigures, AreDraggedToWhereTheyShallStandAndTheRouteStays) {
    open();
    window->run("route");
    click(at(-1500, 0));
    click(at(1500, 0));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    settle();
    const plan::ItemId route = plan().routes().front()->id;
    const auto vertices = plan().route(route)->vertices;
    window->work().select(route);
    settle();
    // 1.3 off its axis, left of travel, the middle of letters 1.8 high stands over the middle of the leg (engraving
    // E4).
    const double north = onGround(PaperMm(1.3 + 0.9), Scale{25000}).value();
    drag(at(0, north), at(300, 700));
    ASSERT_EQ(placed(route).size(), 1U);
    EXPECT_NEAR(placed(route).front().at.easting.value(), at(300, 700).easting.value(), 40);
    EXPECT_NEAR(placed(route).front().at.northing.value(), at(300, 700).northing.value(), 40);
    EXPECT_EQ(plan().route(route)->vertices, vertices);
    settle();
    drag(at(300, 700), at(-400, -600));
    ASSERT_EQ(placed(route).size(), 1U) << "taken hold of where they stand now";
    EXPECT_NEAR(placed(route).front().at.northing.value(), at(0, -600).northing.value(), 40);
    window->run("undo");
    window->run("undo");
    EXPECT_TRUE(placed(route).empty());
}

}  // namespace
}  // namespace crosstick::window
