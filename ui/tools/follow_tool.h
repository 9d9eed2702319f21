#pragma once

#include "core/measures/catalogue.h"
#include "core/terrain/handrail.h"
#include "ui/tools/followed_pieces.h"

namespace crosstick::tools {

/// A handrail beside what is followed.
struct Rail {
    std::function<Metres()> distance;        ///< as it is wished for now
    std::optional<terrain::Side> side = {};  ///< none: the one that lies inside our boundary
};

/// Takes up what is printed on the sheet: a click where a line begins, one where it ends, and more where it goes on;
/// between them the printed line is looked for. Where it strays, a drag pulls it to where the right line is printed.
/// With the second key a piece is straight. Enter makes a measure of it, or of the handrail beside it; another kind
/// named meanwhile makes that.
class FollowTool final : public Tool {
  public:
    using Found = tools::Found;
    using Seek = tools::Seek;

    /// @param entry  a line  @param rail  none: the line itself
    FollowTool(const measures::Entry& entry, Seek seek, std::optional<Rail> rail = std::nullopt)
        : entry_(entry), rail_(std::move(rail)), pieces_(std::move(seek)) {}
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] bool isBusy() const override { return pieces_.hasBegun(); }
    [[nodiscard]] std::string hint() const override;
    [[nodiscard]] std::optional<Reply> endAs(const measures::Entry& kind, const Ground& ground) override;

  private:
    const measures::Entry& entry_;
    std::optional<Rail> rail_;
    FollowedPieces pieces_;
    /// A hand that pressed on the line: it clicks there, or pulls the piece.
    struct Grip {
        std::size_t piece;
        Event pressed;
        enum class Is { Resting, Pulling } is = Is::Resting;
    };
    std::optional<Grip> grip_;
    /// The handrail as it would be, and in words where it runs.
    struct Beside {
        Result<plan::Points> line;
        std::string words;
        Metres distance;
    };
    std::optional<Beside> beside_;
    geodesy::PlanePoint hand_;
    bool isOnLine_ = false;  ///< the hand, where it could pull
    std::string what_;
    bool endWanted_ = false;

    [[nodiscard]] bool isPulling() const { return grip_ && grip_->is == Grip::Is::Pulling; }
    void clicked(const Event& event);
    void pressed(const Event& event, Metres reach);
    void moved(const Event& event, Metres reach);
    void released(const Event& event, Metres reach);
    /// A press that was never let go, as of a typed place, is a click.
    void settleGrip();
    void takeBack();
    [[nodiscard]] bool isGivenUp();
    void hear(const Event& event, Metres reach, Reply& reply);
    void renewBeside(const Ground& ground);
    [[nodiscard]] Reply finished(const measures::Entry& kind, const Ground& ground);
};

}  // namespace crosstick::tools
