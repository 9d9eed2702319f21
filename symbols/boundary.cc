#include "symbols/boundary.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/echelons.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kRepeat = 120;
constexpr double kMove = 15;
constexpr double kSteep = 60 * std::numbers::pi / 180;

/// Both units as they are written, and the mark between them.
struct Names {
    std::string left, right;
    std::optional<Echelon> mark;
};

/// The lower of two unlike units says what it is: "2/C" of a platoon becomes "2 PLT/C".
std::string writtenOut(const std::string& unit, const Echelon& echelon) {
    const auto slash = unit.find('/');
    return unit.substr(0, slash) + ' ' + std::string(echelon.name) +
           (slash == std::string::npos ? std::string{} : unit.substr(slash));
}

Names namesOf(const plan::Measure& measure) {
    Names names{fieldOf(measure, "left_unit"), fieldOf(measure, "right_unit"), std::nullopt};
    const auto left = echelonOf(fieldOf(measure, "left_echelon"));
    const auto right = echelonOf(fieldOf(measure, "right_echelon"));
    names.mark = !right || (left && left->rank >= right->rank) ? left : right;
    if (left && right && left->rank != right->rank) {
        std::string& lower = left->rank < right->rank ? names.left : names.right;
        if (!lower.empty()) {
            lower = writtenOut(lower, left->rank < right->rank ? *left : *right);
        }
    }
    return names;
}

/// Middle and angle of a designation on one side (+1 left, -1 right of travel).
Desk::Place designationAt(Point mark, Vector u, const Label& label, double e, double side) {
    const Vector n = drawing::leftOf(u) * side;
    const double clear = e / 2 + 0.8;
    const double slope = std::atan2(std::abs(u.y), std::abs(u.x));
    if (slope <= kSteep) {
        return {mark + n * (clear + label.height() / 2), drawing::readable(u)};
    }
    const double away = clear / std::abs(n.x) + label.height() / 2 * std::abs(u.x / u.y);
    const double sign = n.x > 0 ? 1 : -1;
    return {mark + Vector{sign * (away + label.width() / 2), 0}, Degrees(0)};
}

/// A mark's place on the line with both designations, and what it costs to be there.
struct Candidate {
    double s = 0;
    double cost = 0;
    Desk::Place left, right;
};

Candidate placedAt(const drawing::Path& path, double s, double width, const Label& left, const Label& right, double e) {
    const double reach = width / 2 + 1;
    const Vector u = path.chord(s, 2 * reach);
    const Point mark = (path.at(s - reach) + path.at(s + reach)) * 0.5;
    return {s, 0, designationAt(mark, u, left, e, 1), designationAt(mark, u, right, e, -1)};
}

/// Where a hand placed the mark: the place of the line nearest to it, on the stretch that holds it.
std::optional<Candidate> byHand(const Subject& subject, const drawing::Path& path, const drawing::Stretch& stretch,
                                double width, const Label& left, const Label& right, double e) {
    const double nearest = nearestOn(path, *subject.labelAt);
    const double margin = width / 2 + 2;
    if (nearest < stretch.from || nearest > stretch.to || stretch.length() < 2 * margin) {
        return std::nullopt;
    }
    return placedAt(path, std::clamp(nearest, stretch.from + margin, stretch.to - margin), width, left, right, e);
}

std::optional<Candidate> candidateAt(Desk& desk, const Subject& subject, const drawing::Path& path, double s,
                                     double nominal, double width, const Label& left, const Label& right, double e) {
    const double reach = width / 2 + 1;
    const Vector u = path.chord(s, 2 * reach);
    const Point mark = (path.at(s - reach) + path.at(s + reach)) * 0.5;
    Candidate c = placedAt(path, s, width, left, right, e);
    const TurnedBox leftBox = left.boxAt(c.left.middle, c.left.angle);
    const TurnedBox rightBox = right.boxAt(c.right.middle, c.right.angle);
    const TurnedBox markBox{mark, width + 2, e, drawing::readable(u)};
    const bool free =
        (left.isEmpty() || desk.fits(leftBox)) && (right.isEmpty() || desk.fits(rightBox)) && desk.fits(markBox);
    if (!free) {
        return std::nullopt;
    }
    const int crossed = desk.taken().crossings(leftBox, subject.order) +
                        desk.taken().crossings(rightBox, subject.order) +
                        desk.taken().crossings(markBox, subject.order);
    c.cost = path.turning(s - reach - 4, s + reach + 4) + 0.004 * std::abs(s - nominal) + 0.3 * crossed;
    return c;
}

