#include "symbols/boundary.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/echelons.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/line_labels.h"

namespace crosstick::symbols {
namespace {

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

/// A boundary's line and what is written on it.
struct Line {
    drawing::Path path;
    Names names;
    Label left, right;
    double e;      ///< height of the echelon mark
    double width;  ///< what the mark covers along the line

    [[nodiscard]] bool isNamed() const { return names.mark || !left.isEmpty() || !right.isEmpty(); }
    [[nodiscard]] double half() const { return width / 2 + 1; }    ///< of the break
    [[nodiscard]] double margin() const { return width / 2 + 2; }  ///< from the mark's middle to an end of the line
    [[nodiscard]] Point markAt(double s) const { return (path.at(s - half()) + path.at(s + half())) * 0.5; }
    [[nodiscard]] Vector along(double s) const { return path.chord(s, 2 * half()); }
};

Line lineOf(const Desk& desk, const Subject& subject) {
    const auto rows = [&](const std::string& name) {
        return Label{name.empty() ? std::vector<std::string>{} : std::vector{name}, desk.gauge().letters};
    };
    const double e = 0.4 * desk.gauge().symbol;
    Names names = namesOf(*subject.measure);
    const Label left = rows(names.left);
    const Label right = rows(names.right);
    const double width = names.mark ? echelonWidth(*names.mark, e, desk.gauge().pen) : 0;
    return {drawing::Path(subject.points), std::move(names), left, right, e, width};
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

Candidate placedAt(const Line& line, double s) {
    const Vector u = line.along(s);
    const Point mark = line.markAt(s);
    return {s, 0, designationAt(mark, u, line.left, line.e, 1), designationAt(mark, u, line.right, line.e, -1)};
}

/// Where a hand placed the mark: the place of the stretch nearest to it.
std::optional<Candidate> byHand(const Line& line, const drawing::Stretch& stretch, Point hand) {
    const double margin = line.margin();
    if (stretch.length() < 2 * margin) {
        return std::nullopt;
    }
    return placedAt(line, std::clamp(nearestOn(line.path, hand), stretch.from + margin, stretch.to - margin));
}

std::optional<Candidate> candidateAt(Desk& desk, const Subject& subject, const Line& line, double s, double nominal) {
    Candidate c = placedAt(line, s);
    const TurnedBox leftBox = line.left.boxAt(c.left.middle, c.left.angle);
    const TurnedBox rightBox = line.right.boxAt(c.right.middle, c.right.angle);
    const TurnedBox markBox{line.markAt(s), line.width + 2, line.e, drawing::readable(line.along(s))};
    const bool free = (line.left.isEmpty() || desk.fits(leftBox)) && (line.right.isEmpty() || desk.fits(rightBox)) &&
                      desk.fits(markBox);
    if (!free) {
        return std::nullopt;
    }
    const int crossed = desk.taken().crossings(desk.withWhite(leftBox), subject.order) +
                        desk.taken().crossings(desk.withWhite(rightBox), subject.order) +
                        desk.taken().crossings(markBox, subject.order);
    const double reach = line.half() + 4;
    c.cost = line.path.turning(s - reach, s + reach) + 0.004 * std::abs(s - nominal) + 0.3 * crossed;
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

/// The best place of a share of a stretch, not farther from its middle than a distance.
std::optional<Candidate> bestNear(Desk& desk, const Subject& subject, const Line& line, const SeenStretch& seen,
                                  const drawing::Stretch& share, double move) {
    const double nominal = (share.from + share.to) / 2;
    std::optional<Candidate> best;
    for (const double aside : drawing::steps(-move, move, 1)) {
        const double s = nominal + aside;
        if (s < seen.whole.from + line.margin() || s > seen.whole.to - line.margin()) {
            continue;
        }
        const auto c = candidateAt(desk, subject, line, s, nominal);
        if (c && (!best || isBetter(*c, *best, line.path))) {
            best = c;
        }
    }
    return best;
}

/// Draws the mark and writes the designations; gives the gap in the line for them.
std::optional<drawing::Stretch> inkMark(Desk& desk, Subject& subject, const Line& line, const Candidate& place) {
    std::optional<drawing::Stretch> gap;
    if (line.names.mark) {
        gap = drawing::Stretch{place.s - line.half(), place.s + line.half()};
        Pencil pencil = desk.inkOf(subject).single();
        const Point mark = line.markAt(place.s);
        const Vector u = line.along(place.s);
        drawEchelon(pencil, *line.names.mark, mark, u, line.e);
        desk.take(subject, {mark, line.width, line.e, drawing::readable(u)});
    }
    for (const auto& [label, at] : {std::pair{&line.left, place.left}, std::pair{&line.right, place.right}}) {
        if (!label->isEmpty()) {
            desk.write(subject, *label, at.middle, at.angle);
        }
    }
    return gap;
}

/// Both designations by one extension line, left over right (engraving B2). A reader does not know which way the line
/// was drawn, so that is as it is read: from the west, what runs due north from the south. The upper one is the
/// north's.
bool nameAside(Desk& desk, Subject& subject, const Line& line, const drawing::Stretch& stretch) {
    const Vector way = line.path.at(stretch.to) - line.path.at(stretch.from);
    const bool isBackwards = std::abs(way.x) > 1e-6 ? way.x < 0 : way.y > 0;
    Label both = isBackwards ? line.right : line.left;
    const Label& lower = isBackwards ? line.left : line.right;
    both.rows.insert(both.rows.end(), lower.rows.begin(), lower.rows.end());
    return !both.isEmpty() && asideOfStretch(desk, subject, both, line.path, stretch);
}

/// What became of a stretch.
struct Marked {
    bool any = false;
    std::vector<drawing::Stretch> gaps = {};
};

/// Marks a stretch: once where a hand says so, else in each share that has room.
Marked markStretch(Desk& desk, Subject& subject, const Line& line, const SeenStretch& seen, std::optional<Point> hand) {
    Marked marked;
    const auto mark = [&](const std::optional<Candidate>& place) {
        if (place) {
            marked.any = true;
            if (const auto gap = inkMark(desk, subject, line, *place)) {
                marked.gaps.push_back(*gap);
            }
        }
    };
    if (hand) {
        mark(byHand(line, seen.whole, *hand));
        return marked;
    }
    for (const drawing::Stretch& share : seen.shares) {
        auto place = bestNear(desk, subject, line, seen, share, kMove);
        if (!place) {  // a crowded spot: anywhere in its share of the line
            place = bestNear(desk, subject, line, seen, share, share.length() / 2);
        }
        mark(place);
    }
    return marked;
}

}  // namespace

void placeBoundary(Desk& desk, Subject& subject) {
    constexpr double kLeast = 12;
    const Line line = lineOf(desk, subject);
    const std::vector<SeenStretch> seen = seenStretches(line.path, desk.window());
    const std::size_t hand = subject.labelAt ? stretchOfHand(seen, line.path, *subject.labelAt) : seen.size();
    std::vector<drawing::Stretch> gaps;
    bool any = !line.isNamed();
    bool all = true;
    for (std::size_t n = 0; line.isNamed() && n < seen.size(); ++n) {
        Marked marked;
        if (seen[n].whole.length() >= kLeast) {
            marked = markStretch(desk, subject, line, seen[n], n == hand ? subject.labelAt : std::nullopt);
        }
        if (!marked.any && (seen[n].mustCarry() || seen.size() == 1)) {
            marked.any = nameAside(desk, subject, line, seen[n].whole);
            all = all && marked.any;
        }
        any = any || marked.any;
        gaps.insert(gaps.end(), marked.gaps.begin(), marked.gaps.end());
    }
    if (!any || !all) {
        desk.remark(subject, kLabelLeftOut);
    }
    drawLine(desk, subject, line.path, gaps);
}

}  // namespace crosstick::symbols
