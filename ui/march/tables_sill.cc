#include "ui/march/tables_sill.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "core/movement/rate_text.h"
#include "core/movement/route_light.h"
#include "ui/press/checklist_paper.h"
#include "ui/press/march_paper.h"

namespace crosstick::march {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// The light of each date that a route is walked on.
press::PaperTable lightPaper(const plan::Plan& plan, const movement::RouteFigures& figures) {
    press::PaperTable paper;
    paper.head.title = "Light, " + movement::routeTitle(figures.name);
    paper.head.purpose = std::string("At the middle of the route, zone ") + plan.heading().zone.letter;
    paper.notes = {{"Twilight:",
                    "nautical with the sun 12 degrees under the horizon (BMNT, EENT), civil 6 degrees (BMCT, "
                    "EECT). Night rates hold from civil dusk to civil dawn, our own rule."},
                   {"Rate:", movement::rateText(figures, plan.heading().zone)}};
    press::PaperColumn date;
    date.heads = {"Date"};
    date.width = 26;
    paper.columns.push_back(date);
    for (const movement::DatedLight& dated : movement::routeLight(plan, figures)) {
        std::vector<press::PaperCell> row{{isoDate(dated.date)}};
        for (const movement::LightFigure& figure : movement::lightFigures(dated.light, plan.heading().zone)) {
            if (paper.rows.empty()) {
                press::PaperColumn column;
                column.heads = {std::string(figure.name)};
                column.align = press::Align::Middle;
                column.width = 22;
                paper.columns.push_back(std::move(column));
            }
            row.push_back({figure.text});
        }
        paper.rows.push_back(std::move(row));
    }
    return paper;
}

}  // namespace

TablesSill::TablesSill(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
                       QWidget* parent)
    : QWidget(parent),
      work_(work),
      say_(std::move(say)),
      elementsTable_(work),
      tasksTable_(work),
      eventsTable_(work),
      pages_(new QStackedWidget(this)) {
    setAccessibleName(tr("Tables"));
    setFixedHeight(kHeight);
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 2, 0, 0);
    rows->setSpacing(0);
    buildTabs(rows);
    buildPages(faces);
    rows->addWidget(pages_, 1);
    setLight(light_);
}

void TablesSill::buildTabs(QVBoxLayout* rows) {
    const QStringList words{tr("Order of march"), tr("Elements"),    tr("Tasks"),   tr("Events"),
                            tr("Matrix"),         tr("March table"), tr("Profile"), tr("Light")};
    auto* across = new QHBoxLayout;
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(0);
    for (int n = 0; n < kPages; ++n) {
        auto* tab = new QToolButton(this);
        tab->setText(words[n]);
        tab->setCheckable(true);
        tab->setFixedHeight(26);
        tab->setAccessibleName(tr("Table: %1").arg(words[n]));
        across->addWidget(tab);
        connect(tab, &QToolButton::clicked, this, [this, n] { Q_EMIT pageWanted(static_cast<Page>(n)); });
        tabs_[static_cast<std::size_t>(n)] = tab;
    }
    across->addStretch(1);
    rows->addLayout(across);
}

void TablesSill::buildPages(const press::Faces* faces) {
    order_ = new MarchSill(work_, say_, faces, pages_);
    elements_ = new TablePage(
        elementsTable_,
        {tr("Elements"),
         tr("Who we are. Symbols, order of march, march table and papers read it here. Under: to "
            "whom one is attached in a phase."),
         tr("Add"), tr("Add an element after this one"), tr("Take out"), tr("Take the element out of the force")},
        say_, pages_);
    tasks_ = new TablePage(tasksTable_,
                           {tr("Tasks"),
                            tr("What each is to do, what for, where, on what, with which code word, and under "
                               "whom."),
                            {},
                            {},
                            tr("Take out"),
                            tr("Take the task out, its element stays")},
                           say_, pages_);
    phase_ = new QComboBox(tasks_);
    phase_->setAccessibleName(tr("Phase of the tasks"));
    tasks_->addFact(phase_);
    connect(phase_, &QComboBox::activated, this,
            [this](int at) { tasksTable_.setPhase(phase_->itemData(at).toInt()); });
    events_ = new TablePage(eventsTable_,
                            {tr("Events"),
                             tr("The execution checklist. A place on a route takes its time from the march "
                                "table; an actual time moves what follows."),
                             tr("Add"), tr("Add an event after this one"), tr("Take out"), tr("Take the event out")},
                            say_, pages_);
    paper_ = new PaperPage(tr("Table"), pages_);
    profile_ = new ProfileStrip(pages_);
    for (QWidget* page :
         {static_cast<QWidget*>(order_), static_cast<QWidget*>(elements_), static_cast<QWidget*>(tasks_),
          static_cast<QWidget*>(events_), static_cast<QWidget*>(paper_), static_cast<QWidget*>(profile_)}) {
        pages_->addWidget(page);
    }
    connect(order_, &MarchSill::left, this, &TablesSill::left);
}

