#include "tests/registration/drawn_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace crosstick::testing {

using registration::Mark;
using registration::PixelPoint;

namespace {

constexpr double kPerMetre = 0.4;  // pixels
constexpr double kTurn = 2.3 * std::numbers::pi / 180;
constexpr double kMiddleX = 1900, kMiddleY = 2300;

PixelPoint turned(double right, double up) {
    return {kMiddleX + kPerMetre * (right * std::cos(kTurn) + up * std::sin(kTurn)),
            kMiddleY - kPerMetre * (up * std::cos(kTurn) - right * std::sin(kTurn))};
}

}  // namespace

Truth similarTruth() {
    return turned;
}

Truth stretchedTruth() {
    return [](double east, double north) { return turned(east * 1.006, north); };
}

Truth aslantTruth() {
    return [](double east, double north) {
        const double depth = 1 + 0.06 * north / 5000 + 0.02 * east / 4000;
        return turned(east / depth, north / depth);
    };
}

Truth bentTruth() {
    return [](double east, double north) {
        const PixelPoint flat = turned(east, north);
        const double u = east / 4000;
        const double v = north / 5000;
        return PixelPoint{flat.x + 12 * v * v - 5 * u * v, flat.y + 10 * u * u + 6 * u * v};
    };
}

std::vector<Mark> allCrossings(const Truth& truth) {
    std::vector<Mark> marks;
    for (int n = -5; n <= 5; ++n) {
        for (int e = -4; e <= 4; ++e) {
            marks.push_back(
                {truth(e * 1000, n * 1000), {Metres(kMiddleEast + e * 1000), Metres(kMiddleNorth + n * 1000)}});
        }
    }
    return marks;
}

std::vector<Mark> drawn(const Truth& truth, std::size_t count, double noise, std::mt19937& random) {
    std::vector<Mark> marks = allCrossings(truth);
    std::shuffle(marks.begin(), marks.end(), random);
    marks.resize(count);
    std::normal_distribution<double> error(0, noise);
    for (Mark& mark : marks) {
        mark.at.x += noise > 0 ? error(random) : 0;
        mark.at.y += noise > 0 ? error(random) : 0;
    }
    return marks;
}

void misplace(Mark& mark, double pixels, std::mt19937& random) {
    const double way = std::uniform_real_distribution<double>(0, 2 * std::numbers::pi)(random);
    mark.at = {mark.at.x + pixels * std::cos(way), mark.at.y + pixels * std::sin(way)};
}

}  // namespace crosstick::testing
