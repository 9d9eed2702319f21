#include "ui/timing/timing_card.h"

#include <array>
#include <cmath>
#include <utility>

#include <QGridLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

#include "core/movement/drift.h"
#include "core/movement/paper_figures.h"
#include "core/movement/typed_timing.h"
#include "core/units/number_text.h"

namespace crosstick::timing {
namespace {

using movement::PaceConditions;
using plan::Going;
using plan::Light;

constexpr std::array kConditions{PaceConditions{Going::Road, Light::Day}, PaceConditions{Going::Road, Light::Night},
                                 PaceConditions{Going::CrossCountry, Light::Day},
                                 PaceConditions{Going::CrossCountry, Light::Night}};

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

}  // namespace

TimingCard::TimingCard(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent)
    : QScrollArea(parent), work_(work), say_(std::move(say)), body_(new QWidget), column_(new QVBoxLayout(body_)) {
    setAccessibleName(tr("Timing"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFixedWidth(kWidth);
    setFocusPolicy(Qt::NoFocus);
    body_->setAutoFillBackground(true);
    column_->setContentsMargins(12, 10, 12, 12);
    column_->setSpacing(6);
    title_ = new QLabel(tr("Timing"), body_);
    title_->setFont(look::face(15, look::Weight::Bold));
    title_->setTextFormat(Qt::PlainText);
    column_->addWidget(title_);
    addRule();
    addRates();
    addStart();
    addBefore();
    addPaces();
    addDrift();
    column_->addStretch(1);
    setWidget(body_);
    connect(&work_, &work::Work::planChanged, this, &TimingCard::renew);
    connect(&work_, &work::Work::planReplaced, this, &TimingCard::renew);
    connect(&work_, &work::Work::selectionChanged, this, &TimingCard::renew);
}

void TimingCard::setLight(look::Light light) {
    const look::Colours c = look::colours(light);
    QPalette p = palette();
    p.setColor(QPalette::Window, c.card);
    setPalette(p);
    body_->setPalette(p);
    p.setColor(QPalette::WindowText, c.inkTwo);
    for (QLabel* note : {ruleSource_, rateSource_, closes_, left_, counts_}) {
        note->setPalette(p);
    }
    for (look::Field* field : fields_) {
        field->setLight(light);
    }
    before_->setLight(light);
    courses_->setLight(light);
}

void TimingCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QScrollArea::keyPressEvent(event);
}

void TimingCard::begin() {
    rule_->button(static_cast<int>(ruleOf(work_.plan().heading())))->setFocus(Qt::OtherFocusReason);
}

std::optional<QString> TimingCard::commit(Result<plan::Plan> next, const char* caption) {
    if (!next) {
        return say_(next.error());
    }
    work_.commit(std::move(*next), caption);
    return std::nullopt;
}

look::Field* TimingCard::field(const QString& name, const QString& example, const char* caption, Edit edit) {
    auto* made = new look::Field(
        name, example,
        [this, caption, edit = std::move(edit)](const QString& typed) {
            return commit(edit(work_.committed(), typed.toStdString()), caption);
        },
        body_);
    connect(made, &look::Field::left, this, &TimingCard::left);
    fields_.push_back(made);
    return made;
}

QLabel* TimingCard::note() {
    auto* made = new QLabel(body_);
    made->setFont(look::face(11));
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    column_->addWidget(made);
    return made;
}

void TimingCard::addRule() {
    rule_ = new look::Choice(tr("Times are made by"),
                             {tr("one rate"), tr("ground and light"), tr("Naismith"), tr("Tobler")}, 2, body_);
    column_->addWidget(rule_);
    connect(rule_, &look::Choice::chosen, this, [this](int which) {
        commit(withRule(work_.committed(), static_cast<Rule>(which)), "change the rule of times");
    });
    ruleSource_ = note();
}

void TimingCard::addRates() {
    rate_ =
        field(tr("Rate, km/h, halts left out"), QStringLiteral("3.0"), "change the rate",
              [](const plan::Plan& plan, const std::string& typed) { return movement::withRateTyped(plan, typed); });
    column_->addWidget(rate_);
    going_ =
        new look::Choice(tr("Legs that do not say their ground go"), {tr("cross-country"), tr("on roads")}, 2, body_);
    column_->addWidget(going_);
    connect(going_, &look::Choice::chosen, this, [this](int which) {
        commit(movement::withHeading(work_.committed(),
                                     [which](plan::Heading& heading) {
                                         heading.timing = heading.timing.value_or(plan::Timing{});
                                         heading.timing->going = which == 0 ? Going::CrossCountry : Going::Road;
                                     }),
               "change the ground of legs");
    });
    fourRates_ = new QWidget(body_);
    auto* grid = new QGridLayout(fourRates_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(6);
    const QStringList names{tr("Road, by day"), tr("Road, by night"), tr("Cross-country, day"),
                            tr("Cross-country, night")};
    for (int n = 0; n < 4; ++n) {
        const PaceConditions conditions = kConditions[static_cast<std::size_t>(n)];
        const auto standard = movement::rateFor(plan::MarchRates{}, conditions).value();
        rates_.push_back(field(names[n], text(numberText(standard, 1)), "change a rate of march",
                               [conditions](const plan::Plan& plan, const std::string& typed) {
                                   return movement::withRateTyped(plan, conditions, typed);
                               }));
        grid->addWidget(rates_.back(), n / 2, n % 2);
    }
    column_->addWidget(fourRates_);
    rateSource_ = note();
}

void TimingCard::addStart() {
    column_->addSpacing(6);
    by_ = new look::Choice(tr("The route's time"), {tr("start"), tr("closed NLT")}, 2, body_);
    column_->addWidget(by_);
    connect(by_, &look::Choice::chosen, this, [this](int which) {
        isBackwards_ = which == 1;
        renewStart();
        start_->edit()->setFocus(Qt::OtherFocusReason);
    });
    start_ = new look::Field(
        {}, tr("2100, or a date-time group"), [this](const QString& typed) { return takeStart(typed); }, body_);
    start_->edit()->setAccessibleName(tr("The route's time"));
    connect(start_, &look::Field::left, this, &TimingCard::left);
    fields_.push_back(start_);
    column_->addWidget(start_);
    closes_ = note();
    hHour_ =
        field(tr("H-hour"), tr("0515, or a date-time group"), "change the H-hour",
              [](const plan::Plan& plan, const std::string& typed) { return movement::withHHourTyped(plan, typed); });
    column_->addWidget(hHour_);
}

void TimingCard::addBefore() {
    column_->addSpacing(6);
    before_ = new ListedFields(
        tr("Before the start: what, and how long"), tr("Preparation"), tr("orders 60, rehearsal 1:30"),
        [this](std::size_t place, const QString& typed) {
            return commit(movement::withPreparationTyped(work_.committed(), place, typed.toStdString()),
                          "change what is done before");
        },
        body_);
    connect(before_, &ListedFields::left, this, &TimingCard::left);
    column_->addWidget(before_);
    left_ = note();
}

void TimingCard::addPaces() {
    column_->addSpacing(6);
    courses_ = new ListedFields(
        tr("Courses walked: metres, double paces, where"), tr("Course"), tr("600 372 cross-country night"),
        [this](std::size_t place, const QString& typed) {
            return commit(movement::withCourseTyped(work_.committed(), place, typed.toStdString()),
                          "change a measured course");
        },
        body_);
    connect(courses_, &ListedFields::left, this, &TimingCard::left);
    column_->addWidget(courses_);
    count_ =
        field(tr("Or one count: double paces per 100 m"), QStringLiteral("62"), "give a pace count",
              [](const plan::Plan& plan, const std::string& typed) { return movement::withPaceTyped(plan, typed); });
    column_->addWidget(count_);
    counts_ = note();
}

/// A navigator's own errors: how far he may be off at the end of each leg.
void TimingCard::addDrift() {
    column_->addSpacing(6);
    navigator_ = field(
        tr("Navigator off by: pace in %, compass in degrees"), QStringLiteral("4 1.5"), "change a navigator's errors",
        [](const plan::Plan& plan, const std::string& typed) { return movement::withNavigatorTyped(plan, typed); });
    column_->addWidget(navigator_);
    drift_ = note();
}

/// Backwards, the plan gets the start that follows, and keeps what was asked.
std::optional<QString> TimingCard::takeStart(const QString& typed) {
    const plan::RoutePtr route = work_.ledgerRoute();
    if (!route || !work_.committed().route(route->id)) {
        return tr("There is no route yet. Draw one, or choose one.");
    }
    const plan::Heading& heading = work_.plan().heading();
    if (!isBackwards_ || typed.isEmpty()) {
        return commit(movement::withStartTyped(work_.committed(), route->id, typed.toStdString()), "change the start");
    }
    const auto when = movement::momentTyped(heading, typed.toStdString(), movement::notBefore(heading, route->start));
    if (!when) {
        return say_(when.error());
    }
    const auto start = startFor(work_, *route, *when);
    if (!start) {
        return say_(start.error());
    }
    return commit(movement::withStartInTime(work_.committed(), route->id, *start, *when), "start in time");
}

void TimingCard::renew() {
    if (!work_.isOpen() || !isVisibleTo(parentWidget())) {
        return;
    }
    const plan::Heading& heading = work_.plan().heading();
    const Rule rule = ruleOf(heading);
    const bool isOne = rule == Rule::OneRate;
    rule_->show(static_cast<int>(rule));
    ruleSource_->setText(sourceOf(rule));
    rate_->setVisible(isOne);
    rate_->show(heading.rate ? text(numberText(heading.rate->rate.value())) : QString());
    going_->setVisible(!isOne);
    fourRates_->setVisible(!isOne);
    rateSource_->setVisible(!isOne);
    if (heading.timing) {
        going_->show(heading.timing->going == Going::CrossCountry ? 0 : 1);
        for (std::size_t n = 0; n < rates_.size(); ++n) {
            rates_[n]->show(text(numberText(movement::rateFor(heading.timing->rates, kConditions[n]).value())));
        }
        rateSource_->setText(sourceOf(heading.timing->rates));
    }
    hHour_->show(heading.hHour ? text(dateTimeGroup(*heading.hHour, heading.zone)) : QString());
    renewStart();
    renewPaces();
    renewDrift();
}

void TimingCard::renewStart() {
    const plan::RoutePtr route = work_.ledgerRoute();
    const plan::Heading& heading = work_.plan().heading();
    const auto asked = route ? route->notLaterThan : std::nullopt;
    if (route && std::exchange(shown_, route->id) != route->id) {
        isBackwards_ = asked.has_value();
    }
    title_->setText(route ? tr("Timing, %1").arg(text(movement::routeTitle(route->name))) : tr("Timing"));
    by_->show(isBackwards_ ? 1 : 0);
    const auto shown = isBackwards_ ? asked : route ? route->start : std::nullopt;
    start_->show(shown ? text(dateTimeGroup(*shown, heading.zone)) : QString());
    const auto table = route ? tableOf(work_, work_.plan(), *route, route->start)
                             : Result<movement::MarchTable>(movement::MarchTable{});
    QString closes = table ? closingText(work_.plan(), *table, asked) : say_(table.error());
    if (isBackwards_ && route && route->start && table) {
        closes = tr("Start %1. ").arg(text(dateTimeGroup(*route->start, heading.zone))) + closes;
    }
    closes_->setText(closes);
    closes_->setVisible(!closes.isEmpty());
    std::vector<ListedFields::Line> lines;
    for (std::size_t n = 0; n < heading.preparations.size(); ++n) {
        const bool isTimed = table && n < table->before.size();
        lines.push_back({text(movement::preparationText(heading.preparations[n])),
                         isTimed ? spanText(table->before[n], heading.zone) : QString()});
    }
    before_->show(lines);
    left_->setText(table ? leftText(work_.plan(), *table) : QString());
    left_->setVisible(table.has_value() && !lines.empty());
}

void TimingCard::renewPaces() {
    const plan::Heading& heading = work_.plan().heading();
    std::vector<ListedFields::Line> lines;
    for (const plan::PaceCourse& course : heading.courses) {
        lines.push_back({text(movement::courseText(course)), {}});
    }
    courses_->show(lines);
    count_->show(heading.courses.empty() && heading.pace ? text(movement::countText(heading.pace->doublePacesPer100))
                                                         : QString());
    QStringList counts;
    for (const PaceConditions& conditions : kConditions) {
        const auto pace = heading.courses.empty() ? std::nullopt : movement::paceFor(heading, conditions);
        if (pace) {
            counts << tr("%1 %2 by %3, %4")
                          .arg(text(movement::countText(pace->doublePacesPer100)),
                               text(movement::nameOf(conditions.ground)), text(movement::nameOf(conditions.light)),
                               text(pace->how));
        }
    }
    counts_->setText(counts.join(QLatin1Char('\n')));
    counts_->setVisible(!counts.isEmpty());
}

void TimingCard::renewDrift() {
    const auto& own = work_.plan().heading().navigator;
    navigator_->show(own ? text(movement::navigatorText(*own)) : QString());
    const plan::NavigatorErrors errors = own.value_or(plan::NavigatorErrors{});
    const Metres within = movement::kFoundWithin;
    const Metres safe = movement::longestSafeLeg(errors, within);
    const QString by =
        own ? QString()
            : tr("Without them %1, our own figures from no publication. ").arg(text(movement::navigatorText(errors)));
    drift_->setText(by + (isFinite(safe) ? tr("Longest safe leg to a point found within %1 m: %2 m.")
                                               .arg(text(numberText(within.value(), 0)),
                                                    text(numberText(std::floor(safe.value()), 0)))
                                         : tr("Without errors every leg is safe.")));
}

}  // namespace crosstick::timing
