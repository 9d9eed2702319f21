#include "symbols/extension.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/area_names.h"

namespace crosstick::symbols {

void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end) {
    extensionLine(desk, subject, Points{from, spot}, end);
}

void extensionLine(Desk& desk, Subject& subject, const Points& line, ExtensionEnd end) {
    Pencil pencil = desk.plainInkOf(subject);
    pencil.thin(line);
    for (std::size_t n = 1; n < line.size(); ++n) {
        desk.taken().tie(line[n - 1], line[n], subject.order);
    }
    const Point from = line[line.size() - 2];
    const Point spot = line.back();
    if (end == ExtensionEnd::Dot) {
        pencil.disc(spot, 0.8);
    } else if (end == ExtensionEnd::Tick) {
        const Vector across = drawing::leftOf(drawing::unit(spot - from)) * 0.8;
        pencil.thin({spot - across, spot + across});
    }
}

bool mayExtend(Desk& desk, const Points& line, Ties ties) {
    constexpr std::size_t kNobody = 0;  // owners are counted from 1
    constexpr double kFromSpots = 0.6;  // a true place under it could not be reached any more
    const drawing::Occupancy& taken = desk.taken();
    bool may = true;
    for (std::size_t n = 1; n < line.size(); ++n) {
        const Point a = line[n - 1];
        const Point b = line[n];
        const TurnedBox under{(a + b) * 0.5, drawing::length(b - a), 0, drawing::readable(b - a)};
        may = may && (ties == Ties::Anyhow || (ties == Ties::OverTies && taken.isFree(a, b)) ||
                      (ties == Ties::Clear && taken.couldTie(a, b) &&
                       !taken.coversSpot(under, line.back(), kNobody, kFromSpots)));
    }
    return may;
}

namespace {

/// Places round a spot, the nearest first.
Points placesRound(Point spot, const Label& label) {
    Points places;
    for (const double distance : drawing::steps(6, 24, 3)) {
        for (int n = 0; n < 8; ++n) {
            const double turn = n * std::numbers::pi / 4;
            places.push_back(spot +
                             Vector{std::cos(turn) * (distance + label.width() / 2), -std::sin(turn) * distance});
        }
    }
    return places;
}

/// Letters on their own line would be read as standing in it.
bool liesOnBody(const Subject& subject, const TurnedBox& box) {
    const EdgeOf& body = subject.body;
    bool lies = false;
    for (std::size_t n = 1; n < body.points.size() && !lies; ++n) {
        lies = box.meets(body.points[n - 1], body.points[n]);
    }
    return lies;
}

bool tryAside(Desk& desk, Subject& subject, const Label& label, Point middle, Point spot, ExtensionEnd end, Ties ties) {
    const TurnedBox box = label.boxAt(middle, Degrees(0));
    const Point from = labelEdge(box, spot);
    if (!desk.fits(box) || desk.taken().crossings(desk.withWhite(box), subject.order) > 0 || liesOnBody(subject, box) ||
        !mayExtend(desk, {from, spot}, ties)) {
        return false;
    }
    desk.write(subject, label, middle, Degrees(0));
    extensionLine(desk, subject, from, spot, end);
    return true;
}

}  // namespace

bool letterAside(Desk& desk, Subject& subject, const Label& label, Point spot, ExtensionEnd end) {
    for (const Ties ties : {Ties::Clear, Ties::OverTies, Ties::Anyhow}) {
        for (const Point middle : placesRound(spot, label)) {
            if (tryAside(desk, subject, label, middle, spot, end, ties)) {
                return true;
            }
        }
    }
    return false;
}

bool asideOfStretch(Desk& desk, Subject& subject, const Label& label, const drawing::Path& path,
                    const drawing::Stretch& stretch) {
    constexpr std::array kShares{0.5, 0.35, 0.65, 0.2, 0.8};
    return std::any_of(kShares.begin(), kShares.end(), [&](double share) {
        return letterAside(desk, subject, label, path.at(stretch.from + share * stretch.length()), ExtensionEnd::Tick);
    });
}

bool letterAsideOfBody(Desk& desk, Subject& subject, const Label& label) {
    if (subject.body.points.size() > 1) {
        const drawing::Path path(subject.body.points, subject.body.closed);
        const auto seen = drawing::inside(path, desk.lettersWindow());
        const auto longest = std::max_element(seen.begin(), seen.end(),
                                              [](const auto& a, const auto& b) { return a.length() < b.length(); });
        return longest != seen.end() &&
               letterAside(desk, subject, label, path.at((longest->from + longest->to) / 2), ExtensionEnd::Tick);
    }
    std::vector<drawing::Box> symbol;
    drawing::Box whole;
    for (const Part& part : subject.parts) {
        if (part.what == Part::What::Symbol) {
            constexpr double kOff = 0.1;  // of its own symbol, which is taken
            symbol.push_back(part.box.bounds().grown(kOff));
            whole = whole.joined(symbol.back());
        }
    }
    if (symbol.empty()) {
        return false;
    }
    const auto nearest = [&](Point middle) {
        Point best = whole.middle();
        double least = std::numeric_limits<double>::infinity();
        for (const drawing::Box& edge : symbol) {
            const Point p{std::clamp(middle.x, edge.left, edge.right), std::clamp(middle.y, edge.top, edge.bottom)};
            if (drawing::length(p - middle) < least) {
                least = drawing::length(p - middle);
                best = p;
            }
        }
        return best;
    };
    const Points places = placesRound(whole.middle(), label);
    return std::any_of(places.begin(), places.end(), [&](Point middle) {
        return tryAside(desk, subject, label, middle, nearest(middle), ExtensionEnd::Bare, Ties::Clear);
    });
}

void tieLabel(Desk& desk, Subject& subject, const EdgeOf& body, const TurnedBox& label) {
    constexpr double kNear = 4;
    const drawing::Box box = label.bounds();
    const auto within = [](const drawing::Box& room, Point p) {
        return Point{std::clamp(p.x, room.left, room.right), std::clamp(p.y, room.top, room.bottom)};
    };
    std::optional<Point> end;
    const auto consider = [&](Point p) {
        const auto away = [&](Point from) { return drawing::length(from - within(box, from)); };
        end = !end || away(p) < away(*end) ? p : *end;
    };
    if (body.points.size() > 1) {
        if (body.closed && contains(body.points, label.middle)) {
            return;
        }
        const drawing::Path path(body.points, body.closed);
        for (const drawing::Stretch& seen : drawing::inside(path, desk.window())) {
            for (const double s : drawing::steps(seen.from, seen.to, std::max(0.5, path.length() / 2000))) {
                consider(path.at(s));
            }
        }
    } else {
        for (const Part& part : subject.parts) {
            if (part.what == Part::What::Symbol) {
                consider(within(part.box.bounds(), box.middle()));
            }
        }
    }
    if (end && drawing::length(*end - within(box, *end)) > kNear) {
        extensionLine(desk, subject, labelEdge(label, *end), *end,
                      body.points.size() > 1 ? ExtensionEnd::Tick : ExtensionEnd::Bare);
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
