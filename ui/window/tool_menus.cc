// The hand's tools and what the hand is drawn to, as the menus offer them.
#include <QMenu>

#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QKeySequence key(const char* keys) {
    return QKeySequence(QString::fromLatin1(keys));
}

}  // namespace

void Window::addToolMenu(QMenu* draw) {
    QMenu* menu = draw->addMenu(tr("Tools"));
    add(menu, "freehand", tr("Line freehand"), key("Ctrl+Alt+F"), [this] { drawFreehand(); });
    add(menu, "polar", tr("Point by azimuth and distance..."), key("Ctrl+Alt+A"), [this] { askForPolar(); });
    add(menu, "ruler", tr("Ruler and protractor"), key("Ctrl+Alt+R"), [this] { measure(); });
    add(menu, "intersection", tr("Point by intersection"), key("Ctrl+Alt+I"),
        [this] { fixPoint(Sighted::FromTheKnown); });
    add(menu, "resection", tr("Where one stands, by resection"), key("Ctrl+Alt+B"),
        [this] { fixPoint(Sighted::FromTheUnknown); });
    menu->addSeparator();
    add(menu, "end-on", tr("End a line on another"), key("Ctrl+Alt+E"), [this] { endOnAnother(); });
    add(menu, "wipe-part", tr("Wipe a part of a line"), key("Ctrl+Alt+W"), [this] { wipePart(); });
    add(menu, "wipe-region", tr("Wipe a region..."), key("Ctrl+Shift+W"), [this] { wipeRegion(); });
    add(menu, "wipe-film", tr("Wipe the whole film..."), {}, [this] { wipeFilm(); });
    menu->addSeparator();
    add(menu, "handrail-left", tr("Handrail on the left"), {}, [this] { followMap(Following::OnTheLeft); });
    add(menu, "handrail-right", tr("Handrail on the right"), key("Ctrl+Alt+K"),
        [this] { followMap(Following::OnTheRight); });
    add(menu, "handrail-far", tr("Distance of a handrail..."), {}, [this] { askForHandrail(); });
    add(menu, "drawn-first", tr("Follow what is drawn before what is printed"), {}, [this] {
        drawnFirst_ = !drawnFirst_;
    })->setCheckable(true);
}

void Window::addSnapMenu(QMenu* draw) {
    QMenu* menu = draw->addMenu(tr("The hand is drawn to"));
    QAction* always = menu->addAction(tr("Points and ticks, always; free while Ctrl is held"));
    always->setEnabled(false);
    using Wish = drafting::SnapWish;
    add(menu, "snap-lines", tr("Lines"), key("Ctrl+Alt+L"), [this] {
        Wish wish = table_->snapWish();
        wish.lines = wish.lines == Wish::Lines::Yes ? Wish::Lines::No : Wish::Lines::Yes;
        table_->setSnapWish(wish);
    })->setCheckable(true);
    add(menu, "snap-grid", tr("The grid"), key("Ctrl+Alt+G"), [this] {
        Wish wish = table_->snapWish();
        wish.grid = wish.grid == Wish::Grid::Yes ? Wish::Grid::No : Wish::Grid::Yes;
        table_->setSnapWish(wish);
    })->setCheckable(true);
}

}  // namespace crosstick::window
