#pragma once

#include <memory>

#include "core/measures/catalogue.h"
#include "core/terrain/follow.h"
#include "core/terrain/handrail.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// Takes up what is printed on the sheet: a click where a line begins, one where it ends, and more where it goes on;
/// between them the printed line is looked for. With the second key a piece is straight. Enter makes a measure of it,
/// or of the handrail beside it.
class FollowTool final : public Tool {
  public:
    using Found = Result<terrain::FollowedGround>;
    /// Looks for the line between two places of the plan's plane and calls with what came of it, now or later, on the
    /// tool's thread; the call may come when the tool is gone. After a later one an event tells the tool.
    using Seek = std::function<void(geodesy::PlanePoint from, geodesy::PlanePoint to,
                                    const std::optional<terrain::Vein>& like, std::function<void(Found)> then)>;

    /// @param entry  a line  @param rail  the side on which a handrail runs at the usual distance; none: the line
    /// itself
    FollowTool(const measures::Entry& entry, Seek seek, std::optional<terrain::Side> rail = std::nullopt)
        : entry_(entry), seek_(std::move(seek)), rail_(rail) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return start_.has_value(); }
    [[nodiscard]] std::string hint() const override;

  private:
    /// From one click to the next.
    struct Piece {
        geodesy::PlanePoint to;
        plan::Points line;  ///< straight until the printed one is found
        std::optional<terrain::Vein> vein;
        std::shared_ptr<std::optional<Found>> answer;  ///< what is waited for; null where nothing is
    };
    const measures::Entry& entry_;
    Seek seek_;
    std::optional<terrain::Side> rail_;
    std::optional<geodesy::PlanePoint> start_;
    std::vector<Piece> pieces_;
    geodesy::PlanePoint hand_;
    std::string what_;
    bool endWanted_ = false;

    void clicked(const Event& event);
    [[nodiscard]] bool isWaiting() const;
    /// Takes in the answers that have come; the first that found nothing is the reply's refusal.
    void takeAnswers(Reply& reply);
    [[nodiscard]] plan::Points line() const;
    [[nodiscard]] Reply finished(const Ground& ground);
    void takeBack();
};

}  // namespace crosstick::tools
