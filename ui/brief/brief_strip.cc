#include "ui/brief/brief_strip.h"

#include <algorithm>

#include <QFontMetrics>
#include <QPainter>

namespace crosstick::brief {
namespace {

constexpr int kInside = 12;
constexpr int kSquare = 24;
constexpr int kApart = 4;
constexpr int kTitle = 28;
constexpr int kState = 15;
constexpr int kKeys = 12;

/// Squares of the phases from the left; gives where they end.
int paintSquares(QPainter& painter, const QRect& strip, const StripWords& words, const look::Colours& c) {
    int left = strip.left() + kInside;
    painter.setFont(look::face(12, look::Weight::Bold));
    for (const int phase : words.phases) {
        const QRect square(left, strip.center().y() - kSquare / 2, kSquare, kSquare);
        const bool isTold = phase == words.phase;
        painter.fillRect(square, isTold ? c.ink : c.lino);
        painter.setPen(QPen(isTold ? c.ink : c.edge, 1));
        painter.drawRect(square.adjusted(0, 0, -1, -1));
        painter.setPen(isTold ? c.well : c.ink);
        painter.drawText(square, Qt::AlignCenter, QString::number(phase));
        left += kSquare + kApart;
    }
    return words.phases.empty() ? left : left + kInside;
}

}  // namespace

void paintStrip(QPainter& painter, const QRect& strip, const StripWords& words, look::Light light) {
    const look::Colours c = look::colours(light);
    painter.fillRect(strip, c.lino);
    painter.fillRect(QRect(strip.left(), strip.top(), strip.width(), 2), c.ink);
    const int left = paintSquares(painter, strip, words, c);
    const QFontMetrics state(look::face(kState)), keys(look::face(kKeys));
    const int most = (strip.width() - left) / 2;
    const int wide = std::min(most, std::max(state.horizontalAdvance(words.state), keys.horizontalAdvance(words.keys)));
    const QRect right(strip.right() - kInside - wide, strip.top() + 4, wide + 1, strip.height() - 8);
    const auto row = [&](const QRect& place, int flags, const QFont& font, const QColor& ink, const QString& text) {
        painter.setFont(font);
        painter.setPen(ink);
        painter.drawText(place, flags, QFontMetrics(font).elidedText(text, Qt::ElideRight, place.width()));
    };
    row(QRect(left, strip.top() + 2, right.left() - 2 * kInside - left, strip.height() - 2),
        static_cast<int>(Qt::AlignVCenter | Qt::AlignLeft), look::face(kTitle, look::Weight::Bold), c.ink, words.title);
    row(right, static_cast<int>(Qt::AlignTop | Qt::AlignRight), look::face(kState), c.ink, words.state);
    row(right, static_cast<int>(Qt::AlignBottom | Qt::AlignRight), look::face(kKeys), c.inkTwo, words.keys);
}

}  // namespace crosstick::brief
