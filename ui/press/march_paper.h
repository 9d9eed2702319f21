#pragma once

#include "core/movement/march_table.h"
#include "ui/press/paper_table.h"

namespace crosstick::press {

/// What the paper says beside the table's own figures.
struct MarchFacts {
    std::optional<Instant> notLaterThan;  ///< that the start was worked out from
    std::optional<Instant> latestStart;   ///< to the second
    std::optional<Instant> known;         ///< since when the leader has known: what is left before his orders
};

/// The march table of a route as a paper: elements down, points across, two figures a cell (arrives, and under it when
/// its last man is clear), then the whole column, and its head in Zulu and from the H-hour. Times to the nearest minute
/// from the exact ones.
[[nodiscard]] PaperTable marchPaper(const plan::Plan& plan, const movement::RouteFigures& figures,
                                    const movement::MarchTable& table, const MarchFacts& facts);

}  // namespace crosstick::press
