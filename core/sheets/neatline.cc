#include "core/sheets/neatline.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/sheets/brightness.h"
#include "core/sheets/faults.h"

namespace crosstick::sheets {
namespace {

// Millimetres are those of the sheet's paper. All these figures are ours, tried on drawn sheets and on scans.
constexpr double kPixelMm = 0.17;  // a hairline of 0.1 mm is still seen at this
constexpr double kStepMm = 0.25;   // along a line
constexpr double kLineMm = 0.45;   // so far beside its place a line may be printed
constexpr double kBesideMm = 1.2;  // and so far its surroundings are compared
constexpr double kContrast = 14;   // of 255, that a line is darker than what lies beside it
constexpr int kWindowSteps = 12;   // 3 mm, of which a line is seen in most
constexpr double kSeenShare = 0.6;
constexpr int kGapSteps = 48;       // 12 mm: a village or a name may hide a line so long
constexpr int kShortestSteps = 80;  // 20 mm of it make a line
constexpr double kAgreeMm = 0.6;    // ends so near an edge lie on it
constexpr double kShiftMm = 2.5;    // the printed neatline is sought so far beside the ends
constexpr double kEdgeContrast = 40;
constexpr double kFrameShare = 0.6;  // a dark line that is so much as dark as the frame round it may be the neatline
constexpr int kCutSteps = 8;         // 2 mm without a line and then less than
constexpr int kTailSteps = 40;       // 10 mm of it: figures beyond the edge, no line
constexpr int kMostLines = 400;

/// Along: the way that a line of the grid runs; across: what stays the same on it. Metres of the sheet's grid.
struct LineEnds {
    double across = 0, first = 0, last = 0;
};

/// across = at + tilt * along, of an edge of the map.
struct Edge {
    double at = 0, tilt = 0;
};

class Search {
  public:
    Search(const Raster& copy, const plan::Sheet& sheet, Metres interval)
        : sheet_(sheet),
          interval_(interval.value()),
          mm_(sheet.scale.denominator / 1000),
          grey_(copy, levelOf(sheet)) {}

    Result<std::vector<plan::RasterSpot>> corners();

  private:
    enum class Runs { North, East };
    const plan::Sheet& sheet_;
    double interval_, mm_;  ///< metres; metres of a millimetre on paper
    Brightness grey_;

