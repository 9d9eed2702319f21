#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <QElapsedTimer>
#include <QObject>

#include "ui/work/runners.h"
namespace crosstick::work {

/// What an errand and the window share while it runs. Any thread.
class Course {
  public:
    [[nodiscard]] bool isStopped() const { return stopped_; }
    void stop() { stopped_ = true; }
    /// So many of so many pieces are done.
    void tell(int done, int of) {
        of_ = of;
        done_ = done;
    }
    /// 0 to 100; nothing where the errand does not tell.
    [[nodiscard]] std::optional<int> percent() const;
    /// Calls on the window's thread, unless the errand has answered by then or was given up.
    void meanwhile(std::function<void()> call) const {
        if (meanwhile_) {
            meanwhile_(std::move(call));
        }
    }

  private:
    friend class Errands;
    std::atomic<bool> stopped_ = false;
    std::atomic<int> done_ = 0, of_ = 0;
    std::function<void(std::function<void()>)> meanwhile_;
};

/// Files: plans are opened and saved one after the other, in the order asked for. Makings: whatever only reads.
enum class Lane { Files, Makings };
enum class GivingUp { Allowed, Refused };

/// What is being done, for the head to say.
struct Doing {
    QString words;
    std::optional<int> percent;
    int seconds = 0;  ///< since it began
    bool mayStop = false;
};

/// Did every thread come back at the end?
enum class Ending { Whole, LeftBehind };

/// Work that takes a while: done on another thread, it answers to the window's thread by one call. Lives on the
/// window's thread; going away it gives up what may be given up and waits for the rest. A thread that hangs in what was
/// given up (a disk that does not answer) is left behind after a moment, with nothing of the window's in its hands.
class Errands final : public QObject {
    Q_OBJECT

  public:
    /// @param before  called on an errand's thread before it begins; a test makes a slow disk of it
    explicit Errands(std::function<void()> before = {});
    ~Errands() override;

    /// @param make     runs on another thread, which may outlive the window: it holds values and nothing that is the
    ///                 window's; gets the Course& and gives a value
    /// @param take     gets that value on the window's thread; never once the errand was given up
    /// @param givenUp  called on the window's thread if it is
    template <class Make, class Take>
    void run(Lane lane, const QString& words, GivingUp givingUp, Make make, Take take,
             const std::function<void()>& givenUp = {}) {
        using Made = std::invoke_result_t<Make, Course&>;
        const auto made = std::make_shared<std::optional<Made>>();
        const auto makes = std::make_shared<Make>(std::move(make));
        const auto takes = std::make_shared<Take>(std::move(take));
        start(
            lane, words, givingUp, [made, makes](Course& course) { made->emplace((*makes)(course)); },
            [made, takes] { (*takes)(std::move(**made)); }, givenUp);
    }
    [[nodiscard]] bool isIdle() const { return running_.empty(); }
    [[nodiscard]] std::optional<Doing> doing() const;  ///< the first asked for of those that run
    void giveUp();                                     ///< all that may be given up
    /// Hands over the answers that have come by now, before the loop of events comes to them.
    void hear();
    /// Gives up what may be given up, waits for the rest and hands over its answers: for the end of the program.
    Ending finish();

  Q_SIGNALS:
    void changed();  ///< something began or ended

  private:
    /// What the errand's thread has: nothing in it is the window's.
    struct Job {
        GivingUp givingUp = GivingUp::Allowed;
        Course course;
        std::function<void(Course&)> make;
    };
    struct Errand {
        QString words;
        std::shared_ptr<Job> job;
        QElapsedTimer since;
        std::function<void()> take, givenUp;
    };
    /// The way back to the window's thread, for as long as there is somebody.
    class Door;

    std::function<void()> before_;
    std::shared_ptr<Door> door_;
    std::shared_ptr<Runners> files_, makings_;
    std::vector<Errand> running_;

    void start(Lane lane, const QString& words, GivingUp givingUp, std::function<void(Course&)> make,
               std::function<void()> take, std::function<void()> givenUp);
    [[nodiscard]] bool isRunning(const Job* job) const;
    void answered(const Job* job);
    [[nodiscard]] bool areBack();
    void leaveBehind();
};

}  // namespace crosstick::work
