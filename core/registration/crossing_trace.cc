#include "core/registration/crossing_trace.h"

#include <algorithm>
#include <cmath>

namespace crosstick::registration {
namespace {

constexpr double kNear = 3;  // pixels: how far the second look goes

PixelPoint unit(PixelPoint step) {
    const double length = std::hypot(step.x, step.y);
    return {step.x / length, step.y / length};
}

/// The window that arms and search need, as far as it lies in the picture; empty where none does.
sheets::PixelWindow windowFor(const GreyPicture& picture, PixelPoint at, const Reach& reach) {
    const double side = reach.arm + reach.search + reach.slope * reach.arm + 8;
    const int left = std::max(0, static_cast<int>(at.x - side));
    const int top = std::max(0, static_cast<int>(at.y - side));
    const int right = std::min(picture.columns, static_cast<int>(at.x + side) + 1);
    const int bottom = std::min(picture.rows, static_cast<int>(at.y + side) + 1);
    return {left, top, std::max(0, right - left), std::max(0, bottom - top)};
}

/// Where the two lines cut.
PixelPoint cut(const CrossSight& sight, const LineTrace& a, const LineTrace& b) {
    const PixelPoint d = unit(sight.east);
    const PixelPoint e = unit(sight.north);
    // Through at + normal * offset, along direction + normal * slope.
    const PixelPoint p{-d.y * a.offset, d.x * a.offset};
    const PixelPoint u{d.x - d.y * a.slope, d.y + d.x * a.slope};
    const PixelPoint q{-e.y * b.offset, e.x * b.offset};
    const PixelPoint v{e.x - e.y * b.slope, e.y + e.x * b.slope};
    const double area = u.x * v.y - u.y * v.x;
    const double t = ((q.x - p.x) * v.y - (q.y - p.y) * v.x) / area;
    return {sight.at.x + p.x + t * u.x, sight.at.y + p.y + t * u.y};
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// 0 at one end of a range and 1 at the other.
double between(double value, double none, double all) {
    return std::clamp((value - none) / (all - none), 0.0, 1.0);
}

int armsOf(const LineTrace& line) {
    constexpr double kThere = 0.4;
    return (line.behind >= kThere ? 1 : 0) + (line.ahead >= kThere ? 1 : 0);
}

}  // namespace

LineLook lookOf(std::span<const LineTrace> lines) {
    std::vector<double> contrasts;
    std::vector<double> widths;
    for (const LineTrace& line : lines) {
        contrasts.push_back(line.contrast);
        widths.push_back(line.width);
    }
    return {median(contrasts), median(widths)};
}

double armFor(double spacing) {
    constexpr double kShare = 0.4;
    constexpr double kShortest = 12;
    constexpr double kLongest = 90;
    return std::clamp(kShare * spacing, kShortest, kLongest);
}

double confidenceOf(const LineTrace& line, const LineLook& look) {
    const double arms = std::min(line.behind, line.ahead);
    // An arm seen on half its length is worth looking at, one seen on three quarters is there.
    double confidence = 0.5 * between(arms, 0.1, 0.5) + 0.5 * between(arms, 0.5, 0.75);
    confidence *= between(line.contrast, 0.15 * look.contrast, 0.4 * look.contrast);
    confidence *= 1 - 0.7 * between(line.scatter, 0.45, 0.8);
    // A thick line is as wide as a thin one where the scan is soft, but darker: its ink is both together.
    confidence *= 1 - 0.6 * between(line.width * line.contrast, 1.7 * look.ink(), 2.3 * look.ink());
    confidence *= 1 - 0.6 * between(line.rival, 0.6, 0.9);
    return confidence;
}

bool isInside(const GreyPicture& picture, PixelPoint at) {
    return at.x >= 0 && at.y >= 0 && at.x <= picture.columns && at.y <= picture.rows;
}

Result<CrossLines> traceLines(const GreyPicture& picture, const CrossSight& sight, Reach reach, double contrast) {
    reach.arm = armFor(sight.spacing());
    const sheets::PixelWindow window = windowFor(picture, sight.at, reach);
    if (window.columns < 2 || window.rows < 2) {
        return CrossLines{};
    }
    return picture.read(window).map([&](const GreyWindow& grey) {
        return CrossLines{traceLine(grey, sight.at, unit(sight.east), reach, contrast),
                          traceLine(grey, sight.at, unit(sight.north), reach, contrast)};
    });
}

Result<std::optional<CrossingTrace>> traceCrossing(const GreyPicture& picture, const CrossSight& sight, Reach reach,
                                                   const LineLook& look) {
    using Found = std::optional<CrossingTrace>;
    const auto rough = traceLines(picture, sight, reach, look.contrast);
    if (!rough) {
        return tl::unexpected(rough.error());
    }
    if (!rough->east || !rough->north) {
        return Found{};
    }
    CrossSight there = sight;
    there.at = cut(sight, *rough->east, *rough->north);
    if (std::hypot(there.at.x - sight.at.x, there.at.y - sight.at.y) > 1.5 * reach.search + 2 ||
        !isInside(picture, there.at)) {
        return Found{};
    }
    auto lines = traceLines(picture, there, {kNear, 0, reach.slope}, look.contrast);
    if (!lines) {
        return tl::unexpected(lines.error());
    }
    if (!lines->east || !lines->north || armsOf(*lines->east) == 0 || armsOf(*lines->north) == 0) {
        return Found{};
    }
    CrossingTrace trace{cut(there, *lines->east, *lines->north), 0, *lines->east, *lines->north};
    trace.east.rival = std::max(trace.east.rival, rough->east->rival);
    trace.north.rival = std::max(trace.north.rival, rough->north->rival);
    trace.confidence = std::min(confidenceOf(trace.east, look), confidenceOf(trace.north, look));
    return Found(trace);
}

}  // namespace crosstick::registration
