#include "symbols/unit_icons.h"

#include <cmath>
#include <numbers>

namespace crosstick::symbols {
namespace {

using measures::Affiliation;
using measures::UnitIcon;

/// Draws in multiples of the symbol height.
class IconPen {
  public:
    IconPen(Pencil& pencil, double h) : pencil_(pencil), h_(h) {}

    void line(const Points& points) const { pencil_.lines({{scaled(points), false}}, pen(), drawing::Join::Round); }
    void ring(const Points& points) const { pencil_.lines({{scaled(points), true}}, pen(), drawing::Join::Round); }
    void thin(const Points& points) const {
        pencil_.lines({{scaled(points), false}}, pencil_.gauge().thin(), drawing::Join::Round);
    }
    void circle(Point centre, double diameter) const { ring(circlePoints(centre, diameter)); }
    void disc(Point centre, double diameter) const { pencil_.fill(scaled(circlePoints(centre, diameter))); }
    void fill(const Points& points) const { pencil_.fill(scaled(points)); }
    /// An arc of an ellipse, angles clockwise as seen from the right, degrees.
    void arc(Point centre, double rx, double ry, double from, double to) const {
        constexpr int kSteps = 24;
        Points points;
        for (int n = 0; n <= kSteps; ++n) {
            const double turn = (from + (to - from) * n / kSteps) * std::numbers::pi / 180;
            points.push_back(centre + Vector{rx * std::cos(turn), ry * std::sin(turn)});
        }
        line(points);
    }

  private:
    Pencil& pencil_;
    double h_;

    [[nodiscard]] double pen() const { return pencil_.gauge().pen; }
    [[nodiscard]] Points scaled(Points points) const {
        for (Point& p : points) {
            p = p * h_;
        }
        return points;
    }
};

void capsule(const IconPen& pen) {
    constexpr double kHalf = 0.22;
    constexpr double kRadius = 0.19;
    Points ring;
    for (int n = 0; n <= 16; ++n) {
        const double turn = -std::numbers::pi / 2 + std::numbers::pi * n / 16;
        ring.push_back({kHalf + kRadius * std::cos(turn), kRadius * std::sin(turn)});
    }
    for (int n = 0; n <= 16; ++n) {
        const double turn = std::numbers::pi / 2 + std::numbers::pi * n / 16;
        ring.push_back({-kHalf + kRadius * std::cos(turn), kRadius * std::sin(turn)});
    }
    pen.ring(ring);
}

void mortar(const IconPen& pen) {
    pen.circle({0, 0.27}, 0.18);
    pen.line({{0, 0.18}, {0, -0.30}});
    pen.line({{-0.14, -0.17}, {0, -0.34}, {0.14, -0.17}});
}

void signalStroke(const IconPen& pen, double a, double b) {
    const Vector d = drawing::unit({a, b});
    const Vector n{-d.y, d.x};
    pen.line({{-a, -b}, d * 0.13 - n * 0.11, d * -0.13 + n * 0.11, {a, b}});
}

void transport(const IconPen& pen) {
    constexpr double kRadius = 0.30;
    pen.circle({0, 0}, 2 * kRadius);
    for (int n = 0; n < 4; ++n) {
        const double turn = n * std::numbers::pi / 4;
        const Vector spoke = Vector{std::cos(turn), std::sin(turn)} * kRadius;
        pen.thin({spoke * -1, spoke});
    }
}

void maintenance(const IconPen& pen) {
    pen.line({{-0.26, 0}, {0.26, 0}});
    pen.arc({0.38, 0}, 0.12, 0.14, 90, 270);
    pen.arc({-0.38, 0}, 0.12, 0.14, -90, 90);
}

void cbrn(const IconPen& pen) {
    for (const double side : {1.0, -1.0}) {
        Points curve;
        for (int n = 0; n <= 16; ++n) {
            const double t = n / 16.0;
            const Point p = Point{-0.28, 0.30} * ((1 - t) * (1 - t)) + Point{0.02, 0.26} * (2 * t * (1 - t)) +
                            Point{0.24, -0.22} * (t * t);
            curve.push_back({side * p.x, p.y});
        }
        pen.line(curve);
        pen.disc({side * 0.25, -0.23}, 0.15);
    }
}

}  // namespace

void drawIcon(Pencil& pencil, UnitIcon icon, const UnitFrame& frame, double h) {
    const IconPen pen(pencil, h);
    const double a = frame.a;
    const double b = frame.b;
    const double t = frame.top;
    const bool isPointed = frame.affiliation == Affiliation::Hostile || frame.affiliation == Affiliation::Unknown;
    switch (icon) {
        case UnitIcon::Infantry:
            pen.line({{-a, -b}, {a, b}});
            return pen.line({{-a, b}, {a, -b}});
        case UnitIcon::Reconnaissance:
            return pen.line({{-a, b}, {a, -b}});
        case UnitIcon::Armour:
            return capsule(pen);
        case UnitIcon::Antitank:
            return pen.line({{-a, b}, {0, -t}, {a, b}});
        case UnitIcon::Mortar:
            return mortar(pen);
        case UnitIcon::Artillery:
            return pen.disc({0, 0}, 0.34);
        case UnitIcon::AirDefence:
            return pen.arc({0, b}, a, isPointed ? 0.28 : 0.36, 180, 360);
        case UnitIcon::Engineer:
            pen.line({{-0.36, 0.17}, {-0.36, -0.15}, {0.36, -0.15}, {0.36, 0.17}});
            return pen.line({{0, -0.15}, {0, 0.17}});
        case UnitIcon::Medical:
            pen.line({{0, -t}, {0, t}});
            return pen.line({{-frame.halfWidth(0), 0}, {frame.halfWidth(0), 0}});
        case UnitIcon::Signal:
            return signalStroke(pen, a, b);
        case UnitIcon::Aviation:
            return pen.fill({{-0.36, -0.18}, {0.36, 0.18}, {0.36, -0.18}, {-0.36, 0.18}});
        case UnitIcon::Supply:
            return pen.line({{-frame.halfWidth(0.3), 0.3}, {frame.halfWidth(0.3), 0.3}});
        case UnitIcon::Transport:
            return transport(pen);
        case UnitIcon::Maintenance:
            return maintenance(pen);
        case UnitIcon::Cbrn:
            return cbrn(pen);
        case UnitIcon::Mountain: {
            const double y = isPointed ? 0.52 : b;
            return pen.fill({{-0.14, y}, {0.14, y}, {0, y - 0.22}});
        }
        case UnitIcon::Airborne:
            pen.arc({-0.12, 0.42}, 0.12, 0.12, 180, 360);
            return pen.arc({0.12, 0.42}, 0.12, 0.12, 180, 360);
        case UnitIcon::AirAssault:
            return pen.line({{-0.14, 0.26}, {0, 0.42}, {0.14, 0.26}});
    }
}

}  // namespace crosstick::symbols
