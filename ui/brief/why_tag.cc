#include "ui/brief/why_tag.h"

#include <algorithm>

#include <QCoreApplication>
#include <QFontMetrics>

namespace crosstick::brief {
namespace {

constexpr int kWide = 260;
constexpr int kInside = 10;
constexpr int kBar = 4;
constexpr int kLetters = 13;
constexpr int kQuietLetters = 11;
constexpr int kQuietInside = 5;
constexpr int kWrapped =
    static_cast<int>(Qt::AlignTop) | static_cast<int>(Qt::AlignLeft) | static_cast<int>(Qt::TextWordWrap);

QFont bold() {
    return look::face(kLetters, look::Weight::Bold);
}

}  // namespace

QString WhyTag::quiet() const {
    return QFontMetrics(look::face(kQuietLetters))
        .elidedText(QCoreApplication::translate("Brief", "%1: no why").arg(name), Qt::ElideMiddle, kWide);
}

QSizeF WhyTag::size() const {
    if (why.isEmpty()) {
        const QFontMetrics letters(look::face(kQuietLetters));
        return {letters.horizontalAdvance(quiet()) + 2.0 * kQuietInside, letters.height() + 4.0};
    }
    const QRect lines = QFontMetrics(look::face(kLetters)).boundingRect(QRect(0, 0, kWide, 1000), kWrapped, why);
    const QFontMetrics head(bold());
    const int wide = std::max(lines.width(), std::min(kWide, head.horizontalAdvance(name)));
    return {static_cast<double>(wide + kBar + 2 * kInside), lines.height() + head.height() + 12.0};
}

void WhyTag::paint(QPainter& painter, const QRectF& place, const look::Colours& c) const {
    painter.fillRect(place, c.well);
    painter.setPen(QPen(why.isEmpty() ? c.rule : c.edge, 1));
    painter.drawRect(place.adjusted(0.5, 0.5, -0.5, -0.5));
    if (why.isEmpty()) {
        painter.setPen(c.inkTwo);
        painter.setFont(look::face(kQuietLetters));
        painter.drawText(place, Qt::AlignCenter, quiet());
        return;
    }
    painter.fillRect(QRectF(place.topLeft(), QSizeF(kBar, place.height())), c.ours);
    const QRectF inside = place.adjusted(kBar + kInside, 5, -kInside + 1, -5);
    painter.setPen(c.ink);
    painter.setFont(bold());
    painter.drawText(inside, Qt::AlignTop | Qt::AlignLeft,
                     QFontMetrics(bold()).elidedText(name, Qt::ElideRight, kWide));
    painter.setFont(look::face(kLetters));
    painter.drawText(inside.adjusted(0, QFontMetrics(bold()).height() + 2, 0, 0), kWrapped, why);
}

}  // namespace crosstick::brief
