// The card of a measure: its names, grid, fields and state.
#include <algorithm>

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/drafting/renaming.h"
#include "core/movement/paper_figures.h"
#include "core/plan/edits.h"
#include "ui/details/details.h"
#include "ui/details/faults.h"
#include "ui/details/grid_entry.h"
#include "ui/details/number_entry.h"
#include "ui/details/unit_picker.h"
#include "ui/look/spoken.h"

namespace crosstick::details {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
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

Result<plan::Plan> renumbered(const plan::Plan& plan, const plan::Measure& measure, const std::string& number) {
    if (auto fault = numberFault(plan, measure.kind, number, measure.id)) {
        return tl::unexpected(*std::move(fault));
    }
    return withMeasure(plan, measure.id, [&](plan::Measure& m) { m.number = number; });
}

}  // namespace

QString Details::gridOf(const plan::Measure& measure) const {
    return work_.grid() != nullptr && !measure.points.empty() ? text(gridShown(*work_.grid(), measure.points.front()))
                                                              : QString();
}

void Details::addMeasure(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    const plan::ItemId id = measure.id;
    const auto held = [this, id] { return work_.plan().measure(id); };
    QString kind = entry != nullptr ? look::spoken(entry->name) : text(measure.kind);
    kind += measure.state == plan::PlaceState::Unplaced  ? tr(", not placed yet")
            : measure.state == plan::PlaceState::Assumed ? tr(", assumed")
                                                         : QString();
    addHead(text(movement::label(measure)), kind, entry);
    addBeyond();
    addNames(measure, held);
    if (measure.points.size() <= 1 && measure.anchor == plan::Anchor::Ground) {
        addGrid(measure, held);
    }
    if (entry != nullptr) {
        addOwnFields(*entry, id, held);
    }
    const bool onGround = measure.anchor == plan::Anchor::Ground;  // a block has neither tie nor state
    if (onGround) {
        addTie(measure, held);
        addState(measure);
        addWhose(measure);
    }
    addEvacuation(measure);
    addShownOn(id);
    addTraced();
    auto* why =
        addField(tr("Why"), measure.why, "change the why", [id](const plan::Plan& plan, const std::string& typed) {
            return withMeasure(plan, id, [&](plan::Measure& m) { m.why = typed; });
        });
    why->setPlaceholderText(tr("one line: what it is for"));
    values_[why] = [held] { return held() ? held()->why : std::string{}; };
    addLegNotes(id);
    addFigures(id);
}

void Details::addTie(const plan::Measure& measure, const Held& held) {
    const plan::ItemId id = measure.id;
    auto* tie =
        addField(tr("Tie"), measure.tie, "change the tie", [id](const plan::Plan& plan, const std::string& typed) {
            return withMeasure(plan, id, [&](plan::Measure& m) { m.tie = typed; });
        });
    tie->setPlaceholderText(tr("what a person can recognise there"));
    values_[tie] = [held] { return held() ? held()->tie : std::string{}; };
}

