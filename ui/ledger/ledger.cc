#include "ui/ledger/ledger.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QHeaderView>
#include <QMenu>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "core/movement/rate_text.h"
#include "core/units/number_text.h"

namespace crosstick::ledger {
namespace {

constexpr int kFactsWide = 220;
constexpr int kRow = 24;
constexpr double kFewestPaces = 30;
constexpr double kMostPaces = 150;

/// Bands, the live row in our wash with a bar, a line above the sums.
class RowPainter final : public QStyledItemDelegate {
  public:
    RowPainter(const LegsModel& model, const look::Light& light, QObject* parent)
        : QStyledItemDelegate(parent), model_(model), light_(light) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const look::Colours c = look::colours(light_);
        const bool live = model_.isLive(index.row());
        const bool total = model_.isTotal(index.row());
        painter->fillRect(option.rect, live ? c.wash : total || index.row() % 2 == 1 ? c.card : c.band);
        if (live && index.column() == 0) {
            painter->fillRect(QRect(option.rect.topLeft(), QSize(4, option.rect.height())), c.ours);
        }
        if (total) {
            painter->fillRect(QRect(option.rect.topLeft(), QSize(option.rect.width(), 1)), c.ink);
        }
        QStyleOptionViewItem plain = option;
        initStyleOption(&plain, index);
        painter->setFont(plain.font);
        painter->setPen(live && index.column() == LegsModel::Tie ? c.ours : c.ink);
        const QRect inside = option.rect.adjusted(8, 0, -8, 0);
        const QString shown = plain.fontMetrics.elidedText(plain.text, Qt::ElideRight, inside.width());
        painter->drawText(inside, static_cast<int>(plain.displayAlignment), shown);
        if (option.state.testFlag(QStyle::State_HasFocus)) {
            painter->setPen(QPen(c.ours, 2));
            painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
        }
    }

  private:
    const LegsModel& model_;
    const look::Light& light_;
};

QLabel* label(QWidget* parent, int size, look::Weight weight) {
    auto* made = new QLabel(parent);
    made->setFont(look::face(size, weight));
    made->setTextFormat(Qt::PlainText);
    return made;
}

}  // namespace

Ledger::Ledger(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent)
    : QWidget(parent),
      work_(work),
      say_(std::move(say)),
      model_(work),
      table_(new QTableView(this)),
      facts_(new QWidget(this)),
      title_(label(facts_, 15, look::Weight::Bold)),
      use_(label(facts_, 12, look::Weight::Regular)),
      angle_(label(facts_, 11, look::Weight::Regular)),
      pace_(label(facts_, 11, look::Weight::Regular)),
      rate_(label(facts_, 11, look::Weight::Regular)),
      paceField_(new QLineEdit(facts_)) {
    setAccessibleName(tr("Legs ledger"));
    table_->setAccessibleName(tr("Legs of the route"));
    table_->setModel(&model_);
    table_->setItemDelegate(new RowPainter(model_, light_, table_));
    table_->setShowGrid(false);
    table_->setSelectionMode(QAbstractItemView::NoSelection);
    table_->setFrameShape(QFrame::NoFrame);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(kRow);
    table_->verticalHeader()->setMinimumSectionSize(kRow);
    table_->horizontalHeader()->setFixedHeight(kRow);
    table_->horizontalHeader()->setFont(look::face(11));
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(table_->horizontalHeader(), &QWidget::customContextMenuRequested, this, [this](const QPoint& at) {
        QMenu menu;
        for (const auto column : {LegsModel::BackAzimuth, LegsModel::GridAzimuth}) {
            QAction* action = menu.addAction(model_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
            action->setCheckable(true);
            action->setChecked(!table_->isColumnHidden(column));
            connect(action, &QAction::toggled, this, [this, column](bool on) { showColumn(column, on); });
        }
        menu.exec(table_->horizontalHeader()->mapToGlobal(at));
    });
    static constexpr int kWide[] = {46, 90, 240, 150, 100, 76, 70, 76, 90, 110, 110};
    for (int n = 0; n < LegsModel::kColumns; ++n) {
        table_->setColumnWidth(n, kWide[n]);
    }
    table_->horizontalHeader()->setSectionResizeMode(LegsModel::Tie, QHeaderView::Stretch);
    showColumn(LegsModel::BackAzimuth, false);
    showColumn(LegsModel::GridAzimuth, false);
    paceField_->setAccessibleName(tr("Double paces in 100 m"));
    paceField_->setMaximumWidth(56);
    connect(paceField_, &QLineEdit::returnPressed, this, &Ledger::takePace);
    facts_->setFixedWidth(kFactsWide);
    auto* column = new QVBoxLayout(facts_);
    column->setContentsMargins(12, 8, 8, 6);
    column->setSpacing(2);
    column->addWidget(title_);
    column->addWidget(use_);
    column->addStretch(1);
    column->addWidget(angle_);
    auto* paces = new QHBoxLayout;
    paces->addWidget(pace_, 1);
    paces->addWidget(paceField_);
    column->addLayout(paces);
    column->addWidget(rate_);
    for (QLabel* words : {angle_, pace_, rate_}) {
        words->setWordWrap(true);
    }
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 2, 0, 0);
    row->setSpacing(1);
    row->addWidget(facts_);
    row->addWidget(table_, 1);
    setFixedHeight(kHeight);
    setLight(light_);
}

