#include "ui/copies/papers.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QVBoxLayout>

#include "ui/look/theme.h"

namespace crosstick::copies {
namespace {

QLabel* smallLabel(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setFont(look::face(11));
    label->setTextFormat(Qt::PlainText);
    return label;
}

}  // namespace

PapersChoice::PapersChoice(QWidget* parent) : QWidget(parent) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(smallLabel(tr("Route cards"), this));
    cards_ = new QComboBox(this);
    cards_->setAccessibleName(tr("Form of the route cards"));
    cards_->addItems({tr("A5, for the map case"), tr("A6, for a breast pocket"), tr("A4, a table")});
    column->addWidget(cards_);
    column->addWidget(smallLabel(tr("Papers beside them"), this));
    auto* row = new QHBoxLayout;
    row->setSpacing(0);
    for (const auto& [paper, words] :
         {std::pair(Paper::March, tr("March")), std::pair(Paper::Checklist, tr("Checklist")),
          std::pair(Paper::Matrix, tr("Matrix"))}) {
        auto* button = new QPushButton(words, this);
        button->setCheckable(true);
        button->setStyleSheet(QStringLiteral("padding: 5px 2px;"));
        button->setAccessibleName(tr("Make the paper: %1").arg(words));
        button->setToolTip(tr("Printed with the route cards"));
        row->addWidget(button, 1);
        buttons_[paper] = button;
        connect(button, &QPushButton::toggled, this, [this, paper = paper](bool on) {
            on ? static_cast<void>(wish_.beside.insert(paper)) : static_cast<void>(wish_.beside.erase(paper));
            Q_EMIT changed();
        });
    }
    column->addLayout(row);
    columns_ = new QPushButton(tr("Columns of this paper"), this);
    columns_->setMenu(new QMenu(columns_));
    column->addWidget(columns_);
    connect(cards_, &QComboBox::activated, this, [this](int index) {
        wish_.cards = static_cast<PaperWish::Cards>(index);
        Q_EMIT changed();
    });
    lookAtFilm();
}

void PapersChoice::lookAtFilm() {
    columns_->setEnabled(false);
    columns_->setToolTip(tr("A film has no columns. Turn to a table: march, checklist, matrix, or cards as A4."));
}

void PapersChoice::lookAt(Paper paper, const std::vector<ColumnName>& columns) {
    QMenu* menu = columns_->menu();
    menu->clear();
    columns_->setEnabled(!columns.empty());
    columns_->setToolTip(columns.empty() ? tr("Cards A5 and A6 have columns of their own. A4 lets you choose.")
                                         : QString());
    for (const ColumnName& one : columns) {
        QAction* action = menu->addAction(QString::fromStdString(one.head.empty() ? one.key : one.head));
        action->setCheckable(true);
        action->setChecked(!wish_.without[paper].contains(one.key));
        connect(action, &QAction::triggered, this, [this, paper, key = one.key](bool on) {
            on ? static_cast<void>(wish_.without[paper].erase(key))
               : static_cast<void>(wish_.without[paper].insert(key));
            Q_EMIT changed();
        });
    }
}

}  // namespace crosstick::copies
