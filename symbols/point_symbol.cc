#include "symbols/point_symbol.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kBeside = 0.9;

drawing::Box boundsOf(const Points& points) {
    drawing::Box box;
    for (const Point p : points) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

/// Of the ink, mitres and a second stroke included.
drawing::Box inkBounds(const Mark& mark, const Pencil& pencil) {
    const double reach = mark.second == Second::Outside ? pencil.outlineReach() : pencil.halfPen();
    drawing::Box box = boundsOf(widened(mark.outline, reach));
    for (const Points& fill : mark.fills) {
        box = box.joined(boundsOf(fill));
    }
    for (const drawing::Polyline& line : mark.lines) {
        // Arms end butt: across they are as wide as their ink, along they end at their points.
        box = box.joined(boundsOf(line.points));
    }
    return box;
}

TurnedBox boxAt(const drawing::Box& bounds, Point centre) {
    return {centre + bounds.middle(), bounds.width(), bounds.height(), Degrees(0)};
}

/// The cheapest place aside; of equals the nearest, in the order of directions. In a crowd all round, and farther.
std::optional<Point> placeAside(Desk& desk, const drawing::Box& bounds, Point spot, const LineFrom& lineFrom,
                                std::size_t owner) {
    struct Search {
        std::vector<Vector> directions;
        double nearest, farthest;
        Ties ties = Ties::Clear;
    };
    std::optional<Point> best;
    int least = std::numeric_limits<int>::max();
    for (const Search& search :
         {Search{asideDirections(), 8, 30}, Search{allRound(), 8, 30}, Search{allRound(), 32, 50},
          Search{allRound(), 8, 30, Ties::OverTies}, Search{asideDirections(), 8, 30, Ties::Anyhow}}) {
        for (const double distance : drawing::steps(search.nearest, search.farthest, 2)) {
            for (const Vector direction : search.directions) {
                const Point centre = spot + direction * distance;
                const TurnedBox box = boxAt(bounds, centre);
                const auto cost =
                    desk.fits(box) ? costOf(desk, box, lineFrom(centre), owner, search.ties) : std::nullopt;
                if (cost && *cost < least) {
                    best = centre;
                    least = *cost;
                }
                if (least == 0) {
                    return best;
                }
            }
        }
        if (best) {
            break;
        }
    }
    return best;
}

/// Where a line from the centre leaves the outline.
Point reachOf(const Points& outline, Vector u) {
    const auto end = drawing::leaves(outline, {0, 0}, u);
    return end ? u * end->far : Point{};
}

void drawMark(Desk& desk, Subject& subject, const Mark& mark, Point centre) {
    Pencil ink = desk.inkOf(subject);
    Points ring;
    for (const Point p : mark.outline) {
        ring.push_back(centre + p);
    }
    std::vector<drawing::Polyline> lines = mark.lines;
    for (drawing::Polyline& line : lines) {
        for (Point& p : line.points) {
            p = p + centre;
        }
    }
    if (!ring.empty()) {
        ink.outline(ring, mark.join, mark.second);
    }
    // The outline tells the enemy: what stands in it or runs out of it stays as it is.
    (ring.empty() ? ink : ink.single()).lines(std::move(lines), desk.gauge().pen, mark.join);
    for (const Points& fill : mark.fills) {
        Points moved;
        for (const Point p : fill) {
            moved.push_back(centre + p);
        }
        ink.fill(moved);
    }
    if (mark.inside) {
        desk.lettersOf(subject).letters(*mark.inside, centre + mark.insideAt, Degrees(0));
    }
}

}  // namespace

std::optional<int> costOf(Desk& desk, const TurnedBox& box, const Points& line, std::size_t owner, Ties ties) {
    const drawing::Occupancy& taken = desk.taken();
    if (!mayExtend(desk, line, ties)) {
        return std::nullopt;
    }
    int crossed = 0;
    for (std::size_t n = 1; n < line.size(); ++n) {
        crossed += taken.crossings(line[n - 1], line[n], owner);
    }
    return (taken.coversSpot(box, line.back(), owner) ? 8 : 0) + (taken.crossings(box, owner) > 0 ? 2 : 0) +
           (crossed > 0 ? 1 : 0);
}

bool isSeen(Desk& desk, Subject& subject) {
    const bool inside = desk.window().contains(subject.points.front());
    if (!inside) {
        desk.remark(subject, kOutsideWindow);
    }
    return inside;
}

std::optional<Point> blockPlace(Desk& desk, const Subject& subject, const drawing::Box& bounds, Point own,
                                const LineFrom& lineFrom) {
    if (subject.symbolAt) {
        const TurnedBox box = boxAt(bounds, *subject.symbolAt);
        return *subject.symbolAt + (desk.movedInside(box) - box.middle);
    }
    const TurnedBox here = boxAt(bounds, own);
    const Point spot = subject.points.front();
    const bool fits = desk.fits(here);
    if (fits && !desk.taken().coversSpot(here, spot, subject.order)) {
        return own;
    }
    const auto aside = placeAside(desk, bounds, spot, lineFrom, subject.order);
    return aside || !fits ? aside : own;
}

std::optional<drawing::Box> placeMark(Desk& desk, Subject& subject, const Mark& mark) {
    const Point spot = subject.points.front();
    const drawing::Box bounds = inkBounds(mark, desk.inkOf(subject));
    const auto lineFrom = [&](Point centre) {
        return Points{centre + reachOf(mark.outline, drawing::unit(spot - centre)), spot};
    };
    const std::optional<Point> centre = blockPlace(desk, subject, bounds, spot, lineFrom);
    if (!centre) {
        desk.remark(subject, kLabelLeftOut);
        return std::nullopt;
    }
    if (*centre != spot) {
        extensionLine(desk, subject, lineFrom(*centre), ExtensionEnd::Dot);
        subject.isAside = true;
    }
    drawMark(desk, subject, mark, *centre);
    subject.handle = centre;
    const TurnedBox box = boxAt(bounds, *centre);
    for (const drawing::Box& part : mark.body) {
        desk.take(subject, boxAt(part, *centre));
    }
    if (mark.body.empty()) {
        desk.take(subject, box);
    }
    return box.bounds();
}

void nameBeside(Desk& desk, Subject& subject, const std::string& name, const drawing::Box& symbol) {
    if (name.empty()) {
        return;
    }
    const Point m = symbol.middle();
    const auto placesOf = [&](const Label& label) {
        const double w = label.width() / 2;
        const double h = label.height() / 2;
        return std::vector<Desk::Place>{{{symbol.right + kBeside + w, m.y}, Degrees(0)},
                                        {{symbol.left - kBeside - w, m.y}, Degrees(0)},
                                        {{m.x, symbol.top - kBeside - h}, Degrees(0)},
                                        {{m.x, symbol.bottom + kBeside + h}, Degrees(0)}};
    };
    letterAt(desk, subject, wordings(name, desk.gauge().letters), placesOf, Degrees(0));
}

}  // namespace crosstick::symbols
