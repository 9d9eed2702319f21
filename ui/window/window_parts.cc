// What the window is made of.
#include <QHBoxLayout>
#include <QMenuBar>
#include <QVBoxLayout>

#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr int kHeadHigh = 32;

template <typename Layout>
Layout* bareLayout(QWidget* in) {
    auto* layout = new Layout(in);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    return layout;
}

}  // namespace

void Window::buildParts() {
    buildHead();
    auto* middle = new QWidget(this);
    pages_ = new QStackedWidget(middle);
    foot_ = new QWidget(middle);
    notices_ = new Notices(foot_);
    question_ = new Question(foot_);
    auto* said = bareLayout<QVBoxLayout>(foot_);
    said->addWidget(notices_);
    said->addWidget(question_);
    auto* rows = bareLayout<QVBoxLayout>(middle);
    rows->addWidget(pages_, 1);
    rows->addWidget(foot_);
    setCentralWidget(middle);
    buildDesk();
    buildPages();
    brief_ = new brief::BriefView(work_, *table_, middle);
    buildMenus(bar_);
    fitMenus();
    board_->setDeeds(railDeeds());
    board_->addAction(actions_.at("name-film"));
    for (QWidget* watched : {static_cast<QWidget*>(table_), desk_, middle}) {
        watched->installEventFilter(this);
    }
}

void Window::buildHead() {
    head_ = new QWidget(this);
    head_->setFixedHeight(kHeadHigh);
    bar_ = new QMenuBar(head_);
    bar_->setAccessibleName(tr("Menus"));
    bar_->setNativeMenuBar(false);
    bar_->setFixedHeight(kHeadHigh);
    folded_ = new QMenu(tr("&Menu"), bar_);
    rail_ = new phases::Rail(work_, head_);
    doing_ = new DoingMark(work_.errands(), head_);
    auto* row = bareLayout<QHBoxLayout>(head_);
    row->setContentsMargins(0, 0, 12, 0);
    row->addWidget(bar_);
    row->addWidget(rail_, 1);
    row->addWidget(doing_);
    setMenuWidget(head_);
}

void Window::buildDesk() {
    desk_ = new QWidget(pages_);
    table_ = new table::LightTable(work_, outside_.share, desk_);
    ledger_ = new ledger::Ledger(work_, outside_.say, desk_);
    tables_ = new march::TablesSill(work_, outside_.say, outside_.share, desk_);
    cards_ = new QStackedWidget(desk_);
    details_ = new details::Details(work_, outside_.say, outside_.share, cards_);
    offers_ = new phases::OfferCard(cards_);
    timing_ = new timing::TimingCard(work_, outside_.say, cards_);
    actionsCard_ = new ActionsCard([this] { return doingsOf(allMenus()); }, cards_);
    for (QWidget* card : std::initializer_list<QWidget*>{details_, offers_, timing_, actionsCard_}) {
        cards_->addWidget(card);
    }
    tray_ = new tray::Tray(
        work_, *table_, outside_.say, [this] { return details_->faces(); }, desk_);
    tray_->hide();
    board_ = new phases::PhaseBoard(work_, outside_.share, desk_);
    board_->hide();
    across_ = bareLayout<QHBoxLayout>(desk_);
    auto* down = new QVBoxLayout;
    down->setSpacing(0);
    down->addWidget(table_, 1);
    for (QWidget* sill : std::initializer_list<QWidget*>{ledger_, tables_, tray_}) {
        down->addWidget(sill);
    }
    across_->addLayout(down, 1);
    across_->addWidget(cards_);
}

void Window::buildPages() {
    start_ = new start::StartPage(pages_);
    copies_ = new copies::Copies(work_, outside_.say, outside_.share, pages_);
    register_ = new registering::RegisterPage(work_.errands(), work_.reader(), outside_.say, outside_.share, pages_);
    settingsPage_ = new settings::SettingsPage(QString::fromStdString(outside_.settings.string()), pages_);
    help_ = new HelpPage(outside_.share / "manual" / "help.md", pages_);
    for (QWidget* page : std::initializer_list<QWidget*>{start_, desk_, copies_, register_, settingsPage_, help_}) {
        pages_->addWidget(page);
    }
}

}  // namespace crosstick::window
