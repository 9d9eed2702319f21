#include "ui/details/details.h"

#include <algorithm>
#include <utility>

#include <QApplication>
#include <QButtonGroup>
#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

#include "core/measures/catalogue.h"
#include "core/movement/paper_figures.h"
#include "core/plan/edits.h"
#include "core/units/number_text.h"
#include "ui/details/beyond.h"
#include "ui/details/card_figures.h"
#include "ui/details/faults.h"
#include "ui/details/grid_entry.h"
#include "ui/details/trace_words.h"

namespace crosstick::details {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// The field with the edge of one that was refused, or its usual one.
void markRefused(QLineEdit& field, bool isRefused) {
    field.setProperty("refused", isRefused);
    field.style()->unpolish(&field);
    field.style()->polish(&field);
}

}  // namespace

QLabel* Details::smallLabel(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setFont(look::face(11));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

Details::Details(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces, QWidget* parent)
    : QScrollArea(parent), work_(work), say_(std::move(say)), faces_(faces) {
    setAccessibleName(tr("Details"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFixedWidth(kWidth);
    setFocusPolicy(Qt::NoFocus);
    connect(&work_, &work::Work::selectionChanged, this, &Details::renew);
    connect(&work_, &work::Work::planReplaced, this, &Details::renew);
    connect(&work_, &work::Work::planChanged, this, &Details::renewValues);
}

void Details::setLight(look::Light light) {
    light_ = light;
    QPalette p = palette();
    p.setColor(QPalette::Window, look::colours(light).card);
    setPalette(p);
    renew();
}

void Details::showEvent(QShowEvent* event) {
    catchUp();
    QScrollArea::showEvent(event);
}

void Details::renew() {
    isStale_ = true;
    if (isVisible()) {
        rebuild();
    }
}

void Details::catchUp() {
    if (isStale_) {
        rebuild();
    }
}

void Details::askForLabel() {
    catchUp();
    if (QLineEdit* field = caretField_ != nullptr ? caretField_ : labelField_) {
        field->setFocus(Qt::OtherFocusReason);
        field->selectAll();
    }
}

void Details::askForLeg() {
    catchUp();
    if (legField_ != nullptr) {
        legField_->setFocus(Qt::OtherFocusReason);
        widget()->layout()->activate();
        ensureWidgetVisible(numbers_ != nullptr ? static_cast<QWidget*>(numbers_) : legField_);
        ensureWidgetVisible(legField_);
    }
}

void Details::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QScrollArea::keyPressEvent(event);
}

bool Details::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        auto* field = qobject_cast<QLineEdit*>(watched);
        const auto value = values_.find(field);
        if (value != values_.end()) {
            field->setText(text(value->second()));
        }
        Q_EMIT left();
        return true;
    }
    return QScrollArea::eventFilter(watched, event);
}

/// The caret stays in the field of the same name.
void Details::rebuildInPlace() {
    const QWidget* focus = QApplication::focusWidget();
    const QString held = focus != nullptr && body_->isAncestorOf(focus) ? focus->accessibleName() : QString();
    rebuild();
    for (QLineEdit* field : held.isEmpty() ? QList<QLineEdit*>() : body_->findChildren<QLineEdit*>()) {
        if (field->accessibleName() == held) {
            return field->setFocus();
        }
    }
}

void Details::rebuild() {
    isRebuilding_ = true;
    isStale_ = false;
    values_.clear();
    labelField_ = nullptr;
    caretField_ = nullptr;
    gridField_ = nullptr;
    legField_ = nullptr;
    numbers_ = nullptr;
    token_ = nullptr;
    beyond_ = nullptr;
    course_ = nullptr;
    traced_ = nullptr;
    filmBoxes_.clear();
    body_ = new QWidget;
    QPalette p = body_->palette();
    p.setColor(QPalette::Window, look::colours(light_).card);
    body_->setPalette(p);
    body_->setAutoFillBackground(true);
    column_ = new QVBoxLayout(body_);
    column_->setContentsMargins(0, 0, 0, 12);
    column_->setSpacing(3);
    shown_ = work_.isOpen() ? work_.selected() : std::nullopt;
    if (shown_) {
        if (const plan::MeasurePtr measure = work_.plan().measure(*shown_)) {
            kind_ = measure->kind;
            addMeasure(*measure);
        } else if (const plan::RoutePtr route = work_.plan().route(*shown_)) {
            addRoute(*route);
        }
    } else if (work_.isOpen()) {
        addHeading();
    } else {
        addHead(tr("Details"), tr("Nothing is chosen. Click a thing on the table."));
    }
    column_->addStretch(1);
    if (QWidget* old = takeWidget()) {  // one of its own buttons may be what called
        old->hide();
        old->deleteLater();
    }
    setWidget(body_);
    isRebuilding_ = false;
}

