#include "core/registration/mark_rows.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <optional>
#include <string>

#include "core/geodesy/point_text.h"
#include "core/registration/faults.h"
#include "core/units/number_text.h"
#include "core/units/trimmed.h"

namespace crosstick::registration {
namespace {

constexpr double kFarthestPixel = 1e6;
constexpr double kFarthestMetre = 1e8;
constexpr std::size_t kLongestRow = 1000;

/// One field of a row, and what is left of the row.
std::string nextField(std::string_view& row) {
    row = trimmed(row);
    if (row.starts_with('"')) {
        const auto close = row.find('"', 1);
        const std::string field(row.substr(1, close == std::string_view::npos ? close : close - 1));
        row.remove_prefix(std::min(row.size(), close == std::string_view::npos ? row.size() : close + 1));
        const auto comma = row.find(',');
        row.remove_prefix(comma == std::string_view::npos ? row.size() : comma + 1);
        return field;
    }
    const auto comma = row.find(',');
    const std::string field(trimmed(row.substr(0, comma)));
    row.remove_prefix(comma == std::string_view::npos ? row.size() : comma + 1);
    return field;
}

std::vector<std::string> fieldsOf(std::string_view row) {
    std::vector<std::string> fields;
    const bool endsInComma = trimmed(row).ends_with(',');
    while (!trimmed(row).empty()) {
        fields.push_back(nextField(row));
    }
    if (endsInComma) {
        fields.emplace_back();
    }
    return fields;
}

/// Where the columns stand; none: not in this list.
struct Columns {
    std::optional<std::size_t> x, y, easting, northing, grid;
    bool isGridLast = false;
};

Columns named(const std::vector<std::string>& names) {
    Columns columns;
    for (std::size_t n = 0; n < names.size(); ++n) {
        const std::string name = geodesy::plainText(names[n]);
        for (const auto& [word, place] : {std::pair{"X", &columns.x},
                                          {"Y", &columns.y},
                                          {"EASTING", &columns.easting},
                                          {"NORTHING", &columns.northing},
                                          {"GRID", &columns.grid}}) {
            if (name == word && !*place) {
                *place = n;
            }
        }
    }
    columns.isGridLast = columns.grid && *columns.grid + 1 == names.size();
    return columns;
}

Columns usual(const std::vector<std::string>& first) {
    Columns columns;
    columns.x = 0;
    columns.y = 1;
    if (first.size() == 4 && parseNumber(first[2]) && parseNumber(first[3]) && std::abs(*parseNumber(first[2])) > 180) {
        columns.easting = 2;
        columns.northing = 3;
    } else {
        columns.grid = 2;
        columns.isGridLast = true;
    }
    return columns;
}

struct Line {
    std::size_t number = 0;  ///< from 1
    std::string_view text;
};

std::vector<Line> linesOf(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) {
        text.remove_prefix(3);
    }
    std::vector<Line> lines;
    std::size_t number = 0;
    while (!text.empty()) {
        const auto end = text.find('\n');
        const std::string_view line = trimmed(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        ++number;
        if (!line.empty() && line.front() != '#') {
            lines.push_back({number, line});
        }
    }
    return lines;
}

using Fields = std::vector<std::string>;

Result<double> numberIn(const Fields& fields, std::size_t column, const char* name, double most) {
    if (column >= fields.size()) {
        return fail(kShortRow, {{"column", std::string(name)}});
    }
    const auto number = parseNumber(fields[column]);
    if (!number) {
        return fail(kNoNumber, {{"column", std::string(name)}, {"text", geodesy::quoted(fields[column])}});
    }
    if (std::abs(*number) > most) {
        return fail(kOffPicture, {{"column", std::string(name)}, {"text", geodesy::quoted(fields[column])}});
    }
    return *number;
}

Result<PixelPoint> pixelIn(const Fields& fields, const Columns& columns) {
    const auto x = numberIn(fields, *columns.x, "x", kFarthestPixel);
    const auto y = numberIn(fields, *columns.y, "y", kFarthestPixel);
    return !x ? tl::unexpected(x.error()) : !y ? tl::unexpected(y.error()) : Result<PixelPoint>({*x, *y});
}

Result<geodesy::PlanePoint> metresIn(const Fields& fields, const Columns& columns) {
    const auto east = numberIn(fields, *columns.easting, "easting", kFarthestMetre);
    const auto north = numberIn(fields, *columns.northing, "northing", kFarthestMetre);
    return !east    ? tl::unexpected(east.error())
           : !north ? tl::unexpected(north.error())
                    : Result<geodesy::PlanePoint>({Metres(*east), Metres(*north)});
}

Result<geodesy::PlanePoint> placeIn(const Fields& fields, const Columns& columns, PrintedGrid& grid) {
    if (columns.easting && columns.northing) {
        return metresIn(fields, columns);
    }
    if (*columns.grid >= fields.size()) {
        return fail(kShortRow, {{"column", std::string("grid")}});
    }
    std::string text = fields[*columns.grid];
    for (std::size_t n = *columns.grid + 1; columns.isGridLast && n < fields.size(); ++n) {
        text += ", " + fields[n];
    }
    return grid.read(text);
}

/// Reads what `read` makes of each row; keeps the first few errors with their line and counts the rest.
template <class Row>
Result<Rows<Row>> rowsOf(std::string_view text, const std::function<Result<void>(const Columns&)>& check,
                         const std::function<Result<Row>(const Fields&, const Columns&)>& read) {
    if (text.size() > kLongestList) {
        return fail(kTooLong, {{"most", static_cast<std::int64_t>(kLongestList)}});
    }
    auto lines = linesOf(text);
    if (lines.size() > kMostRows) {
        return fail(kTooLong, {{"most", static_cast<std::int64_t>(kLongestList)}});
    }
    if (lines.empty()) {
        return fail(kNoRows);
    }
    const Fields first = fieldsOf(lines.front().text.substr(0, kLongestRow));
    const bool hasNames = !parseNumber(first.front());
    const Columns columns = hasNames ? named(first) : usual(first);
    if (auto enough = columns.x && columns.y ? check(columns) : Result<void>(fail(kNoColumns)); !enough) {
        return tl::unexpected(Error(enough.error()).with("text", geodesy::quoted(lines.front().text)));
    }
    lines.erase(lines.begin(), lines.begin() + (hasNames ? 1 : 0));
    Rows<Row> rows;
    std::int64_t uncounted = 0;
    for (const Line& line : lines) {
        auto row = line.text.size() > kLongestRow ? Result<Row>(fail(kTooLong, {{"most", std::int64_t{kLongestRow}}}))
                                                  : read(fieldsOf(line.text), columns);
        if (row) {
            rows.good.push_back(*row);
        } else if (rows.bad.size() < kMostBad) {
            rows.bad.push_back(Error(row.error()).with("line", static_cast<std::int64_t>(line.number)));
        } else {
            ++uncounted;
        }
    }
    if (uncounted > 0) {
        rows.bad.push_back(Error{kMoreBad, {{"rows", uncounted}}});
    }
    return rows.good.empty() && rows.bad.empty() ? Result<Rows<Row>>(fail(kNoRows)) : rows;
}

}  // namespace

Result<Rows<Mark>> readMarks(std::string_view text, PrintedGrid& grid) {
    const auto check = [&](const Columns& columns) -> Result<void> {
        if (columns.easting && columns.northing) {
            return grid.crs().empty() ? Result<void>(fail(kNoGrid)) : Result<void>();
        }
        return columns.grid ? Result<void>() : fail(kNoColumns);
    };
    return rowsOf<Mark>(text, check, [&](const Fields& fields, const Columns& columns) {
        return pixelIn(fields, columns).and_then([&](PixelPoint at) {
            return placeIn(fields, columns, grid).map([&](geodesy::PlanePoint place) { return Mark{at, place}; });
        });
    });
}

Result<Rows<PixelPoint>> readPoints(std::string_view text) {
    return rowsOf<PixelPoint>(
        text, [](const Columns&) { return Result<void>(); }, pixelIn);
}

}  // namespace crosstick::registration
