#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/movement/march_table.h"

namespace crosstick::movement {

/// A row of the execution checklist.
struct ChecklistRow {
    plan::Event event;
    std::string place, grid;  ///< label and grid of where it happens; empty where it has no place
    std::string reporter;     ///< name of the element that reports, with its call sign
    std::optional<Instant> planned;
    std::optional<Instant> expected;  ///< moved by as much as the last event with an actual time was late or early
};

/// Events with their times: a march's from the table of their route, the others as they were given. What has happened
/// moves what is planned after it by the difference of its actual and its planned time.
/// @param tables  of the routes that events name; without its table an event has the time that was given
/// Errors: geodesy::PlaneLink's.
[[nodiscard]] Result<std::vector<ChecklistRow>> executionChecklist(const plan::Plan& plan,
                                                                   const std::vector<MarchTable>& tables);

}  // namespace crosstick::movement
