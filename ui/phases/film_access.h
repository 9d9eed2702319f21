#pragma once

#include <QString>

#include "ui/work/work.h"

namespace crosstick::phases {

/// From here on whoever listens hears a film's tab or card as one entry of a list with an entry for every thing on it:
/// pressing one chooses that thing. Asked for more than once it does nothing more.
void bringFilmAccess();

/// A thing on a film as it is heard: "PL BODKIN, assumed".
[[nodiscard]] QString thingSpoken(const work::Work& work, const plan::ItemId& item);
/// What it is and where: "Phase line, from 25T FL 5370 9990 to 5684 0012".
[[nodiscard]] QString thingPlaced(const work::Work& work, const plan::ItemId& item);

}  // namespace crosstick::phases
