#include "ui/march/table_page.h"

#include <algorithm>

#include <QAccessible>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QPainter>
#include <QVBoxLayout>

namespace crosstick::march {
namespace {

constexpr int kFactsWide = 220;

}  // namespace

QToolButton* pageButton(const QString& words, const QString& whole, QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setText(words);
    made->setToolTip(whole);
    made->setAccessibleName(whole);
    made->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    return made;
}

TablePage::TablePage(TypedTable& table, Words words, std::function<QString(const Error&)> say, QWidget* parent)
    : QWidget(parent),
      table_(table),
      words_(std::move(words)),
      say_(std::move(say)),
      facts_(new QWidget(this)),
      factRows_(new QVBoxLayout(facts_)),
      about_(new QLabel(facts_)),
      view_(new TypedView(table, words_.title, this)) {
    setAccessibleName(words_.title);
    facts_->setFixedWidth(kFactsWide);
    factRows_->setContentsMargins(12, 6, 8, 6);
    factRows_->setSpacing(4);
    auto* title = new QLabel(words_.title, facts_);
    title->setFont(look::face(15, look::Weight::Bold));
    factRows_->addWidget(title);
    about_->setFont(look::face(11));
    about_->setWordWrap(true);
    about_->setTextFormat(Qt::PlainText);
    factRows_->addWidget(about_);
    factRows_->addStretch(1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(1);
    row->addWidget(facts_);
    row->addWidget(view_, 1);
    if (!words_.takeOut.isEmpty()) {
        auto* rows = new QVBoxLayout;
        rows->setContentsMargins(6, 8, 8, 6);
        rows->setSpacing(4);
        buildButtons(rows);
        row->addLayout(rows);
    }
    connect(&table_, &TypedTable::refused, this, [this](const Error& why) { tell(say_(why)); });
    connect(&table_, &TypedTable::taken, this, [this] { tell({}); });
    connect(&table_, &QAbstractItemModel::modelReset, this, &TablePage::widen);
    tell({});
    widen();
}

void TablePage::buildButtons(QVBoxLayout* rows) {
    if (!words_.add.isEmpty()) {
        add_ = pageButton(words_.add, words_.addWhole, this);
        rows->addWidget(add_);
        connect(add_, &QToolButton::clicked, this, [this] {
            choose(table_.add(view_->currentIndex().isValid() ? view_->currentIndex().row() : -1), 0);
            view_->edit(view_->currentIndex());  // what it is comes first
        });
    }
    out_ = pageButton(words_.takeOut, words_.takeOutWhole, this);
    rows->addWidget(out_);
    rows->addStretch(1);
    connect(out_, &QToolButton::clicked, this, [this] {
        const QModelIndex at = view_->currentIndex();
        table_.takeOut(at.row());
        choose(std::min(at.row(), table_.rowCount() - 1), std::max(0, at.column()));
    });
}

void TablePage::addFact(QWidget* fact) {
    fact->setParent(facts_);
    factRows_->insertWidget(1, fact);
}

void TablePage::widen() {
    const auto& heads = table_.heads();
    int widest = 0;
    for (int n = 0; n < static_cast<int>(heads.size()); ++n) {
        view_->setColumnWidth(n, heads[static_cast<std::size_t>(n)].wide);
        widest = heads[static_cast<std::size_t>(n)].wide > heads[static_cast<std::size_t>(widest)].wide ? n : widest;
    }
    if (!heads.empty()) {
        view_->horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
        view_->horizontalHeader()->setSectionResizeMode(widest, QHeaderView::Stretch);
        view_->horizontalHeader()->setMinimumSectionSize(40);
    }
}

void TablePage::tell(const QString& refusal) {
    const look::Colours c = look::colours(light_);
    QPalette p = about_->palette();
    p.setColor(QPalette::WindowText, refusal.isEmpty() ? c.inkTwo : c.error);
    about_->setPalette(p);
    about_->setText(refusal.isEmpty() ? words_.about : QStringLiteral("\u25a0 ") + refusal);
    if (!refusal.isEmpty()) {
        QAccessibleEvent told(about_, QAccessible::Alert);
        QAccessible::updateAccessibility(&told);
    }
}

void TablePage::choose(int row, int field) {
    if (row >= 0 && row < table_.rowCount()) {
        view_->setCurrentIndex(table_.index(row, field));
        view_->setFocus();
    }
}

void TablePage::setLight(look::Light light) {
    light_ = light;
    view_->setPalette(look::tablePalette(palette(), light));
    tell({});
    update();
}

void TablePage::renew() {
    table_.renew();
    if (out_ != nullptr) {
        out_->setEnabled(table_.rowCount() > 0);
    }
}

void TablePage::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.card);
    painter.fillRect(kFactsWide, 0, 1, height(), c.rule);
}

}  // namespace crosstick::march
