// How the parts of the window lie, and when each is seen.
#include <QEvent>
#include <QHBoxLayout>
#include <QMenuBar>

#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr int kMenusWide = 372;
constexpr int kLeastTable = 48;  ///< under the rail rolled down
constexpr int kNarrow = 1100;    ///< below it the card lies over the table
constexpr int kDoingWide = 300;
constexpr int kDoingNarrow = 130;

}  // namespace

/// One card at a time, the ledger only with a route; an open card folds the ledger to its live row.
void Window::arrange() {
    const bool open = work_.isOpen();
    const bool briefs = brief_->telling() != nullptr;
    QWidget* const card = cardWanted();
    const plan::MeasurePtr block = open ? chosenMarch() : nullptr;
    const bool tray = open && !bare_ && !briefs && trayWanted_;
    const bool march = open && !bare_ && !briefs && !tray && (marchWanted_ || block != nullptr);
    const bool sill = open && !bare_ && !briefs && !tray && !march && !ledgerHidden_ && ledger_->isWanted();
    if (march) {
        const auto name = block ? block->fields.find("column") : decltype(block->fields.end()){};
        tables_->showColumn(block && name != block->fields.end() ? name->second : std::string{});
    }
    if (march || tables_.made() != nullptr) {
        tables_->setVisible(march);
    }
    tray_->setVisible(tray);
    if (march) {
        tables_->show(marchWanted_ ? tablesPage() : march::TablesSill::Page::Order);
    }
    if (!march || tablesPage() != march::TablesSill::Page::Profile) {
        table_->setMark(std::nullopt);
    }
    renewDrift();
    ledger_->renew();
    ledger_->setVisible(sill);
    ledger_->setFolded(card != nullptr || (isNarrow() && !ledgerAsks_));
    cards_->setVisible(card != nullptr);
    if (card != nullptr) {
        cards_->setCurrentWidget(card);
    }
    timing_.ifMade([](auto& timing) { timing.renew(); });
    head_->setVisible(!bare_ && !briefs);
    foot_->setVisible(!briefs);
    layBoard();
    renewHead();
}

/// A search for what can be done lies over everything, then times, then what a phase offers.
QWidget* Window::cardWanted() {
    if (bare_ || brief_->telling() != nullptr) {
        return nullptr;
    }
    if (actionsWanted_) {
        return actionsCard_;
    }
    if (!work_.isOpen()) {
        return nullptr;
    }
    if (timingWanted_) {
        return &*timing_;
    }
    return offers_->isOffering() ? static_cast<QWidget*>(offers_) : detailsWanted_ ? details_ : nullptr;
}

bool Window::isNarrow() const {
    return width() < kNarrow;
}

plan::MeasurePtr Window::chosenMarch() const {
    const plan::MeasurePtr measure = work_.selected() ? work_.plan().measure(*work_.selected()) : nullptr;
    return measure && measure->kind == "order-of-march" ? measure : nullptr;
}

void Window::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    foldMenus(isNarrow());
    doing_->setMostWide(isNarrow() ? kDoingNarrow : kDoingWide);
    notices_->fit();
    layCard();
    ledger_->setFolded(cards_->isVisible() || (isNarrow() && !ledgerAsks_));
}

bool Window::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_ && event->type() == QEvent::Resize) {
        placeCard();
    } else if (watched == desk_ && event->type() == QEvent::Resize) {
        placeBoard();
    }
    if (watched == centralWidget() && event->type() == QEvent::Resize) {
        brief_->setGeometry(centralWidget()->rect());
    }
    return QMainWindow::eventFilter(watched, event);
}

/// In another language the menus may need more than their usual room.
void Window::fitMenus() {
    const int needed = bar_->sizeHint().width();
    bar_->setFixedWidth(folded_->isEmpty() ? std::max(kMenusWide, needed) : needed);
}

void Window::foldMenus(bool fold) {
    if (fold == !folded_->isEmpty()) {
        return;
    }
    if (fold) {
        for (QAction* menu : bar_->actions()) {
            bar_->removeAction(menu);
            folded_->addAction(menu);
        }
        bar_->addMenu(folded_);
    } else {
        bar_->removeAction(folded_->menuAction());
        for (QAction* menu : folded_->actions()) {
            folded_->removeAction(menu);
            bar_->addAction(menu);
        }
    }
    fitMenus();
}

void Window::layCard() {
    const bool over = isNarrow();
    cards_->setFixedWidth(std::min(details::Details::kWidth, width() / 2));
    details_->setFixedWidth(cards_->width());
    if (over == (across_->indexOf(cards_) >= 0)) {
        over ? across_->removeWidget(cards_) : across_->addWidget(cards_);
        cards_->raise();
    }
    placeCard();
}

/// Also while the desk is being laid out, when nothing may come into its layout or leave it.
void Window::placeCard() {
    if (across_->indexOf(cards_) < 0) {
        cards_->setGeometry(desk_->width() - cards_->width(), 0, cards_->width(), table_->height());
    }
}

/// Over table and card, from the head down; never the whole desk, so that what it is about is seen under it.
void Window::placeBoard() {
    board_->setGeometry(0, 0, desk_->width(), std::min(phases::PhaseBoard::kHigh, desk_->height() - kLeastTable));
}

void Window::layBoard() {
    const bool down = railDown_ && work_.isOpen() && !bare_;
    rail_->setRoll(down ? phases::Roll::Down : phases::Roll::Up);
    placeBoard();
    board_->setVisible(down);
    board_->raise();
}

/// Who comes back from another program may have mended there what is missing here.
}  // namespace crosstick::window
