#include "ui/look/choice.h"

#include <QGridLayout>
#include <QLabel>

#include "ui/look/theme.h"

namespace crosstick::look {

Choice::Choice(const QString& name, const QStringList& words, int perRow, QWidget* parent) : QWidget(parent) {
    auto* rows = new QGridLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    if (!name.isEmpty()) {
        auto* label = new QLabel(name, this);
        label->setFont(face(11));
        label->setContentsMargins(0, 0, 0, 2);
        rows->addWidget(label, 0, 0, 1, perRow);
    }
    for (int column = 0; column < perRow; ++column) {
        rows->setColumnStretch(column, 1);
    }
    for (int n = 0; n < static_cast<int>(words.size()); ++n) {
        auto* button = new QPushButton(words[n], this);
        button->setCheckable(true);
        button->setStyleSheet(QStringLiteral("padding: 5px 2px;"));
        button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);  // all alike, however narrow the card
        button->setAccessibleName(name.isEmpty() ? words[n] : tr("%1: %2").arg(name, words[n]));
        rows->addWidget(button, 1 + n / perRow, n % perRow);
        connect(button, &QPushButton::clicked, this, [this, n] {
            show(n);
            Q_EMIT chosen(n);
        });
        buttons_.push_back(button);
    }
}

void Choice::show(int down) {
    for (std::size_t n = 0; n < buttons_.size(); ++n) {
        buttons_[n]->setChecked(static_cast<int>(n) == down);
    }
}

}  // namespace crosstick::look