void TablesSill::setLight(look::Light light) {
    light_ = light;
    QPalette p = palette();
    p.setColor(QPalette::Window, look::colours(light).lino);
    setPalette(p);
    setAutoFillBackground(true);
    order_->setLight(light);
    for (TablePage* page : {elements_, tasks_, events_}) {
        page->setLight(light);
    }
    paper_->setLight(light);
    profile_->setLight(light);
}

void TablesSill::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.fillRect(0, 0, width(), 2, look::colours(light_).ink);
}

void TablesSill::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QWidget::keyPressEvent(event);
}

void TablesSill::show(Page page) {
    page_ = page;
    for (int n = 0; n < kPages; ++n) {
        tabs_[static_cast<std::size_t>(n)]->setChecked(n == static_cast<int>(page));
    }
    QWidget* shown[kPages] = {order_, elements_, tasks_, events_, paper_, paper_, profile_, paper_};
    pages_->setCurrentWidget(shown[static_cast<int>(page)]);
    renew();
}

void TablesSill::showColumn(const std::string& column) {
    order_->show(column);
}

void TablesSill::renew() {
    if (!work_.isOpen() || isHidden()) {
        return;
    }
    switch (page_) {
        case Page::Order:
            return order_->renew();
        case Page::Elements:
            return elements_->renew();
        case Page::Tasks:
            renewPhases();
            return tasks_->renew();
        case Page::Events:
            return events_->renew();
        case Page::Matrix:
            return renewMatrix();
        case Page::MarchTable:
            return renewMarchTable();
        case Page::Profile:
            return renewProfile();
        case Page::Light:
            return renewLight();
    }
}

void TablesSill::renewPhases() {
    phase_->clear();
    for (const plan::Phase& phase : work_.plan().phases()) {
        phase_->addItem(tr("%1  %2").arg(phase.number).arg(text(phase.name)), phase.number);
    }
    phase_->setVisible(phase_->count() > 0);
    phase_->setCurrentIndex(phase_->findData(tasksTable_.phase()));
}

const movement::RouteFigures* TablesSill::figures() const {
    const plan::RoutePtr route = work_.ledgerRoute();
    const auto found = route                     ? work_.figures().find(route->id)
                       : work_.figures().empty() ? work_.figures().end()
                                                 : work_.figures().begin();
    return found == work_.figures().end() ? nullptr : &found->second;
}

/// Of the primary routes, as the matrix on paper has them.
std::vector<movement::MarchTable> TablesSill::marchTables() const {
    std::vector<movement::MarchTable> tables;
    for (const auto& [id, figures] : work_.figures()) {
        if (figures.use == plan::Use::Primary) {
            if (auto table = movement::marchTable(work_.plan(), figures, work_.plan().force().columnNamed({}))) {
                tables.push_back(std::move(*table));
            }
        }
    }
    return tables;
}

void TablesSill::renewMatrix() {
    paper_->setAccessibleName(tr("Execution matrix"));
    if (work_.plan().force().elements.empty()) {
        paper_->tell(tr("There is no element yet, and so no task. Elements, Add makes the first one."));
    } else {
        paper_->show(press::matrixPaper(work_.plan(), marchTables()));
    }
}

void TablesSill::renewMarchTable() {
    paper_->setAccessibleName(tr("March table"));
    const movement::RouteFigures* route = figures();
    if (route == nullptr) {
        paper_->tell(tr("There is no route to march on. Draw one, or choose one."));
        return;
    }
    const auto table = movement::marchTable(work_.plan(), *route, work_.plan().force().columnNamed({}));
    if (!table) {
        paper_->tell(say_(table.error()));
        return;
    }
    paper_->show(press::marchPaper(work_.plan(), *route, *table, {{}, {}, work_.plan().heading().prepared}));
}

void TablesSill::renewProfile() {
    const movement::RouteFigures* route = figures();
    if (route == nullptr) {
        profile_->show(std::nullopt, tr("There is no route to show the ground of. Draw one, or choose one."));
        return;
    }
    auto profile = movement::profileOf(work_.plan(), *route, work_.heights());
    profile ? profile_->show(std::move(*profile), {}) : profile_->show(std::nullopt, say_(profile.error()));
}

void TablesSill::renewLight() {
    paper_->setAccessibleName(tr("Light"));
    const movement::RouteFigures* route = figures();
    if (route == nullptr || movement::routeLight(work_.plan(), *route).empty()) {
        paper_->tell(
            tr("Light is reckoned for the middle of a route on the plan's day. Draw a route, and give the day."));
    } else {
        paper_->show(lightPaper(work_.plan(), *route));
    }
}

}  // namespace crosstick::march
