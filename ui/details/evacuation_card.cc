// How the hurt are brought out: on the card of the point where they are collected, and of a vehicle's way.
#include <algorithm>
#include <array>

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"
#include "ui/details/details.h"
#include "ui/details/faults.h"
#include "ui/look/spoken.h"

namespace crosstick::details {
namespace {

using Part = std::optional<plan::ItemId> plan::Evacuation::*;

constexpr std::array<std::string_view, 2> kCollected{"casualty-collection-point", "ambulance-exchange-point"};
constexpr std::array<std::string_view, 5> kFetched{"medevac-pickup", "ambulance-exchange-point", "landing-zone",
                                                   "pickup-zone", "casualty-collection-point"};

template <class Kinds>
bool isOneOf(const Kinds& kinds, const std::string& kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

plan::Plan withEvacuation(const plan::Plan& plan, plan::Evacuation evacuation) {
    plan::Heading heading = plan.heading();
    const bool isEmpty = evacuation == plan::Evacuation{};
    heading.evacuation = isEmpty ? std::nullopt : std::optional(std::move(evacuation));
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

plan::Plan withPart(const plan::Plan& plan, Part part, std::optional<plan::ItemId> id) {
    plan::Evacuation evacuation = plan.heading().evacuation.value_or(plan::Evacuation{});
    evacuation.*part = id;
    return withEvacuation(plan, std::move(evacuation));
}

/// A rate typed, or nothing for no rate.
Result<plan::Plan> withCarry(const plan::Plan& plan, const std::string& typed) {
    constexpr double kFastest = 10;  // km/h; nobody carries anybody quicker
    plan::Evacuation evacuation = plan.heading().evacuation.value_or(plan::Evacuation{});
    if (typed.empty()) {
        evacuation.carry.reset();
        return withEvacuation(plan, std::move(evacuation));
    }
    const auto rate = parseNumber(typed);
    if (!rate || *rate <= 0 || *rate > kFastest) {
        return fail(kNoCarryRate, {{"text", typed}});
    }
    evacuation.carry = evacuation.carry.value_or(plan::MarchRate{});
    evacuation.carry->rate = KilometresPerHour(*rate);
    return withEvacuation(plan, std::move(evacuation));
}

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

void Details::addEvacuationBox(const QString& words, Part part, const plan::ItemId& id) {
    const auto& evacuation = work_.plan().heading().evacuation;
    auto* row = new QWidget(body_);
    auto* rows = new QVBoxLayout(row);
    rows->setContentsMargins(12, 2, 12, 2);
    auto* box = new QCheckBox(words, row);
    box->setChecked(evacuation && (*evacuation).*part == id);
    connect(box, &QCheckBox::toggled, this, [this, part, id](bool on) {
        work_.commit(withPart(work_.committed(), part, on ? std::optional(id) : std::nullopt), "change the evacuation");
        rebuild();
    });
    rows->addWidget(box);
    column_->addWidget(row);
}

void Details::addNamed(const QString& label, Part part, const std::vector<Named>& things) {
    const auto& evacuation = work_.plan().heading().evacuation;
    auto* frame = new QWidget(body_);
    auto* rows = new QVBoxLayout(frame);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    rows->addWidget(smallLabel(label, frame));
    auto* list = new QComboBox(frame);
    list->setAccessibleName(label);
    list->addItem(things.empty() ? tr("none is drawn") : tr("none"));
    for (const Named& thing : things) {
        list->addItem(thing.words);
        if (evacuation && (*evacuation).*part == thing.id) {
            list->setCurrentIndex(list->count() - 1);
        }
    }
    connect(list, &QComboBox::activated, this, [this, part, things](int index) {
        const auto id = index > 0 ? std::optional(things[static_cast<std::size_t>(index - 1)].id) : std::nullopt;
        work_.commit(withPart(work_.committed(), part, id), "change the evacuation");
    });
    rows->addWidget(list);
    column_->addWidget(frame);
}

void Details::addEvacuation(const plan::Measure& measure) {
    if (!isOneOf(kCollected, measure.kind)) {
        return;
    }
    addEvacuationBox(tr("Casualties are carried here"), &plan::Evacuation::collection, measure.id);
    const auto& evacuation = work_.plan().heading().evacuation;
    if (!evacuation || evacuation->collection != measure.id) {
        return;
    }
    const auto rate = [this] {
        const auto& held = work_.plan().heading().evacuation;
        return held && held->carry ? numberText(held->carry->rate.value()) : std::string{};
    };
    auto* carry = addField(tr("Rate of carrying, km/h"), rate(), "change the rate of carrying", withCarry);
    carry->setPlaceholderText(tr("yours; without it no time is told"));
    values_[carry] = rate;
    std::vector<Named> ways;
    for (const plan::RoutePtr& route : work_.plan().routes()) {
        if (route->use == plan::Use::Vehicle) {
            ways.push_back({text(movement::routeTitle(route->name)), route->id});
        }
    }
    addNamed(tr("Vehicle's way on"), &plan::Evacuation::onward, ways);
    std::vector<Named> fetched;
    work_.plan().measures().forEach([&](const plan::MeasurePtr& other) {
        const auto& held = work_.plan().heading().evacuation;
        if (isOneOf(kFetched, other->kind) || (held && held->pickUp == other->id)) {
            fetched.push_back({text(movement::label(*other)), other->id});
        }
    });
    addNamed(tr("Pick-up"), &plan::Evacuation::pickUp, fetched);
}

void Details::addUse(const plan::Route& route) {
    auto* row = new QWidget(body_);
    auto* rows = new QVBoxLayout(row);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(2);
    rows->addWidget(smallLabel(tr("Use"), row));
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(0);
    for (const plan::Use use : {plan::Use::Primary, plan::Use::Alternate, plan::Use::Vehicle}) {
        const QString words = look::spoken(movement::useText(use));
        auto* button = new QPushButton(words, row);
        button->setCheckable(true);
        button->setStyleSheet(QStringLiteral("padding: 5px 2px;"));
        button->setChecked(route.use == use);
        button->setAccessibleName(tr("Use: %1").arg(words));
        button->setToolTip(tr("How it is drawn, and whether people or vehicles go on it"));
        connect(button, &QPushButton::clicked, this, [this, id = route.id, use] {
            if (const plan::RoutePtr held = work_.committed().route(id)) {
                plan::Route changed = *held;
                changed.use = use;
                work_.commit(std::move(plan::PlanBuilder(work_.committed()).put(std::move(changed))).build(),
                             "change a route's use");
                rebuild();
            }
        });
        buttons->addWidget(button, 1);
    }
    rows->addLayout(buttons);
    column_->addWidget(row);
    if (route.use == plan::Use::Vehicle) {
        addEvacuationBox(tr("The hurt are driven on by it"), &plan::Evacuation::onward, route.id);
    }
}

}  // namespace crosstick::details
