#include "tests/symbols/random_film.h"

#include <array>
#include <cmath>
#include <numbers>

#include "core/measures/catalogue.h"

namespace crosstick::symbols::testing {
namespace {

using drawing::Point;
using drawing::Points;
using drawing::Vector;
using drawing::testing::RandomLines;

Point somewhere(RandomLines& random) {
    const double x = random.between(-20, 220);
    return {x, random.between(-20, 170)};
}

Points line(RandomLines& random) {
    Points points{somewhere(random)};
    double heading = random.between(-std::numbers::pi, std::numbers::pi);
    for (int n = 1 + random.below(6); n > 0; --n) {
        heading += random.between(-0.9, 0.9);
        points.push_back(points.back() + Vector{std::cos(heading), std::sin(heading)} * random.between(5, 45));
    }
    return points;
}

Points ring(RandomLines& random) {
    const Point middle = somewhere(random);
    const int count = 3 + random.below(7);
    Points points;
    for (int n = 0; n < count; ++n) {
        const double turn = 2 * std::numbers::pi * (n + random.between(0, 0.8)) / count;
        points.push_back(middle + Vector{std::cos(turn), std::sin(turn)} * random.between(6, 30));
    }
    return points;
}

Points pointsFor(RandomLines& random, const measures::Entry& entry) {
    if (entry.points.most && *entry.points.most > 1) {
        const Point at = somewhere(random);
        Points points;
        for (int n = 0; n < *entry.points.most; ++n) {
            points.push_back(at + random.point(25));
        }
        return points;
    }
    switch (entry.shape) {
        case measures::Shape::Line:
            return line(random);
        case measures::Shape::Area:
            return ring(random);
        default:
            return {somewhere(random)};
    }
}

}  // namespace

Made randomMeasure(RandomLines& random, std::string_view kind) {
    static constexpr std::array<const char*, 5> kNames{"", "TIN", "FLINT", "COBNUT", "HIGH BARROW"};
    static constexpr std::array<const char*, 4> kEchelons{"tm", "plt", "coy", "bde"};
    Made made{.kind = std::string(kind), .points = pointsFor(random, *measures::find(kind))};
    made.name = kNames.at(static_cast<std::size_t>(random.below(5)));
    made.number = random.below(3) == 0 ? std::to_string(random.below(4000)) : "";
    if (kind == "text" && made.name.empty()) {
        made.name = "NOTE";
    }
    made.standing = random.below(2) == 0 ? plan::Standing::Planned : plan::Standing::Present;
    made.whose = random.below(3) == 0 ? plan::Whose::Enemy : plan::Whose::Own;
    if (kind == "unit") {
        static constexpr std::array<const char*, 5> kUnits{"1/2 inf sqd", "hq B/1-9 inf coy (+)", "eny mech inf coy ?",
                                                           "neu MP sqd >220", "unk rec tm \"QRF\" @260400Z"};
        made.fields = {{"unit", kUnits.at(static_cast<std::size_t>(random.below(5)))}};
    }
    if (kind == "boundary") {
        made.fields = {{"left_unit", "2/C"}, {"right_unit", "A/1-9"}};
        made.fields["left_echelon"] = kEchelons.at(static_cast<std::size_t>(random.below(4)));
        made.fields["right_echelon"] = kEchelons.at(static_cast<std::size_t>(random.below(4)));
    }
    return made;
}

MadeFilm randomFilm(std::uint64_t seed, int measures) {
    RandomLines random(seed);
    MadeFilm film;
    const auto kinds = measures::catalogue();
    for (int n = 0; n < measures; ++n) {
        const auto kind = static_cast<std::size_t>(random.below(static_cast<int>(kinds.size())));
        film.add(randomMeasure(random, kinds[kind].kind));
    }
    Points vertices{{random.between(20, 60), random.between(20, 120)}};
    for (int n = 0; n < 4; ++n) {
        vertices.push_back(vertices.back() + Vector{random.between(12, 35), random.between(-30, 30)});
    }
    film.add(MadeRoute{.vertices = vertices, .stops = {0, 2, 3, 4}, .name = "QUILL"});
    return film;
}

}  // namespace crosstick::symbols::testing
