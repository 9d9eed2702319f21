#include "core/terrain/centre_line.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/geodesy/plane_line.h"

namespace crosstick::terrain {
namespace {

using Line = std::vector<PicturePoint>;

constexpr double kWidestGapMm = 2.5;  // between dashes
constexpr double kEvenMm = 0.1;       // a quarter of a pen: so far a point may be moved for an even line
constexpr std::size_t kEvenSteps = 2, kEvenDashedSteps = 7;  // of a sixth of a millimetre to each side
constexpr double kDashed = 0.1;                              // so much of a dashed line is blank at least
constexpr double kWidestRoadMm = 1.1;                        // from the middle of one casing to that of the other

double apart(PicturePoint a, PicturePoint b) {
    return std::hypot(a.column - b.column, a.row - b.row);
}

PicturePoint between(PicturePoint a, PicturePoint b, double share) {
    return {a.column + (b.column - a.column) * share, a.row + (b.row - a.row) * share};
}

Line middles(const std::vector<Cell>& path) {
    Line line;
    for (const Cell cell : path) {
        line.push_back({cell.column + 0.5, cell.row + 0.5});
    }
    return line;
}

/// Points at equal steps along a line, both ends among them.
Line resampled(const Line& line, double step) {
    Line even{line.front()};
    double left = step;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        const double length = apart(line[n], line[n + 1]);
        double at = left;
        for (; at <= length; at += step) {
            even.push_back(between(line[n], line[n + 1], at / length));
        }
        left = at - length;
    }
    if (apart(even.back(), line.back()) > step / 2) {
        even.push_back(line.back());
    } else {
        even.back() = line.back();
    }
    return even;
}

/// Every point becomes the weighted mean of those up to `half` beside it, the nearer the more; the ends draw in less.
Line smoothed(const Line& line, std::size_t half) {
    Line smooth = line;
    for (std::size_t n = 0; n < line.size(); ++n) {
        const std::size_t reach = std::min({half, n, line.size() - 1 - n});
        PicturePoint sum{};
        double weights = 0;
        for (std::size_t k = n - reach; k <= n + reach; ++k) {
            const double far = static_cast<double>(k > n ? k - n : n - k) / static_cast<double>(reach + 1);
            const double weight = 1 - far;
            sum = {sum.column + weight * line[k].column, sum.row + weight * line[k].row};
            weights += weight;
        }
        smooth[n] = {sum.column / weights, sum.row / weights};
    }
    return smooth;
}

/// The unit vector across a line at one of its points.
PicturePoint across(const Line& line, std::size_t n) {
    const PicturePoint from = line[n < 2 ? 0 : n - 2];
    const PicturePoint to = line[std::min(n + 2, line.size() - 1)];
    const double length = std::max(1e-9, apart(from, to));
    return {-(to.row - from.row) / length, (to.column - from.column) / length};
}

/// How far across the middle of the line lies; nothing where it is not to be seen there.
std::optional<double> middleAcross(VeinField& field, PicturePoint at, PicturePoint normal) {
    const double reach = field.halfWidth() + 2.5;
    constexpr double kStep = 0.5;
    double sum = 0;
    double moment = 0;
    for (double u = -reach; u <= reach; u += kStep) {
        const double member = field.memberAt({at.column + normal.column * u, at.row + normal.row * u});
        sum += member;
        moment += member * u;
    }
    const double width = sum * kStep;
    if (width < 0.7 || width > 2 * field.halfWidth() + 2) {
        return std::nullopt;
    }
    return moment / sum;
}

/// Where nothing is seen, straight on from what is seen on both sides: the way that was found between dashes wanders,
/// since all of a gap is as cheap. Over a longer break it is the better guess, and stays.
void straightenGaps(Line& line, const std::vector<std::optional<double>>& seen, double widest) {
    std::optional<std::size_t> last;
    for (std::size_t n = 0; n < line.size(); ++n) {
        if (!seen[n]) {
            continue;
        }
        for (std::size_t k = last ? *last + 1 : n; k < n && apart(line[*last], line[n]) <= widest; ++k) {
            line[k] = between(line[*last], line[n], static_cast<double>(k - *last) / static_cast<double>(n - *last));
        }
        last = n;
    }
}

/// Where nothing is seen the offset lies between those of both sides.
std::vector<double> filled(const std::vector<std::optional<double>>& seen) {
    std::vector<double> offsets(seen.size(), 0);
    std::optional<std::size_t> last;
    for (std::size_t n = 0; n < seen.size(); ++n) {
        if (!seen[n]) {
            continue;
        }
        const double before = last ? *seen[*last] : *seen[n];
        const std::size_t from = last.value_or(0);
        for (std::size_t k = last ? from + 1 : 0; k <= n; ++k) {
            const double share = n == from ? 1 : static_cast<double>(k - from) / static_cast<double>(n - from);
            offsets[k] = before + (*seen[n] - before) * share;
        }
        last = n;
    }
    for (std::size_t n = last ? *last + 1 : seen.size(); n < seen.size(); ++n) {
        offsets[n] = *seen[*last];
    }
    return offsets;
}

struct Centred {
    Line line;
    double blank = 0;  ///< the share of it at which nothing was to be seen
};

Centred centred(VeinField& field, const Line& line) {
    std::vector<PicturePoint> normals;
    std::vector<std::optional<double>> seen;
    for (std::size_t n = 0; n < line.size(); ++n) {
        normals.push_back(across(line, n));
        seen.push_back(middleAcross(field, line[n], normals.back()));
    }
    const std::vector<double> offsets = filled(seen);
    Line moved = line;
    for (std::size_t n = 0; n < line.size(); ++n) {
        moved[n] = {line[n].column + normals[n].column * offsets[n], line[n].row + normals[n].row * offsets[n]};
    }
    straightenGaps(moved, seen, kWidestGapMm * field.size().pixelsPerMm);
    const auto blank = std::count(seen.begin(), seen.end(), std::nullopt);
    return {std::move(moved), static_cast<double>(blank) / static_cast<double>(seen.size())};
}

/// An even line: what dashes' ends, letters and grain make of the middle is smoothed out, while no point leaves its
/// place by more than a quarter of a pen.
Line evened(const Line& line, std::size_t steps, double most) {
    Line even = smoothed(line, steps);
    for (std::size_t n = 0; n < line.size(); ++n) {
        const double away = apart(line[n], even[n]);
        even[n] = away > most ? between(line[n], even[n], most / away) : even[n];
    }
    return smoothed(even, 1);
}

/// Where the line is one of two that run side by side (a road's casing), how far across its twin lies; 0 where it is
/// not. Two that have a third beside them are no road.
double twinOf(VeinField& field, const Line& line) {
    const int most = static_cast<int>(kWidestRoadMm * field.size().pixelsPerMm);
    const int least = static_cast<int>(2 * field.halfWidth() + 1.5);
    std::vector<int> seen(static_cast<std::size_t>(2 * most + 1), 0);
    for (std::size_t n = 0; n < line.size(); ++n) {
        const PicturePoint normal = across(line, n);
        for (const int side : {-1, 1}) {
            for (int u = least; u <= most; ++u) {
                const double by = side * u;
                if (field.memberAt({line[n].column + normal.column * by, line[n].row + normal.row * by}) > 0.5) {
                    const int at = most + side * u;
                    ++seen[static_cast<std::size_t>(at)];
                    break;
                }
            }
        }
    }
    const auto share = [&](int by) {
        int sum = 0;
        for (int u = std::max(-most, by - 1); u <= std::min(most, by + 1); ++u) {
            const int at = most + u;
            sum += seen[static_cast<std::size_t>(at)];
        }
        return sum / static_cast<double>(line.size());
    };
    int best = least;
    for (int by = -most; by <= most; ++by) {
        best = share(by) > share(best) ? by : best;
    }
    return share(best) > 0.7 && share(-best) < 0.35 ? best + (best > 0 ? 0.5 : -0.5) : 0;
}

Line shifted(const Line& line, double by) {
    Line moved;
    for (std::size_t n = 0; n < line.size(); ++n) {
        const PicturePoint normal = across(line, n);
        moved.push_back({line[n].column + normal.column * by, line[n].row + normal.row * by});
    }
    return moved;
}

double beside(PicturePoint at, PicturePoint a, PicturePoint b) {
    const double square = (b.column - a.column) * (b.column - a.column) + (b.row - a.row) * (b.row - a.row);
    const double along = (at.column - a.column) * (b.column - a.column) + (at.row - a.row) * (b.row - a.row);
    return apart(at, between(a, b, square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0));
}

}  // namespace

std::vector<PicturePoint> centreLine(VeinField& field, const std::vector<Cell>& path) {
    const double step = std::max(1.0, field.size().pixelsPerMm / 6);
    Line line = smoothed(resampled(middles(path), step), 3);
    double blank = 0;
    for (int round = 0; round < 2; ++round) {
        Centred found = centred(field, line);
        line = smoothed(found.line, 2);
        blank = found.blank;
    }
    const double twin = twinOf(field, line);
    line = twin == 0 ? line : smoothed(shifted(line, twin / 2), 2);
    return evened(line, blank > kDashed ? kEvenDashedSteps : kEvenSteps, kEvenMm * field.size().pixelsPerMm);
}

std::vector<PicturePoint> simplified(const std::vector<PicturePoint>& line, double tolerance) {
    Line fewer;
    for (const std::size_t n :
         geodesy::placesToKeep(line.size(), tolerance, [&](std::size_t at, std::size_t from, std::size_t to) {
             return beside(line[at], line[from], line[to]);
         })) {
        fewer.push_back(line[n]);
    }
    return fewer;
}

}  // namespace crosstick::terrain