    static int levelOf(const plan::Sheet& sheet) {
        const plan::Placement& p = sheet.placement;
        const double metres = std::hypot(p.eastPerColumn, p.northPerColumn);
        const double mm = metres / sheet.scale.denominator * 1000;
        return mm > 0 ? std::clamp(static_cast<int>(std::floor(std::log2(kPixelMm / mm))), 0, 6) : 0;
    }
    double at(Runs runs, double along, double across) {
        const geodesy::PlanePoint place = runs == Runs::North ? geodesy::PlanePoint{Metres(across), Metres(along)}
                                                              : geodesy::PlanePoint{Metres(along), Metres(across)};
        return grey_.at(plan::inRaster(sheet_.placement, place));
    }
    bool isSeen(Runs runs, double along, double across);
    std::optional<LineEnds> follow(Runs runs, double across, double low, double high);
    std::vector<LineEnds> lines(Runs runs);
    std::optional<Edge> edgeThrough(const std::vector<LineEnds>& lines, double LineEnds::*end) const;
    std::optional<double> printBeside(const Edge& edge, Runs runs, double low, double high, double outwards);
    void layOnPrint(Edge& edge, Runs runs, double low, double high, double outwards);
};

/// A dark hair with lighter paper on both sides.
bool Search::isSeen(Runs runs, double along, double across) {
    double darkest = 255;
    std::array<std::vector<double>, 2> sides;
    for (double mm = -kBesideMm; mm <= kBesideMm + 1e-9; mm += 0.15) {
        const double value = at(runs, along, across + mm * mm_);
        if (std::abs(mm) <= kLineMm) {
            darkest = std::min(darkest, value);
        } else {
            sides[mm > 0 ? 1 : 0].push_back(value);
        }
    }
    return std::all_of(sides.begin(), sides.end(), [&](std::vector<double>& side) {
        const auto middle = side.begin() + static_cast<std::ptrdiff_t>(side.size() / 2);
        std::nth_element(side.begin(), middle, side.end());
        return *middle - darkest >= kContrast;
    });
}

/// Cuts from a stretch's last seen step whatever is no line any more: short pieces behind a gap, as figures are.
/// @param step  towards the stretch's inside: 1 at its beginning, -1 at its end
template <class Seen>
int withoutTail(int last, int inside, int step, const Seen& isSeen) {
    while (last != inside) {
        int at = last;
        int seen = last;
        for (; at != inside && std::abs(at - seen) <= kCutSteps; at += step) {
            seen = isSeen(at) ? at : seen;
        }
        if (at == inside || std::abs(seen - last) >= kTailSteps) {
            return last;
        }
        while (at != inside && !isSeen(at)) {
            at += step;
        }
        last = at;
    }
    return last;
}

/// The longest stretch on which a line of the grid is printed.
std::optional<LineEnds> Search::follow(Runs runs, double across, double low, double high) {
    const double step = kStepMm * mm_;
    const int steps = static_cast<int>(std::min((high - low) / step, 40000.0));
    std::vector<int> seen(static_cast<std::size_t>(steps) + 1, 0);  // how many up to a step
    for (int n = 0; n < steps; ++n) {
        seen[static_cast<std::size_t>(n) + 1] =
            seen[static_cast<std::size_t>(n)] + (isSeen(runs, low + n * step, across) ? 1 : 0);
    }
    const auto count = [&](int from, int to) {
        return seen[static_cast<std::size_t>(std::clamp(to, 0, steps))] -
               seen[static_cast<std::size_t>(std::clamp(from, 0, steps))];
    };
    int from = -1;
    int until = -1;
    int bestFrom = 0;
    int bestUntil = 0;
    for (int n = 0; n < steps; ++n) {
        if (count(n, n + 1) == 0 ||
            std::max(count(n, n + kWindowSteps), count(n + 1 - kWindowSteps, n + 1)) < kSeenShare * kWindowSteps) {
            continue;
        }
        if (from < 0 || n - until > kGapSteps) {
            from = n;
        }
        until = n;
        if (until - from > bestUntil - bestFrom) {
            bestFrom = from;
            bestUntil = until;
        }
    }
    const auto isOn = [&](int n) { return count(n, n + 1) > 0; };
    const int middle = (bestFrom + bestUntil) / 2;
    bestFrom = withoutTail(bestFrom, middle, 1, isOn);
    bestUntil = withoutTail(bestUntil, middle, -1, isOn);
    if (bestUntil - bestFrom < kShortestSteps) {
        return std::nullopt;
    }
    return LineEnds{across, low + bestFrom * step, low + bestUntil * step};
}

std::vector<LineEnds> Search::lines(Runs runs) {
    std::array<double, 2> along{1e12, -1e12};
    std::array<double, 2> across{1e12, -1e12};
    for (const plan::RasterSpot spot : plan::rasterCorners(sheet_)) {
        const geodesy::PlanePoint place = plan::onGrid(sheet_.placement, spot.column, spot.row);
        const double east = place.easting.value();
        const double north = place.northing.value();
        along = {std::min(along[0], runs == Runs::North ? north : east),
                 std::max(along[1], runs == Runs::North ? north : east)};
        across = {std::min(across[0], runs == Runs::North ? east : north),
                  std::max(across[1], runs == Runs::North ? east : north)};
    }
    std::vector<LineEnds> found;
    const double count = (across[1] - across[0]) / interval_;
    if (!(count < kMostLines)) {
        return found;
    }
    for (double line = std::ceil(across[0] / interval_) * interval_; line <= across[1]; line += interval_) {
        if (const auto ends = follow(runs, line, along[0], along[1])) {
            found.push_back(*ends);
        }
    }
    return found;
}

/// A straight edge through the ends of most lines (Theil and Sen's median of slopes), then by least squares through
/// those that lie on it: lines that leave the map by another side lie off.
std::optional<Edge> Search::edgeThrough(const std::vector<LineEnds>& lines, double LineEnds::*end) const {
    std::vector<double> tilts;
    for (std::size_t a = 0; a < lines.size(); ++a) {
        for (std::size_t b = a + 1; b < lines.size(); ++b) {
            tilts.push_back((lines[b].*end - lines[a].*end) / (lines[b].across - lines[a].across));
        }
    }
    if (tilts.size() < 3) {
        return std::nullopt;
    }
    const auto median = [](std::vector<double>& of) {
        const auto middle = of.begin() + static_cast<std::ptrdiff_t>(of.size() / 2);
        std::nth_element(of.begin(), middle, of.end());
        return *middle;
    };
    const double tilt = median(tilts);
    std::vector<double> places;
    for (const LineEnds& line : lines) {
        places.push_back(line.*end - tilt * line.across);
    }
    const double at = median(places);
    double n = 0;
    double x = 0;
    double y = 0;
    double xx = 0;
    double xy = 0;
    const double origin = lines.front().across;
    for (const LineEnds& line : lines) {
        if (std::abs(line.*end - at - tilt * line.across) <= kAgreeMm * mm_) {
            const double dx = line.across - origin;
            n += 1;
            x += dx;
            y += line.*end;
            xx += dx * dx;
            xy += dx * line.*end;
        }
    }
    if (n < 3 || n * 2 < static_cast<double>(lines.size())) {
        return std::nullopt;
    }
    const double slope = (n * xy - x * y) / (n * xx - x * x);
    return Edge{(y - slope * x) / n - slope * origin, slope};
}

/// How far in millimetres the dark line lies beside an edge that is printed along a part of it; the innermost where a
/// frame has several.
/// @param runs  the way the edge itself runs  @param outwards  1 or -1: where the collar is
std::optional<double> Search::printBeside(const Edge& edge, Runs runs, double low, double high, double outwards) {
    std::vector<double> means;  // from inside to outside
    std::vector<double> shifts;
    for (double mm = -kShiftMm; mm <= kShiftMm + 1e-9; mm += 0.05) {
        double sum = 0;
        int count = 0;
        for (double along = low; along <= high; along += mm_) {
            sum += at(runs, along, edge.at + edge.tilt * along + outwards * mm * mm_);
            ++count;
        }
        means.push_back(count > 0 ? sum / count : 255);
        shifts.push_back(outwards * mm);
    }
    std::vector<double> sorted = means;
    std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2), sorted.end());
    const double paper = sorted[sorted.size() / 2];
    const double darkest = *std::min_element(means.begin(), means.end());
    const double enough = std::max(kEdgeContrast, kFrameShare * (paper - darkest));
    for (std::size_t n = 1; n + 1 < means.size(); ++n) {
        if (paper - means[n] >= enough && means[n] <= means[n - 1] && means[n] <= means[n + 1]) {
            return shifts[n];
        }
    }
    return std::nullopt;
}

