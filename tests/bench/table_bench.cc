// Frames of the light table at 1920 x 1080 over a sheet of 20,000 x 20,000 pixels under 30 films of 10,000 measures,
// beside the blit of the same pixels; and a vertex of a route of 200 legs that is dragged, until ledger and drawing are
// up to date.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>

#include <benchmark/benchmark.h>
#include <gdal_priv.h>

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>
#include <QTemporaryDir>
#include <QThread>
#include <QWindow>

#include "core/plan/edits.h"
#include "core/sheets/sheet_file.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"
#include "ui/ledger/ledger.h"
#include "ui/look/theme.h"
#include "ui/phases/phase_board.h"
#include "ui/table/light_table.h"

namespace crosstick {
namespace {

constexpr int kSide = 20000;
constexpr double kMetresPerPixel = 25000 * 25.4e-3 / 300;  // 300 dpi at 1:25,000
constexpr int kWidth = 1920;
constexpr int kHeight = 1080;
constexpr std::size_t kFilms = 30;
constexpr std::size_t kMeasures = 10000;
const geodesy::PlanePoint kCorner{Metres(640000), Metres(5140000)};

/// A sheet with contours of a kind, so that tiles are neither empty nor all the same.
std::filesystem::path madeSheet(const std::filesystem::path& folder) {
    GDALAllRegister();
    const std::filesystem::path file = folder / "sheet.tif";
    char** options = nullptr;
    for (const char* option : {"TILED=YES", "BLOCKXSIZE=512", "BLOCKYSIZE=512", "COMPRESS=DEFLATE", "PREDICTOR=2"}) {
        options = CSLAddString(options, option);
    }
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALDataset* sheet = driver->Create(file.c_str(), kSide, kSide, 3, GDT_Byte, options);
    CSLDestroy(options);
    OGRSpatialReference reference;
    reference.importFromEPSG(32625);
    sheet->SetSpatialRef(&reference);
    std::array placement{kCorner.easting.value(), kMetresPerPixel, 0.0, kCorner.northing.value(), 0.0,
                         -kMetresPerPixel};
    sheet->SetGeoTransform(placement.data());
    std::vector<std::uint8_t> rows(static_cast<std::size_t>(kSide) * 3 * 512);
    for (int top = 0; top < kSide; top += 512) {
        const int high = std::min(512, kSide - top);
        for (int y = 0; y < high; ++y) {
            for (int x = 0; x < kSide; ++x) {
                const double height = std::sin(x / 410.0) * std::cos((top + y) / 530.0) * 90;
                const bool line = std::abs(height - std::round(height / 10) * 10) < 0.4;
                auto* pixel = &rows[(static_cast<std::size_t>(y) * kSide + static_cast<std::size_t>(x)) * 3];
                pixel[0] = line ? 150 : 240;
                pixel[1] = line ? 100 : static_cast<std::uint8_t>(225 + height / 10);
                pixel[2] = line ? 60 : 215;
            }
        }
        if (sheet->RasterIO(GF_Write, 0, top, kSide, high, rows.data(), kSide, high, GDT_Byte, 3, nullptr, 3,
                            GSpacing{3} * kSide, 1, nullptr) != CE_None) {
            std::abort();
        }
    }
    std::array levels{2, 4, 8, 16, 32};
    (void)sheet->BuildOverviews("AVERAGE", static_cast<int>(levels.size()), levels.data(), 0, nullptr, nullptr,
                                nullptr);
    GDALClose(sheet);
    return file;
}

plan::Measure measureOf(std::size_t n, const Uuid& id) {
    const double east = static_cast<double>(n % 100) * 400;
    const double north = static_cast<double>(n / 100) * 400;
    const auto at = [&](double right, double up) {
        return geodesy::PlanePoint{kCorner.easting + Metres(400 + east + right),
                                   kCorner.northing - Metres(400 + north + up)};
    };
    plan::Measure measure;
    measure.id = id;
    switch (n % 3) {
        case 0:
            measure.kind = "phase-line";
            measure.name = "P" + std::to_string(n);
            for (int step = 0; step < 20; ++step) {
                measure.points.push_back(at(step * 16, 40 * std::sin(step * 0.7)));
            }
            break;
        case 1:
            measure.kind = "assembly-area";
            measure.name = "Q" + std::to_string(n);
            measure.points = {at(20, 20), at(330, 60), at(300, 280), at(60, 250)};
            break;
        default:
            measure.kind = "checkpoint";
            measure.number = std::to_string(n);
            measure.points = {at(160, 160)};
    }
    return measure;
}

/// 30 films of 10,000 measures, and a route of 200 legs on the first.
plan::Plan manyMeasures(const plan::Sheet& sheet) {
    IdSource ids(5);
    plan::Heading heading;
    heading.name = "MANY";
    heading.date = CalendarDate{std::chrono::year(2027), std::chrono::month(3), std::chrono::day(13)};
    heading.plane = geodesy::Zone{25, geodesy::Hemisphere::North};
    heading.pace = plan::PaceProfile{62, "", {}};
    heading.rate = plan::MarchRate{KilometresPerHour(2), "", {}};
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(ids.next()).heading(heading).put(sheet);
    std::vector<plan::Film> films(kFilms);
    for (std::size_t n = 0; n < kMeasures; ++n) {
        plan::Measure measure = measureOf(n, ids.next());
        plan::Film& film = films[n % kFilms];
        film.shows.push_back(
            {measure.id, plan::orderBetween(film.shows.empty() ? "" : film.shows.back().order, ""), {}, {}});
        builder.put(std::move(measure));
    }
    for (std::size_t f = 0; f < kFilms; ++f) {
        films[f].id = ids.next();
        films[f].name = "FILM " + std::to_string(f + 1);
        builder.put(std::move(films[f]));
    }
    return std::move(builder).build();
}

/// A route of 200 legs through the middle of the sheet, on the lowest film.
plan::Plan withLongRoute(const plan::Plan& plan, const plan::ItemId& id) {
    plan::Route route;
    route.id = id;
    route.name = "LONG";
    std::vector<plan::Measure> stops;
    IdSource ids(7);
    for (std::size_t n = 0; n <= 200; ++n) {
        const double turn = static_cast<double>(n) * 0.31;
        route.vertices.push_back({kCorner.easting + Metres(18000 + 22.0 * static_cast<double>(n)),
                                  kCorner.northing - Metres(20000 + 500 * std::sin(turn))});
        plan::Measure stop;
        stop.id = ids.next();
        stop.kind = "checkpoint";
        stop.number = "R" + std::to_string(n);
        stop.points = {route.vertices.back()};
        route.stops.push_back({n, stop.id});
        stops.push_back(std::move(stop));
    }
    return plan::withRoute(plan, std::move(route), std::move(stops), plan.films().front()->id);
}

/// Before a window is seen its painting is passed over.
void waitForExposed(QWidget& widget) {
    while (!widget.windowHandle()->isExposed()) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
}

/// The table with everything on it, shown and settled.
class Desk {
  public:
    Desk() {
        auto sheet = sheets::describeSheet(testing::reader(), madeSheet(folder_.path().toStdString()), Uuid{{9}},
                                           {Scale{25000}, {}});
        if (!sheet) {
            std::abort();
        }
        work_ = std::make_unique<work::Work>(work::WorkOrder{
            places::share(), std::filesystem::path(folder_.path().toStdString()) / "state", testing::reader(), 3});
        table_ = std::make_unique<table::LightTable>(*work_, &faces_, places::share());
        ledger_ = std::make_unique<ledger::Ledger>(*work_, [](const Error&) { return QString(); });
        table_->resize(kWidth, kHeight);
        ledger_->resize(kWidth, ledger::Ledger::kHeight);
        table_->QWidget::show();  // LightTable has a show() of its own
        ledger_->show();
        waitForExposed(*table_);
        work_->begin(withLongRoute(manyMeasures(*sheet), route_), folder_.path().toStdString());
        settle();
    }
    [[nodiscard]] table::LightTable& table() { return *table_; }
    [[nodiscard]] ledger::Ledger& ledger() { return *ledger_; }
    [[nodiscard]] work::Work& work() { return *work_; }
    [[nodiscard]] plan::ItemId route() const { return route_; }
    void settle() {
        do {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
            QThread::msleep(1);
        } while (!table_->isSettled());
    }
    [[nodiscard]] table::View viewAt(double zoom) const {
        return {table_->view().area(),
                {kCorner.easting + Metres(20000), kCorner.northing - Metres(20000)},
                table::Zoom(zoom)};
    }

