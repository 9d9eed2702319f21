#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/terrain/follow.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

using Found = Result<terrain::FollowedGround>;
/// Looks for the line between two places of the plan's plane and calls with what came of it, now or later, on the
/// tool's thread; the call may come when the tool is gone. After a later one an event tells the tool.
using Seek = std::function<void(geodesy::PlanePoint from, geodesy::PlanePoint to,
                                const std::optional<terrain::Vein>& like, std::function<void(Found)> then)>;

/// A line that is followed from click to click. Each piece is straight until what is printed there is found; one that
/// strays is pulled over: it becomes two, which are looked for again. Clicks and pulls are taken back in their order.
class FollowedPieces {
  public:
    enum class Way { Printed, Straight };

    explicit FollowedPieces(Seek seek) : seek_(std::move(seek)) {}
    [[nodiscard]] bool hasBegun() const { return start_.has_value(); }
    [[nodiscard]] bool isEmpty() const { return pieces_.empty(); }
    /// The first place begins the line, each further one ends a piece of it.
    void goTo(geodesy::PlanePoint place, Way way);
    /// The piece that a hand means which takes hold of the line there; nothing at its last point, where a hand goes on,
    /// and where it is still looked for.
    [[nodiscard]] std::optional<std::size_t> pieceAt(geodesy::PlanePoint place, Metres reach) const;
    /// Looks for a piece again by way of a place, for the same vein. What was straight stays so.
    void pull(std::size_t piece, geodesy::PlanePoint place, Way way);
    void takeBack();
    void clear();
    [[nodiscard]] bool isWaiting() const;
    /// Takes in the answers that have come, up to the first that found nothing: its reason. A pull of which a half is
    /// not found leaves the piece as it was; what was clicked after a piece that is not found goes with it.
    [[nodiscard]] std::optional<Error> takeAnswers();
    /// The start alone where there is no piece; nothing before it.
    [[nodiscard]] plan::Points line() const;
    /// The same with a piece straight to a hand that pulls it, and straight on from there.
    [[nodiscard]] plan::Points pulledLine(std::size_t piece, geodesy::PlanePoint hand) const;

  private:
    struct Piece {
        geodesy::PlanePoint to;
        plan::Points line;  ///< straight until the printed one is found
        Way way;
        int deed = 0;                                       ///< which click or pull made it
        std::shared_ptr<const Piece> was = {};              ///< of both halves of a pull: what was pulled
        std::optional<terrain::Vein> vein = {};             ///< what was found
        std::shared_ptr<std::optional<Found>> answer = {};  ///< what is waited for; null where nothing is
    };
    Seek seek_;
    std::optional<geodesy::PlanePoint> start_;
    std::vector<Piece> pieces_;
    int deeds_ = 0;

    [[nodiscard]] geodesy::PlanePoint startOf(std::size_t piece) const;
    [[nodiscard]] Piece sought(geodesy::PlanePoint from, geodesy::PlanePoint to, Way way,
                               const std::optional<terrain::Vein>& like) const;
    void undoPull(std::shared_ptr<const Piece> was);
};

}  // namespace crosstick::tools
