#pragma once

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/units/quantity.h"

namespace crosstick::drawing {

/// A point on paper or film: millimetres, x right, y DOWN. The type is the unit; arithmetic on it is plain.
struct Point {
    double x = 0;
    double y = 0;
    friend constexpr bool operator==(Point, Point) = default;
};
/// A displacement in the same millimetres.
using Vector = Point;
[[nodiscard]] constexpr Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
[[nodiscard]] constexpr Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
[[nodiscard]] constexpr Point operator*(Point a, double k) {
    return {a.x * k, a.y * k};
}

/// An upright box; empty when right < left.
struct Box {
    double left = 1;
    double top = 1;
    double right = 0;
    double bottom = 0;
    friend constexpr bool operator==(const Box&, const Box&) = default;

    [[nodiscard]] bool isEmpty() const { return right < left || bottom < top; }
    [[nodiscard]] double width() const { return right - left; }
    [[nodiscard]] double height() const { return bottom - top; }
    [[nodiscard]] Point middle() const { return {(left + right) / 2, (top + bottom) / 2}; }
    [[nodiscard]] bool contains(Point p) const { return p.x >= left && p.x <= right && p.y >= top && p.y <= bottom; }
    [[nodiscard]] bool contains(const Box& other) const;
    [[nodiscard]] bool meets(const Box& other) const;
    [[nodiscard]] Box grown(double by) const;          ///< an empty one stays empty
    [[nodiscard]] Box joined(const Box& other) const;  ///< smallest box round both; an empty one adds nothing
};

/// The pens people own. What colour each has on the light table, by night and on paper is the painter's business.
enum class Ink { Black, Blue, Red, Green, Yellow };
enum class Join { Miter, Round };  ///< miter: limit 4, then bevel
enum class Cap { Butt, Round };
enum class Weight { Regular, Bold };
enum class Halo { None, Paper };  ///< a paper-coloured rim of 0.5 mm; painted on the light table and colour prints only

struct Polyline {
    std::vector<Point> points;
    bool closed = false;
    friend bool operator==(const Polyline&, const Polyline&) = default;
};

/// Lines of one pen. Dashes are already cut (see dashes.h): a painter never makes any.
struct Stroke {
    std::vector<Polyline> pieces;
    double width = 0.4;  ///< millimetres
    Ink ink = Ink::Black;
    Join join = Join::Miter;
    Cap cap = Cap::Butt;
    friend bool operator==(const Stroke&, const Stroke&) = default;
};

/// Rings filled by the even-odd rule.
struct Fill {
    std::vector<std::vector<Point>> rings;
    Ink ink = Ink::Black;
    friend bool operator==(const Fill&, const Fill&) = default;
};

/// One row of letters in the bundled face, set glyph by glyph from the table of advances, without kerning.
struct Text {
    std::string text;        ///< UTF-8
    Point start;             ///< left end of the base line
    Degrees angle;           ///< counter-clockwise as seen, 0 to the right
    double capHeight = 2.0;  ///< height of a capital, millimetres
    Weight weight = Weight::Regular;
    Ink ink = Ink::Black;
    Halo halo = Halo::None;
    friend bool operator==(const Text&, const Text&) = default;
};

using Mark = std::variant<Stroke, Fill, Text>;

/// What is drawn, as a value: marks in their painting order, in millimetres of film or page. Screen and paper paint the
/// same one. Laws: moved(moved(d, a), b) == moved(d, a + b) within rounding; extent grows with append.
struct Drawing {
    std::vector<Mark> marks;
    friend bool operator==(const Drawing&, const Drawing&) = default;

    void append(const Drawing& other) { marks.insert(marks.end(), other.marks.begin(), other.marks.end()); }
    void append(Drawing&& other) {
        marks.insert(marks.end(), std::make_move_iterator(other.marks.begin()),
                     std::make_move_iterator(other.marks.end()));
    }
    [[nodiscard]] bool isEmpty() const { return marks.empty(); }
};

[[nodiscard]] Drawing moved(Drawing drawing, Vector by);
/// Of the ink: strokes with their width (miters not counted), texts by the ruler's advances and the face's ascent.
[[nodiscard]] Box extent(const Drawing& drawing);
/// One line a mark, three decimals: the form of the text goldens.
[[nodiscard]] std::string describe(const Drawing& drawing);

/// Sizes that every drawing function takes from here (engraving, section 0), in millimetres.
struct Gauge {
    double symbol = 6.0;   ///< H, 4 to 8
    double pen = 0.40;     ///< w, 0.25 to 0.70
    double letters = 2.0;  ///< h, height of a capital, never under 1.8
    double routePen = 0.55;

    /// With the routes' pen in its usual ratio to the others', never over the heaviest. Sizes outside their ranges are
    /// taken as the nearest inside: a file from elsewhere draws legibly, too.
    [[nodiscard]] static constexpr Gauge of(double symbol, double pen, double letters) {
        const double w = std::clamp(pen, 0.25, 0.70);
        return {std::clamp(symbol, 4.0, 8.0), w, std::clamp(letters, 1.8, 4.0), std::min(0.70, w * 0.55 / 0.40)};
    }
    [[nodiscard]] double thin() const { return pen * 0.6 < 0.25 ? 0.25 : pen * 0.6; }
    friend constexpr bool operator==(const Gauge&, const Gauge&) = default;
};

}  // namespace crosstick::drawing
