#include "app/commands/csv.h"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

#include "app/faults.h"

namespace crosstick::app {
namespace {

std::string cell(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string quoted = "\"";
    for (const char letter : text) {
        quoted += letter == '"' ? "\"\"" : std::string(1, letter);
    }
    return quoted + '"';
}

}  // namespace

std::string csvRecord(const std::vector<std::string>& cells) {
    std::string text;
    for (std::size_t n = 0; n < cells.size(); ++n) {
        text += (n == 0 ? "" : ",") + cell(cells[n]);
    }
    return text + "\r\n";
}

Result<void> checkColumns(const std::vector<std::string>& wanted, const std::vector<std::string>& known) {
    for (const std::string& name : wanted) {
        if (std::find(known.begin(), known.end(), name) == known.end()) {
            return fail(kNoSuchColumn, {{"column", name}, {"known", fmt::format("{}", fmt::join(known, ", "))}});
        }
    }
    return {};
}

Result<std::string> csvOf(const std::vector<std::vector<std::string>>& records,
                          const std::vector<std::string>& wanted) {
    const std::vector<std::string>& known = records.front();
    if (const auto checked = checkColumns(wanted, known); !checked) {
        return tl::unexpected(checked.error());
    }
    std::string text;
    for (const std::vector<std::string>& record : records) {
        std::vector<std::string> cells;
        for (const std::string& name : wanted) {
            cells.push_back(
                record[static_cast<std::size_t>(std::find(known.begin(), known.end(), name) - known.begin())]);
        }
        text += csvRecord(wanted.empty() ? record : cells);
    }
    return text;
}

std::string harmless(const std::string& text) {
    constexpr std::string_view kFormula = "=+-@\t\r";
    return !text.empty() && kFormula.find(text.front()) != std::string_view::npos ? '\'' + text : text;
}

}  // namespace crosstick::app
