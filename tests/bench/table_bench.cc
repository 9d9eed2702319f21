// Frames of the light table at 1920 x 1080 over a sheet of 20,000 x 20,000 pixels under 30 films of 10,000 measures,
// beside the blit of the same pixels; and a vertex of a route of 200 legs that is dragged, until ledger and drawing are
// up to date.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QPainter>
#include <QThread>

#include "core/plan/edits.h"
#include "core/terrain/follow_sheet.h"
#include "tests/bench/full_desk.h"
#include "ui/look/theme.h"
#include "ui/phases/phase_board.h"

namespace crosstick {
namespace {

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

/// A contour of the made sheet, 350 pixels long, sought again and again while the hand pans.
class Following {
  public:
    Following() {
        const plan::Sheet& sheet = *desk().work().plan().sheets().front();
        copies_ = {{desk().work().sheetGrounds().of(sheet.id)->copy(), sheet}};
        seek();
    }
    ~Following() {
        goesOn_ = false;
        while (!desk().work().errands().isIdle()) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        }
    }
    Following(const Following&) = delete;
    Following& operator=(const Following&) = delete;
    [[nodiscard]] int found() const { return found_; }

  private:
    std::vector<terrain::SheetCopy> copies_;
    int found_ = 0;
    bool goesOn_ = true;

    /// Where the ground of madeSheet() is 40 high: sin(x / 410) cos(y / 530) = 4/9.
    [[nodiscard]] static geodesy::PlanePoint on40(double cosine) {
        constexpr double kTurn = 2 * 3.14159265358979;
        const double x = 410 * (std::asin(4.0 / 9 / cosine) + 3 * kTurn);
        const double y = 530 * (std::acos(cosine) + 2 * kTurn);
        return {kCorner.easting + Metres(x * kMetresPerPixel), kCorner.northing - Metres(y * kMetresPerPixel)};
    }
    void seek() {
        desk().work().errands().run(
            work::Lane::Makings, QStringLiteral("following"), work::GivingUp::Allowed,
            [copies = copies_, plane = desk().work().plan().planeCrs()](work::Course&) {
                return terrain::followOnSheets(copies, plane, {on40(1), on40(0.8)});
            },
            [this](const Result<terrain::FollowedGround>& line) {
                found_ += line ? 1 : 0;
                if (goesOn_) {
                    seek();
                }
            });
    }
};

void panningWhileALineIsFollowed(benchmark::State& state) {
    desk().table().setView(desk().viewAt(0.2));
    desk().settle();
    Frames frames;
    table::View view = desk().table().view();
    {
        const Following following;
        for (auto _ : state) {
            view = view.dragged({0, 0}, {-12, 7});
            frameAt(state, frames, view);
        }
        state.counters["found"] = following.found();
    }
    frames.tell(state);
    desk().settle();
}
BENCHMARK(panningWhileALineIsFollowed)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(200);

/// Six films go and six others come at every tenth frame.
void panningWhilePhasesChange(benchmark::State& state) {
    desk().layPhases();
    desk().table().setView(desk().viewAt(0.2));
    desk().settle();
    Frames frames;
    table::View view = desk().table().view();
    int frame = 0;
    for (auto _ : state) {
        view = view.dragged({0, 0}, {-12, 7});
        frames.time(state, [&] {
            desk().work().setPhase(1 + frame++ / 10 % 5);
            desk().table().setView(view);
            QCoreApplication::processEvents();
        });
        QThread::msleep(6);
    }
    frames.tell(state);
    desk().layAll();
}
BENCHMARK(panningWhilePhasesChange)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(200);

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
