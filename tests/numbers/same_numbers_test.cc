// One number, shown in many places: ledger, route card, march table and command line say the same of the same route, of
// the demo and of plans at random.
#include <iostream>
#include <random>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>

#include "core/files/plan_file.h"
#include "core/movement/march_table.h"
#include "core/units/number_text.h"
#include "sample-data/plan/demo_plan.h"
#include "tests/app/asking.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "tests/sheets/made_sheets.h"
#include "ui/ledger/legs_model.h"
#include "ui/press/march_paper.h"
#include "ui/press/route_card_page.h"

namespace crosstick {
namespace {

using ::testing::Contains;

constexpr std::uint32_t kSeed = 20270317;

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

std::vector<std::string> wordsOf(const std::vector<press::CardPage>& pages) {
    std::vector<std::string> words;
    for (const press::CardPage& page : pages) {
        for (const drawing::Mark& mark : page.drawing.marks) {
            if (const auto* text = std::get_if<drawing::Text>(&mark)) {
                words.push_back(text->text);
            }
        }
    }
    return words;
}

/// A number of a JSON answer as the papers round it.
std::int64_t rounded(const nlohmann::json& value, double step) {
    return static_cast<std::int64_t>(std::floor(value.get<double>() / step + 0.5) * step);
}

class SameNumbers : public ::testing::Test {
  protected:
    crosstick::testing::Folder folder_;

    /// All places at once, for every route of a plan.
    void compare(const plan::Plan& plan) {
        const auto file = folder_ / "plan.gpkg";
        std::filesystem::remove(file);
        ASSERT_TRUE(files::PlanFile::create(file, plan, *parseIsoTime("2027-03-13T12:00:00Z")));
        const auto cards = app::said({"card", file.string(), "--json"}).json();
        const auto marches = app::said({"march", file.string(), "--json"}).json();
        work::WorkOrder order;
        order.share = places::share();
        order.state = folder_ / "journals";
        work::Work work(std::move(order));
        work.begin(plan, folder_ / "");
        ledger::LegsModel ledger(work, [](const Error& error) { return QString::fromUtf8(error.fault.name.data()); });
        for (std::size_t n = 0; n < plan.routes().size(); ++n) {
            const plan::Route& route = *plan.routes()[n];
            SCOPED_TRACE(route.name);
            if (route.use == plan::Use::Vehicle) {
                continue;  // nobody walks it: it has no paces and no march table
            }
            work.select(route.id);
            ledger.renew();
            ASSERT_EQ(ledger.rowCount(), static_cast<int>(cards[n]["legs"].size()) + 1);
            compareCard(plan, route, ledger, cards[n]);
            compareMarch(plan, route, ledger, marches[n]);
        }
    }

  private:
    static std::string cell(const ledger::LegsModel& ledger, std::size_t row, ledger::LegsModel::Column column) {
        return ledger.data(ledger.index(static_cast<int>(row), column), Qt::DisplayRole).toString().toStdString();
    }

    static std::string clockOf(const nlohmann::json& time, const plan::Plan& plan) {
        return clockTime(*parseIsoTime(time.get<std::string>()), plan.heading().zone);
    }

    /// A leg of the command line's answer beside its row in the ledger and the words of the cards.
    static void compareLeg(const nlohmann::json& leg, const ledger::LegsModel& ledger, std::size_t row,
                           const std::vector<std::string>& words) {
        std::int64_t metres = 0;
        std::int64_t paces = 0;
        std::string azimuths;
        for (const auto& piece : leg["pieces"]) {
            metres += rounded(piece["map_distance_m"], 10);
            paces += rounded(piece["paces"], 1);
            const std::string azimuth = fmt::format("{:03}", rounded(piece["magnetic_azimuth_deg"], 1) % 360);
            azimuths += (azimuths.empty() ? "" : ", ") + azimuth;
            EXPECT_THAT(words, Contains(azimuth + "°"));
            EXPECT_THAT(words, Contains(std::to_string(rounded(piece["map_distance_m"], 10))));
            EXPECT_THAT(words, Contains(std::to_string(rounded(piece["paces"], 1))));
        }
        EXPECT_EQ(cell(ledger, row, ledger::LegsModel::To), leg["to"].get<std::string>());
        EXPECT_EQ(cell(ledger, row, ledger::LegsModel::Azimuth), azimuths);
        EXPECT_EQ(cell(ledger, row, ledger::LegsModel::Distance), std::to_string(metres));
        EXPECT_EQ(cell(ledger, row, ledger::LegsModel::Paces), std::to_string(paces));
    }

