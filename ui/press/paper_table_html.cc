#include <fmt/format.h>

#include "ui/press/paper_table.h"

namespace crosstick::press {
namespace {

constexpr std::string_view kStyle = R"(@page { size: A4 landscape; margin: 8mm }
body { font: 10pt sans-serif; color: #000; background: #fff }
h1 { font-size: 18pt; margin: 0 }
p.marking { text-align: center; font-weight: bold; margin: 0 }
p.kind { float: right; font-weight: bold; margin: 0 }
table { border-collapse: collapse; width: 100%; margin: 2mm 0 }
th, td { border: 0.25mm solid #000; padding: 0.8mm 1.2mm; vertical-align: top; text-align: left }
thead th { border-bottom-width: 0.5mm }
tr:nth-child(5n) td, tr:nth-child(5n) th { border-bottom-width: 0.5mm }
.right { text-align: right } .middle { text-align: center }
.under { display: block; font-weight: normal; font-size: 85% }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 0 4mm; margin: 1mm 0 }
dd { margin: 0 }
section { break-after: page }
)";

std::string escaped(const std::string& text) {
    std::string out;
    for (const char letter : text) {
        switch (letter) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            default:
                out += static_cast<unsigned char>(letter) < 0x20 ? ' ' : letter;
        }
    }
    return out;
}

std::string_view classOf(Align align) {
    return align == Align::Right ? " class=\"right\"" : align == Align::Middle ? " class=\"middle\"" : "";
}

std::string under(const std::string& text) {
    return text.empty() ? text : "<span class=\"under\">" + escaped(text) + "</span>";
}

std::string headRow(const PaperTable& table) {
    std::string out = "<thead><tr>";
    for (const PaperColumn& column : table.columns) {
        out += fmt::format("<th{}>", classOf(column.align));
        for (std::size_t n = 0; n < column.heads.size(); ++n) {
            out += n == 0 ? escaped(column.heads[n]) : under(column.heads[n]);
        }
        out += "</th>";
    }
    return out + "</tr></thead>\n";
}

std::string bodyRow(const PaperTable& table, const std::vector<PaperCell>& row) {
    std::string out = "<tr>";
    for (std::size_t n = 0; n < row.size(); ++n) {
        const std::string_view tag = n < table.kept ? "th" : "td";
        out += fmt::format("<{}{}>{}{}</{}>", tag, classOf(table.columns[n].align), escaped(row[n].first),
                           under(row[n].second), tag);
    }
    return out + "</tr>\n";
}

std::string facts(const PaperTable& table) {
    std::string out = "<dl>\n";
    for (const auto* side : {&table.head.left, &table.head.right}) {
        for (const CardFact& fact : *side) {
            out += fmt::format("<dt>{}</dt><dd>{}</dd>\n", escaped(fact.label), escaped(fact.value));
        }
    }
    return out + "</dl>\n";
}

std::string section(const PaperTable& table) {
    const std::string marking = fmt::format("<p class=\"marking\">{}</p>\n", escaped(table.head.marking));
    std::string out = "<section>\n" + marking + fmt::format("<p class=\"kind\">{}</p>\n", escaped(table.head.kind));
    out +=
        fmt::format("<h1>{}</h1>\n<p>{}</p>\n", escaped(table.head.title), escaped(table.head.purpose)) + facts(table);
    out += "<table>\n" + headRow(table) + "<tbody>\n";
    for (const auto& row : table.rows) {
        out += bodyRow(table, row);
    }
    out += "</tbody>\n</table>\n";
    for (const CardNote& note : table.notes) {
        out += fmt::format("<p><b>{}</b> {}</p>\n", escaped(note.lead), escaped(note.text));
    }
    return out + fmt::format("<p><small>{}</small></p>\n", escaped(table.head.source)) + marking + "</section>\n";
}

}  // namespace

std::string tableHtml(const std::vector<PaperTable>& tables) {
    const std::string title =
        tables.empty() ? std::string{} : tables.front().head.title + ' ' + tables.front().head.kind;
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
                      escaped(title) + "</title>\n<style>\n" + std::string(kStyle) + "</style>\n</head>\n<body>\n";
    for (const PaperTable& table : tables) {
        out += section(table);
    }
    return out + "</body>\n</html>\n";
}

}  // namespace crosstick::press
