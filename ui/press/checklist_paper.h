#pragma once

#include "core/movement/checklist.h"
#include "ui/press/paper_table.h"

namespace crosstick::press {

/// The execution checklist as a paper. Columns by key: number, event, place, planned, expected, code_word, reporter,
/// reported, actual. What is not known yet is left white for a pencil; `expected` stands only where something that has
/// happened moves what follows.
[[nodiscard]] PaperTable checklistPaper(const plan::Plan& plan, const std::vector<movement::ChecklistRow>& rows);

/// The execution matrix: elements down, phases across with their times and the lines that are crossed in them; in a
/// cell the task, then its purpose, place, trigger and code word, and under whom the element stands.
/// @param tables  of the routes whose crossings the heads tell
[[nodiscard]] PaperTable matrixPaper(const plan::Plan& plan, const std::vector<movement::MarchTable>& tables);

}  // namespace crosstick::press