/// Is a place nearer, else further west, else further south: so that a line drawn backwards is marked at the same
/// places.
bool isBetter(const Candidate& a, const Candidate& b, const drawing::Path& path) {
    if (std::abs(a.cost - b.cost) > 1e-9) {
        return a.cost < b.cost;
    }
    const Point p = path.at(a.s);
    const Point q = path.at(b.s);
    return p.x != q.x ? p.x < q.x : p.y > q.y;
}

std::optional<Candidate> bestNear(Desk& desk, const Subject& subject, const drawing::Path& path,
                                  const drawing::Stretch& stretch, double nominal, double width, const Label& left,
                                  const Label& right, double e, double move) {
    std::optional<Candidate> best;
    const double margin = width / 2 + 2;
    for (const double aside : drawing::steps(-move, move, 1)) {
        const double s = nominal + aside;
        if (s < stretch.from + margin || s > stretch.to - margin) {
            continue;
        }
        const auto c = candidateAt(desk, subject, path, s, nominal, width, left, right, e);
        if (c && (!best || isBetter(*c, *best, path))) {
            best = c;
        }
    }
    return best;
}

}  // namespace

void placeBoundary(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const Names names = namesOf(*subject.measure);
    const double e = 0.4 * desk.gauge().symbol;
    const double width = names.mark ? echelonWidth(*names.mark, e, desk.gauge().pen) : 0;
    const auto rows = [](const std::string& name) {
        return name.empty() ? std::vector<std::string>{} : std::vector{name};
    };
    const Label left{rows(names.left), desk.gauge().letters};
    const Label right{rows(names.right), desk.gauge().letters};
    std::vector<drawing::Stretch> gaps;
    const bool isNamed = names.mark || !left.isEmpty() || !right.isEmpty();
    bool marked = !isNamed;
    const std::vector<drawing::Stretch> stretches = drawing::inside(path, desk.window());
    const bool isByHand =
        subject.labelAt && std::any_of(stretches.begin(), stretches.end(), [&](const drawing::Stretch& stretch) {
            return byHand(subject, path, stretch, width, left, right, e).has_value();
        });
    for (const drawing::Stretch& stretch : stretches) {
        if (stretch.length() < 12 || !isNamed) {
            continue;
        }
        const int count = isByHand ? 1 : std::max(1, static_cast<int>(std::lround(stretch.length() / kRepeat)));
        for (int n = 0; n < count; ++n) {
            const double nominal = stretch.from + stretch.length() * (n + 0.5) / count;
            auto place = isByHand ? byHand(subject, path, stretch, width, left, right, e)
                                  : bestNear(desk, subject, path, stretch, nominal, width, left, right, e, kMove);
            if (!place && !isByHand) {  // a crowded spot: anywhere in its share of the line
                place = bestNear(desk, subject, path, stretch, nominal, width, left, right, e,
                                 stretch.length() / count / 2);
            }
            if (!place) {
                continue;
            }
            marked = true;
            const drawing::Stretch gap{place->s - width / 2 - 1, place->s + width / 2 + 1};
            if (names.mark) {
                gaps.push_back(gap);
                Pencil pencil = desk.inkOf(subject).single();
                const Point mark = (path.at(gap.from) + path.at(gap.to)) * 0.5;
                const Vector u = path.chord(place->s, gap.length());
                drawEchelon(pencil, *names.mark, mark, u, e);
                desk.take(subject, {mark, width, e, drawing::readable(u)});
            }
            if (!left.isEmpty()) {
                desk.write(subject, left, place->left.middle, place->left.angle);
            }
            if (!right.isEmpty()) {
                desk.write(subject, right, place->right.middle, place->right.angle);
            }
        }
    }
    if (!marked) {
        desk.remark(subject, kLabelLeftOut);
    }
    drawLine(desk, subject, path, gaps);
}

}  // namespace crosstick::symbols
