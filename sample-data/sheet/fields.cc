#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/drawing/steps.h"
#include "sample-data/ground/noise.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

constexpr std::uint64_t kCuts = 51;

struct Meshes {
    double narrow = 0, wide = 0;  ///< metres
};

double areaOf(const Line& ring) {
    double twice = 0;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Spot a = ring[n] - ring.front();
        const Spot b = ring[(n + 1) % ring.size()] - ring.front();
        twice += a.east * b.north - b.east * a.north;
    }
    return std::abs(twice) / 2;
}

struct Reach {
    double low = 1e12, high = -1e12;
};

/// How far a field reaches in a direction.
Reach reachOf(const Line& ring, Spot way) {
    Reach reach;
    for (const Spot& corner : ring) {
        const Spot from = corner - ring.front();
        const double along = from.east * way.east + from.north * way.north;
        reach = {std::min(reach.low, along), std::max(reach.high, along)};
    }
    return reach;
}

/// The longer way of the smallest box along one of its sides that holds a field: it is parted across that.
Spot longestWay(const Line& ring) {
    Spot longest{1, 0};
    double least = 1e18;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Spot side = ring[(n + 1) % ring.size()] - ring[n];
        if (length(side) < 20) {
            continue;
        }
        const Spot way = side * (1 / length(side));
        const Spot crosswise{-way.north, way.east};
        const Reach along = reachOf(ring, way);
        const Reach across = reachOf(ring, crosswise);
        const double box = (along.high - along.low) * (across.high - across.low);
        if (box < least) {
            least = box;
            longest = along.high - along.low >= across.high - across.low ? way : crosswise;
        }
    }
    return longest;
}

struct Halves {
    Line left, right, wall;
};

/// Parts a field by a line through a place, with a bend half way.
Halves parted(const Line& ring, Spot through, Spot along, double bend) {
    Halves halves;
    const auto side = [&](Spot p) { return along.east * (p - through).north - along.north * (p - through).east; };
    std::vector<std::size_t> leftCuts;
    std::vector<std::size_t> rightCuts;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Spot a = ring[n];
        const Spot b = ring[(n + 1) % ring.size()];
        const double sideA = side(a);
        const double sideB = side(b);
        (sideA >= 0 ? halves.left : halves.right).push_back(a);
        if ((sideA >= 0) != (sideB >= 0)) {
            const Spot cut = a + (b - a) * (sideA / (sideA - sideB));
            leftCuts.push_back(halves.left.size());
            rightCuts.push_back(halves.right.size());
            halves.left.push_back(cut);
            halves.right.push_back(cut);
            halves.wall.push_back(cut);
        }
    }
    if (halves.wall.size() != 2) {
        return {};
    }
    const Spot span = halves.wall[1] - halves.wall[0];
    const Spot middle = halves.wall[0] + span * 0.5 + Spot{-span.north, span.east} * bend;
    const auto bent = [&](Line& half, const std::vector<std::size_t>& cuts) {
        const bool isWithin = cuts[1] == cuts[0] + 1;  // else the wall closes the half
        half.insert(isWithin ? half.begin() + static_cast<std::ptrdiff_t>(cuts[1]) : half.end(), middle);
    };
    bent(halves.left, leftCuts);
    bent(halves.right, rightCuts);
    halves.wall.insert(halves.wall.begin() + 1, middle);
    return halves;
}

