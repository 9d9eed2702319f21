#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <QElapsedTimer>
#include <QObject>
#include <QThreadPool>

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

  private:
    std::atomic<bool> stopped_ = false;
    std::atomic<int> done_ = 0, of_ = 0;
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

/// Work that takes a while: done on another thread, it answers to the window's thread by one call. Lives on the
/// window's thread; going away it gives up what may be given up and waits for the rest.
class Errands final : public QObject {
    Q_OBJECT

  public:
    /// @param before  called on an errand's thread before it begins; a test makes a slow disk of it
    explicit Errands(std::function<void()> before = {});
    ~Errands() override;

    /// @param make     runs on another thread, gets the Course& and gives a value
    /// @param take     gets that value on the window's thread; never once the errand was given up
    /// @param givenUp  called on the window's thread if it is
    template <class Make, class Take>
    void run(Lane lane, const QString& words, GivingUp givingUp, Make make, Take take,
             const std::function<void()>& givenUp = {}) {
        using Made = std::invoke_result_t<Make, Course&>;
        struct Both {
            Make make;
            Take take;
            std::optional<Made> made = {};
        };
        const auto both = std::make_shared<Both>(Both{std::move(make), std::move(take)});
        start(
            lane, words, givingUp, [both](Course& course) { both->made.emplace(both->make(course)); },
            [both] { both->take(std::move(*both->made)); }, givenUp);
    }
    [[nodiscard]] bool isIdle() const { return running_.empty(); }
    [[nodiscard]] std::optional<Doing> doing() const;  ///< the first asked for of those that run
    void giveUp();                                     ///< all that may be given up
    /// Gives up what may be given up, waits for the rest and hands over its answers: for the end of the program.
    void finish();

  Q_SIGNALS:
    void changed();  ///< something began or ended

  private:
    struct Errand {
        QString words;
        GivingUp givingUp = GivingUp::Allowed;
        Course course;
        QElapsedTimer since;
        std::function<void()> givenUp;
    };
    std::function<void()> before_;
    QThreadPool files_, makings_;
    std::vector<std::shared_ptr<Errand>> running_;

    void start(Lane lane, const QString& words, GivingUp givingUp, std::function<void(Course&)> make,
               std::function<void()> take, std::function<void()> givenUp);
    /// False where it was given up.
    bool takeOff(const std::shared_ptr<Errand>& errand);
};

}  // namespace crosstick::work