void Details::addNames(const plan::Measure& measure, const Held& held) {
    const plan::ItemId id = measure.id;
    const measures::Entry* entry = measures::find(measure.kind);
    const bool numbered = entry != nullptr && entry->naming == measures::Naming::Number;
    if (numbered) {
        labelField_ = addField(tr("Number"), measure.number, "renumber",
                               [id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                                   const plan::MeasurePtr m = plan.measure(id);
                                   return m ? renumbered(plan, *m, typed) : Result<plan::Plan>(plan);
                               });
        values_[labelField_] = [held] { return held() ? held()->number : std::string{}; };
    }
    // Units say all in their words, drawn tasks in their sign.
    const bool nameless = entry != nullptr && entry->naming == measures::Naming::None &&
                          (entry->group == measures::Group::Units ||
                           (entry->group == measures::Group::Tasks && entry->sign != measures::Sign::TaskWords));
    const bool isPoint = entry != nullptr && entry->shape == measures::Shape::Point;
    if ((!nameless && !(numbered && isPoint)) || !measure.name.empty()) {
        auto* field = addField(
            tr("Name"), measure.name, "rename",
            [id](const plan::Plan& plan, const std::string& typed) { return drafting::renamed(plan, id, typed); });
        if (drafting::isPlain(measure)) {
            field->setPlaceholderText(tr("a name, or what it is: pl bodkin"));
            field->setToolTip(tr("Called by a measure's abbreviation or name (\"ld trivet\") it becomes that."));
        }
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
        auto* field = addField(look::spoken(f.label), value(), "change " + std::string(f.label),
                               [id, key, f](const plan::Plan& plan, const std::string& typed) {
                                   return measures::checkField(f, typed).and_then([&] {
                                       return withMeasure(plan, id, [&](plan::Measure& m) { m.fields[key] = typed; });
                                   });
                               });
        field->setPlaceholderText(look::spoken(f.standard));
        values_[field] = value;
        const bool saysAll = f.type == measures::FieldType::UnitWords;
        if (saysAll) {
            labelField_ = field;
            addPicker(field);
        } else if (entry.naming == measures::Naming::None && &f == &entry.fields.front()) {
            caretField_ = field;  // it has no name that anybody would type
        }
    }
}

/// Either changes the other: what is typed is chosen in the lists, what is chosen stands in the field.
void Details::addPicker(QLineEdit* field) {
    auto* picker = new UnitPicker(faces_ ? &*faces_ : nullptr, light_, body_);
    picker->show(field->text());
    column_->addWidget(picker);
    connect(field, &QLineEdit::textChanged, picker, &UnitPicker::show);
    connect(picker, &UnitPicker::picked, field, [field](const QString& words) {
        field->setText(words);
        Q_EMIT field->editingFinished();
    });
}

void Details::addChoices(const plan::ItemId& id, const QString& label, const char* caption,
                         const std::vector<Choice>& choices) {
    auto* row = new QWidget(body_);
    auto* rows = new QVBoxLayout(row);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    rows->addWidget(smallLabel(label, row));
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(0);
    for (const Choice& choice : choices) {
        auto* button = new QPushButton(choice.words, row);
        button->setCheckable(true);
        button->setStyleSheet(QStringLiteral("padding: 5px 2px;"));
        button->setChecked(choice.isDown);
        button->setAccessibleName(tr("%1: %2").arg(label, choice.words));
        button->setToolTip(button->accessibleName());
        connect(button, &QPushButton::clicked, this, [this, id, caption, change = choice.change] {
            if (auto next = withMeasure(work_.committed(), id, change)) {
                work_.commit(std::move(*next), caption);
                rebuild();
            }
        });
        buttons->addWidget(button, 1);
    }
    rows->addLayout(buttons);
    column_->addWidget(row);
}

void Details::addState(const plan::Measure& measure) {
    std::vector<Choice> choices;
    const auto add = [&](const QString& words, plan::Standing standing, plan::PlaceState state) {
        choices.push_back(
            {words, measure.standing == standing && measure.state == state, [standing, state](plan::Measure& m) {
                 m.standing = standing;
                 m.state = m.points.empty() ? plan::PlaceState::Unplaced : state;
             }});
    };
    add(tr("planned"), plan::Standing::Planned, plan::PlaceState::Confirmed);
    add(tr("assumed"), plan::Standing::Present, plan::PlaceState::Assumed);
    add(tr("confirmed"), plan::Standing::Present, plan::PlaceState::Confirmed);
    addChoices(measure.id, tr("State"), "change the state", choices);
}

/// A unit's words say whose it is; for everything else it is chosen here.
void Details::addWhose(const plan::Measure& measure) {
    if (measure.kind == "unit") {
        return;
    }
    std::vector<Choice> choices;
    for (const auto& [words, whose] :
         {std::pair(tr("ours"), plan::Whose::Own), std::pair(tr("the enemy's"), plan::Whose::Enemy)}) {
        choices.push_back({words, measure.whose == whose, [whose = whose](plan::Measure& m) { m.whose = whose; }});
    }
    addChoices(measure.id, tr("Whose"), "change whose it is", choices);
}

}  // namespace crosstick::details