/// Turns and moves an edge onto the line that is printed along it. Pieces of it first: over the whole of an edge that
/// leans a little too much the line would be smeared.
void Search::layOnPrint(Edge& edge, Runs runs, double low, double high, double outwards) {
    constexpr int kPieces = 6;
    std::vector<LineEnds> seen;
    for (int piece = 0; piece < kPieces; ++piece) {
        const double from = low + (high - low) * piece / kPieces;
        const double to = low + (high - low) * (piece + 1) / kPieces;
        if (const auto shift = printBeside(edge, runs, from, to, outwards)) {
            const double middle = (from + to) / 2;
            seen.push_back({middle, edge.at + edge.tilt * middle + *shift * mm_, 0});
        }
    }
    if (const auto through = edgeThrough(seen, &LineEnds::first)) {
        edge = *through;
    }
    if (const auto shift = printBeside(edge, runs, low, high, outwards)) {
        edge.at += *shift * mm_;
    }
}

Result<std::vector<plan::RasterSpot>> Search::corners() {
    const auto north = lines(Runs::North);
    const auto east = lines(Runs::East);
    auto bottom = edgeThrough(north, &LineEnds::first);
    auto top = edgeThrough(north, &LineEnds::last);
    auto left = edgeThrough(east, &LineEnds::first);
    auto right = edgeThrough(east, &LineEnds::last);
    if (grey_.fault()) {
        return tl::unexpected(*grey_.fault());
    }
    if (!bottom || !top || !left || !right) {
        return fail(kNoNeatline, {{"north", static_cast<std::int64_t>(north.size())},
                                  {"east", static_cast<std::int64_t>(east.size())}});
    }
    // Top and bottom: northing by easting; left and right: easting by northing.
    const auto meet = [](const Edge& level, const Edge& upright) {
        const double eastAt = (upright.at + upright.tilt * level.at) / (1 - upright.tilt * level.tilt);
        return std::array<double, 2>{eastAt, level.at + level.tilt * eastAt};
    };
    const auto southWest = meet(*bottom, *left);
    const auto northEast = meet(*top, *right);
    const double inset = 3 * mm_;  // corners are ornamented
    layOnPrint(*bottom, Runs::East, southWest[0] + inset, northEast[0] - inset, -1);
    layOnPrint(*top, Runs::East, southWest[0] + inset, northEast[0] - inset, 1);
    layOnPrint(*left, Runs::North, southWest[1] + inset, northEast[1] - inset, -1);
    layOnPrint(*right, Runs::North, southWest[1] + inset, northEast[1] - inset, 1);
    std::vector<plan::RasterSpot> corners;
    for (const auto& corner : {meet(*top, *left), meet(*top, *right), meet(*bottom, *right), meet(*bottom, *left)}) {
        corners.push_back(plan::inRaster(sheet_.placement, {Metres(corner[0]), Metres(corner[1])}));
    }
    return corners;
}

