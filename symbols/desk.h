#pragma once

#include "symbols/sketch.h"

namespace crosstick::symbols {

/// The edge of an area, or a line, in film millimetres.
struct EdgeOf {
    Points points;
    bool closed = false;
};

/// One shown measure or route, brought to film millimetres.
struct Subject {
    std::size_t order = 0;  ///< place on the film; owner of its ink in the occupancy
    const plan::Measure* measure = nullptr;
    const plan::Route* route = nullptr;
    const plan::Showing* showing = nullptr;
    Points points;
    std::optional<Point> symbolAt, labelAt;
    bool onRoute = false;           ///< a stop of a shown route
    std::vector<Vector> legs = {};  ///< of shown routes, leaving its spot
    Manner manner;
    drawing::Drawing ink, letters;
    std::vector<Subject*> row = {};  ///< units that stand in a row with this one, which leads it
    bool follows = false;            ///< stands in the row of another, which draws it
    std::optional<EdgeOf> tip = {};  ///< what its extension line ends on, in place of its spot
    EdgeOf body = {};                ///< along which its ink runs: what a label far from it is tied to
    std::vector<Part> parts = {};
    std::optional<Point> handle = {};  ///< where its symbol stands
    bool isAside = false;

    [[nodiscard]] plan::ItemId id() const { return showing->item; }
};

/// Other lines under letters, or another's true place: never, or where nothing else is free.
enum class Crossed { Never, AtWorst };

/// Height of a task's letter (engraving A2).
inline constexpr double kTaskLetter = 2.5;

/// What the drawing functions of one film share: the rules, what is taken, what there is to remark.
class Desk {
  public:
    explicit Desk(const Engraving& engraving);
    /// An empty one for a sample: a window of its own, in which letters and symbols have room or nothing has.
    enum class Room { Ample, None };
    /// @param taskLetter  a sample that is made smaller afterwards begins with a larger one
    Desk(const Engraving& engraving, const drawing::Box& window, Room room, double taskLetter = kTaskLetter)
        : engraving_(engraving), window_(window), room_(room), taskLetter_(taskLetter) {}

    [[nodiscard]] const Engraving& engraving() const { return engraving_; }
    [[nodiscard]] const drawing::Gauge& gauge() const { return engraving_.gauge; }
    [[nodiscard]] double taskLetter() const { return taskLetter_; }       ///< how high the letter of a task is
    [[nodiscard]] const drawing::Box& window() const { return window_; }  ///< without one: a very large box
    [[nodiscard]] drawing::Box lettersWindow() const { return window_.grown(-2.0); }
    [[nodiscard]] drawing::Occupancy& taken() { return taken_; }
    [[nodiscard]] Pencil inkOf(Subject& subject) { return {subject.ink, subject.manner, gauge()}; }
    /// The same for what is no part of the sign itself (extension lines, hatching): never doubled for the enemy.
    [[nodiscard]] Pencil plainInkOf(Subject& subject);
    [[nodiscard]] Pencil lettersOf(Subject& subject) { return {subject.letters, subject.manner, gauge()}; }
    /// A symbol's or label's box: nothing is placed there any more, and a hand finds the subject by it.
    void take(Subject& subject, const TurnedBox& box, Part::What what = Part::What::Symbol);
    [[nodiscard]] bool fits(const TurnedBox& box) const {
        return room_ == Room::Ample && box.inside(lettersWindow()) && taken_.isFree(box);
    }

    /// Do other lines cross a place for letters or touch it nearly, or does another's true place lie in it?
    [[nodiscard]] bool isCrossed(const TurnedBox& box, std::size_t owner) const;
    /// A place for letters with the white that they keep from other lines: as much as from other letters.
    [[nodiscard]] TurnedBox withWhite(const TurnedBox& box) const { return box.grown(0.6 + gauge().pen / 2); }

    /// Letters at a place that is known to be free; the place is taken from then on.
    void write(Subject& subject, const Label& label, Point middle, Degrees angle);
    /// Letters whose middle was placed by hand: there, moved no farther than the window asks; far from what they name
    /// they are tied to it by an extension line. False where none was.
    [[nodiscard]] bool writeByHand(Subject& subject, const Label& label, Degrees angle);
    /// Where a box's middle must be moved to so that the box is 2.0 inside the window.
    [[nodiscard]] Point movedInside(const TurnedBox& box) const;
    /// The first of the places that is free and crossed by no other line; else the first that is free; else none.
    struct Place {
        Point middle;
        Degrees angle;
    };
    [[nodiscard]] std::optional<Place> choose(const Label& label, const std::vector<Place>& places, std::size_t owner,
                                              Crossed crossed = Crossed::AtWorst) const;
    void remark(const Subject& subject, FaultId about) { remarks_.push_back({subject.id(), about}); }
    [[nodiscard]] std::vector<Remark> takeRemarks() { return std::move(remarks_); }

    /// How much was remarked; what was remarked since can be forgotten.
    [[nodiscard]] std::size_t remarked() const { return remarks_.size(); }
    void forgetRemarks(std::size_t from) {
        remarks_.erase(remarks_.begin() + static_cast<std::ptrdiff_t>(from), remarks_.end());
    }

    /// Film millimetres of points of the plan.
    [[nodiscard]] Points onFilm(const std::vector<geodesy::PlanePoint>& points) const;

  private:
    const Engraving& engraving_;
    drawing::Box window_;
    Room room_ = Room::Ample;
    double taskLetter_ = kTaskLetter;
    drawing::Occupancy taken_;
    std::vector<Remark> remarks_;
};

/// A line with stretches left out for labels, in the manner's pattern, clipped at the window.
void drawLine(Desk& desk, Subject& subject, const drawing::Path& path, const std::vector<drawing::Stretch>& gaps);

}  // namespace crosstick::symbols
