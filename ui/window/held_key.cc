#include "ui/window/held_key.h"

#include <QApplication>
#include <QKeyEvent>
#include <QWidget>
#include <QWindow>

namespace crosstick::window {

HeldKey::HeldKey(Qt::Key key, QWidget* window) : QObject(window), key_(key), window_(window) {
    // Of the application: the keyboard may go from one part of the window to another while the key is down.
    QCoreApplication::instance()->installEventFilter(this);
}

void HeldKey::setDown(bool down) {
    if (down_ != down) {
        down_ = down;
        down ? Q_EMIT pressed() : Q_EMIT letGo();
    }
}

bool HeldKey::isOfWindow(const QObject* watched) const {
    if (const auto* widget = qobject_cast<const QWidget*>(watched)) {
        return widget->window() == window_;
    }
    return watched == window_->windowHandle();
}

bool HeldKey::eventFilter(QObject* watched, QEvent* event) {
    switch (event->type()) {
        case QEvent::KeyPress:
        case QEvent::KeyRelease: {
            const auto* key = static_cast<QKeyEvent*>(event);
            const bool isPress = event->type() == QEvent::KeyPress;
            if (key->key() != key_ || (isPress && (key->modifiers() != Qt::NoModifier || !isOfWindow(watched)))) {
                return false;
            }
            if (!key->isAutoRepeat()) {
                setDown(isPress);
            }
            return true;
        }
        case QEvent::WindowDeactivate:
            if (watched == window_) {
                setDown(false);
            }
            return false;
        case QEvent::ApplicationStateChange:
            if (QGuiApplication::applicationState() != Qt::ApplicationActive) {
                setDown(false);
            }
            return false;
        default:
            return false;
    }
}

}  // namespace crosstick::window
