#include "symbols/sketch.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace crosstick::symbols {
namespace {

std::vector<drawing::Polyline> doubledLines(const std::vector<drawing::Polyline>& pieces) {
    std::vector<drawing::Polyline> both;
    for (const drawing::Polyline& piece : pieces) {
        for (const double side : {kDoubleApart / 2, -kDoubleApart / 2}) {
            both.push_back({drawing::offset(piece.points, side, piece.closed), piece.closed});
        }
    }
    return both;
}

}  // namespace

double outwardSide(const Points& ring) {
    double twice = 0;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        twice += drawing::cross(ring[n], ring[(n + 1) % ring.size()]);
    }
    return twice > 0 ? 1 : -1;  // y runs down: a positive area is clockwise as seen
}

std::string bareName(const std::string& name, std::string_view abbreviation) {
    const bool isTwice = !abbreviation.empty() && name.starts_with(std::string(abbreviation) + ' ');
    return isTwice ? name.substr(abbreviation.size() + 1) : name;
}

double Label::width() const {
    double widest = 0;
    for (const std::string& row : rows) {
        widest = std::max(widest, drawing::textWidth(row, capital, weight));
    }
    return widest;
}

Points circlePoints(Point centre, double diameter) {
    constexpr int kSides = 48;  // the chord's rise stays under 0.01 mm up to a diameter of 9
    Points ring;
    for (int n = 0; n < kSides; ++n) {
        const double turn = 2 * std::numbers::pi * n / kSides;
        ring.push_back(centre + Vector{std::sin(turn), -std::cos(turn)} * (diameter / 2));
    }
    return ring;
}

void Pencil::lines(std::vector<drawing::Polyline> pieces, double width, drawing::Join join) {
    std::erase_if(pieces, [](const drawing::Polyline& piece) { return piece.points.size() < 2; });
    if (pieces.empty()) {
        return;
    }
    if (manner_.doubled) {
        pieces = doubledLines(pieces);
        width = gauge_.thin();
    }
    sheet_.marks.emplace_back(drawing::Stroke{std::move(pieces), width, manner_.ink, join, drawing::Cap::Butt});
}

Points widened(const Points& ring, double by) {
    return drawing::offset(ring, outwardSide(ring) * by, true);
}

Pencil Pencil::single() const {
    Manner plain = manner_;
    plain.doubled = false;
    return {sheet_, plain, gauge_};
}

double Pencil::halfInk() const {
    return manner_.doubled ? (kDoubleApart + gauge_.thin()) / 2 : gauge_.pen / 2;
}
namespace {

/// Points of a ring at the same share of the same side of another: dashes of both strokes of an outline begin and end
/// together, and its corners are inked on both. Moved straight across, a short dash at a sharp corner would turn over.
Points carried(const Points& points, const Points& ring, const Points& other) {
    Points all;
    for (const Point p : points) {
        double least = std::numeric_limits<double>::infinity();
        Point best = p;
        for (std::size_t n = 0; n < ring.size(); ++n) {
            const std::size_t next = (n + 1) % ring.size();
            const Vector side = ring[next] - ring[n];
            const double square = drawing::dot(side, side);
            const double share = square > 0 ? std::clamp(drawing::dot(p - ring[n], side) / square, 0.0, 1.0) : 0;
            const double away = drawing::length(p - (ring[n] + side * share));
            if (away < least) {
                least = away;
                best = other[n] + (other[next] - other[n]) * share;
            }
        }
        all.push_back(best);
    }
    return all;
}

}  // namespace

double Pencil::outlineReach() const {
    return halfPen() + (manner_.doubled ? kDoubleApart : 0);
}

void Pencil::outline(const Points& ring, drawing::Join join, Second second) {
    const bool isPlanned = manner_.standing == Standing::Planned;
    std::vector<drawing::Polyline> pieces =
        isPlanned ? drawing::dashed(drawing::Path(ring, true), drawing::kSmallOutline, drawing::CornerRule::Outline)
                  : std::vector<drawing::Polyline>{{ring, true}};
    if (manner_.doubled) {
        const double aside = outwardSide(ring) * (second == Second::Outside ? kDoubleApart : -kDoubleApart);
        std::vector<drawing::Polyline> both;
        const Points other = drawing::offset(ring, aside, true);
        for (drawing::Polyline& piece : pieces) {
            both.push_back({isPlanned && other.size() == ring.size()
                                ? carried(piece.points, ring, other)
                                : drawing::offset(piece.points, aside, piece.closed),
                            piece.closed});
            both.push_back(std::move(piece));
        }
        pieces = std::move(both);
    }
    sheet_.marks.emplace_back(drawing::Stroke{std::move(pieces), 2 * halfPen(), manner_.ink, join, drawing::Cap::Butt});
}

void Pencil::circle(Point centre, double diameter, double width) {
    lines({{circlePoints(centre, diameter), true}}, width, drawing::Join::Round);
}
void Pencil::disc(Point centre, double diameter) {
    fill(circlePoints(centre, diameter));
}
void Pencil::fill(const Points& ring) {
    sheet_.marks.emplace_back(drawing::Fill{{ring}, manner_.ink});
}

void Pencil::letters(const Label& label, Point middle, Degrees angle) {
    const double turn = radians(angle).value();
    const Vector along{std::cos(turn), -std::sin(turn)};
    const Vector up{-std::sin(turn), -std::cos(turn)};
    double above = label.pitch() * (static_cast<double>(label.rows.size()) - 1) / 2;
    for (const std::string& row : label.rows) {
        const double width = drawing::textWidth(row, label.capital, label.weight);
        const Point start = middle + up * (above - label.capital / 2) - along * (width / 2);
        sheet_.marks.emplace_back(
            drawing::Text{row, start, angle, label.capital, label.weight, manner_.ink, manner_.halo});
        above -= label.pitch();
    }
}

void Pencil::lettersFrom(const std::string& text, Point left, double capital) {
    sheet_.marks.emplace_back(drawing::Text{text,
                                            {left.x, left.y + capital / 2},
                                            Degrees(0),
                                            capital,
                                            drawing::Weight::Regular,
                                            manner_.ink,
                                            manner_.halo});
}

}  // namespace crosstick::symbols
