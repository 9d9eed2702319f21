#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/edits.h"

namespace crosstick::plan {

/// A measure of a film of higher's that is to be copied onto ours.
struct TraceOrder {
    ItemId item;
    FilmId from;                      ///< the film that it is traced from
    std::string version;              ///< content hash of the measure as it is now
    std::optional<Points> part = {};  ///< only this stretch of it; none: all
};

struct Traced {
    Plan plan;
    std::vector<ItemId> copies;  ///< what the film shows now, one for each order that could be followed, in their order
};

/// Copies of measures, shown on top of a film. A copy is ours: it has an identity of its own, may be changed, and
/// remembers its source. What was traced whole before is not copied again: the film shows that copy.
/// Laws: (1) sources and their films stay as they are; (2) tracing something whole twice is tracing it once; (3) a copy
/// differs from its
///       source in identity, memory of the source and, where a part was asked for, points, and in nothing else.
[[nodiscard]] Traced traced(const Plan& plan, const std::vector<TraceOrder>& orders, const FilmId& onto,
                            const std::function<Uuid()>& newId);

/// What a copy remembers of its source, read back.
struct SourceOfTrace {
    ItemId item;
    bool isPart = false;  ///< only a stretch of it was traced
};
/// Nothing for what is not traced, or was traced from something that is no measure of a plan.
[[nodiscard]] std::optional<SourceOfTrace> sourceOf(const Measure& copy);

/// The points that a copy would have by its source as it is now: all of them, or those between the places nearest to
/// the ends of its stretch.
[[nodiscard]] Points pointsBySource(const Measure& copy, const Measure& source);

/// A copy made like its source again: points, name, number, fields and standing. What we said of it ourselves (why,
/// tie, state, relations, times) stays. Nothing changes where the source is gone.
/// Law: renewed from a source that is as it was traced, a copy that nobody changed stays as it is.
[[nodiscard]] Plan renewedTrace(const Plan& plan, const ItemId& copy, const std::string& version);

}  // namespace crosstick::plan
