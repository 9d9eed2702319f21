// Fingers and pen on the table.
#include <QApplication>
#include <QLineF>
#include <QMouseEvent>
#include <QStyleHints>

#include "ui/table/light_table.h"

namespace crosstick::table {
namespace {

constexpr int kPenGoneMs = 400;  ///< a pen that was seen so lately still hovers: what else touches the glass is a palm

}  // namespace

/// The right button, a finger or a pen that rests: ends what is drawn, else chooses what lies there and asks for its
/// menu.
void LightTable::askForMenu(QPointF at) {
    if (drawing_ && tool_->isBusy()) {
        return finishTool();
    }
    if (!drawing_) {
        tell(tools::Event::Kind::Press, at, Qt::NoModifier, false);
        tell(tools::Event::Kind::Release, at, Qt::NoModifier, false);
    }
    Q_EMIT menuWanted(mapToGlobal(at).toPoint());
}

bool LightTable::takeTouch(const QTouchEvent& event) {
    if (event.type() == QEvent::TouchCancel) {
        const bool isDown = fingers_.isDragging();
        fingers_.forget();
        hold_.stop();
        panFrom_.reset();
        if (isDown) {  // what is drawn stays wet, what is moved goes back
            tell(drawing_ ? tools::Event::Kind::Release : tools::Event::Kind::Cancel, pointer_, Qt::NoModifier, false);
        }
        return true;
    }
    if (isPenNear()) {
        fingers_.forget();
        hold_.stop();
        return true;
    }
    setFocus();
    std::vector<Finger> down;
    for (const QEventPoint& point : event.points()) {
        if (point.state() != QEventPoint::State::Released) {
            down.push_back({point.id(), {point.position().x(), point.position().y()}});
        }
    }
    does(fingers_.take(down));
    if (!fingers_.isResting()) {
        hold_.stop();
    } else if (!hold_.isActive()) {
        hold_.start();
    }
    return true;
}

/// The hand's own events, as a mouse would bring them.
void LightTable::does(const std::vector<Fingers::Deed>& deeds) {
    using Kind = Fingers::Deed::Kind;
    for (const Fingers::Deed& deed : deeds) {
        const QPointF at(deed.at.x, deed.at.y);
        const auto send = [&](QEvent::Type type, Qt::MouseButton button, Qt::MouseButtons held) {
            QMouseEvent event(type, at, mapToGlobal(at), button, held, Qt::NoModifier);
            type == QEvent::MouseButtonPress ? mousePressEvent(&event)
            : type == QEvent::MouseMove      ? mouseMoveEvent(&event)
                                             : mouseReleaseEvent(&event);
        };
        switch (deed.kind) {
            case Kind::Press:
                send(QEvent::MouseMove, Qt::NoButton, Qt::NoButton);  // the hand was nowhere before
                send(QEvent::MouseButtonPress, Qt::LeftButton, Qt::LeftButton);
                break;
            case Kind::Move:
                send(QEvent::MouseMove, Qt::NoButton, Qt::LeftButton);
                break;
            case Kind::Release:
                send(QEvent::MouseButtonRelease, Qt::LeftButton, Qt::NoButton);
                break;
            case Kind::Menu:
                askForMenu(at);
                break;
            case Kind::Slide:
                setView(view_.dragged(deed.at, deed.to).zoomedAt(deed.to, deed.factor, kLeast, kMost));
                break;
        }
    }
}

/// A pen is a hand with a point: it hovers, presses and lets go as the pointer does, its button is the right one. What
/// an open menu gets of it is left to the toolkit.
void LightTable::tabletEvent(QTabletEvent* event) {
    penSeen_.start();
    if (QApplication::activePopupWidget() != nullptr) {
        return event->ignore();
    }
    event->accept();
    const bool presses = event->type() == QEvent::TabletPress;
    const bool again = presses && isPressedAgain(*event);
    if (presses) {
        fingers_.forget();  // the palm came down before the point
        turnPen(*event);
    }
    const QEvent::Type type = again                                    ? QEvent::MouseButtonDblClick
                              : presses                                ? QEvent::MouseButtonPress
                              : event->type() == QEvent::TabletRelease ? QEvent::MouseButtonRelease
                                                                       : QEvent::MouseMove;
    QMouseEvent hand(type, event->position(), event->globalPosition(), event->button(), event->buttons(),
                     event->modifiers(), event->pointingDevice());
    QCoreApplication::sendEvent(this, &hand);
}

/// The other end of the pen wipes, its point draws or chooses as before.
void LightTable::turnPen(const QTabletEvent& event) {
    const bool isOtherEnd = event.pointerType() == QPointingDevice::PointerType::Eraser;
    if (isOtherEnd && !drawing_) {
        Q_EMIT turnedOver();
        wipes_ = drawing_;
    } else if (!isOtherEnd && wipes_) {
        setTool(nullptr);
    }
}

bool LightTable::isPressedAgain(const QTabletEvent& event) {
    const bool again =
        penPressed_.isValid() && penPressed_.elapsed() <= QGuiApplication::styleHints()->mouseDoubleClickInterval() &&
        QLineF(penPressedAt_, event.position()).length() <= Fingers::kSlip && event.button() == Qt::LeftButton;
    again ? penPressed_.invalidate() : penPressed_.start();
    penPressedAt_ = event.position();
    return again;
}

bool LightTable::isPenNear() const {
    return penSeen_.isValid() && penSeen_.elapsed() < kPenGoneMs;
}

/// A pen's press was told when it came down: it is let go before the menu opens.
void LightTable::holdOver() {
    if (pen_) {
        const QPointF at = *pen_;
        pen_.reset();
        panFrom_.reset();
        tell(tools::Event::Kind::Release, at, Qt::NoModifier, false);
        return askForMenu(at);
    }
    does(fingers_.rested());
}

}  // namespace crosstick::table