  private:
    QTemporaryDir folder_;
    plan::ItemId route_ = Uuid{{8}};
    std::unique_ptr<work::Work> work_;
    press::Faces faces_ = press::Faces::open(places::share() / "faces").value();
    std::unique_ptr<table::LightTable> table_;
    std::unique_ptr<ledger::Ledger> ledger_;
};

Desk* theDesk = nullptr;  // made and taken away in main: a table ends before its application

Desk& desk() {
    return *theDesk;
}

/// Times of frames, told as the median, the 95th of a hundred and the longest, in milliseconds.
class Frames {
  public:
    template <typename Frame>
    void time(benchmark::State& state, Frame&& frame) {
        const auto start = std::chrono::steady_clock::now();
        const double busy = threadTime();
        frame();
        own_.push_back((threadTime() - busy) * 1000);
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
        state.SetIterationTime(taken.count());
        times_.push_back(taken.count() * 1000);
    }
    void tell(benchmark::State& state) {
        std::sort(times_.begin(), times_.end());
        std::sort(own_.begin(), own_.end());
        state.counters["own_p95_ms"] = own_[static_cast<std::size_t>(0.95 * static_cast<double>(own_.size() - 1))];
        const auto at = [this](double share) {
            return times_[static_cast<std::size_t>(share * static_cast<double>(times_.size() - 1))];
        };
        state.counters["p50_ms"] = at(0.5);
        state.counters["p95_ms"] = at(0.95);
        state.counters["max_ms"] = times_.back();
        state.counters["over16"] =
            static_cast<double>(std::count_if(times_.begin(), times_.end(), [](double ms) { return ms > 16; }));
    }

