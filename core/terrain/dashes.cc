#include "core/terrain/dashes.h"

#include <algorithm>
#include <cmath>

namespace crosstick::terrain {
namespace {

constexpr double kLookMm = 12;  // along the line, to each side
constexpr double kWidestGapMm = 1.6;
constexpr double kLeastGapMm = 0.3;
constexpr double kIsInk = 0.45;

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

}  // namespace

Dashes dashesAt(VeinField& field, const Vein& vein) {
    constexpr double kHalfTurn = 3.141592653589793;
    std::vector<bool> ink = Walker(field, vein.centre, vein.turn + kHalfTurn).walk();
    std::reverse(ink.begin(), ink.end());
    ink.push_back(true);
    const std::vector<bool> ahead = Walker(field, vein.centre, vein.turn).walk();
    ink.insert(ink.end(), ahead.begin(), ahead.end());
    std::vector<double> runs;
    const double least = kLeastGapMm * field.size().pixelsPerMm;
    double blank = 1e9;
    for (const bool isInk : ink) {
        if (isInk && blank >= least) {
            runs.push_back(1);
        } else if (isInk) {
            runs.back() += blank + 1;
        }
        blank = isInk ? 0 : blank + 1;
    }
    Dashes dashes;
    dashes.longest = *std::max_element(runs.begin(), runs.end());
    if (runs.size() < 4) {
        return dashes;
    }
    std::vector<double> whole(runs.begin() + 1, runs.end() - 1);  // the outer ones may be cut
    std::sort(whole.begin(), whole.end());
    const double middle = whole[whole.size() / 2];
    const auto even = std::count_if(whole.begin(), whole.end(),
                                    [middle](double run) { return run > 0.6 * middle && run < 1.6 * middle; });
    if (static_cast<double>(even) >= 0.6 * static_cast<double>(whole.size())) {
        dashes.length = middle;
    }
    return dashes;
}

}  // namespace crosstick::terrain
