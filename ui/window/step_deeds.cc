// The steps of the history as a list to jump in: the last on top, the older ones in menus of their own.
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr std::size_t kInOneMenu = 20;

}  // namespace

/// Steps from one downward. A step that is taken is the last one that is done then.
void Window::fillSteps(QMenu& menu, std::size_t upTo) {
    menu.clear();
    const std::vector<std::string> captions = work_.steps();
    upTo = std::min(upTo, captions.size());
    const std::size_t least = upTo > kInOneMenu ? upTo - kInOneMenu + 1 : 0;
    for (std::size_t n = upTo + 1; n-- > least;) {
        const QString words = n == 0 ? tr("As it was opened") : QString::fromStdString(captions[n - 1]);
        QAction* action = menu.addAction(QStringLiteral("%1   %2").arg(n, 3).arg(words));
        action->setCheckable(true);
        action->setChecked(n == work_.stepsDone());
        connect(action, &QAction::triggered, this, [this, n] { work_.goToStep(n); });
    }
    if (least > 0) {
        QMenu* earlier = menu.addMenu(tr("Earlier"));
        connect(earlier, &QMenu::aboutToShow, this, [this, earlier, least] { fillSteps(*earlier, least - 1); });
    }
}

void Window::showSteps() {
    QMenu menu;
    fillSteps(menu, work_.steps().size());
    menu.setAccessibleName(tr("Steps"));
    for (QAction* action : menu.actions()) {
        if (action->isChecked()) {
            menu.setActiveAction(action);
        }
    }
    menu.exec(table_->mapToGlobal(QPoint(24, 24)));
}

}  // namespace crosstick::window
