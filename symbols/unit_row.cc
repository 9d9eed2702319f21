#include "symbols/unit_row.h"

#include <algorithm>
#include <array>
#include <limits>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"
#include "symbols/pole.h"
#include "symbols/unit_symbol.h"

namespace crosstick::symbols {
namespace {

constexpr double kApart = 2.0;
constexpr double kStem = 2.0;

/// On which side of its symbols a row has its rail: the one that the spot lies on.
enum class Rail { Below, Above };

struct Member {
    Subject* subject;
    UnitSketch sketch;
    double x;  ///< of its frame's middle, from the leader's
    /// Where its stem begins: under its frame or over its mark; at the foot of a staff, which is a stem itself.
    [[nodiscard]] Point stem(Rail rail) const {
        const Point from = rail == Rail::Above ? Point{0, sketch.whole().top}
                           : sketch.foot       ? *sketch.foot
                                               : Point{0, sketch.under};
        return Vector{x, 0} + from;
    }
};

/// Symbols in their row, the leader's frame round 0, 0.
struct Row {
    Rail rail = Rail::Below;
    std::vector<Member> members;
    double level = 0;  ///< of the rail
    drawing::Box bounds;

    [[nodiscard]] Point left() const { return {members.front().stem(rail).x, level}; }
    [[nodiscard]] Point right() const { return {members.back().stem(rail).x, level}; }
    [[nodiscard]] Point middle() const { return (left() + right()) * 0.5; }
    [[nodiscard]] bool hasRail() const { return members.size() > 1; }
    [[nodiscard]] TurnedBox boxAt(Point centre) const {
        return {centre + bounds.middle(), bounds.width(), bounds.height(), Degrees(0)};
    }
};

void layRail(Row& row, double halfPen) {
    row.level = row.rail == Rail::Below ? -1e9 : 1e9;
    for (const Member& member : row.members) {
        const bool isStaff = row.rail == Rail::Below && member.sketch.foot;
        const double from = member.stem(row.rail).y;
        row.level = row.rail == Rail::Below ? std::max(row.level, from + (isStaff ? 0 : kStem))
                                            : std::min(row.level, from - kStem);
    }
    if (row.hasRail()) {
        row.bounds = row.bounds.joined({row.left().x, row.level - halfPen, row.right().x, row.level + halfPen});
    }
}

Row rowOf(Desk& desk, Subject& leader) {
    Row row;
    std::vector<Subject*> subjects{&leader};
    subjects.insert(subjects.end(), leader.row.begin(), leader.row.end());
    double right = 0;
    for (Subject* subject : subjects) {
        Member member{subject, sketchUnit(desk, *subject), 0};
        const drawing::Box whole = member.sketch.whole();
        member.x = row.members.empty() ? 0 : right + kApart - whole.left;
        right = member.x + whole.right;
        row.bounds = row.bounds.joined({member.x + whole.left, whole.top, right, whole.bottom});
        row.members.push_back(std::move(member));
    }
    return row;
}

/// The same symbols with the rail on either side.
struct Rows {
    Row below, above;
    [[nodiscard]] Row& on(Rail rail) { return rail == Rail::Below ? below : above; }
    [[nodiscard]] const Row& on(Rail rail) const { return rail == Rail::Below ? below : above; }
};

Rows rowsOf(Desk& desk, Subject& leader) {
    const double halfPen = desk.gauge().thin() / 2;
    Rows rows{rowOf(desk, leader), {}};
    rows.above = rows.below;
    rows.above.rail = Rail::Above;
    layRail(rows.below, halfPen);
    layRail(rows.above, halfPen);
    return rows;
}

/// Where the line begins, for a row with its leader's frame at a place.
Point lineFrom(const Row& row, Point centre, Point target) {
    return centre + (row.hasRail() ? row.middle() : lineStart(row.members.front().sketch, target - centre));
}

/// What the line runs toward: the spot, or the middle of an area, or the nearest point of a line.
Point targetOf(const Subject& leader, Point from) {
    if (!leader.tip) {
        return leader.points.front();
    }
    if (leader.tip->closed) {
        return poleOf(leader.tip->points);
    }
    const drawing::Path path(leader.tip->points);
    return path.at(nearestOn(path, from));
}

/// Where it ends: on the edge, where that has one.
Point endOf(const Subject& leader, Point from, Point target) {
    if (!leader.tip || !leader.tip->closed) {
        return target;
    }
    const Vector back = drawing::unit(from - target);
    const auto edge = drawing::leaves(leader.tip->points, target, back);
    return edge && edge->far < drawing::length(from - target) ? target + back * edge->far : target;
}

/// The extension line, from the row on; round the row's end with an elbow where it would run back through its own
/// symbols.
Points lineOf(const Subject& leader, const Row& row, Point centre) {
    const Point from = lineFrom(row, centre, targetOf(leader, centre));
    const Point target = targetOf(leader, from);
    const bool isAhead = row.rail == Rail::Below ? target.y >= from.y : target.y <= from.y;
    if (!row.hasRail() || isAhead) {
        return {from, endOf(leader, from, target)};
    }
    constexpr double kClear = 1.5;
    const bool rightward = target.x >= from.x;
    const Point rail = centre + (rightward ? row.right() : row.left());
    const double beyond = rightward ? centre.x + row.bounds.right + kClear : centre.x + row.bounds.left - kClear;
    const Point elbow{rightward ? std::max(beyond, rail.x) : std::min(beyond, rail.x), rail.y};
    return {rail, elbow, endOf(leader, elbow, target)};
}

struct Standing {
    Point centre;  ///< of the leader's frame
    Rail rail;
};

/// With its rail's middle, or its foot, at a distance from what it points to.
Standing standingAt(const Subject& leader, const Rows& rows, Point target, Vector way, double distance) {
    const Rail rail = way.y > 0.3 ? Rail::Above : Rail::Below;
    const Row& row = rows.on(rail);
    const Point handle = row.hasRail()         ? row.middle()
                         : rail == Rail::Above ? Point{0, row.members.front().sketch.whole().top}
                                               : Point{0, row.members.front().sketch.under};
    return {endOf(leader, target + way * 1000, target) + way * distance - handle, rail};
}

/// Above first, then aslant above, beside and below; at the least distance at which it stands free.
std::optional<Standing> placeFor(Desk& desk, const Subject& leader, const Rows& rows) {
    const Point target = targetOf(leader, leader.points.front());
    if (leader.symbolAt) {
        const auto inside = [&](const Row& row) {
            const TurnedBox box = row.boxAt(*leader.symbolAt);
            return *leader.symbolAt + (desk.movedInside(box) - box.middle);
        };
        const Point centre = inside(rows.below);
        const bool isUnder = rows.below.hasRail() && target.y < rows.below.boxAt(centre).bounds().top;
        return isUnder ? Standing{inside(rows.above), Rail::Above} : Standing{centre, Rail::Below};
    }
    constexpr std::array kWays{Vector{0, -1},       Vector{0.5, -0.87}, Vector{-0.5, -0.87}, Vector{0.87, -0.5},
                               Vector{-0.87, -0.5}, Vector{1, 0},       Vector{-1, 0},       Vector{0.87, 0.5},
                               Vector{-0.87, 0.5},  Vector{0.5, 0.87},  Vector{-0.5, 0.87},  Vector{0, 1}};
    for (const Ties ties : {Ties::Clear, Ties::OverTies, Ties::Anyhow}) {
        std::optional<Standing> best;
        int least = std::numeric_limits<int>::max();
        for (const double distance : drawing::steps(4, 40, 2)) {
            for (const Vector way : kWays) {
                const Standing there = standingAt(leader, rows, target, way, distance);
                const TurnedBox box = rows.on(there.rail).boxAt(there.centre);
                const auto cost = desk.fits(box) ? costOf(desk, box, lineOf(leader, rows.on(there.rail), there.centre),
                                                          leader.order, ties)
                                                 : std::nullopt;
                if (cost && *cost < least) {
                    least = *cost;
                    best = there;
                }
                if (least == 0) {
                    return best;
                }
            }
        }
        if (best) {
            return best;
        }
    }
    return std::nullopt;
}

/// A piece of what holds a row together: as an extension line, nothing is placed on it and none crosses it.
void inkRail(Desk& desk, Subject& subject, Point from, Point to) {
    desk.plainInkOf(subject).thin({from, to});
    desk.taken().tie(from, to, subject.order);
}

}  // namespace

void placeRow(Desk& desk, Subject& leader) {
    Rows rows = rowsOf(desk, leader);
    const auto standing = placeFor(desk, leader, rows);
    if (!standing) {
        for (const Member& member : rows.below.members) {
            desk.remark(*member.subject, kLabelLeftOut);
        }
        return;
    }
    Row& row = rows.on(standing->rail);
    const Point centre = standing->centre;
    extensionLine(desk, leader, lineOf(leader, row, centre), leader.tip ? ExtensionEnd::Tick : ExtensionEnd::Dot);
    if (row.hasRail()) {
        inkRail(desk, leader, centre + row.left(), centre + row.right());
    }
    for (Member& member : row.members) {
        const Point foot = centre + member.stem(row.rail);
        const Point end{foot.x, centre.y + row.level};
        if (row.hasRail() && foot != end) {
            inkRail(desk, *member.subject, foot, end);
        }
        member.subject->isAside = true;
        member.subject->handle = centre;  // the row moves as one
        layUnit(desk, *member.subject, std::move(member.sketch), centre + Vector{member.x, 0});
    }
}

}  // namespace crosstick::symbols
