// The measure tray: letters over the table open it, Escape lays it away.
#include <QSettings>

#include "ui/window/window.h"

namespace crosstick::window {
namespace {

const QString kUsed = QStringLiteral("measuresUsed");

}  // namespace

void Window::connectTray() {
    std::vector<std::string> used;
    for (const QString& kind : settings_->value(kUsed).toStringList()) {
        used.push_back(kind.toStdString());
    }
    tray_->setRecent(std::move(used));
    connect(table_, &table::LightTable::typed, this, [this](const QString& letters) {
        openTray();
        tray_->begin(letters);
    });
    connect(tray_, &tray::Tray::left, this, [this] {
        layTrayAway();
        table_->setFocus();
    });
    connect(tray_, &tray::Tray::recentChanged, this, [this] {
        QStringList kinds;
        for (const std::string& kind : tray_->recent()) {
            kinds << QString::fromStdString(kind);
        }
        settings_->setValue(kUsed, kinds);
    });
}

void Window::openTray() {
    if (!trayWanted_ || bare_) {
        say({});
        trayWanted_ = true;
        bare_ = false;
        arrange();
    }
}

void Window::layTrayAway() {
    trayWanted_ = false;
    tray_->letGo();
    tray_->setRaised(false);
    arrange();
}

/// The whole tray; again: the low one.
void Window::raiseTray() {
    if (!work_.isOpen()) {
        return;
    }
    const bool raised = !(trayWanted_ && tray_->isRaised());
    pages_->setCurrentWidget(desk_);
    openTray();
    tray_->setRaised(raised);
    tray_->field()->setFocus();
}

}  // namespace crosstick::window
