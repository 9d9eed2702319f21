#pragma once

#include "symbols/specimen/flow.h"

namespace crosstick::symbols {

// The specimen's pages that are not made from the catalogue row by row.
void addUnits(Flow& flow, const drawing::Gauge& gauge, PenMode pens);
void addHardCases(Flow& flow, const drawing::Gauge& gauge, PenMode pens);
void addFilm(Flow& flow, const drawing::Gauge& gauge, PenMode pens);

}  // namespace crosstick::symbols
