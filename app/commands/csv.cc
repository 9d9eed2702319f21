#include "app/commands/csv.h"

#include <string_view>

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

std::string harmless(const std::string& text) {
    constexpr std::string_view kFormula = "=+-@\t\r";
    return !text.empty() && kFormula.find(text.front()) != std::string_view::npos ? '\'' + text : text;
}

}  // namespace crosstick::app
