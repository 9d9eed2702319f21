#include "app/commands/text_table.h"

#include <algorithm>

namespace crosstick::app {
namespace {

std::size_t letters(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char byte) { return (static_cast<unsigned char>(byte) & 0xc0U) != 0x80U; }));
}

}  // namespace

TextTable::TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {
    for (Column& column : columns_) {
        column.width = letters(column.head);
    }
}

void TextTable::add(std::vector<std::string> cells) {
    for (std::size_t n = 0; n < cells.size(); ++n) {
        columns_[n].width = std::max(columns_[n].width, letters(cells[n]));
    }
    rows_.push_back(std::move(cells));
}

std::string TextTable::text() const {
    std::vector<std::string> heads;
    for (const Column& column : columns_) {
        heads.push_back(column.head);
    }
    std::string out = line(heads);
    for (const auto& cells : rows_) {
        out += line(cells);
    }
    return out;
}

std::string TextTable::line(const std::vector<std::string>& cells) const {
    std::string out;
    for (std::size_t n = 0; n < cells.size(); ++n) {
        const std::string room(columns_[n].width - letters(cells[n]), ' ');
        out += n == 0 ? "" : "  ";
        out += columns_[n].side == Side::Left ? cells[n] + room : room + cells[n];
    }
    while (!out.empty() && out.back() == ' ') {
        out.pop_back();
    }
    return out + '\n';
}

std::string plain(std::string text) {
    for (char& letter : text) {
        if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f) {
            letter = ' ';
        }
    }
    return text;
}

}  // namespace crosstick::app
