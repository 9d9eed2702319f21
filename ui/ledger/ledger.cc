#include "ui/ledger/ledger.h"

#include <algorithm>

#include <QAccessible>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>
#include <QStyle>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "core/movement/rate_text.h"
#include "ui/look/spoken.h"

namespace crosstick::ledger {
namespace {

constexpr int kFactsWide = 220;
constexpr int kRow = 24;

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
        const bool isGap = index.data(LegsModel::kGapRole).toBool();
        painter->setFont(plain.font);
        painter->setPen(live && index.column() == LegsModel::Tie ? c.ours : isGap ? c.inkTwo : c.ink);
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

/// A fact that is changed by pressing it: words like the others, a control for keyboard and screen reader.
QPushButton* factButton(QWidget* parent) {
    auto* made = new QPushButton(parent);
    made->setFlat(true);
    made->setFont(look::face(11));
    made->setFixedHeight(20);
    made->setStyleSheet(
        QStringLiteral("QPushButton { border: none; background: transparent; padding: 0; "
                       "text-align: left; min-height: 0; } QPushButton:hover, QPushButton:focus { "
                       "text-decoration: underline; }"));
    return made;
}

/// @param more  what there is no room for
void showFact(QPushButton& fact, const QString& words, const QString& more) {
    fact.setText(fact.fontMetrics().elidedText(words, Qt::ElideRight, kFactsWide - 22));
    fact.setToolTip(words + QLatin1Char('\n') + more);
    fact.setAccessibleName(words);
    fact.setAccessibleDescription(QObject::tr("Press to change it"));
}

}  // namespace

Ledger::Ledger(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent)
    : QWidget(parent),
      work_(work),
      say_(say),
      model_(work, std::move(say)),
      table_(new QTableView(this)),
      facts_(new QWidget(this)),
      title_(label(facts_, 15, look::Weight::Bold)),
      use_(label(facts_, 12, look::Weight::Regular)),
      angle_(label(facts_, 11, look::Weight::Regular)),
      question_(label(facts_, 11, look::Weight::Regular)),
      pace_(factButton(facts_)),
      rate_(factButton(facts_)),
      field_(new QLineEdit(facts_)) {
    setAccessibleName(tr("Legs ledger"));
    buildTable();
    buildFacts();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 2, 0, 0);
    row->setSpacing(1);
    row->addWidget(facts_);
    row->addWidget(table_, 1);
    setFixedHeight(kHeight);
    setLight(light_);
}

