// What the reader says is looked at before it is believed.
#include "core/sheets/messages.h"

#include <random>

#include <gtest/gtest.h>

#include "core/sheets/faults.h"
#include "core/worker/faults.h"

namespace crosstick::sheets {
namespace {

FileReport report() {
    FileReport r;
    r.driver = "GTiff";
    r.columns = 5552;
    r.rows = 5315;
    r.bands = 3;
    r.colours = Colours::Rgb;
    r.compression = "LZW";
    r.blockColumns = 256;
    r.blockRows = 256;
    r.overviews = 4;
    r.crs = "EPSG:32625";
    r.placement = std::array{648125.0, 2.5, 0.0, 5106000.0, 0.0, -2.5};
    r.dotsPerMetre = 11811.0;
    r.heights = HeightFacts{HeightUnit::Foot, -9999.0, "EGM96 height"};
    r.printed = {{"NAME", "ULMERAY SOUTH"}, {"SCALE", "25000"}};
    return r;
}

TEST(Messages, AReportComesBackAsItWent) {
    const auto back = unpackReport(packReport(report()));
    ASSERT_TRUE(back.has_value());
    EXPECT_TRUE(*back == report());
}

TEST(Messages, AReportOfAnImpossibleFileIsGarbled) {
    const auto wrong = [](auto spoil) {
        FileReport r = report();
        spoil(r);
        return !unpackReport(packReport(r)).has_value();
    };
    EXPECT_TRUE(wrong([](FileReport& r) { r.columns = 0; }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.rows = -1; }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.columns = kLongestSide + 1; }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.columns = r.rows = kLongestSide; }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.orientation = 9; }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.placement->at(0) = std::numeric_limits<double>::infinity(); }));
    EXPECT_TRUE(wrong([](FileReport& r) { r.crs = std::string(100000, 'x'); }));
    EXPECT_FALSE(unpackReport({messages::kReport, {}}).has_value());
    EXPECT_FALSE(unpackReport({messages::kPicture, packReport(report()).body}).has_value());
}

// PROJ would open the file that such a definition names.
TEST(Messages, ACrsThatNamesGridFilesIsNone) {
    FileReport r = report();
    r.crs = "+proj=utm +zone=25 +nadgrids=/tmp/foreign.gsb +type=crs";
    EXPECT_EQ(unpackReport(packReport(r))->crs, "");
}

TEST(Messages, OrdersPicturesAndProgressComeBackAsTheyWent) {
    messages::Order order;
    order.task = messages::Task::Heights;
    order.file = "/a/b.hgt";
    order.out = "/c/d.part";
    order.picture = 2048;
    order.unit = HeightUnit::Metre;
    order.crs = "EPSG:4326";
    EXPECT_TRUE(messages::unpackOrder(messages::pack(order)).value() == order);
    const messages::PictureRows picture{3, 8, 5, {1, 2, 3, 4, 5, 6}};
    const auto seen = messages::unpackPicture(messages::pack(picture));
    ASSERT_TRUE(seen.has_value());
    EXPECT_EQ(seen->columns, 3);
    EXPECT_EQ(seen->rows, 8);
    EXPECT_EQ(seen->first, 5);
    EXPECT_EQ(seen->rgb, picture.rgb);
    const auto progress = messages::unpackProgress(messages::pack(messages::Progress{3, 8}));
    ASSERT_TRUE(progress.has_value());
    EXPECT_EQ(progress->done, 3);
    EXPECT_EQ(progress->of, 8);
}

TEST(Messages, RowsThatAreNotWholeOrTooManyForTheirPictureAreGarbled) {
    auto record = messages::pack(messages::PictureRows{3, 2, 0, {1, 2, 3, 4, 5}});
    EXPECT_FALSE(messages::unpackPicture(record).has_value());
    record.body.resize(record.body.size() + 4);
    EXPECT_TRUE(messages::unpackPicture(record).has_value());
    record.body.resize(record.body.size() + 12);
    EXPECT_FALSE(messages::unpackPicture(record).has_value());
    EXPECT_FALSE(messages::unpackPicture(messages::pack(messages::PictureRows{3, 2, 2, {1, 2, 3}})).has_value());
    EXPECT_FALSE(messages::unpackPicture(messages::pack(messages::PictureRows{3, 2, 1, {}})).has_value());
}

TEST(Messages, AFaultKeepsItsArguments) {
    const Error error{kDamaged, {{"file", "/a/b.tif"}, {"row", std::int64_t{7}}, {"share", 0.5}}};
    const Error back = messages::unpackFault(messages::pack(error));
    EXPECT_EQ(back.fault, kDamaged);
    ASSERT_EQ(back.arguments.size(), 3U);
    EXPECT_EQ(std::get<std::string>(back.arguments[0].value), "/a/b.tif");
    EXPECT_EQ(std::get<std::int64_t>(back.arguments[1].value), 7);
    EXPECT_EQ(std::get<double>(back.arguments[2].value), 0.5);
}

TEST(Messages, AFaultThatNoReaderHasIsGarbled) {
    EXPECT_EQ(messages::unpackFault(messages::pack(Error{FaultId{"plan/no-such"}, {}})).fault, worker::kGarbled);
    EXPECT_EQ(messages::unpackFault({messages::kFault, {1, 2, 3}}).fault, worker::kGarbled);
}

// Cut anywhere or with one byte changed: a message or garbled, never anything else.
TEST(Messages, LawSpoiltBytesNeverDoMoreThanBeGarbled) {
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    for (int n = 0; n < 20000; ++n) {
        worker::Record record = packReport(report());
        if (chance() % 2 == 0) {
            record.body.resize(chance() % record.body.size());
        }
        for (unsigned flips = chance() % 4; flips > 0 && !record.body.empty(); --flips) {
            record.body[chance() % record.body.size()] = static_cast<std::uint8_t>(chance());
        }
        const auto back = unpackReport(record);
        if (back) {
            EXPECT_GE(back->columns, 1);
            EXPECT_LE(back->columns, kLongestSide);
            EXPECT_LE(static_cast<double>(back->columns) * back->rows, kMostPixels);
        } else {
            EXPECT_EQ(back.error().fault, worker::kGarbled);
        }
    }
}

}  // namespace
}  // namespace crosstick::sheets
