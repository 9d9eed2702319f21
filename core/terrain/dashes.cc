#include "core/terrain/dashes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace crosstick::terrain {
namespace {

constexpr double kLookMm = 12;  // along the line, to each side
constexpr double kWidestGapMm = 1.6;
constexpr double kLeastGapMm = 0.3;
constexpr double kIsInk = 0.45;
constexpr std::size_t kLeastDashes = 2;  // whole ones

/// Goes along a line cell by cell, straight on where it is broken, and notes where there is ink.
class Walker {
  public:
    Walker(VeinField& field, PicturePoint at, double turn) : field_(field), at_(at), turn_(turn) {}

    /// For every cell walked whether there is ink; ends where the line does.
    std::vector<bool> walk() {
        const double mm = field_.size().pixelsPerMm;
        std::vector<bool> ink;
        double blank = 0;
        while (static_cast<double>(ink.size()) < kLookMm * mm && blank < kWidestGapMm * mm) {
            at_ = {at_.column + std::cos(turn_), at_.row + std::sin(turn_)};
            const bool isInk = steer();
            blank = isInk ? 0 : blank + 1;
            ink.push_back(isInk);
        }
        ink.resize(ink.size() - static_cast<std::size_t>(blank));
        return ink;
    }

  private:
    VeinField& field_;
    PicturePoint at_;
    double turn_;

    /// To the middle of the ink across the way, and a little into its direction; false where there is none.
    bool steer() {
        double sum = 0;
        double moment = 0;
        double most = 0;
        for (double u = -2.5; u <= 2.5; u += 0.5) {
            const double member = field_.memberAt({at_.column - std::sin(turn_) * u, at_.row + std::cos(turn_) * u});
            sum += member;
            moment += member * u;
            most = std::max(most, member);
        }
        if (most < kIsInk) {
            return false;
        }
        const double off = std::clamp(moment / sum, -1.0, 1.0);
        at_ = {at_.column - std::sin(turn_) * off * 0.5, at_.row + std::cos(turn_) * off * 0.5};
        turn_ += 0.08 * off;
        return true;
    }
};

/// The lengths of the pieces of ink between gaps.
std::vector<double> runsOf(const std::vector<bool>& ink, double leastGap) {
    std::vector<double> runs;
    double blank = 1e9;
    for (const bool isInk : ink) {
        if (isInk && blank >= leastGap) {
            runs.push_back(1);
        } else if (isInk) {
            runs.back() += blank + 1;
        }
        blank = isInk ? 0 : blank + 1;
    }
    return runs;
}

}  // namespace

std::optional<double> dashAt(VeinField& field, const Vein& vein) {
    std::vector<bool> ink = Walker(field, vein.centre, vein.turn + std::numbers::pi).walk();
    std::reverse(ink.begin(), ink.end());
    ink.push_back(true);
    const std::vector<bool> ahead = Walker(field, vein.centre, vein.turn).walk();
    ink.insert(ink.end(), ahead.begin(), ahead.end());
    const std::vector<double> runs = runsOf(ink, kLeastGapMm * field.size().pixelsPerMm);
    if (runs.size() < 2 + kLeastDashes) {
        return std::nullopt;
    }
    std::vector<double> whole(runs.begin() + 1, runs.end() - 1);  // the outer ones may be cut
    std::sort(whole.begin(), whole.end());
    const double middle = whole[whole.size() / 2];
    double even = 0;
    double evenInk = 0;
    for (const double run : whole) {
        const bool isEven = run > 0.6 * middle && run < 1.6 * middle;
        even += isEven ? 1 : 0;
        evenInk += isEven ? run : 0;
    }
    // Crumbs between two things that lie across an unbroken line are even now and then, but they are little of it.
    const double allInk = std::accumulate(runs.begin(), runs.end(), 0.0);
    const bool isDashed = even >= 0.6 * static_cast<double>(whole.size()) && evenInk >= allInk / 3;
    return isDashed ? std::optional(middle) : std::nullopt;
}

}  // namespace crosstick::terrain
