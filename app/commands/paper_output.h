#pragma once

#include <string>
#include <vector>

#include "app/command.h"
#include "ui/press/paper_table.h"

namespace crosstick::app {

/// Papers in the form that a file's ending asks for: .pdf or .html.
/// Errors: movement/table-form with "file"; those of press::pagesPdf().
[[nodiscard]] Result<std::string> paperBytes(const std::string& file, const std::vector<press::PaperTable>& papers,
                                             const plan::Heading& heading, const Surroundings& surroundings);

/// Only the columns that are wanted, in their order; none wanted: all. Errors: app/no-such-column.
[[nodiscard]] Result<press::PaperTable> withChosenColumns(press::PaperTable table,
                                                          const std::vector<std::string>& wanted);

/// For the terminal: first texts in columns, second ones behind them.
[[nodiscard]] std::string paperText(const press::PaperTable& table);

/// A table's cells as records of RFC 4180, its columns' keys first; second texts in columns of their own where any row
/// has one.
[[nodiscard]] std::string tableCsv(const press::PaperTable& table);

}  // namespace crosstick::app
