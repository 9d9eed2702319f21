#pragma once

#include <optional>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// Where an alternate leaves a primary route: somebody has to say there which one is walked.
struct Division {
    RoutePtr primary;
    ItemId at;  ///< the last route point that both pass from the alternate's start on
};
/// Nothing for a route that is no alternate, begins on no primary route, or does not leave it.
[[nodiscard]] std::optional<Division> divisionOf(const Plan& plan, const Route& route);

/// How an alternate ends: at a checkpoint, back on a primary route, or at its release point. Otherwise who walks it
/// comes out where nobody waits.
enum class AlternateEnd {
    AtCheckpoint,
    Rejoins,
    SharesReleasePoint,
    OwnReleasePoint,  ///< one that no primary route ends at
    Open              ///< at a bend, or at something else than a checkpoint
};
[[nodiscard]] AlternateEnd endOf(const Plan& plan, const Route& alternate);
[[nodiscard]] bool endsWell(AlternateEnd end);

/// Is it said by what it is decided, and who decides?
[[nodiscard]] bool isDecided(const Route& route);

}  // namespace crosstick::plan
