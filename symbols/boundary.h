#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A line broken for its echelon mark, each unit named on its own side, repeated on long lines and kept inside the
/// window (engraving B2, A11).
void placeBoundary(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
