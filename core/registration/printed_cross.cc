#include "core/registration/printed_cross.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace crosstick::registration {
namespace {

// All in pixels, our own: the smallest cross that a scan still shows as one has arms of four.
constexpr std::array kAlong{1.5, 2.5, 3.5};  // on an arm, from the middle
constexpr double kSide = 2.5;                // from an arm to what lies beside it
constexpr std::array kAcross{-1.5, -1.0, -0.5, 0.0, 0.5, 1.0, 1.5};
constexpr double kMargin = 8;
constexpr double kFaintestArm = 6;  // greys: four such arms at once are no chance where a line of them might be
constexpr int kRounds = 4;          // of settling: each goes from the place that the one before found

PixelPoint unit(PixelPoint step) {
    const double length = std::hypot(step.x, step.y);
    return {step.x / length, step.y / length};
}

PixelPoint moved(PixelPoint from, PixelPoint along, double by, PixelPoint across, double aside) {
    return {from.x + along.x * by + across.x * aside, from.y + along.y * by + across.y * aside};
}

/// A cross as it is looked for: its two directions.
struct Arms {
    PixelPoint east, north;
    [[nodiscard]] std::array<std::array<PixelPoint, 2>, 4> all() const {  ///< along, across
        return {{{east, north}, {{{-east.x, -east.y}, north}}, {north, east}, {{{-north.x, -north.y}, east}}}};
    }
};

/// Greys by which a spot of an arm is darker than the darker of its sides.
double darkness(const GreyWindow& grey, PixelPoint middle, const std::array<PixelPoint, 2>& arm, double along) {
    const float ink = grey.at(moved(middle, arm[0], along, arm[1], 0));
    const float left = grey.at(moved(middle, arm[0], along, arm[1], -kSide));
    const float right = grey.at(moved(middle, arm[0], along, arm[1], kSide));
    return ink < 0 || left < 0 || right < 0 ? -255 : static_cast<double>(std::min(left, right) - ink);
}

/// The darkness of the faintest arm; of all arms together where that is enough to be one.
struct Seen {
    double faintest = 0, all = 0;
};

Seen seenAt(const GreyWindow& grey, PixelPoint middle, const Arms& arms) {
    Seen seen{255, 0};
    for (const auto& arm : arms.all()) {
        double sum = 0;
        for (const double along : kAlong) {
            sum += darkness(grey, middle, arm, along);
        }
        seen.faintest = std::min(seen.faintest, sum / kAlong.size());
        seen.all += sum;
    }
    return seen;
}

/// How far aside of `middle` the darkness of the arms along one direction lies.
double asideOf(const GreyWindow& grey, PixelPoint middle, PixelPoint along, PixelPoint across) {
    double weight = 0;
    double moment = 0;
    for (const double way : {-1.0, 1.0}) {
        for (const double step : kAlong) {
            const auto left = static_cast<double>(grey.at(moved(middle, along, way * step, across, -kSide)));
            const auto right = static_cast<double>(grey.at(moved(middle, along, way * step, across, kSide)));
            for (const double aside : kAcross) {
                const double share = (aside + kSide) / (2 * kSide);
                const double ground = left * (1 - share) + right * share;
                const double ink =
                    ground - static_cast<double>(grey.at(moved(middle, along, way * step, across, aside)));
                weight += std::max(0.0, ink);
                moment += std::max(0.0, ink) * aside;
            }
        }
    }
    return weight > 0 ? moment / weight : 0;
}

/// Where the cross is most of one, pixel by pixel; nothing where none has four arms.
std::optional<PixelPoint> coarse(const GreyWindow& grey, PixelPoint at, const Arms& arms, double reach) {
    std::optional<PixelPoint> best;
    double most = 0;
    for (double y = -reach; y <= reach; ++y) {
        for (double x = -reach; x <= reach; ++x) {
            const PixelPoint middle{at.x + x, at.y + y};
            const Seen seen = std::hypot(x, y) <= reach ? seenAt(grey, middle, arms) : Seen{};
            if (seen.faintest >= kFaintestArm && seen.all > most) {
                most = seen.all;
                best = middle;
            }
        }
    }
    return best;
}

}  // namespace

Result<std::optional<PixelPoint>> crossNear(const GreyPicture& picture, const CrossSight& sight, double reach) {
    const auto from = [&](double at) { return std::max(0, static_cast<int>(at - reach - kMargin)); };
    const auto to = [&](double at, int most) { return std::min(most, static_cast<int>(at + reach + kMargin) + 1); };
    const int left = from(sight.at.x);
    const int top = from(sight.at.y);
    const int columns = to(sight.at.x, picture.columns) - left;
    const int rows = to(sight.at.y, picture.rows) - top;
    if (columns < 2 || rows < 2) {
        return std::optional<PixelPoint>();
    }
    return picture.read({left, top, columns, rows}).map([&](const GreyWindow& grey) {
        const Arms arms{unit(sight.east), unit(sight.north)};
        auto middle = coarse(grey, sight.at, arms, reach);
        for (int round = 0; middle && round < kRounds; ++round) {
            const double north = asideOf(grey, *middle, arms.east, arms.north);
            const double east = asideOf(grey, *middle, arms.north, arms.east);
            middle = moved(*middle, arms.east, east, arms.north, north);
        }
        return middle;
    });
}

}  // namespace crosstick::registration
