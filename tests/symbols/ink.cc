#include "tests/symbols/ink.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/drawing/path.h"
#include "core/drawing/text_ruler.h"

namespace crosstick::symbols::testing {
namespace {

using drawing::Point;
using drawing::Points;
using drawing::Vector;

/// Corners of the ink of a joint: both ends' corners, and the mitre's point where it is within the limit of 4.
void addJoint(Points& corners, Point at, Vector in, Vector out, double half, drawing::Join join) {
    const Vector a = drawing::leftOf(in);
    const Vector b = drawing::leftOf(out);
    const Vector middle = drawing::unit(a + b);
    const double cosine = drawing::dot(middle, a);
    if (join == drawing::Join::Miter && cosine > 0.25) {
        corners.push_back(at + middle * (half / cosine));
        corners.push_back(at - middle * (half / cosine));
    }
}

Points cornersOf(const drawing::Stroke& stroke) {
    Points corners;
    const double half = stroke.width / 2;
    for (const drawing::Polyline& piece : stroke.pieces) {
        const Points& p = piece.points;
        const std::size_t count = p.size();
        for (std::size_t n = 0; n + (piece.closed ? 0 : 1) < count; ++n) {
            const Point a = p[n];
            const Point b = p[(n + 1) % count];
            const Vector u = drawing::unit(b - a);
            const Vector side = drawing::leftOf(u) * half;
            corners.insert(corners.end(), {a + side, a - side, b + side, b - side});
            const bool hasNext = piece.closed || n + 2 < count;
            if (hasNext) {
                addJoint(corners, b, u, drawing::unit(p[(n + 2) % count] - b), half, stroke.join);
            }
        }
    }
    return corners;
}

Points cornersOf(const drawing::Drawing& drawing) {
    Points corners;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            const Points more = cornersOf(*stroke);
            corners.insert(corners.end(), more.begin(), more.end());
        } else if (const auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (const auto& ring : fill->rings) {
                corners.insert(corners.end(), ring.begin(), ring.end());
            }
        }
    }
    return corners;
}

double between(Point p, Point a, Point b) {
    const Vector span = b - a;
    const double size = drawing::dot(span, span);
    const double share = size > 0 ? std::clamp(drawing::dot(p - a, span) / size, 0.0, 1.0) : 0;
    return drawing::length(p - (a + span * share));
}

double apart(const InkLine& one, const drawing::TurnedBox& box) {
    if (box.meets(one.from, one.to)) {
        return -1;
    }
    const auto corners = box.corners();
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t n = 0; n < 4; ++n) {
        least = std::min({least, between(corners.at(n), one.from, one.to),
                          between(one.from, corners.at(n), corners.at((n + 1) % 4)),
                          between(one.to, corners.at(n), corners.at((n + 1) % 4))});
    }
    return least;
}

bool isWithin(const Points& a, const Points& b) {
    return std::all_of(a.begin(), a.end(), [&](Point p) {
        return std::any_of(b.begin(), b.end(), [&](Point q) { return drawing::length(p - q) < 1e-3; });
    });
}

}  // namespace

double reach(const drawing::Drawing& drawing, Point from, Vector along, double within) {
    double farthest = -std::numeric_limits<double>::infinity();
    for (const Point corner : cornersOf(drawing)) {
        if (drawing::length(corner - from) < within) {
            farthest = std::max(farthest, drawing::dot(corner - from, along));
        }
    }
    return farthest;
}

std::vector<drawing::Text> texts(const drawing::Drawing& drawing) {
    std::vector<drawing::Text> found;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            found.push_back(*text);
        }
    }
    return found;
}

std::vector<drawing::TurnedBox> letterBoxes(const drawing::Drawing& drawing) {
    std::vector<drawing::TurnedBox> boxes;
    for (const drawing::Text& text : texts(drawing)) {
        const double turn = radians(text.angle).value();
        const Vector along{std::cos(turn), -std::sin(turn)};
        const Vector up{-std::sin(turn), -std::cos(turn)};
        const double width = drawing::textWidth(text.text, text.capHeight, text.weight);
        boxes.push_back(
            {text.start + along * (width / 2) + up * (text.capHeight / 2), width, text.capHeight, text.angle});
    }
    return boxes;
}

std::vector<InkLine> inkLines(const drawing::Drawing& drawing) {
    std::vector<InkLine> lines;
    const auto add = [&](const Points& points, bool closed, double width) {
        for (std::size_t n = 0; n + (closed ? 0 : 1) < points.size(); ++n) {
            lines.push_back({points[n], points[(n + 1) % points.size()], width});
        }
    };
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (const drawing::Polyline& piece : stroke->pieces) {
                add(piece.points, piece.closed, stroke->width);
            }
        } else if (const auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (const auto& ring : fill->rings) {
                add(ring, true, 0);
            }
        }
    }
    return lines;
}

double clearance(const drawing::TurnedBox& letters, const drawing::Drawing& drawing) {
    double least = std::numeric_limits<double>::infinity();
    for (const InkLine& line : inkLines(drawing)) {
        // Pieces end butt, so a line that points at the letters reaches no farther than its end.
        const double turn = radians(letters.angle).value();
        const Vector axis{std::cos(turn), -std::sin(turn)};
        const bool pointsAtIt = std::abs(drawing::cross(drawing::unit(line.to - line.from), axis)) < 1e-6 &&
                                std::abs(drawing::cross(line.from - letters.middle, axis)) < letters.height / 2;
        least = std::min(least, apart(line, letters) - (pointsAtIt ? 0 : line.width / 2));
    }
    return least;
}

bool isSameInk(const drawing::Drawing& a, const drawing::Drawing& b) {
    const Points one = cornersOf(a);
    const Points other = cornersOf(b);
    return isWithin(one, other) && isWithin(other, one);
}

}  // namespace crosstick::symbols::testing
