#include "ui/phases/name_field.h"

#include <algorithm>
#include <utility>

#include <QAccessible>
#include <QKeyEvent>
#include <QStyle>

namespace crosstick::phases {
namespace {

constexpr int kHigh = 23;
constexpr int kLeastWide = 120;
constexpr int kMostWide = 320;
constexpr int kEdges = 24;
constexpr int kRefusalWide = 260;

}  // namespace

NameField::NameField(const QString& name, Take take, const look::Light& light, QWidget* parent)
    : QLineEdit(name, parent), take_(std::move(take)), light_(light) {
    setAccessibleName(tr("Name of the film"));
    setProperty("inRail", true);
    setFont(look::face(12, look::Weight::Bold));
    setFixedHeight(kHigh);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    selectAll();
    connect(this, &QLineEdit::textChanged, this, &QWidget::updateGeometry);
    connect(this, &QLineEdit::textEdited, this, [this] { refuse({}); });
    connect(this, &QLineEdit::returnPressed, this, [this] {
        if (const auto why = take_(text().trimmed())) {
            refuse(*why);
            selectAll();
        } else {
            Q_EMIT done();
        }
    });
}

NameField::~NameField() {
    delete refusal_.data();  // it is the window's child, and would outlive its field
}

QSize NameField::sizeHint() const {
    return {std::clamp(fontMetrics().horizontalAdvance(text()) + kEdges, kLeastWide, kMostWide), kHigh};
}

void NameField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT done();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

/// Who goes on with something else keeps a good name and drops a bad one; another program's window leaves the field
/// open.
void NameField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    const Qt::FocusReason why = event->reason();
    if (why != Qt::ActiveWindowFocusReason && why != Qt::PopupFocusReason && why != Qt::MenuBarFocusReason) {
        (void)take_(text().trimmed());
        Q_EMIT done();
    }
}

void NameField::moveEvent(QMoveEvent* event) {
    QLineEdit::moveEvent(event);
    layRefusal();
}

void NameField::refuse(const QString& why) {
    setProperty("refused", !why.isEmpty());
    style()->unpolish(this);
    style()->polish(this);
    delete refusal_.data();
    if (why.isEmpty()) {
        return;
    }
    refusal_ = new QLabel(QStringLiteral("\u25a0 ") + why, window());
    refusal_->setTextFormat(Qt::PlainText);
    refusal_->setWordWrap(true);
    refusal_->setFixedWidth(kRefusalWide);
    refusal_->setMargin(6);
    refusal_->setFrameShape(QFrame::Box);
    refusal_->setAutoFillBackground(true);
    const look::Colours c = look::colours(light_);
    QPalette p = refusal_->palette();
    p.setColor(QPalette::Window, c.well);
    p.setColor(QPalette::WindowText, c.error);
    refusal_->setPalette(p);
    layRefusal();
    refusal_->show();
    QAccessibleEvent told(refusal_, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
}

void NameField::layRefusal() {
    if (refusal_ != nullptr) {
        refusal_->adjustSize();
        const QPoint under = mapTo(window(), QPoint(0, height() + 2));
        refusal_->move(std::max(0, std::min(under.x(), window()->width() - refusal_->width() - 8)), under.y());
        refusal_->raise();
    }
}

}  // namespace crosstick::phases
