#include "symbols/area_names.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/clip.h"
#include "core/drawing/steps.h"
#include "core/measures/catalogue.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/pole.h"

namespace crosstick::symbols {
namespace {

constexpr double kInside = 0.8;

/// Places inside, the pole first, then a net of 1.5 mm outwards from it.
Points insidePlaces(const Points& ring) {
    const Point pole = poleOf(ring);
    Points places{pole};
    for (const double away : drawing::steps(1.5, 12, 1.5)) {
        const int count = std::max(8, static_cast<int>(away * 4));
        for (int n = 0; n < count; ++n) {
            const double turn = 2 * std::numbers::pi * n / count;
            places.push_back(pole + Vector{std::cos(turn), std::sin(turn)} * away);
        }
    }
    return places;
}

std::optional<TurnedBox> placeInside(Desk& desk, Subject& subject, const std::vector<Label>& labels) {
    // Well apart from other letters, so that nobody reads the two as one; else as near as letters may stand.
    struct Pass {
        double apart;
        int crossed;
    };
    // Of an area larger than the film the part that is seen carries the name.
    const Points seen = drawing::clippedRing(subject.points, desk.lettersWindow());
    const Points places = seen.size() > 2 ? insidePlaces(seen) : Points{};
    for (const Pass pass : {Pass{2.0, 0}, Pass{0.6, 0}, Pass{0.6, 99}}) {
        for (const Label& label : labels) {
            for (const Point middle : places) {
                const TurnedBox box = label.boxAt(middle, Degrees(0));
                if (holds(subject.points, box.grown(kInside)) && desk.fits(box) &&
                    desk.taken().isFree(box, pass.apart) &&
                    desk.taken().crossings(box.grown(0.3), subject.order) <= pass.crossed) {
                    desk.write(subject, label, middle, Degrees(0));
                    return box;
                }
            }
        }
    }
    return std::nullopt;
}

/// Places round a box that letters may stand in, the dearest last: beyond the first of its corners where the window has
/// room, and from there no farther round or away than others make them go. What pushes them is near, and what is far
/// leaves them where they are.
Points outsidePlaces(const drawing::Box& bounds, const Label& label, const drawing::Box& window) {
    constexpr double kNearest = 4;
    constexpr double kApart = 5;
    constexpr double kAwayCosts = 1.5;  // a long line to the edge is worse than a place farther round
    const auto halves = [&](double away) {
        return Vector{bounds.width() / 2 + away * 0.7 + label.width() / 2,
                      bounds.height() / 2 + away * 0.7 + label.height() / 2};
    };
    const Point middle = bounds.middle();
    const Vector least = halves(kNearest);
    Vector first{least.x, -least.y};
    for (const Vector corner : {Vector{-1, 1}, Vector{1, 1}, Vector{-1, -1}, Vector{1, -1}}) {
        const Vector from{corner.x * least.x, corner.y * least.y};
        first = label.boxAt(middle + from, Degrees(0)).inside(window) ? from : first;
    }
    std::vector<std::pair<double, Point>> places;
    for (const double away : drawing::steps(kNearest, 22, 3)) {
        const Vector half = halves(away);
        const auto add = [&](Vector from) {
            const double round = drawing::length(from - first);
            places.emplace_back(round + kAwayCosts * (away - kNearest), middle + from);
        };
        for (const double side : {1.0, -1.0}) {
            for (const double x : drawing::steps(0, half.x, half.x / std::ceil(half.x / kApart))) {
                add({x, -side * half.y});
                add({-x, -side * half.y});
            }
            for (const double y : drawing::steps(0, half.y, half.y / std::ceil(half.y / kApart))) {
                add({side * half.x, -y});
                add({side * half.x, y});
            }
        }
    }
    std::stable_sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    Points ordered;
    ordered.reserve(places.size());
    for (const auto& [cost, place] : places) {
        ordered.push_back(place);
    }
    return ordered;
}

/// Does a box lie outside a ring and clear of its edge?
bool isOutside(const Points& ring, const TurnedBox& box) {
    bool touches = contains(ring, box.middle);
    for (std::size_t n = 0; n < ring.size() && !touches; ++n) {
        touches = box.meets(ring[n], ring[(n + 1) % ring.size()]);
    }
    return !touches;
}

/// Outside, as near the pole as a large or long area allows: its name is not looked for at a far corner.
std::optional<TurnedBox> placeOutside(Desk& desk, Subject& subject, const Label& label) {
    constexpr double kRound = 16;
    constexpr double kClear = 0.9;
    const Points& ring = subject.points;
    drawing::Box whole;
    for (const Point p : ring) {
        whole = whole.joined({p.x, p.y, p.x, p.y});
    }
    const Point pole = ring.size() > 2 ? poleOf(ring) : whole.middle();
    const drawing::Path round(ring, true);
    const drawing::Box near{std::max(whole.left, pole.x - kRound), std::max(whole.top, pole.y - kRound),
                            std::min(whole.right, pole.x + kRound), std::min(whole.bottom, pole.y + kRound)};
    Points places = outsidePlaces(near, label, desk.lettersWindow());
    const Points farther = outsidePlaces(whole, label, desk.lettersWindow());
    places.insert(places.end(), farther.begin(), farther.end());
    struct Pass {
        int crossed;
        Ties ties;
    };
    for (const Pass pass : {Pass{0, Ties::Clear}, Pass{99, Ties::Clear}, Pass{99, Ties::Anyhow}}) {
        for (const Point middle : places) {
            const TurnedBox box = label.boxAt(middle, Degrees(0));
            if (!desk.fits(box) || !isOutside(ring, box.grown(kClear)) ||
                desk.taken().crossings(box.grown(0.3), subject.order) > pass.crossed) {
                continue;
            }
            const Point edge = round.at(nearestOn(round, middle));
            if (!mayExtend(desk, {labelEdge(box, edge), edge}, pass.ties)) {
                continue;
            }
            desk.write(subject, label, middle, Degrees(0));
            extensionLine(desk, subject, labelEdge(box, edge), edge, ExtensionEnd::Tick);
            return box;
        }
    }
    return std::nullopt;
}

}  // namespace

bool contains(const Points& ring, Point p) {
    bool in = false;
    for (std::size_t n = 0, before = ring.size() - 1; n < ring.size(); before = n++) {
        const Point a = ring[n];
        const Point b = ring[before];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
            in = !in;
        }
    }
    return in;
}

