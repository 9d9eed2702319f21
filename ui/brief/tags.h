#pragma once

#include <optional>
#include <vector>

#include <QPointF>
#include <QRectF>
#include <QSizeF>

namespace crosstick::brief {

/// A tag that wants room: the spot it speaks of, and how large it is.
struct TagWish {
    QPointF spot;
    QSizeF size;
};

/// Lays tags beside their spots, all inside the room, none over another and none over any spot: right and below first,
/// then the other corners, then farther and farther off. Nothing for one whose spot lies outside or that finds no room.
/// Logical pixels.
[[nodiscard]] std::vector<std::optional<QRectF>> layTags(const std::vector<TagWish>& wishes, const QRectF& room);

}  // namespace crosstick::brief
