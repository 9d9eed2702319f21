// Pages and cards that tell of the program itself and of the plan as a whole.
#include <QCursor>
#include <QMenu>
#include <QMenuBar>
#include <QSettings>

#include "ui/window/window.h"

namespace crosstick::window {

/// Lies over the page that is seen, which comes back when it is left.
void Window::showPage(QWidget& page) {
    if (pages_->currentWidget() == &page) {
        return leavePage();
    }
    const bool isOther = pages_->currentWidget() != settingsPage_.made() && pages_->currentWidget() != help_.made();
    beforePage_ = isOther ? pages_->currentWidget() : beforePage_;
    if (&page == settingsPage_.made()) {
        settingsPage_->show(settings::read(*settings_));
    }
    pages_->setCurrentWidget(&page);
    page.setFocus();
}

void Window::leavePage() {
    pages_->setCurrentWidget(beforePage_ != nullptr ? beforePage_ : work_.isOpen() ? desk_ : &*start_);
    beforePage_ = nullptr;
    if (pages_->currentWidget() == desk_) {
        table_->setFocus();
    } else {
        pages_->currentWidget()->setFocus();
    }
}

/// The plan's own card is the one of the side while nothing is chosen.
void Window::showPlanCard() {
    bare_ = false;
    pages_->setCurrentWidget(desk_);
    work_.select(std::nullopt);
    detailsWanted_ = true;
    actionsWanted_ = false;
    arrange();
    details_->askForLabel();
}

void Window::showActions() {
    if (actionsWanted_) {
        return leaveActions();
    }
    chosenMenu_ = std::make_unique<QMenu>(tr("What is chosen"));
    if (work_.selected()) {
        fillThingMenu(*chosenMenu_, QCursor::pos());
    }
    actionsWanted_ = true;
    bare_ = false;
    pages_->setCurrentWidget(desk_);
    actionsCard_->open();
    arrange();
    actionsCard_->field()->setFocus();
}

void Window::leaveActions() {
    actionsWanted_ = false;
    pages_->setCurrentWidget(work_.isOpen() ? desk_ : static_cast<QWidget*>(&*start_));
    arrange();
    table_->setFocus();
}

/// What is chosen comes last: most of it stands in the other menus already.
QList<QAction*> Window::allMenus() const {
    QList<QAction*> menus = folded_->isEmpty() ? bar_->actions() : folded_->actions();
    if (chosenMenu_ && !chosenMenu_->isEmpty()) {
        menus << chosenMenu_->menuAction();
    }
    return menus;
}

/// What of the choices holds for whatever plan is in work.
void Window::hold(const settings::Choices& choices) {
    work_.setAngles(choices.angles);
    work_.setInserted(choices.inserted);
    handrail_ = choices.handrail;
    table_->setSnapWish(choices.snap);
    actions_.at("snap-lines")->setChecked(choices.snap.lines == drafting::SnapWish::Lines::Yes);
    actions_.at("snap-grid")->setChecked(choices.snap.grid == drafting::SnapWish::Grid::Yes);
    renewHead();
}

void Window::take(const settings::Choices& choices) {
    settings::write(choices, *settings_);
    hold(choices);
    if (choices.dimming != dimming_) {
        setDimming(choices.dimming);
    }
}

}  // namespace crosstick::window
