#pragma once

#include "core/drawing/dashes.h"
#include "core/drawing/occupancy.h"
#include "core/drawing/text_ruler.h"
#include "symbols/engrave.h"

namespace crosstick::symbols {

using drawing::Point;
using drawing::Points;
using drawing::TurnedBox;
using drawing::Vector;

enum class Side { Own, Enemy };
enum class Standing { Present, Planned };

/// How one item is inked.
struct Manner {
    drawing::Ink ink = drawing::Ink::Black;
    Side side = Side::Own;
    Standing standing = Standing::Present;
    drawing::Halo halo = drawing::Halo::None;
    bool doubled = false;  ///< enemy with one pen: every stroke becomes two (engraving A17)
};

/// A row or rows of letters as one block, centred on each other.
struct Label {
    std::vector<std::string> rows;
    double capital = 2.0;
    drawing::Weight weight = drawing::Weight::Regular;

    [[nodiscard]] double width() const;
    [[nodiscard]] double pitch() const { return 1.5 * capital; }
    [[nodiscard]] double height() const { return capital + pitch() * (static_cast<double>(rows.size()) - 1); }
    [[nodiscard]] TurnedBox boxAt(Point middle, Degrees angle) const { return {middle, width(), height(), angle}; }
    [[nodiscard]] bool isEmpty() const { return rows.empty(); }
};

/// Centre to centre of a doubled stroke: 0.6 white between two thin strokes.
inline constexpr double kDoubleApart = 0.85;

/// Where the second of an outline's two strokes runs (engraving A17): outside a symbol, inside a box with a tip, so
/// that the tip stays true.
enum class Second { Outside, Inside };

/// Makes the marks of one item, all in its manner.
class Pencil {
  public:
    Pencil(drawing::Drawing& sheet, const Manner& manner, const drawing::Gauge& gauge)
        : sheet_(sheet), manner_(manner), gauge_(gauge) {}

    void line(const Points& points) { lines({{points, false}}, gauge_.pen); }
    void lines(std::vector<drawing::Polyline> pieces, double width, drawing::Join join = drawing::Join::Miter);
    void thin(const Points& points) { lines({{points, false}}, gauge_.thin()); }
    /// A constructed outline: dashed 1.6/0.8 with inked corners where planned.
    void outline(const Points& ring, drawing::Join join = drawing::Join::Miter, Second second = Second::Outside);
    void circle(Point centre, double diameter, double width);
    void disc(Point centre, double diameter);
    void fill(const Points& ring);
    void letters(const Label& label, Point middle, Degrees angle);
    void lettersFrom(const std::string& text, Point left, double capital);  ///< left end, half capital height at y

    /// The same without a second stroke: for icons, echelon marks, teeth, ticks and whatever would be read as another
    /// sign if it stood twice.
    [[nodiscard]] Pencil single() const;
    /// From a line's middle to its stroke on either side: where what meets it ends (0 for one stroke).
    [[nodiscard]] double toStroke() const { return manner_.doubled ? kDoubleApart / 2 : 0; }
    /// Half of what a line's ink covers across, both strokes together where it is doubled.
    [[nodiscard]] double halfInk() const;
    /// Half the pen that outlines are drawn with, and how far their ink reaches outside the ring.
    [[nodiscard]] double halfPen() const { return (manner_.doubled ? gauge_.thin() : gauge_.pen) / 2; }
    [[nodiscard]] double outlineReach() const;
    [[nodiscard]] const Manner& manner() const { return manner_; }
    [[nodiscard]] const drawing::Gauge& gauge() const { return gauge_; }

  private:
    drawing::Drawing& sheet_;
    Manner manner_;
    drawing::Gauge gauge_;
};

/// A name without the abbreviation that it begins with: people write "PL FLINT" where "FLINT" is asked for.
[[nodiscard]] std::string bareName(const std::string& name, std::string_view abbreviation);

[[nodiscard]] Points circlePoints(Point centre, double diameter);
/// +1 where left of travel is outside the ring, else -1.
[[nodiscard]] double outwardSide(const Points& ring);
/// A ring moved outward (inward where negative), whichever way round it runs.
[[nodiscard]] Points widened(const Points& ring, double by);

}  // namespace crosstick::symbols
