#pragma once

#include "ui/tools/hit.h"
#include "ui/tools/tool.h"

namespace crosstick::tools {

/// The hand: selects, moves a point or a whole thing, puts a new point into a line, sets symbols and labels aside.
/// Press on a point of the selected thing and drag: that point moves. Press on the selected line and drag: the whole
/// moves. With the second key on its line a new point goes in; on a point measure its symbol is set aside on the
/// working film while the spot stays. A symbol that stands aside is taken hold of by itself; a unit let go on another
/// unit joins its row. The letters of what is selected are placed by hand, a route's name and the figures of its legs
/// too. By keys: from point to
/// point of the selected thing, nudge it or take it out. Several are chosen by Control and a press, or from bare sheet
/// by a box: with Shift what lies in it, with Control that too. Dragging one of several moves all. A press again where
/// several lie over each other goes to the next one underneath.
class HandTool final : public Tool {
  public:
    [[nodiscard]] Reply take(const Event& event, const Ground& ground) override;
    [[nodiscard]] std::optional<std::size_t> heldPoint(const plan::ItemId& selected) const override;
    [[nodiscard]] bool isBusy() const override { return box_.has_value() || (grip_.has_value() && moved_); }
    [[nodiscard]] Wet wet() const override;
    [[nodiscard]] std::string hint() const override { return told_; }
    [[nodiscard]] std::optional<Snaps> snaps() const override;
    [[nodiscard]] std::optional<plan::ItemId> underneath(const Ground& ground, int step) const override;

  private:
    enum class What { Point, Whole, Aside, Letters, OnPaper, Several };
    struct Grip {
        plan::ItemId item;
        What what = What::Point;
        std::size_t vertex = 0;
        geodesy::PlanePoint start;   ///< where the hand took hold
        geodesy::PlanePoint origin;  ///< where the point was
        plan::Plan base;             ///< what the drag begins from (with a new point already in it)
        bool added = false;
        plan::FilmId film = {};  ///< on which a symbol or label is set aside
        Touch lay = {};          ///< the films as they lay when the hand took hold
        std::vector<plan::ItemId> several = {};
        std::optional<plan::LegPiece> leg = {};  ///< whose figures the letters are
    };
    std::optional<Grip> grip_;
    bool moved_ = false;
    struct Held {
        plan::ItemId item;
        std::size_t vertex;
    };
    std::optional<Held> held_;  ///< the point that the keys move
    struct Drawn {
        Box box;
        bool adds = false;
    };
    std::optional<Drawn> box_;
    /// What lies over each other where the hand pressed last.
    struct Pile {
        geodesy::PlanePoint at;
        std::vector<plan::ItemId> items;
    };
    Pile pile_;
    bool again_ = false;  ///< pressed on what led already: let go without a drag, the next one underneath is meant
    geodesy::PlanePoint hand_;
    std::string told_;

    /// What a hand takes hold of by a symbol or a label.
    [[nodiscard]] static std::optional<Grip> gripOn(const Touched& touched, const Event& event, const Ground& ground);
    [[nodiscard]] static std::optional<Grip> gripOn(const Hit& hit, const Event& event, const Ground& ground);
    /// A unit over another one stands in its row; nothing where there is none under the hand.
    [[nodiscard]] std::optional<plan::Plan> joined(geodesy::PlanePoint to) const;
    [[nodiscard]] plan::Plan setAside(geodesy::PlanePoint to) const;
    [[nodiscard]] static plan::Plan severalMoved(const Grip& grip, const Event& event, const Ground& ground);
    [[nodiscard]] Reply onBareSheet(const Event& event, const Ground& ground);
    [[nodiscard]] Reply chosen(const plan::ItemId& item, const Event& event, const Ground& ground);
    [[nodiscard]] Reply boxed(const Ground& ground);
    [[nodiscard]] std::optional<plan::ItemId> next(const Ground& ground, int step) const;
    void tell(const Ground& ground);
    [[nodiscard]] Reply keyed(const Event& event, const Ground& ground);
    [[nodiscard]] static Reply nudged(const plan::ItemId& item, const Event& event, const Ground& ground);
    [[nodiscard]] Reply pressed(const Event& event, const Ground& ground);
    [[nodiscard]] plan::Plan dragged(const Event& event, const Ground& ground) const;
    [[nodiscard]] Reply released(const Event& event, const Ground& ground);
};

}  // namespace crosstick::tools
