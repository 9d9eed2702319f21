#include "ui/phases/offer_card.h"

#include <algorithm>
#include <utility>

#include <QKeyEvent>
#include <QVBoxLayout>

namespace crosstick::phases {
namespace {

constexpr int kWide = 252;
constexpr int kInner = 12;

QVBoxLayout* rowsOf(QWidget* widget) {
    return static_cast<QVBoxLayout*>(widget->layout());
}

/// All of a group, none, or some of it.
Qt::CheckState stateOf(const std::vector<QCheckBox*>& boxes) {
    const auto taken = std::count_if(boxes.begin(), boxes.end(), [](const QCheckBox* box) { return box->isChecked(); });
    return taken == 0                                           ? Qt::Unchecked
           : taken == static_cast<std::ptrdiff_t>(boxes.size()) ? Qt::Checked
                                                                : Qt::PartiallyChecked;
}

/// The title of a group takes or leaves all of it.
void takesAll(QCheckBox* title, const std::vector<QCheckBox*>& boxes) {
    title->setCheckState(stateOf(boxes));
    QObject::connect(title, &QCheckBox::clicked, title, [title, boxes] {
        const bool all = title->checkState() != Qt::Unchecked;
        for (QCheckBox* box : boxes) {
            box->setChecked(all);
        }
        title->setCheckState(stateOf(boxes));
    });
    for (QCheckBox* box : boxes) {
        QObject::connect(box, &QCheckBox::toggled, title, [title, boxes] { title->setCheckState(stateOf(boxes)); });
    }
}

}  // namespace

OfferCard::OfferCard(QWidget* parent) : QScrollArea(parent) {
    setAccessibleName(tr("What is offered"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFixedWidth(kWide);
    setFocusPolicy(Qt::NoFocus);
    hide();
}

void OfferCard::setLight(look::Light light) {
    light_ = light;
    QPalette p = palette();
    p.setColor(QPalette::Window, look::colours(light).card);
    setPalette(p);
    if (isOffering()) {  // what was ticked and typed meanwhile is kept
        const Answer now = answer();
        for (std::size_t n = 0; n < offered_.fields.size(); ++n) {
            offered_.fields[n].value = now.fields[static_cast<qsizetype>(n)];
        }
        std::size_t at = 0;
        for (Group& group : offered_.groups) {
            for (Row& row : group.rows) {
                row.taken = now.taken[at++];
            }
        }
        build();
    }
}

void OfferCard::offer(Offered offered, Take take) {
    offered_ = std::move(offered);
    take_ = std::move(take);
    build();
    Q_EMIT changed();
    fields_.empty() ? button_->setFocus() : fields_.front()->setFocus();
}

void OfferCard::leave() {
    if (std::exchange(take_, nullptr)) {
        Q_EMIT changed();
    }
}

void OfferCard::build() {
    boxes_.clear();
    fields_.clear();
    const look::Colours c = look::colours(light_);
    body_ = new QWidget;
    QPalette p = body_->palette();
    p.setColor(QPalette::Window, c.card);
    body_->setPalette(p);
    body_->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(body_);
    column->setContentsMargins(0, 0, 0, kInner);
    column->setSpacing(3);
    addHead(body_);
    for (const Field& field : offered_.fields) {
        addField(body_, field);
    }
    addDeed(body_);  // above what may be a long list, so that it is always seen
    for (const Group& group : offered_.groups) {
        addGroup(body_, group);
    }
    column->addStretch(1);
    if (QWidget* old = takeWidget()) {  // its own button may be what called
        old->hide();
        old->deleteLater();
    }
    setWidget(body_);
}

QLabel* OfferCard::label(const QString& words, const QColor& ink, QWidget* parent) const {
    auto* label = new QLabel(words, parent);
    label->setFont(look::face(11));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    QPalette p = label->palette();
    p.setColor(QPalette::WindowText, ink);
    label->setPalette(p);
    return label;
}

void OfferCard::addHead(QWidget* body) {
    const look::Colours c = look::colours(light_);
    auto* head = new QWidget(body);
    head->setMinimumHeight(58);
    QPalette p = head->palette();
    p.setColor(QPalette::Window, c.wash);
    head->setPalette(p);
    head->setAutoFillBackground(true);
    auto* rows = new QVBoxLayout(head);
    rows->setContentsMargins(kInner, 8, 8, 8);
    rows->setSpacing(2);
    auto* title = new QLabel(offered_.title, head);
    title->setFont(look::face(15, look::Weight::Bold));
    title->setTextFormat(Qt::PlainText);
    title->setWordWrap(true);
    rows->addWidget(title);
    rows->addWidget(label(offered_.under, c.ours, head));
    rowsOf(body)->addWidget(head);
    rowsOf(body)->addSpacing(6);
}

void OfferCard::addField(QWidget* body, const Field& asked) {
    auto* frame = new QWidget(body);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(kInner, 2, kInner, 2);
    rows->setSpacing(2);
    auto* name = label(asked.label, look::colours(light_).inkTwo, frame);
    auto* field = new QLineEdit(asked.value, frame);
    field->setAccessibleName(asked.label);
    name->setBuddy(field);
    rows->addWidget(name);
    rows->addWidget(field);
    rowsOf(body)->addWidget(frame);
    fields_.push_back(field);
}

void OfferCard::addGroup(QWidget* body, const Group& group) {
    auto* frame = new QWidget(body);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(kInner, 8, kInner, 0);
    rows->setSpacing(1);
    auto* title = new QCheckBox(group.title, frame);
    title->setTristate(true);
    title->setFont(look::face(12, look::Weight::Bold));
    title->setMinimumHeight(24);
    rows->addWidget(title);
    std::vector<QCheckBox*> own;
    for (const Row& row : group.rows) {
        auto* box = new QCheckBox(row.words, frame);
        box->setChecked(row.taken);
        box->setMinimumHeight(24);
        box->setStyleSheet(QStringLiteral("margin-left: 16px;"));
        rows->addWidget(box);
        own.push_back(box);
        boxes_.push_back(box);
    }
    takesAll(title, own);
    rowsOf(body)->addWidget(frame);
}

void OfferCard::addDeed(QWidget* body) {
    auto* frame = new QWidget(body);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(kInner, 8, kInner, 2);
    rows->setSpacing(4);
    refusal_ = label({}, look::colours(light_).error, frame);
    refusal_->hide();
    button_ = new QPushButton(offered_.deed, frame);
    button_->setMinimumHeight(36);
    button_->setDefault(true);
    connect(button_, &QPushButton::clicked, this, &OfferCard::give);
    auto* away = new QPushButton(tr("Leave it"), frame);
    away->setMinimumHeight(28);
    away->setAutoDefault(true);  // Enter on it leaves
    connect(away, &QPushButton::clicked, this, &OfferCard::leave);
    rows->addWidget(refusal_);
    rows->addWidget(button_);
    rows->addWidget(away);
    rowsOf(body)->addWidget(frame);
}

OfferCard::Answer OfferCard::answer() const {
    Answer answer;
    for (const QLineEdit* field : fields_) {
        answer.fields << field->text().trimmed();
    }
    for (const QCheckBox* box : boxes_) {
        answer.taken.push_back(box->isChecked());
    }
    return answer;
}

void OfferCard::give() {
    const Take take = take_;
    if (!take) {
        return;
    }
    if (const auto refused = take(answer())) {
        refusal_->setText(QStringLiteral("\u25a0 ") + *refused);
        refusal_->show();
        return;
    }
    leave();
}

void OfferCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        leave();
    } else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        give();
    } else {
        QScrollArea::keyPressEvent(event);
    }
}

}  // namespace crosstick::phases
