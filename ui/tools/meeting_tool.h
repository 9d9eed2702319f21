#pragma once

#include "core/drafting/meeting.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Ends a line on another one: a click near the end that is to reach there or to be cut off, then one on the other
/// line.
class MeetingTool final : public Tool {
  public:
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return taken_.has_value(); }
    [[nodiscard]] std::string hint() const override;

  private:
    struct Taken {
        plan::ItemId item;
        drafting::End end = drafting::End::Last;
    };
    std::optional<Taken> taken_;
    geodesy::PlanePoint hand_;
    std::string what_;
    plan::Points ended_;  ///< as it would be with what is under the hand

    [[nodiscard]] Reply begun(const Event& event, const Ground& ground);
    /// The line as it would end on what is under the hand; nothing where nothing is.
    [[nodiscard]] std::optional<Result<plan::Points>> endedThere(const Event& event, const Ground& ground) const;
    [[nodiscard]] Reply ended(const Event& event, const Ground& ground);
};

}  // namespace crosstick::tools
