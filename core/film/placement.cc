#include "core/film/placement.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

#include "core/film/furniture.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;

constexpr double kHeadRow = 4;  ///< marking and notches
constexpr double kRowGap = 1.4;
constexpr double kHead = kHeadRow + kRowGap + kCornerRoom;
constexpr double kFootRow = 3.75;  ///< marking with what reaches below its base line
constexpr double kFoot = kCornerRoom + kRowGap + kFootRow;
constexpr double kBeside = 2.0;  ///< furniture from the window
constexpr double kApart = 3.0;   ///< pieces from each other
constexpr double kInset = 3.0;   ///< furniture inside the window from its frame
constexpr double kStep = 1.5;    ///< places are tried this far apart
constexpr double kEdgeRoom = 0.5;
constexpr double kHalfPen = 0.125;  ///< of the frame, where it lies at the edge of what may be printed
constexpr double kLeftStrip = 8;    ///< the upright bar and its gap

/// Which right edge the block stands flush with.
enum class BlockAt { WindowSide, PaperSide };

/// One way to lie on the paper: the window's shift from the upper left corner of what it may take.
struct Attempt {
    Point shift;
    BlockAt block;
};

Box boxAt(Point corner, Size size) {
    return {corner.x, corner.y, corner.x + size.width, corner.y + size.height};
}

double distance(Point a, Point b) {
    return std::abs(a.x - b.x) + std::abs(a.y - b.y);
}

/// Places pieces one after the other round a window that lies fast.
class Arrangement {
  public:
    Arrangement(const Box& usable, Point windowAt, const PiecesToPlace& pieces, const Occupancy& drawn)
        : usable_(usable), pieces_(pieces), drawn_(drawn), window_(boxAt(windowAt, pieces.window)) {
        places_.windowAt = windowAt;
        const double middle = usable.middle().x;
        const auto middled = [&](double top) {
            return boxAt({middle - pieces.marking.width / 2, top}, pieces.marking);
        };
        places_.topMarking = middled(usable.top);
        places_.footMarking = middled(usable.bottom - kFootRow);
        places_.notches = boxAt({usable.right - pieces.notches.width, usable.top}, pieces.notches);
        taken_ = {places_.topMarking, places_.footMarking, places_.notches};
    }

    /// Wished for: the block lower right, the bars and north lower left.
    std::optional<Places> placed(BlockAt blockAt) {
        const double low = usable_.bottom;
        const Box& w = window_;
        const double blockRight = blockAt == BlockAt::PaperSide ? usable_.right : w.right;
        const bool fits =
            place(pieces_.block, {blockRight - pieces_.block.width, low - pieces_.block.height},
                  {w.right - kInset - pieces_.block.width, w.bottom - kInset - pieces_.block.height}, 3,
                  places_.block) &&
            place(pieces_.uprightBar,
                  {w.left - kBeside - pieces_.uprightBar.width, w.bottom - pieces_.uprightBar.height},
                  {w.left + kInset, w.bottom - kInset - pieces_.uprightBar.height}, 1, places_.uprightBar) &&
            place(pieces_.levelBar,
                  {w.left + pieces_.north.width + 2 * kApart, low - kFootRow - kApart - pieces_.levelBar.height},
                  {w.left + kInset, w.bottom - kInset - pieces_.levelBar.height}, 1, places_.levelBar) &&
            place(pieces_.north, {w.left, low - pieces_.north.height}, {w.left + kInset, w.top + kInset}, 1,
                  places_.north);
        return fits ? std::optional(places_) : std::nullopt;
    }

  private:
    Box usable_;
    const PiecesToPlace& pieces_;
    const Occupancy& drawn_;
    Box window_;
    std::vector<Box> taken_;
    Places places_;

    [[nodiscard]] bool meetsTaken(const Box& box) const {
        const Box air = box.grown(kApart);
        return std::any_of(taken_.begin(), taken_.end(), [&](const Box& other) { return air.meets(other); });
    }

    bool place(Size size, Point outside, Point inside, int weight, Box& into) {
        if (size.width <= 0) {
            into = Box{};
            return true;
        }
        std::optional<Box> found = besideWindow(size, outside);
        if (!found) {
            found = insideWindow(size, inside);
            if (!found) {
                return false;
            }
            places_.inside += weight;
            places_.clashes += drawn_.within(onFilm(*found).grown(kBeside));
        }
        into = *found;
        taken_.push_back(*found);
        return true;
    }

    [[nodiscard]] Box onFilm(const Box& box) const {
        return {box.left - window_.left, box.top - window_.top, box.right - window_.left, box.bottom - window_.top};
    }

