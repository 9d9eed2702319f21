#include "ui/phases/phase_square.h"

#include <algorithm>

#include <QPainter>

#include "ui/phases/focus_outline.h"

namespace crosstick::phases {
namespace {

constexpr int kHigh = 23;
constexpr int kSquare = 20;
constexpr int kMostNameWide = 150;
constexpr int kLeastName = 60;

}  // namespace

PhaseSquare::PhaseSquare(int number, const QString& name, const look::Light& light, QWidget* parent)
    : QAbstractButton(parent), number_(number), name_(name), light_(light) {
    setCheckable(true);
    setFocusPolicy(Qt::TabFocus);
    setAccessibleName(number == 0 ? tr("All phases") : tr("Phase %1, %2").arg(number).arg(name));
    setToolTip(accessibleName());
}

void PhaseSquare::setNamed(bool named) {
    if (named_ != named) {
        named_ = named;
        updateGeometry();
        update();
    }
}

void PhaseSquare::setTimes(const QString& times) {
    if (times_ != times) {
        times_ = times;
        setAccessibleDescription(times);
        update();
    }
}

QSize PhaseSquare::sizeHint() const {
    if (!named_ || name_.isEmpty()) {
        return {kSquare + 2, kHigh};
    }
    const QFontMetrics metrics(look::face(12, look::Weight::Bold));
    return {kSquare + 6 + std::min(metrics.horizontalAdvance(name_), kMostNameWide) + 4, kHigh};
}

void PhaseSquare::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    const QRect square(1, 1, kSquare, kSquare);
    painter.fillRect(square, isChecked() ? c.ink : c.well);
    painter.setPen(QPen(isChecked() ? c.ink : c.edge, 1));
    painter.drawRect(square.adjusted(0, 0, -1, -1));
    painter.setPen(isChecked() ? c.well : c.ink);
    painter.setFont(look::face(12, look::Weight::Bold));
    painter.drawText(square, Qt::AlignCenter, number_ == 0 ? QStringLiteral("all") : QString::number(number_));
    painter.setPen(isChecked() ? c.ink : c.inkTwo);
    painter.setFont(look::face(12, isChecked() ? look::Weight::Bold : look::Weight::Regular));
    QRect room(kSquare + 6, 0, width() - kSquare - 6, kHigh);
    const QFontMetrics plain(look::face(12));
    const int times = plain.horizontalAdvance(times_);
    if (times > 0 && room.width() > times + kLeastName) {
        painter.save();
        painter.setFont(look::face(12));
        painter.drawText(room.adjusted(0, 0, -4, 0), Qt::AlignVCenter | Qt::AlignRight, times_);
        painter.restore();
        room.setWidth(room.width() - times - 12);
    }
    painter.drawText(room, Qt::AlignVCenter | Qt::AlignLeft,
                     named_ ? painter.fontMetrics().elidedText(name_, Qt::ElideRight, room.width()) : QString());
    outlineFocus(painter, *this, c);
}

}  // namespace crosstick::phases