void Ledger::buildTable() {
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
    QHeaderView* header = table_->horizontalHeader();
    header->setFixedHeight(kRow);
    header->setFont(look::face(11));
    header->setHighlightSections(false);
    header->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(header, &QWidget::customContextMenuRequested, this, [this, header](const QPoint& at) {
        QMenu menu;
        for (const auto column : {LegsModel::BackAzimuth, LegsModel::GridAzimuth}) {
            QAction* action = menu.addAction(model_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
            action->setCheckable(true);
            action->setChecked(!table_->isColumnHidden(column));
            connect(action, &QAction::toggled, this, [this, column](bool on) { showColumn(column, on); });
        }
        QAction* bends = menu.addAction(tr("Bend by bend"));
        bends->setCheckable(true);
        bends->setChecked(model_.rows() == Rows::Bends);
        connect(bends, &QAction::triggered, this, &Ledger::bendsWanted);
        menu.exec(header->mapToGlobal(at));
    });
    static constexpr int kWide[] = {46, 90, 240, 150, 100, 84, 78, 84, 96, 110, 110};
    for (int n = 0; n < LegsModel::kColumns; ++n) {
        table_->setColumnWidth(n, kWide[n]);
    }
    header->setSectionResizeMode(LegsModel::Tie, QHeaderView::Stretch);
    showColumn(LegsModel::BackAzimuth, false);
    showColumn(LegsModel::GridAzimuth, false);
    connect(table_, &QTableView::clicked, this, &Ledger::askAt);
    connect(table_, &QTableView::activated, this, &Ledger::askAt);
}

void Ledger::buildFacts() {
    facts_->setFixedWidth(kFactsWide);
    auto* head = new QHBoxLayout;
    head->setSpacing(8);
    head->addWidget(title_, 1);
    head->addWidget(use_);
    auto* column = new QVBoxLayout(facts_);
    column->setContentsMargins(12, 8, 8, 6);
    column->setSpacing(2);
    column->addLayout(head);
    column->addStretch(1);
    for (QWidget* row : {static_cast<QWidget*>(angle_), static_cast<QWidget*>(pace_), static_cast<QWidget*>(rate_),
                         static_cast<QWidget*>(question_), static_cast<QWidget*>(field_)}) {
        column->addWidget(row);
    }
    angle_->setWordWrap(true);
    question_->setWordWrap(true);
    field_->installEventFilter(this);
    connect(field_, &QLineEdit::returnPressed, this, &Ledger::take);
    connect(field_, &QLineEdit::textEdited, this, [this] {
        isRefused_ = false;
        renewFacts();
    });
    connect(pace_, &QPushButton::clicked, this, [this] { ask(Want::Pace); });
    connect(rate_, &QPushButton::clicked, this,
            [this] { work_.plan().heading().timing ? Q_EMIT timingWanted() : ask(Want::Rate); });
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
    if (folded && model_.rowCount() > 0) {  // the live row alone: the leg being drawn or chosen, else the sums
        const auto chosen = work_.selected() ? model_.rowTo(*work_.selected()) : std::nullopt;
        const int live = work_.wetPlan() ? model_.rowCount() - 2 : chosen.value_or(model_.rowCount() - 1);
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
    const QString title = QString::fromStdString(movement::routeTitle(route->name));
    use_->setText(look::spoken(movement::useText(route->use)));
    const int room = kFactsWide - 28 - use_->sizeHint().width();
    title_->setText(title_->fontMetrics().elidedText(title, Qt::ElideRight, room));
    title_->setToolTip(title);
    const auto& figures = model_.figures();
    if (!figures) {
        angle_->setText(model_.fault() ? say_(*model_.fault()) : QString());
        const auto want = model_.fault() ? wantOf(work_.plan(), *model_.fault()) : std::nullopt;
        renewQuestion(want ? std::vector{*want} : std::vector<Want>{});
        return;
    }
    const bool printed = figures->gm.source == plan::DeclinationSource::Sheet;
    angle_->setText(tr("G-M angle %1, %2")
                        .arg(QString::fromStdString(movement::gmAngleText(figures->gm.angle, work_.angles())),
                             printed ? tr("from the sheet") : tr("from the model")));
    angle_->setToolTip(QString::fromStdString(movement::gmRuleText(figures->gm.angle, work_.angles())));
    showFact(*pace_,
             figures->paces ? QString::fromStdString(movement::shortPaceText(*figures)) : tr("no pace count: give it"),
             QString::fromStdString(movement::paceText(*figures)));
    showFact(*rate_,
             figures->rate || figures->timing
                 ? QString::fromStdString(movement::rateText(*figures, work_.plan().heading().zone))
                 : tr("no rate of march: give it"),
             tr("Ctrl+Shift+H: rates, start, paces"));
    renewQuestion(wantsOf(*figures, !work_.wetPlan()));
}

/// What somebody asked for himself stands until he has answered or left it; else the first thing that is missing.
void Ledger::renewQuestion(const std::vector<Want>& wants) {
    if (wished_) {
        asks_ = wished_;
    } else if (!field_->hasFocus() && field_->text().isEmpty()) {
        const auto next = std::find_if(wants.begin(), wants.end(), [this](Want want) { return !left_.contains(want); });
        asks_ = next == wants.end() ? std::nullopt : std::optional(*next);
        isRefused_ = false;
    }
    question_->setVisible(asks_.has_value());
    field_->setVisible(asks_.has_value());
    const bool factsFit = !asks_ && model_.figures();
    pace_->setVisible(factsFit);
    rate_->setVisible(factsFit);
    if (asks_) {
        field_->setPlaceholderText(example(*asks_, work_.plan().heading()));
        field_->setAccessibleName(question(*asks_));
        if (!isRefused_) {
            showQuestion(question(*asks_));
        }
    }
}

void Ledger::showQuestion(const QString& words) {
    question_->setText(words);
    const look::Colours c = look::colours(light_);
    QPalette p = question_->palette();
    p.setColor(QPalette::WindowText, isRefused_ ? c.error : c.ink);
    question_->setPalette(p);
    field_->setProperty("refused", isRefused_);
    field_->style()->unpolish(field_);
    field_->style()->polish(field_);
}

void Ledger::ask(Want want) {
    wished_ = want;
    left_.erase(want);
    isRefused_ = false;
    field_->clear();
    Q_EMIT roomWanted();
    renewFacts();
    field_->setVisible(true);
    field_->setFocus(Qt::OtherFocusReason);
}

/// A cell whose figure is missing asks for it; any other chooses its leg.
void Ledger::askAt(const QModelIndex& cell) {
    if (const auto want = model_.wantAt(cell)) {
        ask(*want);
    } else if (const auto leg = model_.legAt(cell.row()); leg && !work_.wetPlan()) {
        Q_EMIT legChosen(model_.figures()->legs[*leg].to);
    }
}

void Ledger::setRows(Rows rows) {
    model_.setRows(rows);
}

void Ledger::take() {
    const plan::RoutePtr route = work_.ledgerRoute();
    if (!asks_ || !route) {
        return;
    }
    if (field_->text().trimmed().isEmpty()) {
        leave();
        return;
    }
    const Want want = *asks_;
    const auto next = answered(want, work_.committed(), route->id, field_->text(), say_);
    isRefused_ = !next;
    if (!next) {
        showQuestion(QStringLiteral("\u25a0 ") + next.error());
        QAccessibleEvent told(question_, QAccessible::Alert);
        QAccessible::updateAccessibility(&told);
        field_->selectAll();
        return;
    }
    wished_.reset();
    field_->clear();
    field_->clearFocus();
    work_.commit(*next, caption(want));
    renew();
    asks_ ? field_->setFocus(Qt::OtherFocusReason) : Q_EMIT left();
}

/// It is not asked for again unasked.
void Ledger::leave() {
    if (asks_) {
        left_.insert(*asks_);
    }
    wished_.reset();
    isRefused_ = false;
    field_->clear();
    field_->clearFocus();
    renewFacts();
    Q_EMIT left();
}

bool Ledger::eventFilter(QObject* watched, QEvent* event) {
    if (watched == field_ && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        leave();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace crosstick::ledger
