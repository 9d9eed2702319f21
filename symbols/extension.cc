#include "symbols/extension.h"

namespace crosstick::symbols {

void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end) {
    Pencil pencil = desk.inkOf(subject);
    pencil.thin({from, spot});
    if (end == ExtensionEnd::Dot) {
        pencil.disc(spot, 0.8);
    } else if (end == ExtensionEnd::Tick) {
        const Vector across = drawing::leftOf(drawing::unit(spot - from)) * 0.8;
        pencil.thin({spot - across, spot + across});
    }
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

}  // namespace crosstick::symbols
