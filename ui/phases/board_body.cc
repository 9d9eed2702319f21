#include "ui/phases/board_body.h"

#include <utility>

#include <QPaintEvent>
#include <QPainter>

#include "ui/phases/film_card.h"

namespace crosstick::phases {
namespace {

constexpr int kInside = 5;
constexpr int kBesidePicture = 9;

}  // namespace

BoardBody::BoardBody(const look::Light& light, QWidget* parent) : QWidget(parent), light_(light) {
    setAttribute(Qt::WA_OpaquePaintEvent);
}

void BoardBody::setBand(const QRect& column) {
    if (band_ != column) {
        band_ = column;
        update();
    }
}

void BoardBody::setLanding(std::optional<QRect> line) {
    if (landing_ != line) {
        landing_ = line;
        update();
    }
}

void BoardBody::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(event->rect(), c.lino);
    if (!band_.isNull()) {
        painter.fillRect(QRect(band_.left(), 0, band_.width(), height()), c.band);
    }
    if (landing_) {
        painter.fillRect(*landing_, c.ours);
    }
}

SheetCard::SheetCard(const look::Light& light, QWidget* parent) : QWidget(parent), light_(light) {}

void SheetCard::tell(const QString& name, const QString& what, const QString& how) {
    name_ = name;
    what_ = what;
    how_ = how;
    setAccessibleName(tr("Map sheet: %1").arg(name));
    setAccessibleDescription(how.isEmpty() ? what : what + QStringLiteral("; ") + how);
    setToolTip(accessibleName());
    update();
}

void SheetCard::setPicture(const QImage& picture) {
    picture_ = picture;
    update();
}

void SheetCard::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.well);
    painter.setPen(QPen(c.edge, 1));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
    int left = kInside + 4;
    if (!picture_.isNull()) {
        painter.drawImage(QPointF(kInside, 4), picture_);
        left = kInside + FilmCard::kPicture.width() + kBesidePicture;
    }
    const int wide = width() - left - kInside;
    const auto row = [&](int top, int high, const QString& words, const QFont& font, const QColor& ink) {
        painter.setFont(font);
        painter.setPen(ink);
        painter.drawText(QRect(left, top, wide, high), Qt::AlignVCenter | Qt::AlignLeft,
                         painter.fontMetrics().elidedText(words, Qt::ElideRight, wide));
    };
    row(4, 18, name_, look::face(12, look::Weight::Bold), c.ink);
    row(21, 14, what_, look::face(11), c.inkTwo);
    row(36, 14, how_, look::face(11), c.ink);
}

}  // namespace crosstick::phases
