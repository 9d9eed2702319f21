#include "core/drafting/renaming.h"

#include "core/plan/edits.h"
#include "core/plan/numbering.h"

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

bool isPlain(const plan::Measure& measure) {
    return measure.kind == "free-line" || measure.kind == "free-area";
}

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

plan::Plan renamed(const plan::Plan& plan, const plan::ItemId& item, const std::string& words) {
    const plan::MeasurePtr held = plan.measure(item);
    if (!held) {
        return plan;
    }
    const auto meant = isPlain(*held) ? measures::meantExactly(words) : std::nullopt;
    const bool becomes = meant && meant->entry->kind != held->kind && mayBecome(*held, *meant->entry);
    const plan::Plan now = becomes ? become(plan, item, *meant->entry) : plan;
    plan::Measure measure = *now.measure(item);
    if (!becomes) {
        const measures::Entry* entry = measures::find(measure.kind);
        const bool isCodeWord = entry != nullptr && entry->naming == measures::Naming::Letter && !isPlain(*held);
        measure.name = isCodeWord ? plan::capitals(words) : words;
    } else if (!meant->label.empty()) {
        measure = plan::called(std::move(measure), *meant, plan);
    }
    return std::move(plan::PlanBuilder(now).put(std::move(measure))).build();
}

}  // namespace crosstick::drafting
