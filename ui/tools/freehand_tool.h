#pragma once

#include "core/measures/catalogue.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// A line by an unsteady hand: a click begins it, then the hand goes along, a click ends it; a drag from the one end to
/// the other does the same. What is kept lies within a tolerance of where the hand was.
class FreehandTool final : public Tool {
  public:
    /// @param entry  a line or an area of as many points as one likes
    /// @param tolerance  on the ground; under a pen's width, or the line is another than was drawn
    FreehandTool(const measures::Entry& entry, Metres tolerance) : entry_(entry), tolerance_(tolerance) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !trace_.empty(); }
    [[nodiscard]] std::string hint() const override;
    [[nodiscard]] std::optional<Reply> endAs(const measures::Entry& kind, const Ground& ground) override;

  private:
    const measures::Entry& entry_;
    Metres tolerance_;
    plan::Points trace_;
    bool dragged_ = false;  ///< with the button down since the beginning
    geodesy::PlanePoint hand_;

    void trace(const Event& event);
    void endAt(const Event& event);
    [[nodiscard]] Reply finished(const measures::Entry& kind, const Ground& ground);
};

}  // namespace crosstick::tools