    /// The place with the least cost among those kStep apart round an anchor, inside some limits.
    static std::optional<Box> cheapest(const Box& limits, Size size, Point anchor,
                                       const std::function<std::optional<double>(const Box&)>& cost) {
        std::optional<Box> best;
        double least = std::numeric_limits<double>::infinity();
        const Point clamped{std::clamp(anchor.x, limits.left, std::max(limits.left, limits.right - size.width)),
                            std::clamp(anchor.y, limits.top, std::max(limits.top, limits.bottom - size.height))};
        const int left = static_cast<int>((clamped.x - limits.left) / kStep);
        const int right = static_cast<int>((limits.right - size.width - clamped.x) / kStep);
        const int up = static_cast<int>((clamped.y - limits.top) / kStep);
        const int down = static_cast<int>((limits.bottom - size.height - clamped.y) / kStep);
        for (int row = -up; row <= down; ++row) {
            for (int column = -left; column <= right; ++column) {
                const Box box = boxAt(clamped + Point{column * kStep, row * kStep}, size);
                const auto price = limits.grown(1e-6).contains(box) ? cost(box) : std::nullopt;
                if (price && *price < least) {
                    least = *price;
                    best = box;
                }
            }
        }
        return best;
    }

    [[nodiscard]] std::optional<Box> besideWindow(Size size, Point anchor) const {
        const Box withCoordinates{window_.left - kBeside, window_.top - kCornerRoom - kBeside, window_.right + kBeside,
                                  window_.bottom + kCornerRoom + kBeside};
        return cheapest(usable_, size, anchor, [&](const Box& box) -> std::optional<double> {
            // A hair less, so that what is placed exactly at the window's side does not count as meeting it.
            if (box.grown(-1e-6).meets(withCoordinates) || meetsTaken(box)) {
                return std::nullopt;
            }
            return distance({box.left, box.top}, anchor);
        });
    }

    /// Along the frame only: a block in the middle of a film would be taken for a measure.
    [[nodiscard]] std::optional<Box> insideWindow(Size size, Point anchor) const {
        const Box limits = window_.grown(-kInset);
        return cheapest(limits, size, anchor, [&](const Box& box) -> std::optional<double> {
            const bool atEdge = box.left - limits.left < kStep || limits.right - box.right < kStep ||
                                box.top - limits.top < kStep || limits.bottom - box.bottom < kStep;
            const Box film = onFilm(box);
            const bool onTick = std::any_of(pieces_.ticks.begin(), pieces_.ticks.end(),
                                            [&](const Box& tick) { return film.meets(tick); });
            if (!atEdge || onTick || meetsTaken(box)) {
                return std::nullopt;
            }
            return distance({box.left, box.top}, anchor) + 100.0 * drawn_.within(film.grown(kBeside));
        });
    }
};

}  // namespace

std::optional<Places> placeOn(const Paper& paper, const PiecesToPlace& pieces, const Occupancy& drawn) {
    const double edge = kPaperEdge.value() + kHalfPen;
    const Box usable{edge, edge, paper.width.value() - edge, paper.height.value() - edge};
    const double wide = usable.width() - pieces.window.width;
    const double high = usable.height() - pieces.window.height - kHead - kFoot;
    if (wide < -1e-6 || high < -1e-6) {
        return std::nullopt;
    }
    const double middled = wide >= kLeftStrip ? kLeftStrip + (wide - kLeftStrip) / 2 : wide / 2;
    const double blockBelow = pieces.block.height + kCornerRoom + kBeside - kFoot;
    const double blockBelowMarking = blockBelow + kFootRow + kApart;
    const double blockBeside = wide - pieces.block.width - kBeside - kApart;
    const double besideNorth = std::min(wide, pieces.north.width + kBeside + kEdgeRoom);
    const double room = std::max(0.0, high);
    const double beside = std::clamp(blockBeside, 0.0, std::max(0.0, middled));
    const double upper = std::max(0.0, high - blockBelow) / 2;
    const double higher = std::max(0.0, high - blockBelowMarking) / 2;
    const std::array attempts{
        Attempt{{middled, upper}, BlockAt::WindowSide},     Attempt{{middled, higher}, BlockAt::WindowSide},
        Attempt{{besideNorth, higher}, BlockAt::PaperSide}, Attempt{{middled, higher}, BlockAt::PaperSide},
        Attempt{{besideNorth, upper}, BlockAt::PaperSide},  Attempt{{middled, upper}, BlockAt::PaperSide},
        Attempt{{beside, room / 2}, BlockAt::PaperSide},    Attempt{{middled, room / 2}, BlockAt::WindowSide}};
    const Point least{usable.left, usable.top + kHead};
    std::optional<Places> best;
    const auto badness = [](const Places& places) { return places.clashes * 1000 + places.inside; };
    for (const Attempt& attempt : attempts) {
        const auto places = Arrangement(usable, least + attempt.shift, pieces, drawn).placed(attempt.block);
        if (places && (!best || badness(*places) < badness(*best))) {
            best = places;
        }
        if (best && best->inside == 0) {
            break;
        }
    }
    return best;
}

Paper leastPaperFor(Size window) {
    const double edges = 2 * (kPaperEdge.value() + kHalfPen);
    return {PaperMm(std::ceil(window.width + edges)), PaperMm(std::ceil(window.height + kHead + kFoot + edges))};
}

}  // namespace crosstick::film
