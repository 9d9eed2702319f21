#pragma once

#include "core/reading/foreign_raster.h"
#include "core/reading/height_copy.h"
#include "core/sheets/messages.h"

namespace crosstick::reading {

/// Writes a sheet as a pyramid of ours into order.out; shows the whole at a glance first, if the order wants it.
/// Errors: as ForeignRaster; sheets/no-room.
[[nodiscard]] Result<void> copySheet(const sheets::messages::Order& order, const Show& show, const Tell& tell);

}  // namespace crosstick::reading
