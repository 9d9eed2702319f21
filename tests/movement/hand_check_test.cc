// Every figure of the hand check of exercise SLOW KETTLE: ground distance and true azimuth by GeodSolve and again by
// geod, convergence by GeoConvert, declination by MagneticField with WMM2025, grid azimuth by atan2 in Python.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/paper_figures.h"
#include "core/movement/route_figures.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

struct Row {
    const char* to;
    double grid, backGrid, magnetic, backMagnetic, trueAzimuth, map, ground, paces, minutes;
    const char *paperMagnetic, *paperBack;
    const char *gridMils, *magneticMils;
    int metres;
};
struct LegRow {
    const char *from, *to;
    double map, ground, paces, minutes, groundSoFar, minutesSoFar;
    const char* arrival;
    std::vector<Row> pieces;
};

const std::vector<LegRow>& quillRows() {
    static const std::vector<LegRow> rows{{"SP 1",
                                           "CP 1",
                                           1080.013,
                                           1080.129,
                                           799.3,
                                           40.50,
                                           1080.129,
                                           40.50,
                                           "2141",
                                           {{"FL 5433 9852", 7.4314, 187.4314, 18.3301, 198.3301, 8.8658, 463.897,
                                             463.946, 343.32, 17.40, "018", "198", "0130", "0330", 460},
                                            {"FL 5447 9912", 13.1340, 193.1340, 24.0327, 204.0327, 14.5692, 616.117,
                                             616.183, 455.98, 23.11, "024", "204", "0230", "0430", 620}}},
                                          {"CP 1",
                                           "CP 2",
                                           653.911,
                                           653.981,
                                           483.95,
                                           24.52,
                                           1734.110,
                                           65.03,
                                           "2205",
                                           {{"FL 5473 9972", 23.4287, 203.4287, 34.3274, 214.3274, 24.8655, 653.911,
                                             653.981, 483.95, 24.52, "034", "214", "0420", "0610", 650}}},
                                          {"CP 2",
                                           "CP 3",
                                           977.394,
                                           977.497,
                                           723.35,
                                           36.66,
                                           2711.607,
                                           101.69,
                                           "2242",
                                           {{"FM 5506 0064", 19.7327, 199.7327, 30.6314, 210.6314, 21.1722, 977.394,
                                             977.497, 723.35, 36.66, "031", "211", "0350", "0540", 980}}},
                                          {"CP 3",
                                           "CP 4",
                                           1287.319,
                                           1287.452,
                                           952.7,
                                           48.28,
                                           3999.059,
                                           149.96,
                                           "2330",
                                           {{"FM 5520 0086", 32.4712, 212.4712, 43.3699, 223.3699, 33.9141, 260.768,
                                             260.795, 192.99, 9.78, "043", "223", "0580", "0770", 260},
                                            {"FM 5520 0112", 0.0000, 180.0000, 10.8987, 190.8987, 1.4443, 260.000,
                                             260.027, 192.42, 9.75, "011", "191", "0000", "0190", 260},
                                            {"FM 5540 0186", 15.1240, 195.1240, 26.0227, 206.0227, 16.5685, 766.551,
                                             766.630, 567.31, 28.75, "026", "206", "0270", "0460", 770}}},
                                          {"CP 4",
                                           "CP 5",
                                           802.019,
                                           802.100,
                                           593.6,
                                           30.08,
                                           4801.160,
                                           180.04,
                                           "0000",
                                           {{"FM 5556 0206", 38.6598, 218.6598, 49.5585, 229.5585, 40.1064, 256.125,
                                             256.151, 189.55, 9.61, "050", "230", "0690", "0880", 260},
                                            {"FM 5610 0214", 81.5730, 261.5730, 92.4717, 272.4717, 83.0212, 545.894,
                                             545.949, 404.00, 20.47, "092", "272", "1450", "1640", 550}}},
                                          {"CP 5",
                                           "RP 1",
                                           396.989,
                                           397.028,
                                           293.8,
                                           14.89,
                                           5198.188,
                                           194.93,
                                           "0015",
                                           {{"FM 5640 0240", 49.0856, 229.0856, 59.9843, 239.9843, 50.5389, 396.989,
                                             397.028, 293.80, 14.89, "060", "240", "0870", "1070", 400}}}};
    return rows;
}