/// Parts a field again and again, each time across its longest way, somewhere about the middle and not quite straight,
/// as land is parted among heirs; the walls are the cuts.
class Parting {
  public:
    explicit Parting(Meshes meshes) : meshes_(meshes) {}
    void part(const Line& ring) {
        const std::int64_t number = count_++;
        const double wanted = meshes_.narrow + (meshes_.wide - meshes_.narrow) * chance(kCuts, number, 0);
        if (areaOf(ring) < 1.7 * wanted * wanted || ring.size() < 3) {
            return;
        }
        const Spot way = longestWay(ring);
        const double lean = (chance(kCuts, number, 1) - 0.5) * 0.34;
        const Spot across{-way.north * std::cos(lean) - way.east * std::sin(lean),
                          way.east * std::cos(lean) - way.north * std::sin(lean)};
        const Reach reach = reachOf(ring, way);
        const double share = 0.5 + (chance(kCuts, number, 2) - 0.5) * 0.3;
        const Spot crosswise{-way.north, way.east};
        const Reach width = reachOf(ring, crosswise);
        const Spot through = ring.front() + way * (reach.low + (reach.high - reach.low) * share) +
                             crosswise * ((width.low + width.high) / 2);
        const Halves halves = parted(ring, through, across, (chance(kCuts, number, 3) - 0.5) * 0.09);
        if (halves.wall.empty()) {
            return;
        }
        walls_.push_back(halves.wall);
        part(halves.left);
        part(halves.right);
    }
    [[nodiscard]] const std::vector<Line>& walls() const { return walls_; }

  private:
    Meshes meshes_;
    std::int64_t count_ = 0;
    std::vector<Line> walls_;
};

/// The outline of the walled ground: a rectangle with its corners cut and its sides out of true.
Line outline(const Json& net) {
    const Spot from = spotOf(net.at("from"));
    const Spot to = spotOf(net.at("to"));
    const Spot size = to - from;
    Line ring;
    for (int n = 0; n < 10; ++n) {
        const double turn = (n + 0.6 * (chance(kCuts + 1, n, 0) - 0.5)) * 2 * std::numbers::pi / 10;
        const double reach = 0.92 + 0.16 * chance(kCuts + 1, n, 1);
        const double east = std::cos(turn);
        const double north = std::sin(turn);
        const double square = 1 / std::pow(std::pow(std::abs(east), 4) + std::pow(std::abs(north), 4), 0.25);
        ring.push_back(from + Spot{size.east * (0.5 + 0.5 * east * square * reach),
                                   size.north * (0.5 + 0.5 * north * square * reach)});
    }
    return ring;
}

/// A wall where it stands on firm land: what lies in the sea, in a wood or on a cliff is left out.
void drawWall(const Canvas& canvas, const Line& wall, const QPainterPath& woods) {
    const Course course(pathOf(wall));
    QPainterPath standing;
    bool isStanding = false;
    for (const double d : drawing::steps(0, course.length(), 0.25)) {
        const QPointF at = course.at(d).at;
        const QRectF round(at - QPointF(0.6, 0.6), QSizeF(1.2, 1.2));
        const bool stands = canvas.land.share(round, 1) > 0.99 && !woods.contains(at);
        if (stands) {
            isStanding ? standing.lineTo(at) : standing.moveTo(at);
        }
        isStanding = stands;
    }
    canvas.stroke(standing, ink::kBlack, 0.1);
}

}  // namespace

void drawFields(const Canvas& canvas, const Json& cover) {
    QPainterPath woods;
    for (const Json& wood : cover.at("woods")) {
        woods.addPath(pathOf(curved(lineOf(wood.at("points")), true), true));
    }
    const Json& mesh = cover.at("field_mesh");
    for (const Json& net : cover.at("field_nets")) {
        Parting parting({mesh.at(0).get<double>(), mesh.at(1).get<double>()});
        const Line ring = outline(net);
        parting.part(ring);
        for (std::size_t n = 0; n < ring.size(); ++n) {
            if (chance(kCuts + 2, static_cast<std::int64_t>(n), 0) > 0.15) {
                drawWall(canvas, {ring[n], ring[(n + 1) % ring.size()]}, woods);
            }
        }
        std::int64_t number = 0;
        for (const Line& wall : parting.walls()) {
            if (chance(kCuts + 3, number++, 0) > 0.08) {  // some have fallen
                drawWall(canvas, wall, woods);
            }
        }
    }
}

}  // namespace crosstick::demo