bool holds(const Points& ring, const TurnedBox& box) {
    for (const Point corner : box.corners()) {
        if (!contains(ring, corner)) {
            return false;
        }
    }
    for (std::size_t n = 0; n < ring.size(); ++n) {
        if (box.meets(ring[n], ring[(n + 1) % ring.size()])) {
            return false;
        }
    }
    return true;
}

std::vector<Label> areaWordings(const plan::Measure& measure, double letters) {
    const measures::Entry* entry = measures::find(measure.kind);
    const bool isBare = entry == nullptr || entry->wording == measures::Wording::Bare;
    const std::string abbreviation(isBare ? std::string_view{} : entry->abbreviation);
    const std::string name = bareName(measure.name.empty() ? measure.number : measure.name, abbreviation);
    const std::string one = abbreviation + (abbreviation.empty() || name.empty() ? "" : " ") + name;
    if (one.empty()) {
        return {};
    }
    if (abbreviation.empty() || name.empty() || !measure.number.empty()) {
        return {{{one}, letters}};
    }
    std::vector<Label> all{{{abbreviation, name}, letters}, {{one}, letters}};
    if (const Label parted = wordings(name, letters).back(); parted.rows.size() > 1) {
        all.push_back({{abbreviation, parted.rows[0], parted.rows[1]}, letters});
    }
    return all;
}

std::optional<TurnedBox> nameArea(Desk& desk, Subject& subject, const drawing::Polyline& edge,
                                  const std::vector<Label>& wordings) {
    if (wordings.empty()) {
        return std::nullopt;
    }
    if (desk.writeByHand(subject, wordings.front(), Degrees(0))) {
        const TurnedBox box = wordings.front().boxAt(*subject.labelAt, Degrees(0));
        return TurnedBox{desk.movedInside(box), box.width, box.height, box.angle};
    }
    std::optional<TurnedBox> box;
    if (edge.closed && subject.points.size() > 2) {
        box = placeInside(desk, subject, wordings);
    }
    // In one row first: it lies nearer to the edge that its line runs to.
    std::vector<Label> outside = wordings;
    std::stable_sort(outside.begin(), outside.end(),
                     [](const Label& a, const Label& b) { return a.rows.size() < b.rows.size(); });
    for (std::size_t n = 0; n < outside.size() && !box; ++n) {
        box = placeOutside(desk, subject, outside[n]);
    }
    if (!box) {
        desk.remark(subject, kLabelLeftOut);
    }
    return box;
}

}  // namespace crosstick::symbols
