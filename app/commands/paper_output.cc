#include "app/commands/paper_output.h"

#include <algorithm>
#include <filesystem>

#include "app/commands/csv.h"
#include "app/commands/text_table.h"
#include "core/movement/faults.h"

namespace crosstick::app {

Result<std::string> paperBytes(const std::string& file, const std::vector<press::PaperTable>& papers,
                               const plan::Heading& heading, const Surroundings& surroundings) {
    const auto form = std::filesystem::path(file).extension();
    if (form == ".html") {
        return press::tableHtml(papers);
    }
    if (form != ".pdf") {
        return fail(movement::kTableForm, {{"file", file}});
    }
    std::vector<press::PaperPage> pages;
    for (const press::PaperTable& paper : papers) {
        for (press::PaperPage& page : press::tablePages(paper)) {
            pages.push_back(std::move(page));
        }
    }
    const std::string kind = papers.empty() ? std::string{} : papers.front().head.kind;
    return press::pagesPdf(pages, kind, heading, surroundings.share / "faces", surroundings.now);
}

Result<press::PaperTable> withChosenColumns(press::PaperTable table, const std::vector<std::string>& wanted) {
    if (wanted.empty()) {
        return table;
    }
    std::vector<std::string> known;
    for (const press::PaperColumn& column : table.columns) {
        known.push_back(column.key);
    }
    return checkColumns(wanted, known).map([&] { return press::withColumns(std::move(table), wanted); });
}

std::string paperText(const press::PaperTable& paper) {
    std::vector<TextTable::Column> columns;
    for (const press::PaperColumn& column : paper.columns) {
        columns.push_back(
            {plain(column.heads.front()), column.align == press::Align::Right ? Side::Right : Side::Left});
    }
    TextTable rows(std::move(columns));
    for (const auto& row : paper.rows) {
        std::vector<std::string> cells;
        for (const press::PaperCell& cell : row) {
            cells.push_back(plain(cell.first + (cell.second.empty() ? "" : " (" + cell.second + ")")));
        }
        rows.add(std::move(cells));
    }
    return rows.text();
}

std::string tableCsv(const press::PaperTable& table) {
    std::vector<std::string> head;
    std::vector<bool> hasSecond;
    for (std::size_t n = 0; n < table.columns.size(); ++n) {
        head.push_back(table.columns[n].key);
        hasSecond.push_back(
            std::any_of(table.rows.begin(), table.rows.end(), [&](const auto& row) { return !row[n].second.empty(); }));
        if (hasSecond[n]) {
            head.push_back(table.columns[n].key + "_more");
        }
    }
    std::string text = csvRecord(head);
    for (const auto& row : table.rows) {
        std::vector<std::string> cells;
        for (std::size_t n = 0; n < row.size(); ++n) {
            cells.push_back(harmless(row[n].first));
            if (hasSecond[n]) {
                cells.push_back(harmless(row[n].second));
            }
        }
        text += csvRecord(cells);
    }
    return text;
}

}  // namespace crosstick::app
