#pragma once

#include <string>
#include <vector>

#include "ui/press/paper_head.h"

namespace crosstick::press {

/// What a cell says: one text, and a second one under it; a symbol stands before both.
struct PaperCell {
    std::string first, second = {};
    drawing::Drawing symbol = {};  ///< round the middle of its frame at 0, 0
};

struct PaperColumn {
    std::string key;                 ///< by which it is chosen: "code_word"
    std::vector<std::string> heads;  ///< rows of its head, the first one bold
    Align align = Align::Left;
    double width = 20;  ///< millimetres, at least
    double most = 20;   ///< and at most, where the page has room
    Hand first{2.2, drawing::Weight::Regular};
    Hand second{2.0, drawing::Weight::Regular};
    std::size_t rows = 1;   ///< that the first text may take; in one it is written smaller until it fits
    double symbolRoom = 0;  ///< before the texts
};

/// A paper that is a table under a head, as a value: pages, HTML and records are made of it.
struct PaperTable {
    PaperHead head;
    std::vector<PaperColumn> columns;
    std::size_t kept = 0;  ///< so many columns from the left stand on every page, where the others need several
    std::vector<std::vector<PaperCell>> rows;
    std::vector<CardNote> notes;
};

/// As many pages as columns and rows need. A row that is higher than a page is cut at its foot.
[[nodiscard]] std::vector<PaperPage> tablePages(const PaperTable& table);

/// A page of HTML by itself: no script, nothing loaded, black on white, made to be printed lying.
[[nodiscard]] std::string tableHtml(const std::vector<PaperTable>& tables);

/// Only these columns, in this order; those that the table has not are passed over.
[[nodiscard]] PaperTable withColumns(PaperTable table, const std::vector<std::string>& keys);

}  // namespace crosstick::press
