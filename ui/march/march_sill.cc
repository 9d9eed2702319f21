#include "ui/march/march_sill.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "core/measures/unit_words.h"
#include "core/units/number_text.h"
#include "symbols/unit_symbol.h"
#include "ui/march/table_page.h"
#include "ui/press/painter.h"

namespace crosstick::march {
namespace {

constexpr int kFactsWide = 220;
constexpr int kRow = 26;

/// A unit's symbol in its cell, as the film has it.
class SymbolPainter final : public QStyledItemDelegate {
  public:
    SymbolPainter(const ColumnModel& model, const press::Faces* faces, const look::Light& light, QObject* parent)
        : QStyledItemDelegate(parent), model_(model), faces_(faces), light_(light) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        QStyledItemDelegate::paint(painter, option, index);
        if (faces_ == nullptr) {
            return;
        }
        const auto unit = measures::withoutAmplifiers(measures::readUnit(model_.unitOf(index.row())));
        symbols::UnitSketch sketch = symbols::sketchUnit(unit, {}, {});
        sketch.ink.append(std::move(sketch.letters));
        const drawing::Box box = drawing::extent(sketch.ink).grown(0.4);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        const double perMm = std::min(option.rect.width() / box.width(), option.rect.height() / box.height());
        painter->translate(option.rect.center() + QPointF(0.5, 0.5));
        painter->scale(perMm, perMm);
        painter->translate(-box.middle().x, -box.middle().y);
        const press::Inks inks = light_ == look::Light::Night ? press::nightInks() : press::dayInks();
        press::paint(*painter, sketch.ink, {*faces_, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
        painter->restore();
    }

  private:
    const ColumnModel& model_;
    const press::Faces* faces_;
    const look::Light& light_;
};

}  // namespace

MarchSill::MarchSill(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
                     QWidget* parent)
    : QWidget(parent),
      work_(work),
      say_(std::move(say)),
      faces_(faces),
      model_(work),
      table_(new QTableView(this)),
      facts_(new QWidget(this)) {
    setAccessibleName(tr("Order of march"));
    setFixedHeight(kHeight);
    buildTable();
    buildFacts();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 2, 0, 0);
    row->setSpacing(1);
    row->addWidget(facts_);
    auto* column = new QVBoxLayout;
    column->setSpacing(2);
    column->setContentsMargins(0, 0, 0, 6);
    column->addWidget(table_, 1);
    buildSaid();
    column->addWidget(said_);
    row->addLayout(column, 1);
    row->addWidget(buttons());
    connect(&model_, &ColumnModel::refused, this, [this](const Error& why) { Q_EMIT refused(say_(why)); });
    connect(&model_, &ColumnModel::taken, this, [this] { Q_EMIT refused({}); });  // what was said is put right
    table_->installEventFilter(this);
    setLight(light_);
}

void MarchSill::buildTable() {
    table_->setAccessibleName(tr("Elements in their order"));
    table_->setModel(&model_);
    table_->setItemDelegateForColumn(ColumnModel::Symbol, new SymbolPainter(model_, faces_, light_, table_));
    table_->setSelectionBehavior(QAbstractItemView::SelectItems);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    table_->setFrameShape(QFrame::NoFrame);
    table_->setShowGrid(false);
    table_->setAlternatingRowColors(true);
    table_->setTabKeyNavigation(true);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(kRow);
    table_->verticalHeader()->setMinimumSectionSize(kRow);
    table_->horizontalHeader()->setFixedHeight(24);
    table_->horizontalHeader()->setFont(look::face(11));
    table_->horizontalHeader()->setHighlightSections(false);
    static constexpr int kWide[] = {36, 66, 170, 110, 80, 60, 80, 90, 80, 86};
    for (int n = 0; n < ColumnModel::kFields; ++n) {
        table_->setColumnWidth(n, kWide[n]);
    }
    table_->horizontalHeader()->setSectionResizeMode(ColumnModel::Unit, QHeaderView::Stretch);
}

QLineEdit* MarchSill::field(const QString& words, const QString& whole) {
    auto* made = new QLineEdit(facts_);
    made->setAccessibleName(whole);
    made->setToolTip(whole);
    made->setPlaceholderText(words);
    return made;
}

void MarchSill::buildFacts() {
    facts_->setFixedWidth(kFactsWide);
    auto* rows = new QVBoxLayout(facts_);
    rows->setContentsMargins(12, 8, 8, 6);
    rows->setSpacing(3);
    auto* title = new QLabel(tr("Order of march"), facts_);
    title->setFont(look::face(15, look::Weight::Bold));
    rows->addWidget(title);
    name_ = field(tr("name of the column"), tr("Name of the column"));
    rows->addWidget(name_);
    connect(name_, &QLineEdit::editingFinished, this, [this] { model_.setName(name_->text()); });
    files_ = field({}, tr("Files abreast"));
    apart_ = field({}, tr("Metres between people of a file"));
    interval_ = field({}, tr("Metres between elements; ours, no doctrinal figure"));
    const std::pair<QString, QLineEdit*> lines[] = {
        {tr("files abreast"), files_}, {tr("m between people"), apart_}, {tr("m between elements"), interval_}};
    for (const auto& [words, edit] : lines) {
        auto* line = new QHBoxLayout;
        auto* label = new QLabel(words, facts_);
        label->setFont(look::face(11));
        label->setBuddy(edit);
        edit->setMaximumWidth(56);
        line->addWidget(label, 1);
        line->addWidget(edit);
        rows->addLayout(line);
    }
    connect(files_, &QLineEdit::editingFinished, this, [this] { take(files_, &ColumnModel::setFiles); });
    connect(apart_, &QLineEdit::editingFinished, this, [this] { take(apart_, &ColumnModel::setApart); });
    connect(interval_, &QLineEdit::editingFinished, this, [this] { take(interval_, &ColumnModel::setInterval); });
    rows->addStretch(1);
    sum_ = new QLabel(facts_);
    sum_->setFont(look::face(12, look::Weight::Bold));
    sum_->setTextFormat(Qt::PlainText);
    sum_->setWordWrap(true);
    rows->addWidget(sum_);
}

/// All of a column in one line.
void MarchSill::buildSaid() {
    said_ = new QLineEdit(this);
    said_->setAccessibleName(tr("Elements in one line"));
    said_->setPlaceholderText(tr("in one line: 1/2 inf sqd 9, hq plt 3, Porters 4"));
    said_->setToolTip(
        tr("Units or names with their strength, parted by commas. Enter adds them after the chosen one."));
    connect(said_, &QLineEdit::returnPressed, this, [this] {
        const QModelIndex at = table_->currentIndex();
        const int last = model_.addSaid(at.isValid() ? at.row() : -1, said_->text());
        if (last >= 0) {
            said_->clear();
            table_->setCurrentIndex(model_.index(last, ColumnModel::Unit));
            renewFacts();
        }
    });
}

QWidget* MarchSill::buttons() {
    auto* frame = new QWidget(this);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(6, 8, 8, 6);
    rows->setSpacing(4);
    add_ = pageButton(tr("Add"), tr("Add an element after this one"), frame);
    up_ = pageButton(tr("Forward"), tr("One place nearer to the head"), frame);
    down_ = pageButton(tr("Back"), tr("One place farther from the head"), frame);
    out_ = pageButton(tr("Take out"), tr("Take the element out of the column"), frame);
    for (QToolButton* one : {add_, up_, down_, out_}) {
        rows->addWidget(one);
    }
    rows->addStretch(1);
    const auto row = [this] { return table_->currentIndex().isValid() ? table_->currentIndex().row() : -1; };
    connect(add_, &QToolButton::clicked, this, [this, row] { choose(model_.add(row())); });
    connect(up_, &QToolButton::clicked, this, [this, row] { choose(model_.move(row(), -1)); });
    connect(down_, &QToolButton::clicked, this, [this, row] { choose(model_.move(row(), 1)); });
    connect(out_, &QToolButton::clicked, this, [this, row] {
        const int at = row();
        model_.takeOut(at);
        choose(std::min(at, model_.rowCount() - 1));
    });
    return frame;
}

void MarchSill::choose(int row) {
    if (row >= 0 && row < model_.rowCount()) {
        const int field = table_->currentIndex().isValid() ? table_->currentIndex().column() : ColumnModel::Unit;
        table_->setCurrentIndex(model_.index(row, std::max<int>(field, ColumnModel::Unit)));
        table_->setFocus();
    }
    renewFacts();
}

void MarchSill::take(QLineEdit* field, Takes takes) {
    if (!field->isModified()) {
        return;
    }
    const Result<void> taken = (model_.*takes)(field->text());
    field->setProperty("refused", !taken);
    field->style()->unpolish(field);
    field->style()->polish(field);
    if (taken) {
        field->setModified(false);
        renewFacts();
    } else {
        Q_EMIT refused(say_(taken.error()));
    }
}

void MarchSill::setLight(look::Light light) {
    light_ = light;
    const QPalette p = look::tablePalette(palette(), light);
    setPalette(p);
    table_->setPalette(p);
    setAutoFillBackground(true);
    update();
}

void MarchSill::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.card);
    painter.fillRect(kFactsWide, 0, 1, height(), c.rule);
}

