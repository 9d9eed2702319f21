#pragma once

#include "core/measures/catalogue.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Places one kind of measure: a point by one click, a line or an area by click, move, click and Finish. A kind with a
/// fixed number of points ends with the last of them. Number or name is the next free one.
class PlaceTool final : public Tool {
  public:
    explicit PlaceTool(const measures::Entry& entry) : entry_(entry) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return !points_.empty(); }
    [[nodiscard]] std::optional<Snaps> snaps() const override {
        return entry_.lies == measures::Lies::OnThePaper ? std::nullopt : std::optional(Snaps{});
    }
    [[nodiscard]] std::string hint() const override;

  private:
    const measures::Entry& entry_;
    plan::Points points_;
    geodesy::PlanePoint hand_;
    std::string what_;

    [[nodiscard]] plan::Measure made(const Ground& ground) const;
    [[nodiscard]] Reply finished(const Ground& ground);
};

/// A measure of a kind with its next free number or name and its usual fields.
[[nodiscard]] plan::Measure newMeasure(const measures::Entry& entry, const plan::Plan& plan, const plan::ItemId& id,
                                       plan::Points points);
/// What a measure of a kind will be called if nobody says otherwise.
[[nodiscard]] std::string suggestedLabel(const measures::Entry& entry, const plan::Plan& plan);

}  // namespace crosstick::tools
