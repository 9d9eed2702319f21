#include "ui/window/question.h"

#include <utility>

#include <QAccessible>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>

namespace crosstick::window {

Question::Question(QWidget* parent)
    : QWidget(parent), words_(new QLabel(this)), refusal_(new QLabel(this)), field_(new QLineEdit(this)) {
    setAccessibleName(tr("Question"));
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(12, 4, 12, 4);
    across->setSpacing(8);
    words_->setTextFormat(Qt::PlainText);
    words_->setBuddy(field_);
    field_->setMinimumWidth(220);
    field_->setToolTip(tr("Enter gives the answer, Esc leaves the question"));
    refusal_->setTextFormat(Qt::PlainText);
    refusal_->setWordWrap(true);
    auto* take = new QPushButton(tr("Take it"), this);
    auto* left = new QPushButton(tr("Leave it"), this);
    take->setToolTip(tr("Enter"));
    left->setToolTip(tr("Esc"));
    across->addWidget(words_);
    across->addWidget(field_, 1);
    across->addWidget(refusal_, 1);
    across->addWidget(take);
    across->addWidget(left);
    connect(field_, &QLineEdit::returnPressed, this, &Question::give);
    connect(field_, &QLineEdit::textEdited, refusal_, &QLabel::clear);
    connect(take, &QPushButton::clicked, this, &Question::give);
    connect(left, &QPushButton::clicked, this, &Question::leave);
    hide();
}

void Question::setLight(look::Light light) {
    light_ = light;
    const look::Colours c = look::colours(light);
    QPalette strip = palette();
    strip.setColor(QPalette::WindowText, c.ink);
    setPalette(strip);
    QPalette refused = refusal_->palette();
    refused.setColor(QPalette::WindowText, c.error);
    refusal_->setPalette(refused);
}

/// Painted, not left to the palette: the application's style sheet takes a palette set before the first show back.
void Question::paintEvent(QPaintEvent* /*event*/) {
    QPainter(this).fillRect(rect(), look::colours(light_).wash);
}

void Question::ask(const QString& words, const QString& proposed, Take take) {
    if (!isVisible()) {
        before_ = QApplication::focusWidget();
    }
    take_ = std::move(take);
    words_->setText(words);
    field_->setAccessibleName(words);
    field_->setText(proposed);
    field_->selectAll();
    refusal_->clear();
    show();
    setLight(light_);
    field_->setFocus();
}

void Question::leave() {
    take_ = {};
    hide();
    if (before_ != nullptr && before_->isVisible()) {
        before_->setFocus();
    }
}

void Question::give() {
    if (!take_) {
        return;
    }
    const Take take = std::exchange(take_, {});  // the answer may ask the next question
    if (const auto why = take(field_->text().trimmed())) {
        take_ = take;
        refusal_->setText(*why);
        QAccessibleEvent told(refusal_, QAccessible::Alert);
        QAccessible::updateAccessibility(&told);
        field_->selectAll();
        field_->setFocus();
    } else if (!take_) {
        leave();
    }
}

void Question::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        leave();
    } else {
        QWidget::keyPressEvent(event);
    }
}

}  // namespace crosstick::window