void MarchSill::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QWidget::keyPressEvent(event);
}

/// In the table Delete empties a cell and does not wipe the block off, Enter opens it.
bool MarchSill::eventFilter(QObject* watched, QEvent* event) {
    if (watched != table_ || (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress)) {
        return QWidget::eventFilter(watched, event);
    }
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool isDelete = key == Qt::Key_Delete || key == Qt::Key_Backspace;
    const bool isEnter = key == Qt::Key_Return || key == Qt::Key_Enter;
    const QModelIndex cell = table_->currentIndex();
    if (!cell.isValid() || !(isDelete || isEnter)) {
        return QWidget::eventFilter(watched, event);
    }
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
    } else if (model_.flags(cell).testFlag(Qt::ItemIsEditable)) {
        isDelete ? static_cast<void>(model_.setData(cell, QString(), Qt::EditRole)) : table_->edit(cell);
    }
    return true;
}

void MarchSill::show(const std::string& column) {
    model_.show(column);
    renewFacts();
}

void MarchSill::renew() {
    model_.renew();
    renewFacts();
}

void MarchSill::renewFacts() {
    const plan::Column* column = model_.column();
    for (QLineEdit* edit : {name_, files_, apart_, interval_}) {
        edit->setEnabled(column != nullptr);
    }
    for (QToolButton* one : {up_, down_, out_}) {
        one->setEnabled(model_.rowCount() > 0);
    }
    const auto set = [](QLineEdit* edit, const QString& words) {
        if (!edit->hasFocus()) {
            edit->setText(words);
        }
    };
    if (column == nullptr) {
        for (QLineEdit* edit : {name_, files_, apart_, interval_}) {
            edit->clear();
        }
        sum_->setText(tr("No column yet: add its first element."));
        return;
    }
    set(name_, QString::fromStdString(column->name));
    set(files_, QString::number(column->files));
    set(apart_, QString::number(column->apart.value()));
    set(interval_, QString::number(column->interval.value()));
    const movement::ColumnFigures& figures = model_.figures();
    const auto& rate = work_.plan().heading().rate;
    QString words = tr("%1 people, %2 m").arg(figures.people).arg(std::lround(figures.length.value()));
    if (rate) {
        const Minutes pass = movement::passTime(figures.length, rate->rate);
        words += tr("; passes in %1 min").arg(QString::fromStdString(numberText(pass.value(), 0)));
    }
    sum_->setText(words);
}

}  // namespace crosstick::march
