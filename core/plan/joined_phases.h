#pragma once

#include <optional>

#include "core/plan/plan.h"

namespace crosstick::plan {

// Phases that need little share one film.

/// The phase after the last one of a film, where the plan has it: the one that it can be joined with.
[[nodiscard]] std::optional<int> nextPhaseOf(const Plan& plan, const Film& film);

/// A film joined with the next phase: it serves that phase, too. The uppermost film that begins with that phase is laid
/// onto it and gone, with what it shows above what was shown, in its own places where both show a thing; its insets
/// belong to the joined film. Without such a film the film is shared, and nothing else changes. An inset and a film
/// without a phase stay as they are, as does one after which no phase comes.
/// Laws: (1) whatever either film showed, the joined one shows; (2) no measure and no route is another one now.
[[nodiscard]] Plan joinedWithNextPhase(const Plan& plan, const FilmId& film);

/// Back: what a film has of the phases after one goes to a film of its own, next above it. Shown on both is what lives
/// on; the earlier one alone keeps what the phase spends (see proposedNextPhase), the later one alone what begins after
/// it: what is in force from then on only, and units that were proposed anew beside those they were made from.
/// Nothing changes where the film has no phase on both sides.
/// Law: whatever the film showed, one of the two shows.
[[nodiscard]] Plan partedAfterPhase(const Plan& plan, const FilmId& film, int phase, const FilmId& later,
                                    std::string name);

}  // namespace crosstick::plan
