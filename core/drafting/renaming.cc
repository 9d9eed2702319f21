#include "core/drafting/renaming.h"

#include "core/plan/edits.h"

namespace crosstick::drafting {
namespace {

using measures::Shape;

bool isPoint(Shape shape) {
    return shape == Shape::Point || shape == Shape::Text;
}

bool holdsPoints(const measures::Entry& kind, std::size_t count) {
    const auto least =
        static_cast<std::size_t>(kind.shape == Shape::Area ? std::max(3, kind.points.least) : kind.points.least);
    return count >= least && (!kind.points.most || count <= static_cast<std::size_t>(*kind.points.most));
}

/// A letter that the program gave a line when it was drawn: another kind has letters of its own.
bool isSuggested(const plan::Measure& measure) {
    const bool isLetter = measure.name.size() == 1 && measure.name[0] >= 'A' && measure.name[0] <= 'Z';
    return measure.kind == "free-line" && isLetter;
}

}  // namespace

bool mayBecome(const plan::Measure& measure, const measures::Entry& kind) {
    const measures::Entry* now = measures::find(measure.kind);
    const bool isSameMatter = now != nullptr && isPoint(now->shape) == isPoint(kind.shape) && now->lies == kind.lies;
    return isSameMatter && holdsPoints(kind, measure.points.size());
}

plan::Plan become(const plan::Plan& plan, const plan::ItemId& item, const measures::Entry& kind) {
    const plan::MeasurePtr held = plan.measure(item);
    if (!held || held->kind == kind.kind || !mayBecome(*held, kind)) {
        return plan;
    }
    plan::Measure measure = *held;
    if (isSuggested(measure)) {
        measure.name.clear();
    }
    measure.kind = kind.kind;
    if (kind.naming == measures::Naming::Number && measure.number.empty()) {
        measure.number = plan::nextNumber(plan, kind.kind);
    } else if (kind.naming == measures::Naming::Letter && measure.name.empty()) {
        measure.name = plan::nextName(plan, kind.kind);
    }
    for (const measures::Field& field : kind.fields) {
        if (!field.standard.empty()) {
            measure.fields.emplace(field.key, field.standard);
        }
    }
    return std::move(plan::PlanBuilder(plan).put(std::move(measure))).build();
}

}  // namespace crosstick::drafting