void Ledger::setLight(look::Light light) {
    light_ = light;
    QPalette p = palette();
    p.setColor(QPalette::Window, look::colours(light).card);
    setPalette(p);
    setAutoFillBackground(true);
    update();
}

void Ledger::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.card);
    painter.fillRect(0, 0, width(), 2, c.ink);
    painter.fillRect(kFactsWide, 2, 1, height() - 2, c.rule);
}

void Ledger::setFolded(bool folded) {
    setFixedHeight(folded ? kFolded : kHeight);
    facts_->setVisible(!folded);
    table_->horizontalHeader()->setVisible(!folded);
    table_->setVerticalScrollBarPolicy(folded ? Qt::ScrollBarAlwaysOff : Qt::ScrollBarAsNeeded);
    if (folded && model_.rowCount() > 0) {  // the live row alone: the leg being drawn, else the sums
        const int live = model_.rowCount() - (work_.wetPlan() ? 2 : 1);
        table_->scrollTo(model_.index(std::max(0, live), 0), QAbstractItemView::PositionAtTop);
    }
}

bool Ledger::isWanted() const {
    return work_.isOpen() && work_.ledgerRoute() != nullptr;
}

void Ledger::showColumn(LegsModel::Column column, bool shown) {
    table_->setColumnHidden(column, !shown);
}

void Ledger::renew() {
    model_.renew();
    if (work_.wetPlan() && model_.rowCount() > 0) {
        table_->scrollToBottom();
    }
    renewFacts();
}

void Ledger::renewFacts() {
    const plan::RoutePtr route = work_.isOpen() ? work_.ledgerRoute() : nullptr;
    if (!route) {
        return;
    }
    title_->setText(QString::fromStdString(movement::routeTitle(route->name)));
    use_->setText(route->use == plan::Use::Primary ? tr("primary route") : tr("alternate route"));
    const auto& figures = model_.figures();
    if (!figures) {
        angle_->setText(model_.fault() ? say_(*model_.fault()) : QString());
        return;
    }
    const bool printed = figures->gm.source == plan::DeclinationSource::Sheet;
    angle_->setText(tr("G-M angle %1, %2")
                        .arg(QString::fromStdString(movement::gmAngleText(figures->gm.angle, work_.angles())),
                             printed ? tr("from the sheet") : tr("from the model")));
    angle_->setToolTip(QString::fromStdString(movement::gmRuleText(figures->gm.angle, work_.angles())));
    paceField_->setVisible(!figures->pace);
    pace_->setText(figures->pace ? tr("%1 paces per 100 m, yours").arg(figures->pace->doublePacesPer100)
                                 : tr("How often does your left foot strike the ground in 100 m?"));
    const QString rate = figures->rate || figures->timing
                             ? QString::fromStdString(movement::rateText(*figures, work_.plan().heading().zone))
                             : tr("no rate of march given");
    constexpr double kRows = 1.8;  // of two: a word that does not fit leaves the end of the first row bare
    rate_->setText(rate_->fontMetrics().elidedText(rate, Qt::ElideRight, static_cast<int>(kRows * (kFactsWide - 22))));
    rate_->setToolTip(rate);
}

void Ledger::takePace() {
    const auto count = parseNumber(paceField_->text().trimmed().toStdString());
    const bool fits = count && *count >= kFewestPaces && *count <= kMostPaces;
    paceField_->setProperty("refused", !fits);
    paceField_->style()->unpolish(paceField_);
    paceField_->style()->polish(paceField_);
    if (!fits) {
        paceField_->setToolTip(tr("A number from 30 to 150: one person's left foot in 100 m."));
        return;
    }
    plan::Heading heading = work_.committed().heading();
    heading.pace = plan::PaceProfile{*count, {}, {}};
    plan::PlanBuilder builder(work_.committed());
    builder.heading(std::move(heading));
    work_.commit(std::move(builder).build(), "give a pace count");
}

}  // namespace crosstick::ledger