void Details::addHead(const QString& name, const QString& kind, const measures::Entry* entry) {
    const look::Colours c = look::colours(light_);
    auto* head = new QWidget(body_);
    head->setMinimumHeight(58);
    QPalette p = head->palette();
    p.setColor(QPalette::Window, shown_ ? c.wash : c.card);
    head->setPalette(p);
    head->setAutoFillBackground(true);
    auto* across = new QHBoxLayout(head);
    across->setContentsMargins(12, 8, 8, 8);
    across->setSpacing(6);
    auto* rows = new QVBoxLayout;
    rows->setSpacing(2);
    across->addLayout(rows, 1);
    if (entry != nullptr && faces_ != nullptr) {
        token_ = new TokenPicture(*entry, *faces_, light_, head);
        token_->show(shown_ ? work_.plan().measure(*shown_) : nullptr);
        across->addWidget(token_);
    }
    title_ = new QLabel(name, head);
    title_->setFont(look::face(15, look::Weight::Bold));
    title_->setTextFormat(Qt::PlainText);
    auto* under = smallLabel(kind, head);
    QPalette violet = under->palette();
    violet.setColor(QPalette::WindowText, shown_ ? c.ours : c.inkTwo);
    under->setPalette(violet);
    rows->addWidget(title_);
    rows->addWidget(under);
    column_->addWidget(head);
    column_->addSpacing(6);
}

QLineEdit* Details::addField(const QString& label, const std::string& value, const std::string& caption,
                             const Take& take) {
    auto* frame = new QWidget(body_);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    auto* name = smallLabel(label, frame);
    auto* field = new QLineEdit(text(value), frame);
    field->setAccessibleName(label);
    field->setCursorPosition(0);
    field->setToolTip(tr("Enter goes to the next field, Esc to the table"));
    name->setBuddy(field);
    auto* fault = smallLabel({}, frame);
    QPalette red = fault->palette();
    red.setColor(QPalette::WindowText, look::colours(light_).error);
    fault->setPalette(red);
    fault->hide();
    for (QWidget* row : std::initializer_list<QWidget*>{name, field, fault}) {
        rows->addWidget(row);
    }
    column_->addWidget(frame);
    field->installEventFilter(this);
    const auto refuse = [field, fault](const QString& why) {
        markRefused(*field, !why.isEmpty());
        fault->setText(why.isEmpty() ? why : QStringLiteral("\u25a0 ") + why);
        fault->setVisible(!why.isEmpty());
    };
    const auto enter = [this, field, caption, take, refuse] {
        const auto value2 = values_.find(field);
        const std::string typed = field->text().trimmed().toStdString();
        if (value2 == values_.end() || typed == value2->second()) {
            refuse({});
            return true;
        }
        auto next = take(work_.committed(), typed);
        if (const auto pinned = next ? work_.refusal(*next) : std::nullopt) {
            next = tl::unexpected(*pinned);
        }
        if (!next) {
            refuse(say_(next.error()));
            return false;
        }
        refuse({});
        work_.commit(std::move(*next), caption);
        if (const auto taken = values_.find(field); taken != values_.end()) {
            field->setText(text(taken->second()));  // as it is written, so that leaving the field is no second step
        }
        return true;
    };
    connect(field, &QLineEdit::editingFinished, this, [this, enter] {
        if (!isRebuilding_) {
            (void)enter();
        }
    });
    connect(field, &QLineEdit::returnPressed, this, [this, field, enter] {
        if (enter()) {
            field == labelField_ ? Q_EMIT left() : static_cast<void>(focusNextChild());
        }
    });
    return field;
}

