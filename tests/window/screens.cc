// Pictures of the window's main situations, to be laid beside the drawings of how it should look:
//   window_screens PLAN FOLDER WIDTHxHEIGHT day|night
// The plan is a copy of the demo. Run by the target "screens" for both lights, three sizes and a dense screen.
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include <QApplication>
#include <QElapsedTimer>
#include <QPushButton>
#include <QSettings>
#include <QTest>

#include "app/wording/wording.h"
#include "core/plan/edits.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

class Screens {
  public:
    Screens(std::filesystem::path plan, std::filesystem::path folder, QSize size, look::Light light)
        : plan_(std::move(plan)), folder_(std::move(folder)) {
        std::filesystem::create_directories(folder_);
        Outside outside;
        outside.share = places::share();
        outside.state = folder_ / "journals";
        outside.settings = folder_ / "window.ini";
        outside.reader = crosstick::testing::reader();
        // It opens in that light, as it would for somebody who left it so.
        std::filesystem::remove(outside.settings);
        QSettings(QString::fromStdString(outside.settings.string()), QSettings::IniFormat)
            .setValue(QStringLiteral("light"),
                      light == look::Light::Night ? QStringLiteral("night") : QStringLiteral("day"));
        std::filesystem::remove_all(outside.state);
        outside.seed = 7;
        outside.now = [] { return Instant{std::chrono::seconds(1805155200)}; };
        outside.say = [](const Error& error) { return QString::fromStdString(app::words(error)); };
        outside.demo = [plan = plan_](work::Course&) { return Result<std::filesystem::path>(plan); };
        outside.version = QStringLiteral("1");
        window_ = std::make_unique<Window>(std::move(outside));
        window_->resize(size);
        window_->show();
    }

    void take() {
        rest();
        keep("1-empty");
        window_->openPlan(plan_);
        rest();
        keep("2-demo");
        chooseRoute();
        keep("3-ledger");
        chooseMeasure();
        keep("4-details");
        draw();
        keep("5-drawing");
        turn();
        keep("6-turned");
        films();
        copies();
        keep("7-copies");
        window_->run("copies");  // back to the table
        movement();
        brief();
        pages();
        registering();
    }

  private:
    std::filesystem::path plan_, folder_;
    std::unique_ptr<Window> window_;