const std::vector<LegRow>& mittenRows() {
    static const std::vector<LegRow> rows{{"SP 1",
                                           "CP 1",
                                           1080.013,
                                           1080.129,
                                           799.3,
                                           40.50,
                                           1080.129,
                                           40.50,
                                           "2141",
                                           {{"FL 5433 9852", 7.4314, 187.4314, 18.3335, 198.3335, 8.8658, 463.897,
                                             463.946, 343.32, 17.40, "018", "198", "0130", "0330", 460},
                                            {"FL 5447 9912", 13.1340, 193.1340, 24.0361, 204.0361, 14.5692, 616.117,
                                             616.183, 455.98, 23.11, "024", "204", "0230", "0430", 620}}},
                                          {"CP 1",
                                           "CP 6",
                                           1258.650,
                                           1258.781,
                                           931.5,
                                           47.20,
                                           2338.911,
                                           87.71,
                                           "2228",
                                           {{"FL 5566 9953", 70.9892, 250.9892, 81.8913, 261.8913, 72.4260, 1258.650,
                                             1258.781, 931.50, 47.20, "082", "262", "1260", "1460", 1260}}},
                                          {"CP 6",
                                           "CP 7",
                                           1002.251,
                                           1002.353,
                                           741.7,
                                           37.59,
                                           3341.263,
                                           125.30,
                                           "2305",
                                           {{"FL 5598 9995", 37.3039, 217.3039, 48.2060, 228.2060, 38.7520, 528.015,
                                             528.069, 390.77, 19.80, "048", "228", "0660", "0860", 530},
                                            {"FM 5630 0030", 42.4362, 222.4362, 53.3383, 233.3383, 43.8874, 474.236,
                                             474.284, 350.97, 17.79, "053", "233", "0750", "0950", 470}}},
                                          {"CP 7",
                                           "CP 8",
                                           901.388,
                                           901.477,
                                           667.09,
                                           33.81,
                                           4242.740,
                                           159.10,
                                           "2339",
                                           {{"FM 5680 0105", 33.6901, 213.6901, 44.5921, 224.5921, 35.1444, 901.388,
                                             901.477, 667.09, 33.81, "045", "225", "0600", "0790", 900}}},
                                          {"CP 8",
                                           "CP 9",
                                           863.134,
                                           863.218,
                                           638.78,
                                           32.37,
                                           5105.958,
                                           191.47,
                                           "0011",
                                           {{"FM 5695 0190", 10.0080, 190.0080, 20.9100, 200.9100, 11.4673, 863.134,
                                             863.218, 638.78, 32.37, "021", "201", "0180", "0370", 860}}},
                                          {"CP 9",
                                           "RP 1",
                                           747.131,
                                           747.204,
                                           552.9,
                                           28.02,
                                           5853.162,
                                           219.49,
                                           "0039",
                                           {{"FM 5672 0216", 318.5035, 138.5035, 329.4056, 149.4056, 319.9646, 347.131,
                                             347.165, 256.90, 13.02, "329", "149", "5660", "5860", 350},
                                            {"FM 5640 0240", 306.8699, 126.8699, 317.7720, 137.7720, 308.3289, 400.000,
                                             400.039, 296.03, 15.00, "318", "138", "5460", "5650", 400}}}};
    return rows;
}

