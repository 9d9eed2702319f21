#pragma once

#include "core/drafting/wipe_edits.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Wipes a part of a line or a route of the working film: a click where the part begins, a click where it ends, or one
/// rub from the one to the other. A click close to an end of the line means the end.
class WipePartTool final : public Tool {
  public:
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return part_.has_value(); }
    [[nodiscard]] std::string hint() const override;

  private:
    struct Part {
        plan::ItemId item;
        plan::Points line;
        double from = 0, to = 0;
    };
    std::optional<Part> part_;
    geodesy::PlanePoint hand_, pressed_;
    std::string what_;

    [[nodiscard]] Reply begun(const Event& event, const Ground& ground);
    [[nodiscard]] Reply ended(const Ground& ground);
};

/// Wipes a region of the working film, corner by corner or as a box by one drag. What would go is told first.
class WipeRegionTool final : public Tool {
  public:
    /// @param ask  gets the wipe as it would be; the region stays on the table until the tool is laid down
    explicit WipeRegionTool(std::function<void(drafting::Wiping)> ask) : ask_(std::move(ask)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !corners_.empty(); }
    [[nodiscard]] std::string hint() const override;

  private:
    std::function<void(drafting::Wiping)> ask_;
    plan::Points corners_;
    geodesy::PlanePoint hand_;
    bool asked_ = false;
    Degrees up_;

    void pressed(const Event& event);
    void finish(const Ground& ground);
};

}  // namespace crosstick::tools
