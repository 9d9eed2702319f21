#include "core/drawing/drawing.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/text_ruler.h"
#include "core/units/number_text.h"

namespace crosstick::drawing {
namespace {

struct Mover {
    Vector by;
    void operator()(Stroke& stroke) const {
        for (Polyline& piece : stroke.pieces) {
            for (Point& p : piece.points) {
                p = p + by;
            }
        }
    }
    void operator()(Fill& fill) const {
        for (auto& ring : fill.rings) {
            for (Point& p : ring) {
                p = p + by;
            }
        }
    }
    void operator()(Text& text) const { text.start = text.start + by; }
};

Box boxOf(const std::vector<Point>& points) {
    Box box;
    for (const Point p : points) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

struct Measurer {
    Box operator()(const Stroke& stroke) const {
        Box box;
        for (const Polyline& piece : stroke.pieces) {
            box = box.joined(boxOf(piece.points));
        }
        return box.isEmpty() ? box : box.grown(stroke.width / 2);
    }
    Box operator()(const Fill& fill) const {
        Box box;
        for (const auto& ring : fill.rings) {
            box = box.joined(boxOf(ring));
        }
        return box;
    }
    Box operator()(const Text& text) const {
        // Capitals only stand above the base line; commas and the like reach a quarter of a capital below it.
        const double width = textWidth(text.text, text.capHeight, text.weight);
        const double turn = radians(text.angle).value();
        const Vector along{std::cos(turn), -std::sin(turn)};
        const Vector up{-std::sin(turn), -std::cos(turn)};
        const Point low = text.start - up * (0.25 * text.capHeight);
        const Point high = text.start + up * text.capHeight;
        return boxOf({low, low + along * width, high, high + along * width});
    }
};

std::string numbers(std::initializer_list<double> values) {
    std::string out;
    for (const double value : values) {
        out += ' ';
        out += numberText(value, 3);
    }
    return out;
}

std::string pointsText(const std::vector<Point>& points) {
    std::string out;
    for (const Point p : points) {
        out += numbers({p.x, p.y});
    }
    return out;
}

std::string_view nameOf(Ink ink) {
    switch (ink) {
        case Ink::Black:
            return "black";
        case Ink::Blue:
            return "blue";
        case Ink::Red:
            return "red";
        case Ink::Green:
            return "green";
        case Ink::Yellow:
            return "yellow";
    }
    return "?";
}

struct Describer {
    std::string operator()(const Stroke& stroke) const {
        std::string out = "stroke " + std::string(nameOf(stroke.ink)) + numbers({stroke.width}) +
                          (stroke.join == Join::Round ? " round" : " miter") +
                          (stroke.cap == Cap::Round ? " round" : " butt");
        for (const Polyline& piece : stroke.pieces) {
            out += piece.closed ? " closed" : " open";
            out += pointsText(piece.points);
        }
        return out;
    }
    std::string operator()(const Fill& fill) const {
        std::string out = "fill " + std::string(nameOf(fill.ink));
        for (const auto& ring : fill.rings) {
            out += " ring" + pointsText(ring);
        }
        return out;
    }
    std::string operator()(const Text& text) const {
        return "text " + std::string(nameOf(text.ink)) + numbers({text.start.x, text.start.y, text.angle.value()}) +
               numbers({text.capHeight}) + (text.weight == Weight::Bold ? " bold" : " regular") +
               (text.halo == Halo::Paper ? " halo" : "") + " \"" + text.text + '"';
    }
};

}  // namespace

bool Box::contains(const Box& other) const {
    return other.isEmpty() ||
           (other.left >= left && other.right <= right && other.top >= top && other.bottom <= bottom);
}
bool Box::meets(const Box& other) const {
    return !isEmpty() && !other.isEmpty() && left < other.right && other.left < right && top < other.bottom &&
           other.top < bottom;
}
Box Box::grown(double by) const {
    if (isEmpty()) {
        return *this;
    }
    return {left - by, top - by, right + by, bottom + by};
}
Box Box::joined(const Box& other) const {
    if (isEmpty()) {
        return other;
    }
    if (other.isEmpty()) {
        return *this;
    }
    return {std::min(left, other.left), std::min(top, other.top), std::max(right, other.right),
            std::max(bottom, other.bottom)};
}

Drawing moved(Drawing drawing, Vector by) {
    for (Mark& mark : drawing.marks) {
        std::visit(Mover{by}, mark);
    }
    return drawing;
}

Box extent(const Drawing& drawing) {
    Box box;
    for (const Mark& mark : drawing.marks) {
        box = box.joined(std::visit(Measurer{}, mark));
    }
    return box;
}

std::string describe(const Drawing& drawing) {
    std::string out;
    for (const Mark& mark : drawing.marks) {
        out += std::visit(Describer{}, mark);
        out += '\n';
    }
    return out;
}

}  // namespace crosstick::drawing
