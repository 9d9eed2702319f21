// The card of a route: its name, start, what decides for it, and what else is said of the whole of it.
#include <QVBoxLayout>

#include "core/movement/paper_figures.h"
#include "core/plan/alternates.h"
#include "core/plan/numbering.h"
#include "ui/details/details.h"
#include "ui/details/faults.h"

namespace crosstick::details {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
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

/// One field of a decision: what is in it, what it asks, an example.
struct DecisionField {
    std::string plan::Decision::*part;
    QString label, example;
    const char* caption;
};

/// A decision of which nothing is said is none.
void keepDecision(plan::Route& route, std::string plan::Decision::*part, const std::string& typed) {
    plan::Decision decision = route.decision.value_or(plan::Decision{});
    decision.*part = typed;
    route.decision = decision == plan::Decision{} ? std::nullopt : std::optional(std::move(decision));
}

/// What is still open about an alternate: where it leaves, what it ends at.
QString courseWords(const plan::Plan& plan, const plan::Route& route) {
    QStringList words;
    const auto division = plan::divisionOf(plan, route);
    if (division && !plan::isDecided(route)) {
        const plan::MeasurePtr at = plan.measure(division->at);
        words << Details::tr("At %1 it leaves %2. Say when it is taken and who decides.")
                     .arg(at ? text(movement::label(*at)) : QString(),
                          text(movement::routeTitle(division->primary->name)));
    }
    switch (plan::endOf(plan, route)) {
        case plan::AlternateEnd::Open:
            words << Details::tr(
                "It ends nowhere: lead it to a checkpoint, back to its primary route, or to the "
                "release point.");
            break;
        case plan::AlternateEnd::OwnReleasePoint:
            words << Details::tr(
                "It ends at a release point of its own: end it at a checkpoint, or at the primary "
                "route's release point.");
            break;
        case plan::AlternateEnd::AtCheckpoint:
        case plan::AlternateEnd::Rejoins:
        case plan::AlternateEnd::SharesReleasePoint:
            break;
    }
    return words.join(QLatin1Char(' '));
}

}  // namespace

void Details::addRoute(const plan::Route& route) {
    const plan::ItemId id = route.id;
    const auto held = [this, id] { return work_.plan().route(id); };
    addHead(text(movement::routeTitle(route.name)), route.use == plan::Use::Primary     ? tr("Primary route")
                                                    : route.use == plan::Use::Alternate ? tr("Alternate route")
                                                                                        : tr("Way of vehicles"));
    addBeyond();
    labelField_ = addField(tr("Name"), route.name, "rename the route",
                           [id](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                               const std::string name = plan::capitals(typed);
                               const plan::RoutePtr other = plan.routeNamed(name);
                               if (other && other->id != id) {
                                   return fail(kNameTaken, {{"name", name}});
                               }
                               return withRoute(plan, id, [&](plan::Route& r) { r.name = name; });
                           });
    values_[labelField_] = [held] { return held() ? held()->name : std::string{}; };
    addUse(route);
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
    if (route.use == plan::Use::Alternate) {
        addDecision(route);
    }
    addShownOn(id);
    auto* why =
        addField(tr("Why"), route.why, "change the why", [id](const plan::Plan& plan, const std::string& typed) {
            return withRoute(plan, id, [&](plan::Route& r) { r.why = typed; });
        });
    values_[why] = [held] { return held() ? held()->why : std::string{}; };
    addFigures(id);
}

/// Where routes divide somebody has to say which one is walked: asked for where the alternate leaves the primary one.
void Details::addDecision(const plan::Route& route) {
    const plan::ItemId id = route.id;
    const auto held = [this, id] { return work_.plan().route(id); };
    course_ = smallLabel({}, body_);
    course_->setContentsMargins(12, 4, 12, 2);
    column_->addWidget(course_);
    for (const DecisionField& f :
         {DecisionField{&plan::Decision::criterion, tr("Taken when"), tr("the weir is guarded"),
                        "say when it is taken"},
          DecisionField{&plan::Decision::decider, tr("Who decides"), tr("Plt Ldr"), "say who decides"},
          DecisionField{&plan::Decision::codeWord, tr("Code word"), tr("TILLER"), "change the code word"}}) {
        const auto value = [held, part = f.part] {
            return held() && held()->decision ? (*held()->decision).*part : std::string{};
        };
        auto* field = addField(f.label, value(), f.caption,
                               [id, part = f.part](const plan::Plan& plan, const std::string& typed) {
                                   return withRoute(plan, id, [&](plan::Route& r) { keepDecision(r, part, typed); });
                               });
        field->setPlaceholderText(f.example);
        values_[field] = value;
    }
    renewCourse();
}

void Details::renewCourse() {
    const plan::RoutePtr route = course_ != nullptr && shown_ ? work_.plan().route(*shown_) : nullptr;
    if (!route) {
        return;
    }
    const auto division = plan::divisionOf(work_.plan(), *route);
    const QString open = courseWords(work_.plan(), *route);
    const plan::MeasurePtr at = division ? work_.plan().measure(division->at) : nullptr;
    const QString leaves =
        at ? tr("Leaves %1 at %2.").arg(text(movement::routeTitle(division->primary->name)), text(movement::label(*at)))
           : QString();
    QPalette p = course_->palette();
    const look::Colours c = look::colours(light_);
    p.setColor(QPalette::WindowText, open.isEmpty() ? c.inkTwo : c.warning);
    course_->setPalette(p);
    course_->setText(open.isEmpty() ? leaves : QStringLiteral("\u25b3 ") + open);
    course_->setVisible(!course_->text().isEmpty());
}

}  // namespace crosstick::details
