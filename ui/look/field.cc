#include "ui/look/field.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QStyle>
#include <QVBoxLayout>

namespace crosstick::look {
namespace {

QLabel* smallLabel(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setFont(face(11));
    label->setTextFormat(Qt::PlainText);
    return label;
}

}  // namespace

Field::Field(const QString& name, const QString& example, Take take, QWidget* parent)
    : QWidget(parent),
      name_(smallLabel(this)),
      told_(smallLabel(this)),
      refusal_(smallLabel(this)),
      edit_(new QLineEdit(this)),
      take_(std::move(take)) {
    name_->setText(name);
    name_->setBuddy(edit_);
    name_->setWordWrap(true);
    name_->setVisible(!name.isEmpty());
    refusal_->setWordWrap(true);
    refusal_->hide();
    edit_->setAccessibleName(name.isEmpty() ? example : name);
    edit_->setPlaceholderText(example);
    edit_->installEventFilter(this);
    auto* over = new QHBoxLayout;
    over->addWidget(name_, 1);
    over->addWidget(told_);
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(2);
    rows->addLayout(over);
    rows->addWidget(edit_);
    rows->addWidget(refusal_);
    told_->hide();
    connect(edit_, &QLineEdit::editingFinished, this, [this] { (void)enter(); });
    connect(edit_, &QLineEdit::returnPressed, this, [this] {
        const bool adds = value_.isEmpty() && !edit_->text().isEmpty();
        if (enter() && !(adds && edit_->text().isEmpty())) {  // who has added one may add another
            focusNextChild();
        }
    });
}

void Field::setLight(Light light) {
    QPalette p = palette();
    p.setColor(QPalette::WindowText, colours(light).error);
    refusal_->setPalette(p);
}

void Field::show(const QString& value) {
    value_ = value;
    if (!edit_->hasFocus() && !edit_->property("refused").toBool() && edit_->text() != value) {
        edit_->setText(value);
        edit_->setCursorPosition(0);
    }
}

void Field::tell(const QString& words) {
    told_->setText(words);
    told_->setVisible(!words.isEmpty());
    edit_->setAccessibleDescription(words);
}

bool Field::enter() {
    const QString typed = edit_->text().trimmed();
    const auto why = typed == value_ ? std::nullopt : take_(typed);
    refuse(why.value_or(QString()));
    if (!why && edit_->text() != value_) {
        edit_->setText(value_);  // as it is written
        edit_->setCursorPosition(0);
    }
    return !why;
}

void Field::refuse(const QString& why) {
    if (edit_->property("refused").toBool() != !why.isEmpty()) {
        edit_->setProperty("refused", !why.isEmpty());
        edit_->style()->unpolish(edit_);
        edit_->style()->polish(edit_);
    }
    refusal_->setText(why.isEmpty() ? why : QStringLiteral("\u25a0 ") + why);
    refusal_->setVisible(!why.isEmpty());
    if (!why.isEmpty()) {
        QAccessibleEvent told(refusal_, QAccessible::Alert);
        QAccessible::updateAccessibility(&told);
    }
}

bool Field::eventFilter(QObject* watched, QEvent* event) {
    if (watched == edit_ && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        edit_->setText(value_);
        refuse({});
        Q_EMIT left();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace crosstick::look
