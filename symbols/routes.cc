#include "symbols/routes.h"

#include <algorithm>

#include "core/movement/leg_ends.h"
#include "symbols/arrows.h"
#include "symbols/leg_figures.h"
#include "symbols/route_lines.h"
#include "symbols/route_names.h"

namespace crosstick::symbols {
namespace {

constexpr double kLeastForHead = 15;
constexpr double kHead = 2.4;

void drawLegs(Desk& desk, Subject& route, const Points& line) {
    const drawing::Path path(drawing::cleaned(line));
    if (path.points().size() < 2) {
        return;
    }
    std::vector<drawing::Polyline> ink;
    for (const drawing::Polyline& piece : routePattern(path, route.route->use)) {
        for (drawing::Polyline& part : drawing::clipped(piece, desk.window())) {
            ink.push_back(std::move(part));
        }
    }
    desk.inkOf(route).lines(std::move(ink), desk.gauge().routePen);
}

/// What lies before the first and after the last route point: round dots.
void drawAdministrative(Desk& desk, Subject& route, std::size_t first, std::size_t last) {
    const drawing::Path path(Points(route.points.begin() + static_cast<std::ptrdiff_t>(first),
                                    route.points.begin() + static_cast<std::ptrdiff_t>(last) + 1));
    drawing::Stroke dots = administrativeDots(path, route.manner.ink);
    std::erase_if(dots.pieces,
                  [&](const drawing::Polyline& dot) { return !desk.window().contains(dot.points.front()); });
    if (!dots.pieces.empty()) {
        route.ink.marks.emplace_back(std::move(dots));
    }
}

/// A head with its middle at a place of a piece.
void drawHead(Desk& desk, Subject& route, const RoutePiece& piece, double share) {
    const Vector u = piece.direction();
    const Point tip = piece.from + u * (piece.length() * share + kHead / 2) + drawing::leftOf(u) * piece.aside;
    if (desk.window().grown(-kHead).contains(tip)) {
        Pencil ink = desk.inkOf(route);
        (void)filledHead(ink, tip, u);
    }
}

/// The longest straight piece of a leg carries its head, of those that are not drawn with a primary's already.
std::optional<std::size_t> longestIn(const std::vector<RoutePiece>& pieces, std::size_t first, std::size_t last) {
    std::optional<std::size_t> longest;
    for (std::size_t n = first; n < last; ++n) {
        if (!pieces[n].sharedWithPrimary && (!longest || pieces[n].length() > pieces[*longest].length())) {
            longest = n;
        }
    }
    return longest;
}

/// Vertices at which legs begin and end.
std::vector<std::size_t> legVertices(const Desk& desk, const Subject& route) {
    std::vector<std::size_t> vertices;
    for (const movement::LegEnd& end : movement::legEnds(desk.engraving().plan, *route.route)) {
        vertices.push_back(end.stop.vertex);
    }
    return vertices;
}

void drawHeads(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces) {
    const auto vertices = legVertices(desk, route);
    bool any = false;
    for (std::size_t leg = 0; leg + 1 < vertices.size(); ++leg) {
        const auto n = longestIn(pieces, vertices[leg], vertices[leg + 1]);
        if (n && pieces[*n].length() >= kLeastForHead) {
            drawHead(desk, route, pieces[*n], 0.5);
            any = true;
        }
    }
    if (any) {
        return;
    }
    if (const auto n = longestIn(pieces, vertices.front(), vertices.back())) {
        drawHead(desk, route, pieces[*n], 0.5);
    }
}

void letterAdministrative(Desk& desk, Subject& route) {
    const LegSpan span = legSpan(desk, route);
    if (span.first == 0) {
        return;
    }
    const Label label{{"ADMIN"}, 1.8};
    const Point end = route.points.front();
    std::vector<Desk::Place> places;
    for (const Vector side : {Vector{0, 1}, Vector{0, -1}, Vector{1, 0}, Vector{-1, 0}}) {
        places.push_back({end + Vector{side.x * (label.width() / 2 + 1.5), side.y * 2.6}, Degrees(0)});
    }
    if (const auto place = desk.choose(label, places, route.order)) {
        desk.write(route, label, place->middle, place->angle);
        route.parts.back().what = Part::What::Figures;
    }
}

}  // namespace

void drawRoutes(Desk& desk, const std::vector<Subject*>& routes) {
    for (Subject* route : routes) {
        const auto pieces = piecesOf(*route, routes);
        const LegSpan span = legSpan(desk, *route);
        if (span.first > 0) {
            drawAdministrative(desk, *route, 0, span.first);
        }
        if (span.last + 1 < route->points.size()) {
            drawAdministrative(desk, *route, span.last, route->points.size() - 1);
        }
        const Points line = inkLine(pieces, span.first, span.last);
        if (std::any_of(pieces.begin(), pieces.end(), [](const RoutePiece& piece) { return piece.aside != 0; })) {
            desk.taken().draw(line, route->order);  // the lane of a shared stretch runs beside the true line
        }
        drawLegs(desk, *route, line);
        drawHeads(desk, *route, pieces);
    }
}

void letterRoutesByHand(Desk& desk, const std::vector<Subject*>& routes) {
    for (Subject* route : routes) {
        nameRouteByHand(desk, *route);
        letterLegsByHand(desk, *route, piecesOf(*route, routes));
    }
}

void letterRoutes(Desk& desk, const std::vector<Subject*>& routes) {
    for (Subject* route : routes) {
        const auto pieces = piecesOf(*route, routes);
        letterLegs(desk, *route, pieces);
        letterAdministrative(desk, *route);
    }
    for (Subject* route : routes) {
        nameRoute(desk, *route, piecesOf(*route, routes));
    }
}

std::vector<Vector> legsAt(Point spot, const std::vector<Subject*>& routes) {
    constexpr double kBeside = 5;  // about where a box is widest
    std::vector<Vector> legs;
    const auto add = [&](Points line) {
        const drawing::Path path(drawing::cleaned(std::move(line)));
        if (path.points().size() > 1) {
            legs.push_back(drawing::unit(path.at(std::min(kBeside, path.length())) - spot));
        }
    };
    for (const Subject* route : routes) {
        const auto pieces = piecesOf(*route, routes);
        for (std::size_t n = 0; n < route->points.size(); ++n) {
            if (drawing::length(route->points[n] - spot) >= 0.05) {
                continue;
            }
            Points before = inkLine(pieces, 0, n);
            std::reverse(before.begin(), before.end());
            add(std::move(before));
            add(inkLine(pieces, n, pieces.size()));
        }
    }
    return legs;
}

}  // namespace crosstick::symbols
