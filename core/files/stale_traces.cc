#include "core/files/stale_traces.h"

#include "core/files/plan_store.h"
#include "core/geodesy/plane_line.h"

namespace crosstick::files {

const std::string& TraceWatch::versionOf(const plan::MeasurePtr& source) {
    Known& known = known_[source->id];
    if (known.source != source) {
        known = {source, contentHash(*source)};
    }
    return known.version;
}

const std::vector<StaleTrace>& TraceWatch::look(const plan::Plan& plan) {
    stale_.clear();
    plan.measures().forEach([&](const plan::MeasurePtr& copy) {
        const auto from = plan::sourceOf(*copy);
        if (!from) {
            return;
        }
        const plan::MeasurePtr source = plan.measure(from->item);
        if (!source) {
            if (plan.filmNamed(copy->tracedFrom->film)) {
                stale_.push_back({copy->id, nullptr, {}, Metres(0)});
            }
        } else if (versionOf(source) != copy->tracedFrom->version) {
            plan::Points now = plan::pointsBySource(*copy, *source);
            const Metres moved = geodesy::farthestApart(copy->points, now);
            stale_.push_back({copy->id, source, std::move(now), moved});
        }
    });
    return stale_;
}

}  // namespace crosstick::files