class HandCheck : public testing::Test {
  protected:
    plan::Plan plan = kettlePlan();
    geodesy::MagneticModel model = *geodesy::MagneticModel::open(places::share() / "magnetic");
    RouteFigures figures(const char* name) {
        auto result = routeFigures(plan, *plan.routeNamed(name), &model, nullptr);
        EXPECT_TRUE(result) << (result ? "" : result.error().fault.name);
        return result ? *result : RouteFigures{};
    }
    void expectPiece(const Piece& piece, const Row& row) {
        SCOPED_TRACE(row.to);
        EXPECT_NEAR(piece.gridAzimuth.value(), row.grid, 1e-4);
        EXPECT_NEAR(geodesy::backAzimuth(piece.gridAzimuth).value(), row.backGrid, 1e-4);
        EXPECT_NEAR(piece.magneticAzimuth.value(), row.magnetic, 1e-4);
        EXPECT_NEAR(geodesy::backAzimuth(piece.magneticAzimuth).value(), row.backMagnetic, 1e-4);
        EXPECT_NEAR(piece.trueAzimuth.value(), row.trueAzimuth, 1e-4);
        EXPECT_NEAR(piece.mapDistance.value(), row.map, 1e-3);
        EXPECT_NEAR(piece.groundDistance.value(), row.ground, 1e-3);
        EXPECT_NEAR(piece.paces.value(), row.paces, 0.01);
        EXPECT_NEAR(piece.time->value(), row.minutes, 0.01);
        EXPECT_FALSE(piece.climb);
    }
    void expectLegs(const RouteFigures& figures, const std::vector<LegRow>& rows) {
        ASSERT_EQ(figures.legs.size(), rows.size());
        for (std::size_t n = 0; n < rows.size(); ++n) {
            const Leg& leg = figures.legs[n];
            SCOPED_TRACE(rows[n].to);
            EXPECT_EQ(leg.number, static_cast<int>(n) + 1);
            EXPECT_EQ(leg.fromLabel, rows[n].from);
            EXPECT_EQ(leg.toLabel, rows[n].to);
            EXPECT_EQ(leg.toGrid, rows[n].pieces.back().to);
            EXPECT_NEAR(leg.mapDistance.value(), rows[n].map, 1e-3);
            EXPECT_NEAR(leg.groundDistance.value(), rows[n].ground, 1e-3);
            EXPECT_NEAR(leg.paces.value(), rows[n].paces, 0.06);  // the table has legs of several pieces to 0.1
            EXPECT_NEAR(leg.time->value(), rows[n].minutes, 0.01);
            EXPECT_NEAR(leg.groundSoFar.value(), rows[n].groundSoFar, 1e-3);
            EXPECT_NEAR(leg.timeSoFar->value(), rows[n].minutesSoFar, 0.01);
            EXPECT_EQ(clockTime(leg.arrival.value(), plan.heading().zone), rows[n].arrival);
            ASSERT_EQ(leg.pieces.size(), rows[n].pieces.size());
            for (std::size_t p = 0; p < leg.pieces.size(); ++p) {
                expectPiece(leg.pieces[p], rows[n].pieces[p]);
            }
        }
    }
    void expectPaper(const char* name, const std::vector<LegRow>& rows) {
        const RouteFigures exact = figures(name);
        const PaperRoute degrees = paperFigures(plan, exact, geodesy::AngleUnit::Degrees).value();
        const PaperRoute mils = paperFigures(plan, exact, geodesy::AngleUnit::Mils).value();
        for (std::size_t n = 0; n < rows.size(); ++n) {
            for (std::size_t p = 0; p < rows[n].pieces.size(); ++p) {
                const Row& row = rows[n].pieces[p];
                SCOPED_TRACE(row.to);
                EXPECT_EQ(degrees.legs[n].pieces[p].magnetic, row.paperMagnetic);
                EXPECT_EQ(degrees.legs[n].pieces[p].backMagnetic, row.paperBack);
                EXPECT_EQ(mils.legs[n].pieces[p].grid, row.gridMils);
                EXPECT_EQ(mils.legs[n].pieces[p].magnetic, row.magneticMils);
                EXPECT_EQ(degrees.legs[n].pieces[p].metres, row.metres);
                EXPECT_EQ(degrees.legs[n].pieces[p].toGrid, row.to);
            }
            EXPECT_EQ(degrees.legs[n].arrival, rows[n].arrival);
        }
    }
};

TEST_F(HandCheck, EveryFigureOfRouteQuill) {
    const RouteFigures quill = figures("QUILL");
    expectLegs(quill, quillRows());
    EXPECT_NEAR(quill.mapDistance.value(), 5197.645, 1e-3);  // the table's rows added up
    EXPECT_NEAR(quill.groundDistance.value(), 5198.188, 1e-3);
    EXPECT_NEAR(quill.paces.value(), 3846.66, 0.01);
    EXPECT_NEAR(quill.time->value(), 194.93, 0.01);
    EXPECT_EQ(quill.legs.front().fromGrid, "FL 5427 9806");
    EXPECT_EQ(quill.gridCrs, "EPSG:32625");
}

TEST_F(HandCheck, EveryFigureOfRouteMitten) {
    const RouteFigures mitten = figures("MITTEN");
    expectLegs(mitten, mittenRows());
    EXPECT_NEAR(mitten.groundDistance.value(), 5853.162, 1e-3);
    EXPECT_NEAR(mitten.time->value(), 219.49, 0.01);
    EXPECT_EQ(mitten.use, plan::Use::Alternate);
}

