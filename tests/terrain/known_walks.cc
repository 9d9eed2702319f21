#include "tests/terrain/known_walks.h"

#include <algorithm>
#include <optional>

namespace crosstick::testing {
namespace {

constexpr double kThreeKm = 120;  // millimetres at 1:25,000
constexpr double kOnTheLineMm = 0.8;
constexpr double kHandMm = 0.15;  // spread of a click about the line's middle, each way
constexpr double kEdgeMm = 4;
constexpr double kPaceMm = 0.3;

using Line = std::vector<terrain::PicturePoint>;

PaperLine onPaper(const Line& found, double pixelsPerMm) {
    PaperLine line;
    for (const terrain::PicturePoint point : found) {
        line.push_back({point.column / pixelsPerMm, point.row / pixelsPerMm});
    }
    return line;
}

/// The middle of the longest stretch of a walk that a found line missed.
std::optional<PaperPoint> whereItStrays(const PaperLine& found, const Walk& walk) {
    const PaperLine truth = paced(walk.truth, kPaceMm);
    std::size_t longest = 0;
    std::size_t end = 0;
    std::size_t run = 0;
    for (std::size_t n = 0; n < truth.size(); ++n) {
        run = besideLine(truth[n], found) > kOnTheLineMm ? run + 1 : 0;
        if (run > longest) {
            longest = run;
            end = n;
        }
    }
    return longest == 0 ? std::nullopt : std::optional(truth[end - longest / 2]);
}

}  // namespace

Walks::Walks(const MadeSheet& sheet, std::uint32_t seed) : sheet_(sheet), random_(seed) {
    for (const KnownLine& line : sheet.lines) {
        styles_.push_back(line.style);
    }
    std::sort(styles_.begin(), styles_.end());
    styles_.erase(std::unique(styles_.begin(), styles_.end()), styles_.end());
}

Walk Walks::next() {
    const double side = sheet_.pixels.columns / sheet_.pixelsPerMm;
    for (;;) {
        const std::string& style = styles_[random_() % styles_.size()];
        const KnownLine& known = sheet_.lines[random_() % sheet_.lines.size()];
        if (known.style != style) {
            continue;
        }
        const double all = lengthOf(known.line);
        const bool isRing = known.style == "contour" || known.style == "shore";
        const double length = std::min(any(10, kThreeKm), (isRing ? 0.3 : 0.9) * all - 7);
        const double from = any(3, std::max(3.1, all - length - 3));
        Walk walk{&known, stretch(known.line, from, from + length), {}, {}};
        const bool isInside = length > 5 && std::all_of(walk.truth.begin(), walk.truth.end(), [&](PaperPoint p) {
                                  return std::min(p.x, p.y) > kEdgeMm && std::max(p.x, p.y) < side - kEdgeMm;
                              });
        if (isInside) {
            const PaperPoint middle = stretch(known.line, from + length / 2, from + length / 2 + 0.1).front();
            walk.clicks = {clicked(walk.truth.front()), clicked(middle), clicked(walk.truth.back())};
            walk.slip = {walk.clicks[1].column / sheet_.pixelsPerMm - middle.x,
                         walk.clicks[1].row / sheet_.pixelsPerMm - middle.y};
            return walk;
        }
    }
}

double Walks::any(double from, double to) {
    return std::uniform_real_distribution<double>(from, to)(random_);
}

terrain::PicturePoint Walks::clicked(PaperPoint at) {
    std::normal_distribution<double> hand(0, kHandMm);
    const double x = at.x + hand(random_);
    const double y = at.y + hand(random_);
    return {x * sheet_.pixelsPerMm, y * sheet_.pixelsPerMm};
}

Grade gradeOf(const std::vector<terrain::PicturePoint>& found, const Walk& walk, double pixelsPerMm) {
    if (found.empty()) {
        return {};
    }
    const PaperLine line = onPaper(found, pixelsPerMm);
    Grade grade;
    double off = 0;
    const PaperLine places = paced(line, kPaceMm);
    for (const PaperPoint place : places) {
        const double away = besideLine(place, walk.known->line);
        grade.meanMm += away / static_cast<double>(places.size());
        off += away > kOnTheLineMm ? 1 : 0;
    }
    double missed = 0;
    const PaperLine truth = paced(walk.truth, kPaceMm);
    for (const PaperPoint place : truth) {
        missed += besideLine(place, line) > kOnTheLineMm ? 1 : 0;
    }
    grade.isRight =
        off <= 0.1 * static_cast<double>(places.size()) && missed <= 0.1 * static_cast<double>(truth.size());
    return grade;
}

std::vector<terrain::PicturePoint> foundAlong(const terrain::Picture& picture, terrain::PenSize size, const Walk& walk,
                                              Clicks clicks) {
    const auto& [start, half, end] = walk.clicks;
    terrain::PicturePoint between = half;
    std::optional<terrain::Vein> like;
    if (clicks != Clicks::HalfWay) {
        auto atOnce = terrain::followedLine(picture, size, start, end);
        if (clicks == Clicks::Two) {
            return atOnce ? std::move(atOnce->line) : Line{};
        }
        const double k = size.pixelsPerMm;
        if (const auto strays = atOnce ? whereItStrays(onPaper(atOnce->line, k), walk) : std::nullopt) {
            between = {(strays->x + walk.slip.x) * k, (strays->y + walk.slip.y) * k};
        }
        like = atOnce ? std::optional(atOnce->vein) : std::nullopt;
    }
    auto first = terrain::followedLine(picture, size, start, between, like);
    const auto second = first ? terrain::followedLine(picture, size, between, end, like ? like : first->vein)
                              : tl::unexpected(first.error());
    if (!second) {
        return {};
    }
    first->line.insert(first->line.end(), second->line.begin(), second->line.end());
    return std::move(first->line);
}

}  // namespace crosstick::testing
