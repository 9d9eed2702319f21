#include "ui/phases/film_card.h"

#include <algorithm>
#include <utility>

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "ui/phases/focus_outline.h"
#include "ui/press/film_marks.h"

namespace crosstick::phases {
namespace {

constexpr int kEnd = 8;  ///< of a card, where it is taken by its end
constexpr int kInside = 6;
constexpr int kBesidePicture = 8;
constexpr int kWithPicture = 200;  ///< narrower cards have words alone
constexpr double kMark = 14;

}  // namespace

void FilmCard::setPicture(const QImage& picture) {
    picture_ = picture;
    update();
}

void FilmCard::setGaps(std::vector<QRect> gaps) {
    if (gaps_ != gaps) {
        gaps_ = std::move(gaps);
        update();
    }
}

bool FilmCard::hasPicture() const {
    return width() >= kWithPicture;
}

QRect FilmCard::nameRoom() const {
    const int left = hasPicture() ? kInside + kPicture.width() + kBesidePicture : kInside + 4;
    return {left, 4, width() - left - static_cast<int>(press::notchesWide(facts().place)) - 2, 18};
}

FilmCard::Grip FilmCard::gripAt(const QPoint& at) const {
    if (at.x() >= width() - kEnd) {
        return Grip::LastPhase;
    }
    return at.x() < kEnd ? Grip::FirstPhase : Grip::Whole;
}

void FilmCard::mousePressEvent(QMouseEvent* event) {
    FilmButton::mousePressEvent(event);
    if (event->button() == Qt::LeftButton) {
        pressed_ = event->pos();
    }
}

void FilmCard::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_) {
        setCursor(gripAt(event->pos()) == Grip::Whole ? Qt::ArrowCursor : Qt::SizeHorCursor);
        update();
        return;
    }
    if (!pulling_ && (event->pos() - *pressed_).manhattanLength() >= QApplication::startDragDistance()) {
        pulling_ = gripAt(*pressed_);
        setCursor(*pulling_ == Grip::Whole ? Qt::ClosedHandCursor : Qt::SizeHorCursor);
    }
    if (pulling_) {
        Q_EMIT pulled(*pulling_, mapToParent(event->pos()));
    }
}

void FilmCard::mouseReleaseEvent(QMouseEvent* event) {
    pressed_.reset();
    if (const auto grip = std::exchange(pulling_, std::nullopt)) {
        setDown(false);  // it was pulled and not pressed: no click comes of it
        FilmButton::mouseReleaseEvent(event);
        setCursor(Qt::ArrowCursor);
        Q_EMIT letGo(*grip, mapToParent(event->pos()));
        return;
    }
    FilmButton::mouseReleaseEvent(event);
}

void FilmCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && pulling_) {
        pressed_.reset();
        pulling_.reset();
        setDown(false);
        setCursor(Qt::ArrowCursor);
        Q_EMIT givenUp();
        return;
    }
    FilmButton::keyPressEvent(event);
}

void FilmCard::enterEvent(QEnterEvent* event) {
    setMouseTracking(true);
    FilmButton::enterEvent(event);
    update();
}

void FilmCard::leaveEvent(QEvent* event) {
    FilmButton::leaveEvent(event);
    update();
}

/// A phase that the film does not belong to, between two that it does: the board is seen, and that it goes on.
void FilmCard::paintGaps(QPainter& painter) const {
    const look::Colours c = look::colours(light());
    for (const QRect& gap : gaps_) {
        painter.fillRect(gap, c.lino);
        painter.setPen(QPen(c.edge, 1, Qt::DashLine));
        painter.drawLine(gap.left(), height() / 2, gap.right(), height() / 2);
        painter.setPen(QPen(facts().works ? c.ours : c.edge, facts().works ? 2 : 1));
        painter.drawLine(gap.left(), 1, gap.left(), height() - 2);
        painter.drawLine(gap.right(), 1, gap.right(), height() - 2);
    }
}

void FilmCard::paintState(QPainter& painter, const QRect& room) const {
    const look::Colours c = look::colours(light());
    const StateLine state = stateLine(facts());
    QRect rest = room;
    painter.setPen(QPen(c.ink, 1.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    const QPointF corner(room.left() - 2, room.center().y() - 7.5);
    switch (state.mark) {
        case StateLine::Mark::Pin:
            painter.drawPath(press::pin(corner));
            break;
        case StateLine::Mark::HalvedSheet:
            painter.drawPath(press::halvedSheet(corner));
            break;
        case StateLine::Mark::DashedBox:
            painter.setPen(QPen(c.ink, 1.5, Qt::DotLine));
            painter.drawRect(QRectF(corner + QPointF(2, 3), QSizeF(9, 9)));
            break;
        case StateLine::Mark::PartedLines:
            painter.setPen(QPen(c.warning, 1.5));
            painter.drawLine(corner + QPointF(2, 5), corner + QPointF(12, 7));
            painter.drawLine(corner + QPointF(2, 12), corner + QPointF(12, 9));
            break;
        case StateLine::Mark::None:
            break;
    }
    if (state.mark != StateLine::Mark::None) {
        rest.setLeft(rest.left() + static_cast<int>(kMark));
    }
    painter.setPen(state.mark == StateLine::Mark::PartedLines ? c.warning : c.ink);
    painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(state.words, Qt::ElideRight, rest.width()));
}

void FilmCard::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const look::Colours c = look::colours(light());
    paintFilm(painter, QRectF(rect()).adjusted(1, 1, -1, -1));
    if (hasPicture() && !picture_.isNull()) {
        painter.setOpacity(facts().seen ? 1 : 0.5);
        painter.drawImage(QPointF(kInside - 1, 4), picture_);
        painter.setOpacity(1);
    }
    const QRect name = nameRoom();
    painter.setFont(look::face(12, look::Weight::Bold));
    paintName(painter, name);
    const int wide = width() - name.left() - kInside;
    painter.setFont(look::face(11));
    painter.setPen(facts().works ? c.ink : c.inkTwo);
    const QRect count(name.left(), 21, wide, 14);
    painter.drawText(count, Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(countLine(facts()), Qt::ElideRight, wide));
    paintState(painter, QRect(name.left(), 36, wide, 14));
    paintGaps(painter);
    if (underMouse() && cursor().shape() == Qt::SizeHorCursor) {
        const bool last = mapFromGlobal(QCursor::pos()).x() > width() / 2;
        painter.fillRect(last ? width() - 4 : 1, 10, 3, height() - 20, c.ink);
    }
    outlineFocus(painter, *this, c);
}

}  // namespace crosstick::phases
