#include "ui/ledger/wants.h"

#include <cmath>

#include <QCoreApplication>
#include <QRegularExpression>

#include "core/geodesy/faults.h"
#include "core/movement/faults.h"
#include "core/movement/typed_timing.h"
#include "core/units/number_text.h"

namespace crosstick::ledger {
namespace {

constexpr double kMostDegrees = 90;

using Taken = tl::expected<plan::Plan, QString>;

QString tr(const char* words) {
    return QCoreApplication::translate("Ledger", words);
}

Taken refused(const QString& why) {
    return tl::unexpected(why);
}

Taken worded(Result<plan::Plan> result, const std::function<QString(const Error&)>& say) {
    return result ? Taken(std::move(*result)) : refused(say(result.error()));
}

std::optional<double> numberIn(const QString& typed, double least, double most) {
    const auto number = parseNumber(QString(typed).replace(QLatin1Char(','), QLatin1Char('.')).toStdString());
    return number && *number >= least && *number <= most ? number : std::nullopt;
}

Taken withDay(const plan::Plan& plan, const QString& typed, const std::function<QString(const Error&)>& say) {
    const auto day = parseIsoDate(typed.toStdString());
    if (!day) {
        return refused(say(day.error()));
    }
    return movement::withHeading(plan, [&](plan::Heading& heading) { heading.date = *day; });
}

/// "11 W", "190 mils W": east positive.
std::optional<Degrees> angleIn(const QString& typed) {
    static const QRegularExpression form(QStringLiteral("^([0-9.,]+)\\s*(°|mils?)?\\s*([EW])?$"),
                                         QRegularExpression::CaseInsensitiveOption);
    const auto parts = form.match(typed);
    const bool isMils = parts.captured(2).startsWith(QLatin1Char('m'), Qt::CaseInsensitive);
    const auto size = numberIn(parts.captured(1), 0, isMils ? kMostDegrees * 6400 / 360 : kMostDegrees);
    if (!size || (*size != 0 && parts.captured(3).isEmpty())) {
        return std::nullopt;
    }
    const Degrees angle = isMils ? degrees(Mils(*size)) : Degrees(*size);
    return parts.captured(3).startsWith(QLatin1Char('w'), Qt::CaseInsensitive) ? Degrees(-angle.value()) : angle;
}

/// As the sheet prints it, taken to hold on the day of the plan.
Taken withAngle(const plan::Plan& plan, const QString& typed) {
    if (typed.compare(QStringLiteral("model"), Qt::CaseInsensitive) == 0) {
        return movement::withHeading(
            plan, [](plan::Heading& heading) { heading.declination = plan::DeclinationSource::Model; });
    }
    const auto angle = angleIn(typed);
    if (!angle || plan.sheets().empty()) {
        return refused(tr("As the sheet prints it, with its side: 11 W, or 190 mils W. Or the word model."));
    }
    const plan::Plan next = movement::withHeading(
        plan, [](plan::Heading& heading) { heading.declination = plan::DeclinationSource::Sheet; });
    plan::Sheet sheet = *next.sheets().front();
    sheet.declination = plan::PrintedDeclination{*angle, next.heading().date, Degrees(0), {}};
    plan::PlanBuilder builder(next);
    builder.put(std::move(sheet));
    return std::move(builder).build();
}

}  // namespace

Gap noPaces() {
    return {tr("no count"), tr("Nobody's pace count is given yet."), Want::Pace};
}

Gap noTime() {
    return {tr("no rate"), tr("No rate of march is given yet."), Want::Rate};
}

Gap noArrival(const movement::RouteFigures& figures) {
    if (!figures.start) {
        return {tr("no start"), tr("The route has no start time yet."), Want::Start};
    }
    return figures.rate || figures.timing ? Gap{tr("unknown"), tr("The time on the way is unknown."), {}} : noTime();
}

Gap noClimb(const work::Work& work, const std::function<QString(const Error&)>& say) {
    if (work.isReadingHeights()) {
        return {tr("reading"), tr("The heights are being read."), {}};
    }
    if (const auto& fault = work.heightsFault()) {
        return {tr("no heights"), say(*fault), {}};
    }
    if (work.heights() == nullptr) {
        return {tr("no heights"), tr("The sheet has no heights, so climb stays unknown."), {}};
    }
    return {tr("unknown"), tr("The height model has no height somewhere on this way."), {}};
}

std::optional<Want> wantOf(const plan::Plan& plan, const Error& fault) {
    if (fault.fault == movement::kNoDate) {
        return Want::Day;
    }
    const bool isModels = fault.fault == movement::kNoModel || fault.fault == geodesy::kDateOutsideModel ||
                          fault.fault == geodesy::kHeightOutsideModel;
    const bool isAngles = isModels || fault.fault == movement::kNoPrintedAngle;
    return isAngles && !plan.sheets().empty() ? std::optional(Want::Angle) : std::nullopt;
}

std::vector<Want> wantsOf(const movement::RouteFigures& figures, bool isDrawn) {
    std::vector<Want> wants;
    if (figures.use == plan::Use::Vehicle) {
        return wants;  // nobody walks it
    }
    if (!figures.paces) {
        wants.push_back(Want::Pace);
    }
    if (!figures.rate && !figures.timing) {
        wants.push_back(Want::Rate);
    }
    if (!figures.start && isDrawn) {
        wants.push_back(Want::Start);
    }
    return wants;
}

QString question(Want want) {
    switch (want) {
        case Want::Day:
            return tr("Which day is the work for? Declination needs it.");
        case Want::Angle:
            return tr("Which G-M angle does the sheet print? Or take the model.");
        case Want::Pace:
            return tr("How often does your left foot strike the ground in 100 m?");
        case Want::Rate:
            return tr("How many km do you march in an hour, halts left out?");
        case Want::Start:
            return tr("When does the head leave the start point?");
    }
    return {};
}

QString example(Want want, const plan::Heading& heading) {
    switch (want) {
        case Want::Day:
            return QStringLiteral("2027-03-13");
        case Want::Angle:
            return QStringLiteral("11 W");
        case Want::Pace:
            return tr("62, or a course: 600 372 night");
        case Want::Rate:
            return QStringLiteral("3.0");
        case Want::Start:
            return QStringLiteral("2100, 132100%1MAR27").arg(QLatin1Char(heading.zone.letter));
    }
    return {};
}

std::string caption(Want want) {
    switch (want) {
        case Want::Day:
            return "give the day";
        case Want::Angle:
            return "give the G-M angle";
        case Want::Pace:
            return "give a pace count";
        case Want::Rate:
            return "give a rate of march";
        case Want::Start:
            return "change the start";
    }
    return {};
}

Taken answered(Want want, const plan::Plan& plan, const plan::ItemId& route, const QString& typed,
               const std::function<QString(const Error&)>& say) {
    const QString words = typed.trimmed();
    switch (want) {
        case Want::Day:
            return withDay(plan, words, say);
        case Want::Angle:
            return withAngle(plan, words);
        case Want::Pace:
            return worded(movement::withPaceTyped(plan, words.toStdString()), say);
        case Want::Rate:
            return worded(movement::withRateTyped(plan, words.toStdString()), say);
        case Want::Start:
            return worded(movement::withStartTyped(plan, route, words.toStdString()), say);
    }
    return plan;
}

}  // namespace crosstick::ledger
