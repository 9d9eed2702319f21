#include "symbols/route_names.h"

#include <algorithm>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/line_labels.h"

namespace crosstick::symbols {
namespace {

/// Middles along a piece, at its middle first, then sliding between 0.25 and 0.75.
std::vector<double> slides(double length, double width) {
    std::vector<double> places{0.5};
    for (const double away : drawing::steps(0.05, 0.25, 0.05)) {
        for (const double share : {0.5 - away, 0.5 + away}) {
            if (length * std::min(share, 1 - share) >= width / 2 + 1) {
                places.push_back(share);
            }
        }
    }
    return places;
}

/// "RTE QUILL", "RTE QUILL  ALTN"; of one without a name what it is used for alone.
Label nameOf(const Desk& desk, const plan::Route& route) {
    const std::string use = route.use == plan::Use::Alternate ? "ALTN" : route.use == plan::Use::Vehicle ? "VEH" : "";
    const std::string name = route.name.empty() ? "" : "RTE " + route.name;
    const std::string words = name + (name.empty() || use.empty() ? "" : "  ") + use;
    return {words.empty() ? std::vector<std::string>{} : std::vector{words}, desk.gauge().letters};
}

/// What a route has for itself within a stretch of its line: the longest piece first, those last beside which another
/// route runs.
std::vector<RoutePiece> ownPieces(const std::vector<RoutePiece>& pieces, const drawing::Path& path,
                                  const drawing::Stretch& within) {
    std::vector<RoutePiece> own;
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        const double from = std::max(path.position(n), within.from);
        const double to = std::min(path.position(n + 1), within.to);
        if (!pieces[n].sharedWithPrimary && to - from >= 0.05) {
            own.push_back(pieces[n]);
            own.back().from = path.at(from);
            own.back().to = path.at(to);
        }
    }
    std::stable_sort(own.begin(), own.end(), [](const RoutePiece& a, const RoutePiece& b) {
        return std::pair(a.aside != 0, -a.length()) < std::pair(b.aside != 0, -b.length());
    });
    return own;
}

/// Beside the first piece of a share that has room: on the other side of its line than the leg's figures, and never
/// beside the line of another route.
bool nameShare(Desk& desk, Subject& route, const std::vector<RoutePiece>& own, const Label& label, Crossed crossed) {
    return std::any_of(own.begin(), own.end(), [&](const RoutePiece& piece) {
        const std::vector<double> sides = piece.aside > 0   ? std::vector<double>{1}
                                          : piece.aside < 0 ? std::vector<double>{-1}
                                                            : std::vector<double>{-1, 1};
        return piece.length() > label.width() + 2 && writeBeside(desk, route, piece, label, sides, crossed);
    });
}

/// Names each share of a stretch that has a clear place; where none has, one share at worst.
bool nameStretch(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces, const drawing::Path& path,
                 const SeenStretch& seen, const Label& label) {
    bool named = false;
    for (const drawing::Stretch& share : seen.shares) {
        named = nameShare(desk, route, ownPieces(pieces, path, share), label, Crossed::Never) || named;
    }
    return named || std::any_of(seen.shares.begin(), seen.shares.end(), [&](const drawing::Stretch& share) {
               return nameShare(desk, route, ownPieces(pieces, path, share), label, Crossed::AtWorst);
           });
}

bool nameAside(Desk& desk, Subject& route, const std::vector<RoutePiece>& own, const Label& label) {
    return std::any_of(own.begin(), own.end(), [&](const RoutePiece& piece) {
        const Point middle = (piece.from + piece.to) * 0.5 + drawing::leftOf(piece.direction()) * piece.aside;
        return letterAside(desk, route, label, middle, ExtensionEnd::Tick);
    });
}

}  // namespace

bool writeBeside(Desk& desk, Subject& route, const RoutePiece& piece, const Label& label,
                 const std::vector<double>& sides, Crossed crossed) {
    constexpr double kOff = 1.3;
    const Vector u = piece.direction();
    const Degrees angle = drawing::readable(u);
    std::vector<Desk::Place> places;
    for (const double side : sides) {
        const double away = side * (kOff + label.height() / 2 + std::abs(piece.aside));
        for (const double share : slides(piece.length(), label.width())) {
            places.push_back({piece.from + u * (piece.length() * share) + drawing::leftOf(u) * away, angle});
        }
    }
    if (crossed == Crossed::Never) {
        constexpr double kInARow = 4;  // nearer than that the name and a leg's figures are read as one
        std::erase_if(places, [&](const Desk::Place& place) {
            TurnedBox box = label.boxAt(place.middle, place.angle);
            const bool isCrossed = desk.isCrossed(box, route.order);
            box = box.grown(0.4);
            box.width += 2 * kInARow;
            return isCrossed || !desk.taken().isFree(box, 0);
        });
    }
    const auto place = desk.choose(label, places, route.order);
    if (place) {
        desk.write(route, label, place->middle, place->angle);
    }
    return place.has_value();
}

void nameRoute(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces) {
    const Label label = nameOf(desk, *route.route);
    if (label.isEmpty()) {
        return;
    }
    const drawing::Path path(route.points);
    const std::vector<SeenStretch> seen = seenStretches(path, desk.window());
    const std::size_t hand = route.labelAt ? stretchOfHand(seen, path, *route.labelAt) : seen.size();
    bool any = route.labelAt.has_value();
    bool all = true;
    for (std::size_t n = 0; n < seen.size(); ++n) {
        const std::vector<RoutePiece> own = ownPieces(pieces, path, seen[n].whole);
        if (n == hand || own.empty()) {
            continue;
        }
        bool named = nameStretch(desk, route, pieces, path, seen[n], label);
        const bool mustCarry = seen[n].mustCarry() || (!any && n + 1 == seen.size());
        named = named || (mustCarry && nameAside(desk, route, own, label));
        all = all && (named || !mustCarry);
        any = any || named;
    }
    if (!any || !all) {
        desk.remark(route, kLabelLeftOut);
    }
}

void nameRouteByHand(Desk& desk, Subject& route) {
    const Label label = nameOf(desk, *route.route);
    if (route.labelAt && !label.isEmpty()) {
        const drawing::Path path(route.points);
        (void)desk.writeByHand(route, label, angleByHand(path, *route.labelAt));
    }
}

}  // namespace crosstick::symbols
