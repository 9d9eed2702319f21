#pragma once

#include <QString>

#include "ui/work/work.h"

namespace crosstick::details {

/// Whether a measure or a route lies off the sheet or outside the films' window, with how much of it, how far and
/// beyond which edge; empty where all of it lies inside, or lies on the paper.
[[nodiscard]] QString beyondWords(const work::Work& work, const plan::ItemId& item);

}  // namespace crosstick::details