  private:
    std::vector<double> times_, own_;

    /// What this thread alone has used, whatever else the machine does: seconds.
    [[nodiscard]] static double threadTime() {
        timespec used{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &used);
        return static_cast<double>(used.tv_sec) + static_cast<double>(used.tv_nsec) * 1e-9;
    }
};

class Blit final : public QWidget {
  public:
    explicit Blit(QImage image) : image_(std::move(image)) { setAttribute(Qt::WA_OpaquePaintEvent); }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override { QPainter(this).drawImage(0, 0, image_); }

  private:
    QImage image_;
};

void blitOfTheSamePixels(benchmark::State& state) {
    Blit blit(desk().table().grab().toImage().convertToFormat(QImage::Format_RGB32));
    blit.resize(kWidth, kHeight);
    blit.show();
    waitForExposed(blit);
    Frames frames;
    for (auto _ : state) {
        frames.time(state, [&] { blit.repaint(); });
    }
    frames.tell(state);
}
BENCHMARK(blitOfTheSamePixels)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(300);

/// A frame is what the window's thread does between two pictures: events of the hand and of finished tiles, painting.
void frameAt(benchmark::State& state, Frames& frames, const table::View& view) {
    table::LightTable& table = desk().table();
    frames.time(state, [&] {
        table.setView(view);
        QCoreApplication::processEvents();
    });
    QThread::msleep(6);  // what is left of a frame belongs to the threads behind
}

/// @param zoom  thousandths of a pixel a metre
void panning(benchmark::State& state) {
    const double zoom = static_cast<double>(state.range(0)) / 1000;
    desk().table().setView(desk().viewAt(zoom));
    desk().settle();
    Frames frames;
    table::View view = desk().table().view();
    for (auto _ : state) {
        view = view.dragged({0, 0}, {-12, 7});
        frameAt(state, frames, view);
    }
    frames.tell(state);
    desk().settle();
}
BENCHMARK(panning)->Arg(472)->Arg(200)->Arg(50)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(200);

/// The same while the rail rolled down makes the pictures of all films for the first time.
void panningWhileThumbnailsAreMade(benchmark::State& state) {
    desk().table().setView(desk().viewAt(0.2));
    desk().settle();
    phases::PhaseBoard board(desk().work(), places::share(), nullptr);
    board.resize(kWidth, phases::PhaseBoard::kHigh);
    board.show();
    waitForExposed(board);
    Frames frames;
    table::View view = desk().table().view();
    for (auto _ : state) {
        view = view.dragged({0, 0}, {-12, 7});
        frameAt(state, frames, view);
    }
    frames.tell(state);
    state.counters["made"] = board.hasPictures() ? 1 : 0;
    desk().settle();
}
BENCHMARK(panningWhileThumbnailsAreMade)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(200);

void zooming(benchmark::State& state) {
    desk().table().setView(desk().viewAt(0.06));
    desk().settle();
    Frames frames;
    const table::Spot at{700, 400};
    double step = 1.03;
    for (auto _ : state) {
        const table::View view = desk().table().view().zoomedAt(at, step, table::Zoom(0.03), table::Zoom(0.9));
        step = view.zoom().value() >= 0.9 ? 1 / 1.03 : view.zoom().value() <= 0.03 ? 1.03 : step;
        frameAt(state, frames, view);
    }
    frames.tell(state);
    desk().settle();
}
BENCHMARK(zooming)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(200);

/// The hand drags the middle vertex: until the ledger's figures and the table have been painted with it.
void draggingAVertexOf200Legs(benchmark::State& state) {
    desk().table().setView(desk().viewAt(0.3));
    desk().work().select(desk().route());
    desk().settle();
    Frames frames;
    const plan::Plan before = desk().work().committed();
    const geodesy::PlanePoint from = before.route(desk().route())->vertices[100];
    double off = 0;
    for (auto _ : state) {
        off += 3;
        frames.time(state, [&] {
            desk().work().setDraft(
                plan::withPoint(before, desk().route(), 100, {from.easting + Metres(off), from.northing}));
            desk().table().repaint();
            desk().ledger().repaint();
            QCoreApplication::processEvents();
        });
        QThread::msleep(6);
    }
    frames.tell(state);
    desk().work().setDraft(std::nullopt);
    desk().settle();
}
BENCHMARK(draggingAVertexOf200Legs)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(100);

/// The same until the films' picture, made by a thread of its own, shows it too.
void draggedVertexIsDrawn(benchmark::State& state) {
    desk().table().setView(desk().viewAt(0.3));
    desk().settle();
    Frames frames;
    const plan::Plan before = desk().work().committed();
    const geodesy::PlanePoint from = before.route(desk().route())->vertices[100];
    double off = 0;
    for (auto _ : state) {
        off += 3;
        frames.time(state, [&] {
            desk().work().setDraft(
                plan::withPoint(before, desk().route(), 100, {from.easting + Metres(off), from.northing}));
            while (!desk().table().isSettled()) {
                QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
            }
            desk().table().repaint();
        });
    }
    frames.tell(state);
    desk().work().setDraft(std::nullopt);
    desk().settle();
}
BENCHMARK(draggedVertexIsDrawn)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(30);

}  // namespace
}  // namespace crosstick

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    (void)crosstick::look::bringFace(crosstick::places::share());
    benchmark::Initialize(&argc, argv);
    crosstick::Desk desk;
    crosstick::theDesk = &desk;
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