    void rest() {
        QElapsedTimer patience;
        patience.start();
        const auto busy = [this] {
            return !window_->work().errands().isIdle() || (window_->work().isOpen() && !window_->table().isSettled());
        };
        do {
            QTest::qWait(300);
        } while (busy() && patience.elapsed() < 30000);
    }
    void keep(const char* name) {
        window_->grab().save(QString::fromStdString((folder_ / (std::string(name) + ".png")).string()));
    }
    void chooseRoute() {
        window_->work().select(window_->work().plan().routes().front()->id);
        rest();
    }
    void chooseMeasure() {
        const plan::FilmPtr film = window_->work().plan().film(*window_->work().workingFilm());
        for (const plan::Showing& showing : film->shows) {
            const plan::MeasurePtr measure = window_->work().plan().measure(showing.item);
            if (measure && measure->kind == "phase-line") {
                window_->work().select(measure->id);
            }
        }
        window_->run("label");
        rest();
    }
    void draw() {
        window_->work().select(std::nullopt);
        window_->run("route");
        QWidget& table = window_->table();
        const QPoint middle = table.rect().center();
        for (const QPoint step : {QPoint(-180, 120), QPoint(-40, 30)}) {
            QTest::mouseMove(&table, middle + step);
            QTest::mouseClick(&table, Qt::LeftButton, Qt::NoModifier, middle + step);
        }
        QTest::mouseMove(&table, middle + QPoint(120, -60));
        rest();
    }
    void turn() {
        QTest::keyClick(&window_->table(), Qt::Key_Escape);
        QTest::keyClick(&window_->table(), Qt::Key_Escape);
        chooseRoute();
        window_->run("march-up");
        window_->run("fit");
        rest();
    }
    /// The rail rolled down with films pinned, faded, tinted; then these films on the table, and one alone.
    void films() {
        window_->run("north-up");
        window_->work().select(std::nullopt);
        window_->run("details");
        window_->run("fit");
        window_->run("rail");
        rest();
        keep("8-rail-down");
        const auto& films = window_->work().plan().films();
        window_->work().setLook(films.front()->id, {true, 0.7, work::Tint::Rose});
        window_->work().setLook(films[1]->id, {true, 1, work::Tint::Teal});
        window_->run("pin-film");
        rest();
        keep("9-rail-states");
        window_->run("rail");
        QTest::mouseMove(&window_->table(), window_->table().rect().center() + QPoint(60, 40));
        rest();
        keep("10-tints");
        window_->run("alone");
        rest();
        keep("11-alone");
        window_->run("alone");
        window_->run("pin-film");
        for (const plan::FilmPtr& film : films) {
            window_->work().setLook(film->id, {});
        }
    }
    /// Times, legs bend by bend, what is said of one, and a table each.
    void movement() {
        work::Work& work = window_->work();
        plan::Heading heading = work.plan().heading();
        heading.timing = plan::Timing{};
        heading.courses = {{"P14", Metres(600), 372, plan::Going::CrossCountry, plan::Light::Day, {}}};
        heading.preparations = {{"orders", Minutes(60), {}}, {"rehearsal", Minutes(90), {}}};
        work.commit(std::move(plan::PlanBuilder(work.plan()).heading(heading)).build(), "times");
        chooseRoute();
        window_->run("timing");
        rest();
        keep("12-timing");
        window_->run("timing");
        if (window_->actionsByName().at("details")->isChecked()) {
            window_->run("details");
        }
        window_->run("bends");
        window_->run("drift");
        rest();
        keep("13-bends-and-drift");
        window_->run("bends");
        window_->run("drift");
        work.select(work.plan().routes().front()->stops.at(2).measure);
        rest();
        keep("14-leg-notes");
        window_->run("details");
        for (const char* page : {"march", "elements", "tasks", "events", "matrix", "march-table", "profile", "light"}) {
            window_->run(page);
            rest();
            keep((std::string("15-") + page).c_str());
        }
    }
    void brief() {
        window_->run("brief");
        QTest::qWait(300);
        for (const int key : {Qt::Key_Space, Qt::Key_Space, Qt::Key_W}) {
            QTest::keyClick(&window_->briefView(), static_cast<Qt::Key>(key));
            rest();
        }
        keep("8-brief");
        QTest::keyClick(&window_->briefView(), Qt::Key_Escape);
    }
    void pages() {
        for (const auto& [action, name] : {std::pair("plan-card", "9-plan-card"), std::pair("actions", "10-actions"),
                                           std::pair("settings", "11-settings"), std::pair("help", "12-help")}) {
            window_->run(action);
            rest();
            keep(name);
        }
    }
    /// The sheet as a scan: two marks and a proposed third, then all crossings with the proof.
    void registering() {
        window_->registerScan(plan_.parent_path() / "sheet.tif");
        registering::RegisterPage& page = window_->registerPage();
        const auto ready = [&] {
            (void)QTest::qWaitFor([&] { return !page.isReading() && window_->work().errands().isIdle(); }, 30000);
            QTest::qWait(50);
        };
        const auto mark = [&](registration::PixelPoint at, const char* printed) {
            QTest::mouseClick(&page.canvas(), Qt::LeftButton, {}, page.canvas().spotOf(at).toPoint());
            ready();
            QTest::keyClicks(page.entry(), QString::fromLatin1(printed));
            QTest::keyClick(page.entry(), Qt::Key_Return);
            ready();
        };
        ready();
        mark({885.8, 4251.9}, "25T FL 50 97");
        mark({4665.4, 944.9}, "58 04");
        keep("16-register-proposed");
        QTest::keyClick(page.entry(), Qt::Key_Return);
        ready();
        page.find();
        ready();
        keep("16-register-found");
        for (QPushButton* button : page.findChildren<QPushButton*>()) {
            if (button->text().startsWith(QStringLiteral("How good"))) {
                button->setChecked(true);
            }
        }
        QTest::qWait(300);
        keep("16-register-proof");
    }
    void copies() {
        window_->run("north-up");
        window_->run("copies");
        (void)QTest::qWaitFor([this] { return window_->copies().isReady(); }, 20000);
        rest();
    }
};

}  // namespace
}  // namespace crosstick::window

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    if (argc != 5 || !crosstick::look::bringFace(crosstick::places::share())) {
        std::cerr << "window_screens PLAN FOLDER WIDTHxHEIGHT day|night\n";
        return 2;
    }
    const QStringList size = QString::fromUtf8(argv[3]).split(QLatin1Char('x'));
    const auto light =
        std::string_view(argv[4]) == "night" ? crosstick::look::Light::Night : crosstick::look::Light::Day;
    crosstick::window::Screens(argv[1], argv[2], QSize(size.value(0).toInt(), size.value(1).toInt()), light).take();
    return 0;
}
