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
    table_ = new table::LightTable(work_, faces(), outside_.share, desk_);
    ledger_ = new ledger::Ledger(work_, outside_.say, desk_);
    cards_ = new QStackedWidget(desk_);
    details_ = new details::Details(work_, outside_.say, faces(), cards_);
    offers_ = new phases::OfferCard(cards_);
    actionsCard_ = new ActionsCard([this] { return doingsOf(allMenus()); }, cards_);
    for (QWidget* card : std::initializer_list<QWidget*>{details_, offers_, actionsCard_}) {
        cards_->addWidget(card);
    }
    tray_ = new tray::Tray(work_, *table_, outside_.say, faces(), desk_);
    tray_->hide();
    board_ = new phases::PhaseBoard(work_, outside_.share, desk_);
    board_->hide();
    across_ = bareLayout<QHBoxLayout>(desk_);
    down_ = new QVBoxLayout;
    down_->setSpacing(0);
    down_->addWidget(table_, 1);
    down_->addWidget(ledger_);
    down_->addWidget(tray_);
    across_->addLayout(down_, 1);
    across_->addWidget(cards_);
}

void Window::buildPages() {
    pages_->addWidget(desk_);
    layStart();
    layTables();
    layPages();
}

void Window::layStart() {
    start_.set([this] {
        auto* page = lit(new start::StartPage(pages_));
        pages_->addWidget(page);
        page->setRecent(recent_);
        page->setLeftovers(leftovers_);
        connectStart(*page);
        return page;
    });
}

void Window::layTables() {
    tables_.set([this] {
        auto* tables = lit(new march::TablesSill(work_, outside_.say, faces(), desk_));
        tables->hide();
        down_->insertWidget(down_->indexOf(tray_), tables);
        connectTables(*tables);
        return tables;
    });
    timing_.set([this] {
        auto* timing = lit(new timing::TimingCard(work_, outside_.say, cards_));
        cards_->addWidget(timing);
        connect(timing, &timing::TimingCard::left, this, [this] { table_->setFocus(); });
        timing->renew();
        return timing;
    });
}

void Window::layPages() {
    copies_.set([this] {
        auto* copies = lit(new copies::Copies(work_, outside_.say, faces(), outside_.share, pages_));
        pages_->addWidget(copies);
        connectCopies(*copies);
        return copies;
    });
    register_.set([this] {
        auto* page = lit(new registering::RegisterPage(work_.errands(), work_.reader(), outside_.say, faces(), pages_));
        pages_->addWidget(page);
        connect(page, &registering::RegisterPage::laid, this, &Window::laidByHand);
        connect(page, &registering::RegisterPage::left, this, &Window::leaveRegister);
        return page;
    });
    settingsPage_.set([this] {
        auto* page = lit(new settings::SettingsPage(QString::fromStdString(outside_.settings.string()), pages_));
        pages_->addWidget(page);
        connect(page, &settings::SettingsPage::left, this, &Window::leavePage);
        connect(page, &settings::SettingsPage::changed, this, &Window::take);
        return page;
    });
    help_.set([this] {
        auto* page = lit(new HelpPage(outside_.share / "manual" / "help.md", pages_));
        pages_->addWidget(page);
        connect(page, &HelpPage::left, this, &Window::leavePage);
        return page;
    });
}

}  // namespace crosstick::window