void Details::addShownOn(const plan::ItemId& item) {
    auto* frame = new QWidget(body_);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    rows->addWidget(smallLabel(tr("Shown on"), frame));
    for (const plan::FilmPtr& film : work_.plan().films()) {
        auto* box = new QCheckBox(text(film->name), frame);
        box->setChecked(plan::isShownOn(*film, item));
        box->setEnabled(!film->pinned);
        box->setToolTip(film->pinned ? tr("%1 is pinned.").arg(box->text()) : QString());
        const bool works = work_.workingFilm() == film->id;
        box->setFont(look::face(12, works ? look::Weight::Bold : look::Weight::Regular));
        const plan::FilmId id = film->id;
        filmBoxes_.emplace_back(id, box);
        connect(box, &QCheckBox::toggled, this, [this, item, id](bool on) {
            work_.commit(
                on ? plan::shownOn(work_.committed(), item, id) : plan::notShownOn(work_.committed(), item, id),
                on ? "show on a film" : "take off a film");
        });
        rows->addWidget(box);
    }
    column_->addWidget(frame);
    renewShownOn();
}

/// Films may be laid on and taken off by a key meanwhile; on a pinned one nothing changes.
void Details::renewShownOn() {
    for (const auto& [id, box] : filmBoxes_) {
        const plan::FilmPtr film = work_.plan().film(id);
        const QSignalBlocker quiet(box);
        box->setChecked(film && shown_ && plan::isShownOn(*film, *shown_));
        box->setEnabled(film && !film->pinned);
        box->setToolTip(film && film->pinned ? tr("%1 is pinned.").arg(text(film->name)) : QString());
    }
}

void Details::addFigures(const plan::ItemId& item) {
    numbers_ = new FiguresList(light_, body_);
    numbers_->show(cardFigures(work_, item, say_));
    column_->addSpacing(6);
    column_->addWidget(numbers_);
}

void Details::addBeyond() {
    beyond_ = smallLabel({}, body_);
    beyond_->setContentsMargins(12, 0, 12, 4);
    QPalette p = beyond_->palette();
    p.setColor(QPalette::WindowText, look::colours(light_).warning);
    beyond_->setPalette(p);
    column_->addWidget(beyond_);
    renewBeyond();
}

void Details::renewBeyond() {
    const QString words = beyond_ != nullptr && shown_ ? beyondWords(work_, *shown_) : QString();
    if (beyond_ != nullptr) {
        beyond_->setText(words.isEmpty() ? words : QStringLiteral("\u25b3 ") + words);
        beyond_->setVisible(!words.isEmpty());
    }
}

void Details::addTraced() {
    traced_ = smallLabel({}, body_);
    traced_->setContentsMargins(12, 2, 12, 2);
    column_->addWidget(traced_);
    renewTraced();
}

void Details::renewTraced() {
    if (traced_ != nullptr && shown_) {
        const QString words = traceWords(work_, *shown_);
        const auto& stale = work_.staleTraces();
        const bool isStale = std::any_of(stale.begin(), stale.end(),
                                         [this](const files::StaleTrace& one) { return one.copy == *shown_; });
        QPalette p = traced_->palette();
        const look::Colours c = look::colours(light_);
        p.setColor(QPalette::WindowText, isStale ? c.warning : c.inkTwo);
        traced_->setPalette(p);
        traced_->setText(isStale ? QStringLiteral("\u25b3 ") + words : words);
        traced_->setVisible(!words.isEmpty());
    }
}

/// While something is dragged its numbers follow; the fields are not built anew, so the caret stays where it is.
void Details::renewValues() {
    if (isStale_) {
        return;
    }
    if (!shown_ || !work_.isOpen()) {
        if (work_.isOpen() && title_ != nullptr) {
            title_->setText(text(work_.plan().heading().name));
        }
        renewFields();
        return;
    }
    if (!work_.plan().measure(*shown_) && !work_.plan().route(*shown_)) {
        rebuild();
        return;
    }
    if (const plan::MeasurePtr measure = work_.plan().measure(*shown_)) {
        title_->setText(text(movement::label(*measure)));
        if (std::exchange(kind_, measure->kind) != measure->kind) {  // it has other fields now
            QMetaObject::invokeMethod(this, &Details::rebuildInPlace, Qt::QueuedConnection);
        }
        if (token_ != nullptr) {
            token_->show(measure);
        }
    } else {
        title_->setText(text(movement::routeTitle(work_.plan().route(*shown_)->name)));
    }
    renewBeyond();
    renewCourse();
    renewTraced();
    renewShownOn();
    renewFields();
    if (numbers_ != nullptr) {
        numbers_->show(cardFigures(work_, *shown_, say_));
    }
}

void Details::renewFields() {
    for (const auto& [field, value] : values_) {
        const QString now = text(value());
        if (!field->hasFocus() && field->text() != now && !field->property("refused").toBool()) {
            field->setText(now);
            field->setCursorPosition(0);
        }
    }
}

}  // namespace crosstick::details
