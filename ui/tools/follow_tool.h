#pragma once

#include <memory>

#include "core/measures/catalogue.h"
#include "core/terrain/follow.h"
#include "core/terrain/handrail.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// A handrail beside what is followed.
struct Rail {
    std::function<Metres()> distance;        ///< as it is wished for now
    std::optional<terrain::Side> side = {};  ///< none: the one that lies inside our boundary
};

/// Takes up what is printed on the sheet: a click where a line begins, one where it ends, and more where it goes on;
/// between them the printed line is looked for. With the second key a piece is straight. Enter makes a measure of it,
/// or of the handrail beside it; another kind named meanwhile makes that.
class FollowTool final : public Tool {
  public:
    using Found = Result<terrain::FollowedGround>;
    /// Looks for the line between two places of the plan's plane and calls with what came of it, now or later, on the
    /// tool's thread; the call may come when the tool is gone. After a later one an event tells the tool.
    using Seek = std::function<void(geodesy::PlanePoint from, geodesy::PlanePoint to,
                                    const std::optional<terrain::Vein>& like, std::function<void(Found)> then)>;

    /// @param entry  a line  @param rail  none: the line itself
    FollowTool(const measures::Entry& entry, Seek seek, std::optional<Rail> rail = std::nullopt)
        : entry_(entry), seek_(std::move(seek)), rail_(std::move(rail)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return start_.has_value(); }
    [[nodiscard]] std::string hint() const override;
    [[nodiscard]] std::optional<Reply> endAs(const measures::Entry& kind, const Ground& ground) override;

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
    std::optional<Rail> rail_;
    /// The handrail as it would be, and in words where it runs.
    struct Beside {
        Result<plan::Points> line;
        std::string words;
        Metres distance;
    };
    std::optional<Beside> beside_;
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
    void renewBeside(const Ground& ground);
    [[nodiscard]] Reply finished(const measures::Entry& kind, const Ground& ground);
    void takeBack();
};

}  // namespace crosstick::tools
