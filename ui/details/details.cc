#include "ui/details/details.h"

#include <algorithm>

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
#include "ui/details/faults.h"
#include "ui/details/grid_entry.h"

namespace crosstick::details {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QLabel* smallLabel(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setFont(look::face(11));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

/// A plan with one measure changed.
template <class Change>
Result<plan::Plan> withMeasure(const plan::Plan& plan, const plan::ItemId& id, Change&& change) {
    const plan::MeasurePtr held = plan.measure(id);
    if (!held) {
        return plan;
    }
    plan::Measure measure = *held;
    change(measure);
    plan::PlanBuilder builder(plan);
    builder.put(std::move(measure));
    return std::move(builder).build();
}

template <class Change>
Result<plan::Plan> withRoute(const plan::Plan& plan, const plan::ItemId& id, Change&& change) {
    const plan::RoutePtr held = plan.route(id);
    if (!held) {
        return plan;
    }
    plan::Route route = *held;
    change(route);
    plan::PlanBuilder builder(plan);
    builder.put(std::move(route));
    return std::move(builder).build();
}

Result<plan::Plan> renumbered(const plan::Plan& plan, const plan::Measure& measure, const std::string& number) {
    bool taken = false;
    plan.measures().forEach([&](const plan::MeasurePtr& other) {
        taken = taken || (other->id != measure.id && other->kind == measure.kind && other->number == number);
    });
    if (taken && !number.empty()) {
        return fail(kNumberTaken, {{"number", number}, {"next", plan::nextNumber(plan, measure.kind)}});
    }
    return withMeasure(plan, measure.id, [&](plan::Measure& m) { m.number = number; });
}

}  // namespace

Details::Details(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent)
    : QScrollArea(parent), work_(work), say_(std::move(say)) {
    setAccessibleName(tr("Details"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFixedWidth(kWidth);
    setFocusPolicy(Qt::NoFocus);
    connect(&work_, &work::Work::selectionChanged, this, &Details::rebuild);
    connect(&work_, &work::Work::planReplaced, this, &Details::rebuild);
    connect(&work_, &work::Work::planChanged, this, &Details::renewValues);
    rebuild();
}

void Details::setLight(look::Light light) {
    light_ = light;
    QPalette p = palette();
    p.setColor(QPalette::Window, look::colours(light).card);
    setPalette(p);
    rebuild();
}

void Details::paintEvent(QPaintEvent* event) {
    QScrollArea::paintEvent(event);
}

void Details::askForLabel() {
    if (labelField_ != nullptr) {
        labelField_->setFocus(Qt::OtherFocusReason);
        labelField_->selectAll();
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

void Details::rebuild() {
    isRebuilding_ = true;
    values_.clear();
    labelField_ = nullptr;
    gridField_ = nullptr;
    numbers_ = nullptr;
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
            addMeasure(*measure);
        } else if (const plan::RoutePtr route = work_.plan().route(*shown_)) {
            addRoute(*route);
        }
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

void Details::addHead(const QString& name, const QString& kind) {
    const look::Colours c = look::colours(light_);
    auto* head = new QWidget(body_);
    head->setMinimumHeight(58);
    QPalette p = head->palette();
    p.setColor(QPalette::Window, shown_ ? c.wash : c.card);
    head->setPalette(p);
    head->setAutoFillBackground(true);
    auto* rows = new QVBoxLayout(head);
    rows->setContentsMargins(12, 8, 12, 8);
    rows->setSpacing(2);
    auto* title = new QLabel(name, head);
    title->setFont(look::face(15, look::Weight::Bold));
    title->setTextFormat(Qt::PlainText);
    auto* under = smallLabel(kind, head);
    QPalette violet = under->palette();
    violet.setColor(QPalette::WindowText, shown_ ? c.ours : c.inkTwo);
    under->setPalette(violet);
    rows->addWidget(title);
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
    name->setBuddy(field);
    auto* fault = smallLabel({}, frame);
    QPalette red = fault->palette();
    red.setColor(QPalette::WindowText, look::colours(light_).error);
    fault->setPalette(red);
    fault->hide();
    rows->addWidget(name);
    rows->addWidget(field);
    rows->addWidget(fault);
    column_->addWidget(frame);
    field->installEventFilter(this);
    const auto refuse = [field, fault](const QString& why) {
        field->setProperty("refused", !why.isEmpty());
        field->style()->unpolish(field);
        field->style()->polish(field);
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
        if (!next) {
            refuse(say_(next.error()));
            return false;
        }
        refuse({});
        work_.commit(std::move(*next), caption);
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

QString Details::gridOf(const plan::Measure& measure) const {
    return work_.grid() != nullptr && !measure.points.empty() ? text(gridShown(*work_.grid(), measure.points.front()))
                                                              : QString();
}

void Details::addMeasure(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    const plan::ItemId id = measure.id;
    const auto held = [this, id] { return work_.plan().measure(id); };
    QString kind = entry != nullptr ? text(entry->name) : text(measure.kind);
    kind += measure.state == plan::PlaceState::Unplaced  ? tr(", not placed yet")
            : measure.state == plan::PlaceState::Assumed ? tr(", assumed")
                                                         : QString();
    addHead(text(movement::label(measure)), kind);
    addNames(measure, held);
    if (measure.points.size() <= 1 && measure.anchor == plan::Anchor::Ground) {
        addGrid(measure, held);
    }
    if (entry != nullptr) {
        addOwnFields(*entry, id, held);
    }
    auto* tie =
        addField(tr("Tie"), measure.tie, "change the tie", [id](const plan::Plan& plan, const std::string& typed) {
            return withMeasure(plan, id, [&](plan::Measure& m) { m.tie = typed; });
        });
    tie->setPlaceholderText(tr("what a person can recognise there"));
    values_[tie] = [held] { return held() ? held()->tie : std::string{}; };
    addState(measure);
    addShownOn(id);
    auto* why =
        addField(tr("Why"), measure.why, "change the why", [id](const plan::Plan& plan, const std::string& typed) {
            return withMeasure(plan, id, [&](plan::Measure& m) { m.why = typed; });
        });
    why->setPlaceholderText(tr("one line: what it is for"));
    values_[why] = [held] { return held() ? held()->why : std::string{}; };
    numbers_ = smallLabel(numbersOf(id), body_);
    numbers_->setContentsMargins(12, 6, 12, 0);
    column_->addWidget(numbers_);
}

void Details::addNames(const plan::Measure& measure, const Held& held) {
    const plan::ItemId id = measure.id;
    const measures::Entry* entry = measures::find(measure.kind);
    const bool numbered = entry != nullptr && entry->shape == measures::Shape::Point;
    if (numbered) {
        labelField_ = addField(tr("Number"), measure.number, "renumber",
                               [id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                                   const plan::MeasurePtr m = plan.measure(id);
                                   return m ? renumbered(plan, *m, typed) : Result<plan::Plan>(plan);
                               });
        values_[labelField_] = [held] { return held() ? held()->number : std::string{}; };
    }
    if (!numbered || !measure.name.empty()) {
        auto* field =
            addField(tr("Name"), measure.name, "rename", [id](const plan::Plan& plan, const std::string& typed) {
                return withMeasure(plan, id, [&](plan::Measure& m) { m.name = typed; });
            });
        values_[field] = [held] { return held() ? held()->name : std::string{}; };
        labelField_ = labelField_ != nullptr ? labelField_ : field;
    }
}

void Details::addGrid(const plan::Measure& measure, const Held& held) {
    const plan::ItemId id = measure.id;
    gridField_ = addField(tr("Grid"), gridOf(measure).toStdString(), "move by grid",
                          [this, id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                              const plan::MeasurePtr m = plan.measure(id);
                              if (!m || work_.grid() == nullptr) {
                                  return plan;
                              }
                              geodesy::PlanePoint near = m->points.empty() ? geodesy::PlanePoint{} : m->points[0];
                              if (m->points.empty() && plan.registration()) {
                                  near = work_.grid()->inPlan(plan.registration()->southWest).value_or(near);
                              }
                              return gridEntered(typed, plan, *work_.grid(), near).map([&](geodesy::PlanePoint to) {
                                  return plan::withPoint(plan, id, 0, to);
                              });
                          });
    values_[gridField_] = [this, held] { return held() ? gridOf(*held()).toStdString() : std::string{}; };
}

void Details::addOwnFields(const measures::Entry& entry, const plan::ItemId& id, const Held& held) {
    for (const measures::Field& f : entry.fields) {
        const std::string key(f.key);
        const auto value = [held, key]() -> std::string {
            const plan::MeasurePtr m = held();
            const auto found = m ? m->fields.find(key) : std::map<std::string, std::string>::const_iterator{};
            return m && found != m->fields.end() ? found->second : std::string{};
        };
        auto* field = addField(text(f.label), value(), "change " + std::string(f.label),
                               [id, key](const plan::Plan& plan, const std::string& typed) {
                                   return withMeasure(plan, id, [&](plan::Measure& m) { m.fields[key] = typed; });
                               });
        values_[field] = value;
    }
}

void Details::addState(const plan::Measure& measure) {
    auto* row = new QWidget(body_);
    auto* rows = new QVBoxLayout(row);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    rows->addWidget(smallLabel(tr("State"), row));
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(0);
    const plan::ItemId id = measure.id;
    struct Choice {
        QString words;
        plan::Standing standing;
        plan::PlaceState state;
    };
    for (const Choice& choice : {Choice{tr("planned"), plan::Standing::Planned, plan::PlaceState::Confirmed},
                                 Choice{tr("assumed"), plan::Standing::Present, plan::PlaceState::Assumed},
                                 Choice{tr("confirmed"), plan::Standing::Present, plan::PlaceState::Confirmed}}) {
        auto* button = new QPushButton(choice.words, row);
        button->setCheckable(true);
        button->setStyleSheet(QStringLiteral("padding: 5px 2px;"));
        button->setChecked(measure.standing == choice.standing && measure.state == choice.state);
        button->setAccessibleName(tr("State: %1").arg(choice.words));
        connect(button, &QPushButton::clicked, this, [this, id, choice] {
            if (auto next = withMeasure(work_.committed(), id, [&](plan::Measure& m) {
                    m.standing = choice.standing;
                    m.state = m.points.empty() ? plan::PlaceState::Unplaced : choice.state;
                })) {
                work_.commit(std::move(*next), "change the state");
                rebuild();
            }
        });
        buttons->addWidget(button, 1);
    }
    rows->addLayout(buttons);
    column_->addWidget(row);
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
        const bool works = work_.workingFilm() == film->id;
        box->setFont(look::face(12, works ? look::Weight::Bold : look::Weight::Regular));
        const plan::FilmId id = film->id;
        connect(box, &QCheckBox::toggled, this, [this, item, id](bool on) {
            work_.commit(
                on ? plan::shownOn(work_.committed(), item, id) : plan::notShownOn(work_.committed(), item, id),
                on ? "show on a film" : "take off a film");
        });
        rows->addWidget(box);
    }
    column_->addWidget(frame);
}

void Details::addRoute(const plan::Route& route) {
    const plan::ItemId id = route.id;
    const auto held = [this, id] { return work_.plan().route(id); };
    addHead(text(movement::routeTitle(route.name)),
            route.use == plan::Use::Primary ? tr("Primary route") : tr("Alternate route"));
    labelField_ = addField(tr("Name"), route.name, "rename the route",
                           [id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                               const plan::RoutePtr other = plan.routeNamed(typed);
                               if (other && other->id != id) {
                                   return fail(kNameTaken, {{"name", typed}});
                               }
                               return withRoute(plan, id, [&](plan::Route& r) { r.name = typed; });
                           });
    values_[labelField_] = [held] { return held() ? held()->name : std::string{}; };
    const TimeZone zone = work_.plan().heading().zone;
    const auto start = [held, zone] {
        return held() && held()->start ? dateTimeGroup(*held()->start, zone) : std::string{};
    };
    auto* time = addField(tr("Start, date-time group"), start(), "change the start",
                          [id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                              std::optional<Instant> when;
                              if (!typed.empty()) {
                                  const auto parsed = parseDateTimeGroup(typed);
                                  if (!parsed) {
                                      return tl::unexpected(parsed.error());
                                  }
                                  when = *parsed;
                              }
                              return withRoute(plan, id, [&](plan::Route& r) { r.start = when; });
                          });
    time->setPlaceholderText(text("132100" + std::string(1, zone.letter) + "MAR27"));
    values_[time] = start;
    auto* lost = addField(tr("If not found"), route.ifNotFound, "change what to do if not found",
                          [id](const plan::Plan& plan, const std::string& typed) {
                              return withRoute(plan, id, [&](plan::Route& r) { r.ifNotFound = typed; });
                          });
    values_[lost] = [held] { return held() ? held()->ifNotFound : std::string{}; };
    addShownOn(id);
    auto* why =
        addField(tr("Why"), route.why, "change the why", [id](const plan::Plan& plan, const std::string& typed) {
            return withRoute(plan, id, [&](plan::Route& r) { r.why = typed; });
        });
    values_[why] = [held] { return held() ? held()->why : std::string{}; };
    numbers_ = smallLabel(numbersOf(id), body_);
    numbers_->setContentsMargins(12, 6, 12, 0);
    column_->addWidget(numbers_);
}

QString Details::numbersOf(const plan::ItemId& item) const {
    QStringList lines;
    if (work_.plan().route(item)) {
        const auto figures = work_.figures().find(item);
        if (figures != work_.figures().end()) {
            lines << tr("%1 legs, map %2 m, ground %3 m")
                         .arg(figures->second.legs.size())
                         .arg(figures->second.mapDistance.value(), 0, 'f', 0)
                         .arg(figures->second.groundDistance.value(), 0, 'f', 0);
        } else if (const auto fault = work_.figuresFault(item)) {
            lines << say_(*fault);
        }
        return lines.join(QLatin1Char('\n'));
    }
    const plan::MeasurePtr measure = work_.plan().measure(item);
    if (!measure || measure->points.empty() || work_.grid() == nullptr) {
        return {};
    }
    if (measure->points.size() == 1) {
        const auto onGrid = work_.grid()->onGrid(measure->points.front());
        if (onGrid) {
            lines << tr("Exact: %1 m E, %2 m N of the sheet's grid")
                         .arg(onGrid->easting.value(), 0, 'f', 1)
                         .arg(onGrid->northing.value(), 0, 'f', 1);
        }
        const auto height =
            work_.heights() != nullptr ? work_.heights()->heightAt(measure->points.front()) : std::optional<Metres>();
        lines << (height ? tr("height %1 m").arg(height->value(), 0, 'f', 0) : tr("height unknown"));
    } else {
        lines << tr("%1 points").arg(measure->points.size());
    }
    return lines.join(QLatin1Char('\n'));
}

/// While something is dragged its numbers follow; the fields are not built anew, so the caret stays where it is.
void Details::renewValues() {
    if (!shown_) {
        return;
    }
    if (!work_.plan().measure(*shown_) && !work_.plan().route(*shown_)) {
        rebuild();
        return;
    }
    for (const auto& [field, value] : values_) {
        const QString now = text(value());
        if (!field->hasFocus() && field->text() != now && !field->property("refused").toBool()) {
            field->setText(now);
            field->setCursorPosition(0);
        }
    }
    if (numbers_ != nullptr) {
        numbers_->setText(numbersOf(*shown_));
    }
}

}  // namespace crosstick::details
