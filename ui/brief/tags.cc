#include "ui/brief/tags.h"

#include <algorithm>
#include <array>

namespace crosstick::brief {
namespace {

constexpr double kBeside = 20;  ///< from the spot to the tag, as the reading tag lies
constexpr double kClear = 8;    ///< round a spot nothing lies
constexpr double kApart = 6;
constexpr int kRings = 8;

/// Where a tag may lie at a distance, the best first.
std::array<QRectF, 8> placesAt(const TagWish& wish, double off) {
    const double wide = wish.size.width();
    const double high = wish.size.height();
    const QPointF s = wish.spot;
    const auto at = [&](double x, double y) { return QRectF(QPointF(s.x() + x, s.y() + y), wish.size); };
    return {at(off, off),       at(off, -off - high),       at(-off - wide, off), at(-off - wide, -off - high),
            at(off, -high / 2), at(-off - wide, -high / 2), at(-wide / 2, off),   at(-wide / 2, -off - high)};
}

}  // namespace

std::vector<std::optional<QRectF>> layTags(const std::vector<TagWish>& wishes, const QRectF& room) {
    std::vector<std::optional<QRectF>> laid(wishes.size());
    std::vector<QRectF> taken;
    const auto isFree = [&](const QRectF& place) {
        const QRectF round = place.adjusted(-kApart, -kApart, kApart, kApart);
        return room.contains(place) &&
               std::none_of(taken.begin(), taken.end(), [&](const QRectF& t) { return t.intersects(round); }) &&
               std::none_of(wishes.begin(), wishes.end(), [&](const TagWish& w) {
                   return place.adjusted(-kClear, -kClear, kClear, kClear).contains(w.spot);
               });
    };
    for (std::size_t n = 0; n < wishes.size(); ++n) {
        for (int ring = 0; room.contains(wishes[n].spot) && !laid[n] && ring < kRings; ++ring) {
            for (const QRectF& place : placesAt(wishes[n], kBeside * (1 + 1.5 * ring))) {
                if (isFree(place)) {
                    laid[n] = place;
                    taken.push_back(place);
                    break;
                }
            }
        }
    }
    return laid;
}

}  // namespace crosstick::brief
