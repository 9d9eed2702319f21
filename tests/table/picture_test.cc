#include "ui/table/picture.h"

#include <filesystem>
#include <fstream>

#include <gtest/gtest.h>
#include <unistd.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "ui/press/gui_start.h"
#include "ui/table/faults.h"
#include "ui/table/film_painter.h"
#include "ui/table/rim_painter.h"

namespace crosstick::table {
namespace {

/// A sheet of one colour, so that what is painted over it can be told.
class PlainTiles final : public TileSource {
  public:
    explicit PlainTiles(QRgb colour) : colour_(colour) {}
    [[nodiscard]] RasterSize size() const override { return {1000, 1000}; }
    [[nodiscard]] Result<QImage> tile(TileKey key) const override {
        const TilePart part = tilePart(key, size());
        QImage image(part.columns, part.rows, QImage::Format_RGB32);
        image.fill(colour_);
        return image;
    }

  private:
    QRgb colour_;
};

class Table : public ::testing::Test {
  protected:
    press::GuiStart gui_;
    press::Faces faces_ = *press::Faces::open(places::share() / "faces");

    static Scene kettle() {
        Scene scene;
        const plan::Registration window{movement::at(652300, 5096200), movement::at(659000, 5104500), {}};
        scene.plan = std::move(plan::PlanBuilder(movement::kettlePlan()).put(sheetHere()).registration(window)).build();
        for (const plan::FilmPtr& film : scene.plan.films()) {
            scene.films.push_back(film->id);
        }
        return scene;
    }
    static plan::Sheet sheetHere() {
        plan::Sheet sheet;
        sheet.id = movement::kettleId("sheet");
        sheet.name = "ULMERAY SOUTH";
        sheet.crs = "EPSG:32625";
        sheet.columns = sheet.rows = 1000;
        sheet.placement = {movement::at(650000, 5105000), 10, 0, 0, -10};
        sheet.datum = "WGS 84";
        return sheet;
    }
};

TEST_F(Table, DefaultViewHoldsAllInkWithItsMargin) {
    const Scene scene = kettle();
    const auto films = inkFilms(scene);
    ASSERT_TRUE(films.has_value());
    const auto ground = inkedGround(*films);
    ASSERT_TRUE(ground.has_value());
    const auto view = viewFor(scene, *films, Wish{});
    ASSERT_TRUE(view.has_value());
    const Spot lowerLeft = view->spot(ground->southWest);
    const Spot upperRight = view->spot(ground->northEast);
    EXPECT_GE(lowerLeft.x, kRim + 20);
    EXPECT_LE(upperRight.x, 1366 - 20);
    EXPECT_GE(upperRight.y, kRim + 20);
    EXPECT_LE(lowerLeft.y, 768 - 20);
}

TEST_F(Table, FilmTransformPutsAPointWhereTheViewDoes) {
    const Scene scene = kettle();
    const auto films = inkFilms(scene);
    ASSERT_TRUE(films.has_value());
    const auto view = viewFor(scene, *films, Wish{});
    const auto point = movement::at(655060, 5100640);
    const film::Frame& frame = films->front().frame;
    const drawing::Point onFilm = frame.onFilm(point);
    const QPointF mapped = filmTransform(*view, frame).map(QPointF(onFilm.x, onFilm.y));
    EXPECT_NEAR(mapped.x(), view->spot(frame.onGrid(point)).x, 1e-6);
    EXPECT_NEAR(mapped.y(), view->spot(frame.onGrid(point)).y, 1e-6);
}

TEST_F(Table, AMeasureOnTwoFilmsIsInkedOnce) {
    Scene scene = kettle();
    ASSERT_FALSE(scene.films.empty());
    plan::Film second = *scene.plan.film(scene.films.front());
    second.id = {{42}};
    second.name = "SECOND";
    scene.plan = std::move(plan::PlanBuilder(scene.plan).put(second)).build();
    const auto one = inkFilms(scene);
    scene.films.push_back(second.id);
    const auto two = inkFilms(scene);
    ASSERT_TRUE(one.has_value() && two.has_value());
    ASSERT_FALSE(one->front().shown.empty());
    EXPECT_TRUE(two->front().shown.empty());
    EXPECT_EQ(two->back().shown.size(), one->front().shown.size());
}

TEST_F(Table, SheetLiesUnderTheFilmsAndDeskRoundIt) {
    Scene scene = kettle();
    Wish wish;
    wish.centre = movement::at(650000, 5105000);  // the sheet's upper left corner
    wish.seen = Scale{25000};
    scene.films.clear();
    const PlainTiles tiles(qRgb(200, 220, 240));
    const auto image = picture(scene, wish, {&tiles}, faces_);
    ASSERT_TRUE(image.has_value());
    EXPECT_EQ(image->pixel(900, 450), qRgb(200, 220, 240));
    EXPECT_EQ(image->pixel(400, 200), palette(Theme::Day).desk.rgb());
    EXPECT_EQ(image->pixel(2, 766), palette(Theme::Day).card.rgb());
}

TEST_F(Table, FadedFilmsLieWeakerUnderTheWorkingOne) {
    Scene scene = kettle();
    plan::Film empty;
    empty.id = {{42}};
    empty.name = "EMPTY";
    scene.plan = std::move(plan::PlanBuilder(scene.plan).put(empty)).build();
    scene.films.push_back(empty.id);
    scene.working = empty.id;
    const auto darkness = [&](double below) {
        Wish wish;
        wish.below = below;
        const auto image = picture(scene, wish, {}, faces_);
        EXPECT_TRUE(image.has_value());
        std::int64_t sum = 0;
        for (int y = 0; y < image->height(); ++y) {
            for (int x = 0; x < image->width(); ++x) {
                sum += 255 - qGreen(image->pixel(x, y));
            }
        }
        return sum;
    };
    EXPECT_GT(darkness(1), darkness(0.5));
    EXPECT_GT(darkness(0.5), darkness(0));
}

TEST_F(Table, NightHasNeitherWhiteNorBlue) {
    const Scene scene = kettle();
    Wish wish;
    wish.theme = Theme::Night;
    const PlainTiles tiles(byNight(qRgb(255, 255, 255)));
    const auto image = picture(scene, wish, {&tiles}, faces_);
    ASSERT_TRUE(image.has_value());
    double light = 0;
    for (int y = 0; y < image->height(); ++y) {
        for (int x = 0; x < image->width(); ++x) {
            const QRgb c = image->pixel(x, y);
            EXPECT_LE(qBlue(c), 0x60);
            EXPECT_LE(qBlue(c), qRed(c));
            light += qRed(c) + qGreen(c) + qBlue(c);
        }
    }
    EXPECT_LT(light / (3.0 * 255 * image->width() * image->height()), 0.1);
}

TEST_F(Table, APlanOfNothingSaysSo) {
    const auto image = picture(Scene{}, Wish{}, {}, faces_);
    ASSERT_FALSE(image.has_value());
    EXPECT_EQ(image.error().fault, kNothingToSee);
}

TEST_F(Table, TheSamePictureGivesTheSameBytes) {
    const auto folder = std::filesystem::temp_directory_path() / ("crosstick-table-" + std::to_string(::getpid()));
    std::filesystem::create_directories(folder);
    const auto bytes = [&](const char* name) {
        const auto image = picture(kettle(), Wish{}, {}, faces_);
        EXPECT_TRUE(image.has_value());
        EXPECT_TRUE(writePng(*image, folder / name).has_value());
        std::ifstream in(folder / name, std::ios::binary);
        return std::string(std::istreambuf_iterator<char>(in), {});
    };
    const std::string first = bytes("a.png");
    EXPECT_GT(first.size(), 10000U);
    EXPECT_EQ(first, bytes("b.png"));
    const auto missing = writePng(QImage(2, 2, QImage::Format_RGB32), folder / "none" / "a.png");
    ASSERT_FALSE(missing.has_value());
    EXPECT_EQ(missing.error().fault, kFolderMissing);
    std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace crosstick::table
