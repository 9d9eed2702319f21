// What a leader says of the leg that ends on a route point.
#include <algorithm>

#include <QVBoxLayout>

#include "core/movement/leg_ends.h"
#include "core/movement/paper_figures.h"
#include "core/movement/typed_timing.h"
#include "core/plan/route_edits.h"
#include "core/units/number_text.h"
#include "ui/details/details.h"
#include "ui/details/faults.h"
#include "ui/look/choice.h"

namespace crosstick::details {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

plan::LegNotes notesOf(const plan::Plan& plan, const plan::ItemId& route, const plan::ItemId& point) {
    const plan::RoutePtr held = plan.route(route);
    for (const plan::Stop& stop : held ? held->stops : std::vector<plan::Stop>{}) {
        if (stop.measure == point) {
            return stop.leg;
        }
    }
    return {};
}

template <class Change>
plan::Plan withNotes(const plan::Plan& plan, const plan::ItemId& route, const plan::ItemId& point, Change&& change) {
    plan::LegNotes notes = notesOf(plan, route, point);
    change(notes);
    return plan::withLegNotes(plan, route, point, notes);
}

/// A rally point of the plan by what it is called, in any case of letters; nothing typed is the last one passed.
Result<std::optional<plan::ItemId>> rallyTyped(const plan::Plan& plan, const std::string& typed) {
    std::optional<plan::ItemId> found;
    std::string known;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (movement::isRally(*measure)) {
            const std::string label = movement::label(*measure);
            known += (known.empty() ? "" : ", ") + label;
            found = text(label).compare(text(typed), Qt::CaseInsensitive) == 0 ? std::optional(measure->id) : found;
        }
    });
    if (!found && !typed.empty()) {
        return fail(kNoSuchRally, {{"typed", typed}, {"known", known.empty() ? "none" : known}});
    }
    return found;
}

}  // namespace

QLineEdit* Details::addLegField(const QString& label, const char* caption, const plan::ItemId& route,
                                const plan::ItemId& point, std::string plan::LegNotes::*note) {
    const auto value = [this, route, point, note] { return notesOf(work_.plan(), route, point).*note; };
    QLineEdit* field =
        addField(label, value(), caption, [route, point, note](const plan::Plan& plan, const std::string& typed) {
            return Result<plan::Plan>(
                withNotes(plan, route, point, [&](plan::LegNotes& notes) { notes.*note = typed; }));
        });
    values_[field] = value;
    return field;
}

void Details::addGoing(const plan::ItemId& route, const plan::ItemId& point) {
    auto* frame = new QWidget(body_);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(12, 2, 12, 2);
    auto* choice = new look::Choice(tr("Ground of the leg"), {tr("the plan's"), tr("off road"), tr("road")}, 3, frame);
    const auto& going = notesOf(work_.plan(), route, point).going;
    choice->show(!going ? 0 : *going == plan::Going::CrossCountry ? 1 : 2);
    rows->addWidget(choice);
    column_->addWidget(frame);
    connect(choice, &look::Choice::chosen, this, [this, route, point](int which) {
        work_.commit(withNotes(work_.committed(), route, point,
                               [which](plan::LegNotes& notes) {
                                   notes.going = which == 0   ? std::nullopt
                                                 : which == 1 ? std::optional(plan::Going::CrossCountry)
                                                              : std::optional(plan::Going::Road);
                               }),
                     "change the ground of a leg");
    });
}

void Details::addLegNotes(const plan::ItemId& point) {
    const plan::RoutePtr route = work_.ledgerRoute();
    const auto figures = route ? work_.figures().find(route->id) : work_.figures().end();
    if (figures == work_.figures().end()) {
        return;
    }
    const auto& legs = figures->second.legs;
    const auto leg = std::find_if(legs.begin(), legs.end(), [&](const movement::Leg& one) { return one.to == point; });
    if (leg == legs.end()) {
        return;
    }
    const plan::ItemId id = route->id;
    column_->addSpacing(8);
    QLabel* head = smallLabel(
        tr("Leg %1 of %2, from %3").arg(leg->number).arg(text(movement::routeTitle(route->name)), text(leg->fromLabel)),
        body_);
    head->setFont(look::face(12, look::Weight::Bold));
    head->setContentsMargins(12, 0, 12, 0);
    column_->addWidget(head);
    legField_ = addLegField(tr("Catching feature"), "change a catching feature", id, point, &plan::LegNotes::catching);
    legField_->setPlaceholderText(tr("what tells that one has gone too far"));
    addLegField(tr("Remark"), "change a remark", id, point, &plan::LegNotes::remark);
    const auto halt = [this, id, point] {
        const auto lasts = notesOf(work_.plan(), id, point).halt;
        return lasts ? numberText(lasts->value()) : std::string{};
    };
    auto* halts = addField(tr("Halt at its end, min"), halt(), "change a halt",
                           [id, point](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                               const auto lasts = movement::parseLength(typed);
                               if (!lasts && !typed.empty()) {
                                   return fail(kBadHalt, {{"typed", typed}});
                               }
                               return withNotes(plan, id, point, [&](plan::LegNotes& notes) { notes.halt = lasts; });
                           });
    halts->setPlaceholderText(tr("beside the hourly ones, which rates hold"));
    values_[halts] = halt;
    addGoing(id, point);
    const auto rally = [this, id, point]() -> std::string {
        const auto own = notesOf(work_.plan(), id, point).rally;
        const plan::MeasurePtr measure = own ? work_.plan().measure(*own) : nullptr;
        return measure ? movement::label(*measure) : std::string{};
    };
    auto* rallies = addField(tr("Active rally point"), rally(), "change the active rally point",
                             [id, point](const plan::Plan& plan, const std::string& typed) {
                                 return rallyTyped(plan, typed).map([&](const auto& item) {
                                     return withNotes(plan, id, point, [&](plan::LegNotes& n) { n.rally = item; });
                                 });
                             });
    rallies->setPlaceholderText(leg->rallyLabel.empty() ? tr("the last one passed: none")
                                                        : tr("the last one passed: %1").arg(text(leg->rallyLabel)));
    values_[rallies] = rally;
    addLegField(tr("In contact"), "change what to do in contact", id, point, &plan::LegNotes::inContact);
    addLegField(tr("If separated"), "change what to do if separated", id, point, &plan::LegNotes::ifSeparated);
}

}  // namespace crosstick::details
