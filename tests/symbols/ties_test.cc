// Extension lines in a crowd: none crosses another, none runs through a symbol (engraving A13), whatever crowds.
#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Vector;
using drawing::testing::RandomLines;
using testing::Made;
using testing::MadeFilm;

constexpr std::array kKinds{"casualty-collection-point",
                            "checkpoint",
                            "rally-point",
                            "start-point",
                            "observation-post",
                            "coordination-point",
                            "decision-point",
                            "contact-point",
                            "waypoint",
                            "key-terrain",
                            "task-seize",
                            "unit",
                            "target-reference-point",
                            "critical-point",
                            "ammunition-supply-point"};
constexpr std::array kUnits{"1/2 inf sqd", "hq 2/B inf plt", "mor sec of B", "eny inf plt ?"};

template <std::size_t N>
const char* anyOf(RandomLines& random, const std::array<const char*, N>& all) {
    return all.at(static_cast<std::size_t>(random.below(static_cast<int>(N))));
}

struct Crowd {
    MadeFilm film;
    std::vector<Point> spots;
    std::vector<std::string> kinds;
    std::vector<std::size_t> rowOf;  ///< of each thing: the place of whom it stands with, else its own
};

Made someSymbol(RandomLines& random, Point at, int number) {
    Made made{.kind = anyOf(random, kKinds), .points = {at}};
    if (made.kind == "unit") {
        made.fields = {{"unit", anyOf(random, kUnits)}};
    } else if (made.kind == "task-seize") {
        made.name = "OBJ PINE";
    } else {
        made.number = std::to_string(number);
    }
    return made;
}

/// No nearer than half a symbol to another true place: one that lies under another's symbol no line reaches.
bool isApart(const std::vector<Point>& spots, Point spot) {
    constexpr double kApart = 4;
    return std::all_of(spots.begin(), spots.end(),
                       [=](Point other) { return drawing::length(other - spot) >= kApart; });
}

/// Symbols of all kinds within a few millimetres, a row of units among them, tips on an area, the area's name.
Crowd crowdOf(std::uint64_t seed) {
    RandomLines random(seed);
    Crowd crowd;
    const auto add = [&](Made made, std::size_t with) {
        crowd.film.add(made);
        crowd.kinds.push_back(made.kind);
        crowd.rowOf.push_back(with);
    };
    const Point middle{random.between(60, 140), random.between(50, 100)};
    const double radius = random.between(12, 25);
    add({.kind = "objective",
         .points = {middle + Vector{-12, -8}, middle + Vector{14, -6}, middle + Vector{10, 9}, middle + Vector{-9, 11}},
         .name = "PINE"},
        0);
    const int count = 3 + random.below(6);
    for (int n = 0; n < count; ++n) {
        const std::size_t own = crowd.rowOf.size();
        Point spot = middle + random.point(radius);
        for (int tries = 0; tries < 100 && !isApart(crowd.spots, spot); ++tries) {
            spot = middle + random.point(radius);
        }
        crowd.spots.push_back(spot);
        Made made = someSymbol(random, spot, n + 1);
        if (made.kind == "unit" && random.below(2) == 0) {
            made.pointsTo = 0;
        }
        add(made, own);
        const int more = made.kind == "unit" ? random.below(3) : 0;
        for (int follower = 0; follower < more; ++follower) {
            Made next{.kind = "unit", .points = made.points, .fields = {{"unit", anyOf(random, kUnits)}}};
            next.standsWith = own;
            add(next, own);
        }
    }
    return crowd;
}

/// Thin straight lines but for the ticks on their ends.
std::vector<testing::InkLine> thinLines(const drawing::Drawing& drawn) {
    constexpr double kLongerThanATick = 1.7;
    std::vector<testing::InkLine> lines;
    for (const testing::InkLine& line : testing::inkLines(drawn)) {
        if (line.width < 0.3 && drawing::length(line.to - line.from) > kLongerThanATick) {
            lines.push_back(line);
        }
    }
    return lines;
}

drawing::TurnedBox inner(const testing::InkLine& line) {
    constexpr double kEnds = 0.25;
    const Vector way = line.to - line.from;
    return {(line.from + line.to) * 0.5, drawing::length(way) - 2 * kEnds, 0.01, drawing::readable(way)};
}

TEST(Ties, NoneCrossesAnotherAndNoneRunsThroughASymbol) {
    int tied = 0;
    int leftOut = 0;
    int symbols = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        const Crowd crowd = crowdOf(seed);
        const EngravedFilm drawn = crowd.film.engraved();
        symbols += static_cast<int>(crowd.rowOf.size());
        leftOut += static_cast<int>(drawn.remarks.size());
        std::vector<std::size_t> row;  // of the items as they are painted
        std::vector<std::vector<testing::InkLine>> lines;
        for (const EngravedItem& item : drawn.items) {
            row.push_back(crowd.rowOf.at(crowd.film.place(item.item)));
            lines.push_back(thinLines(item.drawing));
        }
        for (std::size_t a = 0; a < row.size(); ++a) {
            tied += lines[a].empty() ? 0 : 1;
            for (std::size_t b = 0; b < row.size(); ++b) {
                for (const testing::InkLine& line : lines[a]) {
                    if (row[a] == row[b]) {
                        continue;
                    }
                    for (const testing::InkLine& other : lines[b]) {
                        EXPECT_FALSE(inner(line).meets(other.from, other.to))
                            << "seed " << seed << ": " << crowd.kinds[crowd.film.place(drawn.items[a].item)]
                            << " crosses " << crowd.kinds[crowd.film.place(drawn.items[b].item)] << " near "
                            << line.to.x << ' ' << line.to.y;
                    }
                    for (const Part& part : drawn.items[b].parts) {
                        EXPECT_FALSE(part.what == Part::What::Symbol && part.box.grown(-0.1).meets(line.from, line.to))
                            << "seed " << seed << ": " << crowd.kinds[crowd.film.place(drawn.items[a].item)]
                            << " runs through " << crowd.kinds[crowd.film.place(drawn.items[b].item)] << " at "
                            << part.box.middle.x << ' ' << part.box.middle.y;
                    }
                }
            }
        }
    }
    std::cout << tied << " of " << symbols << " tied, " << leftOut << " left out\n";
    EXPECT_GT(tied, 500) << "crowds make symbols stand aside, or this test tests nothing";
    EXPECT_LT(leftOut, symbols / 20);
}

}  // namespace
}  // namespace crosstick::symbols