    static void compareCard(const plan::Plan& plan, const plan::Route& route, const ledger::LegsModel& ledger,
                            const nlohmann::json& answer) {
        const auto figures = movement::routeFigures(plan, route, &model(), nullptr);
        ASSERT_TRUE(figures);
        for (const auto size : {press::CardSize::A5, press::CardSize::A6}) {
            const auto words = wordsOf(*press::routeCard(plan, *figures, geodesy::AngleUnit::Degrees, "WMM2025", size));
            for (std::size_t n = 0; n < answer["legs"].size(); ++n) {
                const auto& leg = answer["legs"][n];
                compareLeg(leg, ledger, n, words);
                const std::string arrive = clockOf(leg["arrival"], plan);
                EXPECT_EQ(cell(ledger, n, ledger::LegsModel::Arrive), arrive);
                EXPECT_THAT(words, Contains(arrive));
            }
        }
    }

    static void compareMarch(const plan::Plan& plan, const plan::Route& route, const ledger::LegsModel& ledger,
                             const nlohmann::json& answer) {
        const auto figures = movement::routeFigures(plan, route, &model(), nullptr);
        const auto table = movement::marchTable(plan, *figures, plan.force().columnNamed(""));
        ASSERT_TRUE(table);
        const press::PaperTable paper = press::marchPaper(plan, *figures, *table, {});
        const auto& whole = paper.rows[table->elements.size()];
        std::size_t leg = 0;
        for (std::size_t n = 0; n < table->points.size(); ++n) {
            const auto& point = answer["points"][n];
            EXPECT_EQ(point["point"].get<std::string>(), table->points[n].label);
            const std::string clock = clockOf(point["arrive"], plan);
            EXPECT_EQ(whole[n + 1].first, clock);
            if (table->points[n].kind == movement::MarchPoint::Kind::RoutePoint && n > 0) {
                EXPECT_EQ(cell(ledger, leg++, ledger::LegsModel::Arrive), clock);
            }
        }
        EXPECT_EQ(leg, figures->legs.size());
    }
};

TEST_F(SameNumbers, OfTheDemoStandInLedgerCardsMarchTableAndCommandLine) {
    plan::Sheet sheet = *movement::kettlePlan().sheets().front();
    compare(*demo::demoPlan(places::share() / "demo", sheet));
}

TEST_F(SameNumbers, OfPlansAtRandomStandInLedgerCardsMarchTableAndCommandLine) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> step(-1500, 1500);
    for (int round = 0; round < 12; ++round) {
        std::vector<geodesy::PlanePoint> points{movement::at(655000, 5100000)};
        for (int n = 0; n < 1 + round; ++n) {
            points.push_back(
                {points.back().easting + Metres(step(random)), points.back().northing + Metres(step(random))});
        }
        plan::Plan plan = movement::plainRoute(points);
        plan::Route route = *plan.routes().front();
        route.start = *parseIsoTime("2027-03-13T15:00:00-02:00") + std::chrono::seconds(random() % 40000);
        if (route.stops.size() > 3) {
            route.stops.erase(route.stops.begin() + 1);  // a bend in the first leg
            route.stops[1].leg.halt = Minutes(static_cast<double>(random() % 30));
        }
        plan::Heading heading = plan.heading();
        heading.pace->doublePacesPer100 = 40 + step(random) / 100;
        if (round % 2 == 1) {
            heading.timing = plan::Timing{};
        }
        compare(std::move(plan::PlanBuilder(plan).heading(heading).put(route)).build());
    }
}

}  // namespace
}  // namespace crosstick

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    QApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
