#pragma once

#include <optional>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::brief {

/// A stop of a brief: which films lie on the sheet then, and which of them was laid on last.
struct Step {
    int phase = 0;                     ///< its number; 0 where the plan has no phases
    std::vector<plan::FilmId> lies;    ///< the lowest first
    std::optional<plan::FilmId> laid;  ///< none: the sheet alone, or a phase that only takes films away
    friend bool operator==(const Step&, const Step&) = default;
};

/// The sheet alone, then film upon film, phase after phase. A film of several phases lies on from the first of them to
/// the last without being laid on again; one of no phase comes first and stays. Never empty.
[[nodiscard]] std::vector<Step> stepsOf(const plan::Plan& plan);

enum class Key { Forward, Back, NextPhase, PhaseBefore, First, Last, Whys, NextWhy, WhyBefore, SheetAlone, End };

/// How far a brief has been told. Takes keys, knows nothing of a window.
class Telling {
  public:
    explicit Telling(plan::Plan plan);
    void take(Key key);
    void turnTo(int phase);  ///< its first stop; a number that the plan does not have changes nothing

    [[nodiscard]] const plan::Plan& plan() const { return plan_; }
    [[nodiscard]] const Step& step() const { return steps_[at_]; }
    [[nodiscard]] std::size_t place() const { return at_; }
    [[nodiscard]] std::size_t steps() const { return steps_.size(); }
    /// What lies on the sheet: the stop's films, or nothing while the sheet is shown alone.
    [[nodiscard]] std::vector<plan::FilmId> lies() const;
    [[nodiscard]] bool showsWhys() const { return whys_; }
    [[nodiscard]] bool isOver() const { return over_; }
    /// Things with a why: of the film that was laid on last, of all that lie where none was. In the order of painting.
    [[nodiscard]] std::vector<plan::ItemId> reasons() const;
    /// Things of the same films that say no why.
    [[nodiscard]] std::vector<plan::ItemId> unexplained() const;
    /// The one with a why that is pointed at.
    [[nodiscard]] std::optional<plan::ItemId> pointed() const;

  private:
    plan::Plan plan_;
    std::vector<Step> steps_;
    std::size_t at_ = 0;
    bool whys_ = false;
    bool alone_ = false;
    bool over_ = false;
    std::optional<std::size_t> pointed_;

    enum class Whys { Written, Missing };
    [[nodiscard]] std::vector<plan::ItemId> things(Whys whys) const;
    void goTo(std::size_t step);
    void point(int by);
    [[nodiscard]] std::size_t phaseStart(std::size_t step) const;
};

/// What a thing is for, as its plan says; empty where it does not.
[[nodiscard]] std::string whyOf(const plan::Plan& plan, const plan::ItemId& item);

}  // namespace crosstick::brief
