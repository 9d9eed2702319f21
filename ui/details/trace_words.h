#pragma once

#include <QString>

#include "ui/work/work.h"

namespace crosstick::details {

/// What a stale copy is told by: "PL CHALK was traced from HIGHER, where it now lies up to 120 m away."
[[nodiscard]] QString staleWords(const plan::Plan& plan, const files::StaleTrace& stale);

/// Where a measure was traced from and whether it still lies as there; empty for one that was not traced.
[[nodiscard]] QString traceWords(const work::Work& work, const plan::ItemId& item);

}  // namespace crosstick::details
