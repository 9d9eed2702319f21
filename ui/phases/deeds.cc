#include "ui/phases/deeds.h"

#include <algorithm>

#include <QPainter>

#include "ui/phases/focus_outline.h"

namespace crosstick::phases {
namespace {

constexpr int kCapHigh = 20;
constexpr int kLeastCap = 20;
constexpr int kBeside = 8;
constexpr int kInside = 5;

int capWide(const QString& key) {
    return std::max(kLeastCap, QFontMetrics(look::face(11)).horizontalAdvance(key) + 2 * kInside);
}

}  // namespace

DeedButton::DeedButton(const Deed& deed, const look::Light& light, QWidget* parent)
    : QAbstractButton(parent), key_(deed.key), isDone_(static_cast<bool>(deed.does)), light_(light) {
    setText(deed.words);
    setAccessibleName(tr("%1: %2").arg(deed.key, deed.words));
    setFocusPolicy(isDone_ ? Qt::TabFocus : Qt::NoFocus);
    if (isDone_) {
        setToolTip(accessibleName());
        connect(this, &QAbstractButton::clicked, this, [does = deed.does] { does(); });
    }
}

QSize DeedButton::sizeHint() const {
    return {capWide(key_) + kBeside + QFontMetrics(look::face(12)).horizontalAdvance(text()) + 4, kHigh};
}

void DeedButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void DeedButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void DeedButton::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    const QRect cap(0, (height() - kCapHigh) / 2, capWide(key_), kCapHigh);
    const bool isUnder = isDone_ && underMouse();
    if (isDone_) {
        painter.fillRect(cap, c.well);
    }
    painter.setPen(QPen(isUnder ? c.ink : c.edge, 1));
    painter.drawRect(cap.adjusted(0, 0, -1, -1));
    painter.setPen(c.ink);
    painter.setFont(look::face(11));
    painter.drawText(cap, Qt::AlignCenter, key_);
    painter.setPen(isDone_ ? c.ink : c.inkTwo);
    painter.setFont(look::face(12));
    const QRect rest(cap.right() + kBeside, 0, width() - cap.right() - kBeside, height());
    painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(text(), Qt::ElideRight, rest.width()));
    outlineFocus(painter, *this, c);
}

}  // namespace crosstick::phases
