#include "core/plan/traces.h"

#include <algorithm>

#include "core/geodesy/plane_line.h"
#include "core/measures/catalogue.h"

namespace crosstick::plan {
namespace {

constexpr std::string_view kPart = " part";  ///< after a source's identity: only a stretch of it was traced

bool isLine(const Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return measure.points.size() > 1 && entry != nullptr && entry->shape == measures::Shape::Line &&
           !entry->points.most;
}

/// The copy of all of a measure that the plan has already; null where it has none.
MeasurePtr wholeCopyOf(const Plan& plan, const ItemId& source) {
    MeasurePtr found;
    plan.measures().forEach([&](const MeasurePtr& measure) {
        const auto from = sourceOf(*measure);
        if (!found && from && from->item == source && !from->isPart) {
            found = measure;
        }
    });
    return found;
}

Measure copyOf(const Measure& source, const TraceOrder& order, const std::string& film, const ItemId& id) {
    Measure copy = source;
    copy.id = id;
    copy.tracedFrom = TraceSource{film, text(source.id), order.version, {}};
    if (order.part) {
        copy.points = *order.part;
        copy.tracedFrom->item += kPart;
    }
    return copy;
}

}  // namespace

std::optional<SourceOfTrace> sourceOf(const Measure& copy) {
    if (!copy.tracedFrom) {
        return std::nullopt;
    }
    std::string_view name = copy.tracedFrom->item;
    const bool isPart = name.ends_with(kPart);
    if (isPart) {
        name.remove_suffix(kPart.size());
    }
    const auto item = parseUuid(name);
    return item ? std::optional(SourceOfTrace{*item, isPart}) : std::nullopt;
}

Traced traced(const Plan& plan, const std::vector<TraceOrder>& orders, const FilmId& onto,
              const std::function<Uuid()>& newId) {
    Traced traced{plan, {}};
    for (const TraceOrder& order : orders) {
        const MeasurePtr source = plan.measure(order.item);
        const FilmPtr from = plan.film(order.from);
        if (!source || !from || !plan.film(onto) || order.from == onto || (order.part && !isLine(*source))) {
            continue;
        }
        const MeasurePtr known = order.part ? nullptr : wholeCopyOf(traced.plan, order.item);
        if (known) {
            traced.plan = shownOn(traced.plan, known->id, onto);
            traced.copies.push_back(known->id);
            continue;
        }
        const ItemId id = newId();
        traced.plan = withMeasure(traced.plan, copyOf(*source, order, from->name, id), onto);
        traced.copies.push_back(id);
    }
    return traced;
}

Points pointsBySource(const Measure& copy, const Measure& source) {
    const auto from = sourceOf(copy);
    if (!from || !from->isPart || copy.points.empty() || !isLine(source)) {
        return source.points;
    }
    Points part = geodesy::partBetween(source.points, copy.points.front(), copy.points.back());
    constexpr Metres kSame{1e-6};  // what reckoning along a line costs
    return farthestApart(part, copy.points) < kSame ? copy.points : part;
}

Plan renewedTrace(const Plan& plan, const ItemId& copy, const std::string& version) {
    const MeasurePtr held = plan.measure(copy);
    const auto from = held ? sourceOf(*held) : std::nullopt;
    const MeasurePtr source = from ? plan.measure(from->item) : nullptr;
    if (!source) {
        return plan;
    }
    Measure next = *held;
    next.points = pointsBySource(*held, *source);
    next.kind = source->kind;
    next.name = source->name;
    next.number = source->number;
    next.fields = source->fields;
    next.standing = source->standing;
    next.whose = source->whose;
    next.tracedFrom->version = version;
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

}  // namespace crosstick::plan