TEST_F(HandCheck, OneAngleOfEachRouteAtTheMiddleOfItsLength) {
    const GmAngle quill = figures("QUILL").gm;
    EXPECT_NEAR(quill.middle.easting.value(), 655022.018, 1e-3);
    EXPECT_NEAR(quill.middle.northing.value(), 5100534.110, 1e-3);
    EXPECT_NEAR(quill.model->declination.value(), -9.456198, 1e-5);
    EXPECT_NEAR(quill.convergence.value(), 1.442489307, 1e-8);
    EXPECT_NEAR(quill.angle.value(), -10.898688, 1e-5);
    EXPECT_FALSE(quill.height);
    const GmAngle mitten = figures("MITTEN").gm;
    EXPECT_NEAR(mitten.middle.easting.value(), 656020.220, 1e-3);
    EXPECT_NEAR(mitten.middle.northing.value(), 5099993.990, 1e-3);
    EXPECT_NEAR(mitten.model->declination.value(), -9.450534, 1e-5);
    EXPECT_NEAR(mitten.convergence.value(), 1.451524030, 1e-8);
    EXPECT_NEAR(mitten.angle.value(), -10.902058, 1e-5);
}

TEST_F(HandCheck, PapersRoundAsTheTradeDoes) {
    expectPaper("QUILL", quillRows());
    expectPaper("MITTEN", mittenRows());
}

TEST_F(HandCheck, OnwardIsDirectionAndDistanceOutsideTheTotals) {
    const RouteFigures quill = figures("QUILL");
    ASSERT_TRUE(quill.onward);
    EXPECT_EQ(quill.onward->toLabel, "ORP SORREL");
    const Piece& piece = quill.onward->piece;
    EXPECT_NEAR(piece.gridAzimuth.value(), 46.9749, 1e-4);
    EXPECT_NEAR(piece.magneticAzimuth.value(), 57.8736, 1e-4);
    EXPECT_NEAR(geodesy::backAzimuth(piece.magneticAzimuth).value(), 237.8736, 1e-4);
    EXPECT_NEAR(piece.mapDistance.value(), 410.366, 1e-3);
    EXPECT_NEAR(piece.groundDistance.value(), 410.406, 1e-3);
    EXPECT_NEAR(piece.paces.value(), 303.7, 0.01);
    EXPECT_NEAR(piece.time->value(), 15.39, 0.01);
    const PaperRoute paper = paperFigures(plan, quill, geodesy::AngleUnit::Degrees).value();
    EXPECT_EQ(paper.onward->magnetic, "058");
    EXPECT_EQ(paper.onward->backMagnetic, "238");
    EXPECT_EQ(paper.onward->metres, 410);
}

TEST_F(HandCheck, TheDateChangesTwoSecondsBeforeCheckpointFive) {
    const Leg leg = figures("QUILL").legs.at(4);
    EXPECT_EQ(isoTime(leg.arrival.value(), plan.heading().zone), "2027-03-14T00:00:02-02:00");
    EXPECT_EQ(isoDate(localDate(leg.arrival.value(), plan.heading().zone)), "2027-03-14");
}

TEST_F(HandCheck, ExactNorthIsZeroAndNeverMinusZero) {
    const Piece piece = figures("QUILL").legs.at(3).pieces.at(1);
    EXPECT_EQ(piece.gridAzimuth.value(), 0);
    EXPECT_FALSE(std::signbit(piece.gridAzimuth.value()));
    EXPECT_EQ(geodesy::azimuthText(piece.gridAzimuth, geodesy::AngleUnit::Degrees), "000");
}

TEST_F(HandCheck, PhaseLinesAreCrossedWhereAndWhenTheMarchTableSays) {
    using testing::ElementsAre;
    using testing::FieldsAre;
    const auto rows = [&](const char* name) {
        std::vector<std::tuple<std::string, int, int, std::string>> out;
        const auto found = crossings(plan, figures(name));
        for (const Crossing& crossing : found.value()) {
            out.emplace_back(crossing.label, static_cast<int>(std::lround(crossing.groundSoFar.value() * 10)),
                             static_cast<int>(std::lround(crossing.timeSoFar->value() * 100)),
                             clockTime(crossing.arrival.value(), plan.heading().zone));
        }
        return out;
    };
    EXPECT_THAT(rows("QUILL"),
                ElementsAre(FieldsAre("LD TRIVET", 2991, 1122, "2111"), FieldsAre("PL BODKIN", 18729, 7023, "2210"),
                            FieldsAre("PL LADLE", 41397, 15524, "2335")));
    EXPECT_THAT(rows("MITTEN"),
                ElementsAre(FieldsAre("LD TRIVET", 2991, 1122, "2111"), FieldsAre("PL BODKIN", 31331, 11749, "2257"),
                            FieldsAre("PL LADLE", 48822, 18308, "0003")));
}

}  // namespace
}  // namespace crosstick::movement
