// Fingers and pen on the table.
#include <QMouseEvent>

#include "ui/table/light_table.h"

namespace crosstick::table {

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
        fingers_.forget();
        hold_.stop();
        tell(tools::Event::Kind::Cancel, pointer_, Qt::NoModifier, false);
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
