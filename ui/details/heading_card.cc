// The card of the plan itself, while nothing on the table is chosen: what stands on every paper.
#include "core/plan/plan.h"
#include "ui/details/details.h"
#include "ui/details/faults.h"

namespace crosstick::details {
namespace {

template <class Change>
plan::Plan withHeading(const plan::Plan& plan, Change&& change) {
    plan::Heading heading = plan.heading();
    change(heading);
    plan::PlanBuilder builder(plan);
    builder.heading(std::move(heading));
    return std::move(builder).build();
}

std::string dateOf(const plan::Heading& heading) {
    return heading.date.ok() ? isoDate(heading.date) : std::string{};
}

std::string effectiveOf(const plan::Heading& heading) {
    return heading.effective ? dateTimeGroup(*heading.effective, heading.zone) : std::string{};
}

/// One letter; its offset is told by it.
Result<TimeZone> zoneTyped(const std::string& typed) {
    if (typed.size() != 1) {
        return fail(kZoneUnread, {{"text", typed}});
    }
    return timeZone(typed.front());
}

}  // namespace

void Details::addHeading() {
    const plan::Heading& now = work_.plan().heading();
    addHead(QString::fromStdString(now.name), tr("The plan: what stands on every paper"));
    caretField_ = addField(tr("Title"), now.name, "change the title",
                           [](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                               if (typed.empty()) {
                                   return fail(kNoTitle);
                               }
                               return withHeading(plan, [&](plan::Heading& h) { h.name = typed; });
                           });
    values_[caretField_] = [this] { return work_.plan().heading().name; };
    addHeadingLines();
    addHeadingTimes();
}

void Details::addHeadingLines() {
    struct Line {
        QString label, hint;
        const char* caption;
        std::string plan::Heading::*member;
    };
    for (const Line& line :
         {Line{tr("Marking"), tr("at the head and foot of each film: EXERCISE"), "change the marking",
               &plan::Heading::marking},
          Line{tr("Prepared by"), tr("rank and name"), "change who prepared it", &plan::Heading::author},
          Line{tr("Unit"), tr("whose plan it is: 2/C"), "change the unit", &plan::Heading::unit},
          Line{tr("Distribution"), tr("who gets a copy"), "change the distribution", &plan::Heading::distribution},
          Line{tr("Cautions"), tr("what everybody has to heed"), "change the cautions", &plan::Heading::cautions}}) {
        const auto member = line.member;
        auto* field = addField(line.label, work_.plan().heading().*member, line.caption,
                               [member](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                                   return withHeading(plan, [&](plan::Heading& h) { h.*member = typed; });
                               });
        field->setPlaceholderText(line.hint);
        values_[field] = [this, member] { return work_.plan().heading().*member; };
    }
}

void Details::addHeadingTimes() {
    const plan::Heading& now = work_.plan().heading();
    auto* zone = addField(tr("Time zone, its letter"), std::string(1, now.zone.letter), "change the time zone",
                          [](const plan::Plan& plan, const std::string& typed) {
                              return zoneTyped(typed).map([&](TimeZone other) {
                                  return withHeading(plan, [&](plan::Heading& h) { h.zone = other; });
                              });
                          });
    zone->setMaxLength(1);
    values_[zone] = [this] { return std::string(1, work_.plan().heading().zone.letter); };
    auto* date = addField(tr("Date of the work: year, month, day"), dateOf(now), "change the date",
                          [](const plan::Plan& plan, const std::string& typed) {
                              return parseIsoDate(typed).map([&](CalendarDate day) {
                                  return withHeading(plan, [&](plan::Heading& h) { h.date = day; });
                              });
                          });
    date->setPlaceholderText(QStringLiteral("2027-03-13"));
    values_[date] = [this] { return dateOf(work_.plan().heading()); };
    auto* effective = addField(tr("Effective, date-time group"), effectiveOf(now), "change when it takes effect",
                               [](const plan::Plan& plan, const std::string& typed) -> Result<plan::Plan> {
                                   std::optional<Instant> when;
                                   if (!typed.empty()) {
                                       const auto parsed = parseDateTimeGroup(typed);
                                       if (!parsed) {
                                           return tl::unexpected(parsed.error());
                                       }
                                       when = *parsed;
                                   }
                                   return withHeading(plan, [&](plan::Heading& h) { h.effective = when; });
                               });
    effective->setPlaceholderText(QString::fromStdString("132100" + std::string(1, now.zone.letter) + "MAR27"));
    values_[effective] = [this] { return effectiveOf(work_.plan().heading()); };
}

}  // namespace crosstick::details
