#include "core/terrain/vein_path.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

constexpr int kStraight = 10, kAslant = 14;  // a step's length in tenths of a cell
constexpr std::size_t kBuckets = 1024;       // more than any step adds to the key
constexpr std::uint32_t kUnreached = 0xffffffffU;

struct Step {
    int column, row, length;
};
constexpr std::array kNeighbours{Step{1, 0, kStraight},  Step{1, 1, kAslant},    Step{0, 1, kStraight},
                                 Step{-1, 1, kAslant},   Step{-1, 0, kStraight}, Step{-1, -1, kAslant},
                                 Step{0, -1, kStraight}, Step{1, -1, kAslant}};

/// What is known of the cells, in tiles made when the search comes to them.
class Reached {
  public:
    struct Mark {
        std::uint32_t cost = kUnreached;
        std::uint8_t by = 0;  ///< the step that led here
    };
    Reached(int columns, int rows)
        : across_((static_cast<std::size_t>(columns) + kSide - 1) / kSide),
          tiles_(across_ * ((static_cast<std::size_t>(rows) + kSide - 1) / kSide)) {}
    [[nodiscard]] Mark& at(Cell cell) {
        const auto column = static_cast<std::size_t>(cell.column);
        const auto row = static_cast<std::size_t>(cell.row);
        auto& tile = tiles_[row / kSide * across_ + column / kSide];
        if (!tile) {
            tile = std::make_unique<std::array<Mark, kSide * kSide>>();
        }
        return (*tile)[row % kSide * kSide + column % kSide];
    }

  private:
    static constexpr std::size_t kSide = 64;
    std::size_t across_;
    std::vector<std::unique_ptr<std::array<Mark, kSide * kSide>>> tiles_;
};

class Search {
  public:
    Search(VeinField& field, Cell from, Cell to, double most)
        : field_(field),
          from_(from),
          to_(to),
          reached_(field.columns(), field.rows()),
          buckets_(kBuckets),
          mostCost_(kStraight * most) {
        most_ = 1.7 * apart(from, to) + 20 * field.size().pixelsPerMm;
    }

    Result<std::vector<Cell>> run() {
        reached_.at(from_).cost = 0;
        push(from_, 0);
        while (waiting_ > 0 && static_cast<double>(key_) <= mostCost_) {
            auto& bucket = buckets_[key_ % kBuckets];
            if (bucket.empty()) {
                ++key_;
                continue;
            }
            const Waiting next = bucket.back();
            bucket.pop_back();
            --waiting_;
            if (next.cost != reached_.at(next.cell).cost) {
                continue;  // a better way led here meanwhile
            }
            if (next.cell == to_) {
                return traced();
            }
            spread(next);
            if (field_.fault()) {
                return tl::unexpected(*field_.fault());
            }
        }
        return std::vector<Cell>{};
    }

  private:
    struct Waiting {
        Cell cell;
        std::uint32_t cost;
    };
    VeinField& field_;
    Cell from_, to_;
    Reached reached_;
    std::vector<std::vector<Waiting>> buckets_;
    std::size_t key_ = 0, waiting_ = 0;
    double most_ = 0;
    double mostCost_;  ///< in tenths of a cell, as the keys are

    static double apart(Cell a, Cell b) { return std::hypot(a.column - b.column, a.row - b.row); }

    [[nodiscard]] bool isInReach(Cell cell) const { return apart(cell, from_) + apart(cell, to_) <= most_; }

    /// At least so much to the goal.
    [[nodiscard]] std::uint32_t toGo(Cell cell) const {
        const int across = std::abs(cell.column - to_.column);
        const int down = std::abs(cell.row - to_.row);
        return static_cast<std::uint32_t>(kStraight * std::max(across, down) +
                                          (kAslant - kStraight) * std::min(across, down));
    }

    void push(Cell cell, std::uint32_t cost) {
        const std::size_t key = cost + toGo(cell);
        if (waiting_ == 0 && cost == 0) {
            key_ = key;
        }
        buckets_[key % kBuckets].push_back({cell, cost});
        ++waiting_;
    }

    void spread(const Waiting& from) {
        for (std::size_t n = 0; n < kNeighbours.size(); ++n) {
            const Step& step = kNeighbours[n];
            const Cell cell{from.cell.column + step.column, from.cell.row + step.row};
            if (cell.column < 0 || cell.row < 0 || cell.column >= field_.columns() || cell.row >= field_.rows()) {
                continue;
            }
            Reached::Mark& mark = reached_.at(cell);
            if (mark.cost <= from.cost + static_cast<std::uint32_t>(step.length)) {
                continue;  // whatever the cell costs, this is no better way
            }
            const auto over = field_.costAt(cell);
            const std::uint32_t cost = from.cost + static_cast<std::uint32_t>(step.length * over.value_or(0));
            if (over && cost < mark.cost && (mark.cost != kUnreached || isInReach(cell))) {
                mark = {cost, static_cast<std::uint8_t>(n)};
                push(cell, cost);
            }
        }
    }

    std::vector<Cell> traced() {
        std::vector<Cell> path{to_};
        while (!(path.back() == from_)) {
            const Step& step = kNeighbours[reached_.at(path.back()).by];
            path.push_back({path.back().column - step.column, path.back().row - step.row});
        }
        std::reverse(path.begin(), path.end());
        return path;
    }
};

}  // namespace

Result<std::vector<Cell>> leastCostPath(VeinField& field, Cell from, Cell to, double most) {
    if (!field.costAt(from) || !field.costAt(to)) {
        return field.fault() ? Result<std::vector<Cell>>(tl::unexpected(*field.fault())) : std::vector<Cell>{};
    }
    return Search(field, from, to, most).run();
}

double costAlong(VeinField& field, const std::vector<Cell>& path) {
    int tenths = 0;
    for (std::size_t n = 1; n < path.size(); ++n) {
        const bool isAslant = path[n].column != path[n - 1].column && path[n].row != path[n - 1].row;
        tenths += (isAslant ? kAslant : kStraight) * field.costAt(path[n]).value_or(VeinCost::kOff);
    }
    return static_cast<double>(tenths) / kStraight;
}

}  // namespace crosstick::terrain
