#pragma once

#include <string>
#include <vector>

namespace crosstick::app {

enum class Side { Left, Right };

/// Rows of cells that become aligned text for the terminal. Columns stand under each other by letters, not bytes.
class TextTable {
  public:
    struct Column {
        std::string head;
        Side side = Side::Right;
        std::size_t width = 0;  ///< letters of the widest cell so far
    };
    explicit TextTable(std::vector<Column> columns);
    /// As many cells as there are columns.
    void add(std::vector<std::string> cells);
    [[nodiscard]] std::string text() const;  ///< the heads first, every row with its line end

  private:
    [[nodiscard]] std::string line(const std::vector<std::string>& cells) const;

    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
};

/// What people typed, without control letters, which must not reach a terminal.
[[nodiscard]] std::string plain(std::string text);

}  // namespace crosstick::app
