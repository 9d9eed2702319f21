#include "symbols/extension.h"

#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"

namespace crosstick::symbols {

namespace {

/// What an extension line may run over: it had better cross no letter and no symbol, unless nothing else is left.
enum class Over { LinesOnly, Anything };

}  // namespace

void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end) {
    Pencil pencil = desk.plainInkOf(subject);
    pencil.thin({from, spot});
    desk.taken().draw({from, spot}, subject.order);
    subject.isAside = true;
    if (end == ExtensionEnd::Dot) {
        pencil.disc(spot, 0.8);
    } else if (end == ExtensionEnd::Tick) {
        const Vector across = drawing::leftOf(drawing::unit(spot - from)) * 0.8;
        pencil.thin({spot - across, spot + across});
    }
}

bool letterAside(Desk& desk, Subject& subject, const Label& label, Point spot, ExtensionEnd end) {
    for (const Over over : {Over::LinesOnly, Over::Anything}) {
        for (const double distance : drawing::steps(6, 24, 3)) {
            for (int n = 0; n < 8; ++n) {
                const double turn = n * std::numbers::pi / 4;
                const Point middle =
                    spot + Vector{std::cos(turn) * (distance + label.width() / 2), -std::sin(turn) * distance};
                const TurnedBox box = label.boxAt(middle, Degrees(0));
                if (!desk.fits(box) || desk.taken().crossings(box, subject.order) > 0 ||
                    (over == Over::LinesOnly && !desk.taken().isFree(labelEdge(box, spot), spot))) {
                    continue;
                }
                desk.write(subject, label, middle, Degrees(0));
                extensionLine(desk, subject, labelEdge(box, spot), spot, end);
                return true;
            }
        }
    }
    return false;
}

Point labelEdge(const TurnedBox& box, Point spot) {
    constexpr double kClear = 0.6;
    const drawing::Box around = box.bounds().grown(kClear);
    const Point middle = around.middle();
    Point best = middle;
    double nearest = 1e9;
    for (const double x : {around.left, middle.x, around.right}) {
        for (const double y : {around.top, middle.y, around.bottom}) {
            const Point p{x, y};
            if (p != middle && drawing::length(p - spot) < nearest) {
                nearest = drawing::length(p - spot);
                best = p;
            }
        }
    }
    return best;
}

std::vector<Vector> asideDirections() {
    constexpr double kDiagonal = std::numbers::sqrt2 / 2;
    return {{1, 0},
            {-1, 0},
            {kDiagonal, kDiagonal},
            {-kDiagonal, kDiagonal},
            {kDiagonal, -kDiagonal},
            {-kDiagonal, -kDiagonal},
            {0, 1},
            {0, -1}};
}

std::vector<Vector> allRound() {
    constexpr int kDirections = 48;
    std::vector<Vector> all;
    for (int n = 0; n < kDirections; ++n) {
        const double turn = 2 * std::numbers::pi * n / kDirections;
        all.push_back({std::cos(turn), std::sin(turn)});
    }
    return all;
}

}  // namespace crosstick::symbols
