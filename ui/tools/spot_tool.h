#pragma once

#include "ui/tools/tool.h"

namespace crosstick::tools {

/// One click tells a place, and that is all.
class SpotTool final : public Tool {
  public:
    /// On what is printed, or on what is drawn, to whose points the hand is drawn then.
    enum class On { Printed, Drawn };
    /// @param hint  what to click  @param take  gets the place in the plan's plane
    SpotTool(std::string hint, On on, std::function<void(geodesy::PlanePoint)> take)
        : hint_(std::move(hint)), on_(on), take_(std::move(take)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& /*ground*/) override {
        hand_ = event.at;
        Reply reply;
        reply.done = event.kind == Event::Kind::Press || event.kind == Event::Kind::Cancel;
        if (event.kind == Event::Kind::Press) {
            take_(event.at);
        }
        return reply;
    }
    [[nodiscard]] Wet wet() const override { return {{hand_}, false, hint_, std::nullopt, {}, Wet::Belongs::Nowhere}; }
    [[nodiscard]] std::optional<Snaps> snaps() const override {
        return on_ == On::Drawn ? std::optional(Snaps{}) : std::nullopt;
    }
    [[nodiscard]] std::string hint() const override { return hint_; }

  private:
    std::string hint_;
    On on_;
    std::function<void(geodesy::PlanePoint)> take_;
    geodesy::PlanePoint hand_;
};

}  // namespace crosstick::tools
