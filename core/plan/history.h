#pragma once

#include <cstddef>
#include <deque>
#include <functional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// Undo and redo: a list of plans with a caption each. Capped by the bytes that steps hold for themselves; the oldest
/// go.
class History {
  public:
    explicit History(Plan start, std::size_t capBytes = std::size_t{256} << 20);

    [[nodiscard]] const Plan& present() const;
    /// A committed edit. What was undone before it is dropped. A plan equal to the present one adds no step.
    void push(Plan next, std::string caption);
    /// Every plan of the list written anew, captions and place kept: what holds for all of them at once has changed.
    void rewrite(const std::function<Plan(const Plan&)>& anew);
    [[nodiscard]] bool canUndo() const;
    [[nodiscard]] bool canRedo() const;
    [[nodiscard]] std::string undoCaption() const;  ///< of the step that undo would take back; empty where none
    [[nodiscard]] std::string redoCaption() const;
    const Plan& undo();  ///< the present one where there is nothing to undo
    const Plan& redo();
    [[nodiscard]] std::size_t steps() const;
    /// Of every step that is still held, the oldest first; so many of them are done.
    [[nodiscard]] std::vector<std::string> captions() const;
    [[nodiscard]] std::size_t done() const { return position_; }
    /// Undoes or redoes until so many steps are done; the nearest that there is.
    const Plan& goTo(std::size_t done);
    /// The number of the present state, counted from the start: it stays the same while the oldest steps go.
    [[nodiscard]] std::size_t state() const { return gone_ + position_; }
    [[nodiscard]] std::size_t bytes() const;

  private:
    struct Step {
        Plan plan;
        std::string caption;
        std::size_t bytes = 0;
    };
    std::deque<Step> steps_;
    std::size_t position_ = 0;
    std::size_t gone_ = 0;  ///< steps that are not held any more
    std::size_t bytes_ = 0;
    std::size_t cap_;
    void trim();
};

}  // namespace crosstick::plan