double cross(plan::RasterSpot o, plan::RasterSpot a, plan::RasterSpot b) {
    return (a.column - o.column) * (b.row - o.row) - (a.row - o.row) * (b.column - o.column);
}

bool doCross(plan::RasterSpot a, plan::RasterSpot b, plan::RasterSpot c, plan::RasterSpot d) {
    return cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0;
}

}  // namespace

Result<std::vector<plan::RasterSpot>> soundNeatline(std::vector<plan::RasterSpot> corners, const plan::Sheet& sheet) {
    constexpr double kLeastShare = 0.01;
    const double columns = sheet.columns;
    const double rows = sheet.rows;
    for (plan::RasterSpot& corner : corners) {
        corner = {std::clamp(corner.column, 0.0, columns), std::clamp(corner.row, 0.0, rows)};
    }
    const std::size_t count = corners.size();
    double area = 0;
    for (std::size_t n = 0; n < count; ++n) {
        const plan::RasterSpot& from = corners[n];
        const plan::RasterSpot& to = corners[(n + 1) % count];
        area += cross({}, from, to) / 2;
        for (std::size_t other = n + 1; other < count; ++other) {
            if (doCross(from, to, corners[other], corners[(other + 1) % count])) {
                return fail(kNeatlineCrosses);
            }
        }
    }
    if (count < 3 || count > plan::kMostNeatlineCorners || std::abs(area) < kLeastShare * columns * rows) {
        return fail(kNeatlineCrosses);
    }
    return corners;
}

Result<std::vector<plan::RasterSpot>> proposeNeatline(const Raster& copy, const plan::Sheet& sheet, Metres interval) {
    return Search(copy, sheet, interval).corners();
}

}  // namespace crosstick::sheets
