#pragma once

#include "core/measures/meant.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Places one kind of measure: a point by one click, a line or an area by click, move, click and Finish. A kind with a
/// fixed number of points ends with the last of them. Number or name is what was said, else the next free one. A
/// checkpoint that is placed on a route becomes its route point.
class PlaceTool final : public Tool {
  public:
    explicit PlaceTool(measures::Meant meant) : entry_(*meant.entry), meant_(std::move(meant)) {}
    explicit PlaceTool(const measures::Entry& entry) : PlaceTool(measures::Meant{&entry, {}, {}}) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !points_.empty(); }
    [[nodiscard]] std::optional<Snaps> snaps() const override {
        return entry_.lies == measures::Lies::OnThePaper ? std::nullopt : std::optional(Snaps{});
    }
    [[nodiscard]] std::string hint() const override;

  private:
    const measures::Entry& entry_;
    measures::Meant meant_;
    plan::Points points_;
    geodesy::PlanePoint hand_;
    std::string what_;

    [[nodiscard]] plan::Measure made(const Ground& ground) const;
    [[nodiscard]] Reply finished(const Ground& ground);
};

/// A measure with the number or name that was said, else the next free one, and its usual fields.
[[nodiscard]] plan::Measure newMeasure(const measures::Meant& meant, const plan::Plan& plan, const plan::ItemId& id,
                                       plan::Points points);
[[nodiscard]] plan::Measure newMeasure(const measures::Entry& entry, const plan::Plan& plan, const plan::ItemId& id,
                                       plan::Points points);
/// What a new measure will be called: as it was said, else what nobody said otherwise.
[[nodiscard]] std::string suggestedLabel(const measures::Meant& meant, const plan::Plan& plan);
[[nodiscard]] std::string suggestedLabel(const measures::Entry& entry, const plan::Plan& plan);

}  // namespace crosstick::tools
