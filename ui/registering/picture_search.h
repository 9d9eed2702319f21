#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include <QObject>

#include "core/registration/crossing_trace.h"
#include "core/registration/found_fit.h"
#include "core/registration/registering.h"
#include "ui/work/errands.h"

namespace crosstick::registering {

/// What the register page asks of its picture, on other threads: the crossing under a hand, the next one, all of them.
/// Answers come on the window's thread; what was asked of a picture before this one is not answered.
class PictureSearch final : public QObject {
    Q_OBJECT

  public:
    explicit PictureSearch(work::Errands& errands, QObject* parent = nullptr);

    /// Another picture; nothing can be asked of it until its copy is there.
    void begin();
    void setCopy(const std::filesystem::path& copy) { copy_ = copy; }
    [[nodiscard]] bool hasCopy() const { return !copy_.empty(); }
    /// Is the next crossing looked for, or all of them?
    [[nodiscard]] bool isOn() const { return searches_; }

    /// Of two lines, or a small cross, that is printed within `reach` pixels of where a hand points; no answer where
    /// there is none.
    void crossingAt(const registration::CrossSight& sight, double reach,
                    std::function<void(registration::PixelPoint)> then);
    using Candidates = std::vector<std::pair<registration::Proposal, registration::CrossSight>>;
    /// The first candidate that the picture really shows.
    struct Next {
        std::size_t passed = 0;
        registration::Proposal proposal;
    };
    void next(Candidates candidates, std::function<void(std::optional<Next>)> then);
    void all(std::vector<registration::Mark> marks, std::function<void(Result<registration::FoundFit>)> then);

  Q_SIGNALS:
    void changed();  ///< a search began, or was given up

  private:
    work::Errands& errands_;
    std::filesystem::path copy_;
    bool searches_ = false;
    int round_ = 0;

    /// Runs a search and hands its answer on, if the picture is still the same.
    template <class Make, class Then>
    void run(const QString& words, Make make, Then then);
    void setSearching(bool searches);
};

}  // namespace crosstick::registering
