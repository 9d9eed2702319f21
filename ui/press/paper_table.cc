#include "ui/press/paper_table.h"

#include <algorithm>

namespace crosstick::press {
namespace {

using drawing::Weight;

constexpr double kPad = 1.2;      // white at both sides of a cell
constexpr double kOver = 1.5;     // and over its first row
constexpr double kBetween = 1.2;  // between two rows of letters
constexpr double kLeastRow = 7.0;
constexpr std::size_t kGroup = 5;  // rows between two thick rules
constexpr Hand kSmall{1.8, Weight::Regular};
constexpr Hand kHeadBold{2.2, Weight::Bold};

/// Columns of one page: which, and how wide.
struct Layout {
    std::vector<std::size_t> columns;
    std::vector<double> widths;
};

/// A stretch of rows that stands on one page.
struct Span {
    std::size_t from = 0;
    std::size_t to = 0;
};

void grow(Layout& layout, const std::vector<PaperColumn>& columns) {
    double left = kPageRight - kPageLeft;
    double wanted = 0;
    for (std::size_t n = 0; n < layout.columns.size(); ++n) {
        left -= layout.widths[n];
        wanted += columns[layout.columns[n]].most - layout.widths[n];
    }
    const double share = wanted > 0 ? std::clamp(left / wanted, 0.0, 1.0) : 0;
    for (std::size_t n = 0; n < layout.columns.size(); ++n) {
        layout.widths[n] += share * (columns[layout.columns[n]].most - layout.widths[n]);
    }
}

std::vector<Layout> layouts(const PaperTable& table) {
    std::vector<Layout> all;
    double used = 0;
    const auto take = [&](std::size_t column) {
        all.back().columns.push_back(column);
        all.back().widths.push_back(table.columns[column].width);
        used += table.columns[column].width;
    };
    const auto begin = [&] {
        all.emplace_back();
        used = 0;
        for (std::size_t n = 0; n < std::min(table.kept, table.columns.size()); ++n) {
            take(n);
        }
    };
    begin();
    for (std::size_t n = table.kept; n < table.columns.size(); ++n) {
        if (used + table.columns[n].width > kPageRight - kPageLeft && all.back().columns.size() > table.kept) {
            begin();
        }
        take(n);
    }
    for (Layout& layout : all) {
        grow(layout, table.columns);
    }
    return all;
}

/// A cell's text in rows; one row is written smaller where it is drawn.
std::vector<std::string> rowsOf(const std::string& text, const PaperColumn& column, Hand hand, double width) {
    const double room = width - 2 * kPad - column.symbolRoom;
    return column.rows > 1 || text.empty() ? wrapped(text, room, hand, column.rows) : std::vector<std::string>{text};
}

double heightOf(const std::vector<std::string>& rows, Hand hand) {
    return static_cast<double>(rows.size()) * (hand.capHeight + kBetween);
}

/// With the white over and under it.
double textHeight(const PaperCell& cell, const PaperColumn& column, double width) {
    return 2 * kOver - kBetween + heightOf(rowsOf(cell.first, column, column.first, width), column.first) +
           heightOf(rowsOf(cell.second, column, column.second, width), column.second);
}

double heightOf(const PaperTable& table, const std::vector<PaperCell>& row, const Layout& layout) {
    double height = kLeastRow;
    for (std::size_t n = 0; n < layout.columns.size(); ++n) {
        const PaperColumn& column = table.columns[layout.columns[n]];
        const PaperCell& cell = row[layout.columns[n]];
        height = std::max(height, textHeight(cell, column, layout.widths[n]));
        if (!cell.symbol.isEmpty()) {
            height = std::max(height, drawing::extent(cell.symbol).height() + 2);
        }
    }
    return height;
}

/// Draws one page.
class Desk {
  public:
    Desk(const PaperTable& table, const Layout& layout) : table_(table), layout_(layout) {}

    /// @return where the table begins
    double head(std::size_t page, std::size_t pages) { return drawHead(pen_, table_.head, page, pages); }

    /// @return the lower edge of the heads
    double columnHeads(double top) {
        std::size_t rows = 1;
        for (const std::size_t column : layout_.columns) {
            rows = std::max(rows, table_.columns[column].heads.size());
        }
        const double foot =
            top + 2 * kOver + kHeadBold.capHeight + static_cast<double>(rows - 1) * (kBetween + kSmall.capHeight);
        pen_.line({kPageLeft, top}, {kPageRight, top}, kThickPen);
        eachColumn([&](const PaperColumn& column, std::size_t, double left, double right) {
            double base = top + kOver + kHeadBold.capHeight;
            for (std::size_t n = 0; n < column.heads.size(); ++n) {
                write(column.heads[n], column.align, left, right, base, n == 0 ? kHeadBold : kSmall);
                base += kBetween + kSmall.capHeight;
            }
        });
        pen_.line({kPageLeft, foot}, {kPageRight, foot}, kThickPen);
        return foot;
    }

    /// @return its lower edge
    double row(std::size_t number, double top) {
        const std::vector<PaperCell>& cells = table_.rows[number];
        const double foot = top + heightOf(table_, cells, layout_);
        eachColumn([&](const PaperColumn& column, std::size_t at, double left, double right) {
            const PaperCell& cell = cells[at];
            if (!cell.symbol.isEmpty()) {
                const drawing::Box box = drawing::extent(cell.symbol);
                pen_.append(drawing::moved(
                    cell.symbol, drawing::Point{left + column.symbolRoom / 2, (top + foot) / 2} - box.middle()));
            }
            // one row of letters stands in the middle of a high row, wrapped text at its top
            const double free = column.rows > 1 ? 0 : foot - top - textHeight(cell, column, right - left);
            double base = top + kOver - kBetween + free / 2;
            const auto under = [&](const std::string& text, Hand hand) {
                for (const std::string& one : rowsOf(text, column, hand, right - left)) {
                    base += kBetween + hand.capHeight;
                    write(one, column.align, left + column.symbolRoom, right, base, hand);
                }
            };
            under(cell.first, column.first);
            under(cell.second, column.second);
        });
        const bool thick = (number + 1) % kGroup == 0 || number + 1 == table_.rows.size();
        pen_.line({kPageLeft, foot}, {kPageRight, foot}, thick ? kThickPen : kThinPen);
        return foot;
    }

    void upright(double top, double foot) {
        eachColumn([&](const PaperColumn&, std::size_t at, double left, double) {
            if (at > 0) {
                pen_.line({left, top}, {left, foot}, at == table_.kept ? kThickPen : kThinPen);
            }
        });
    }

    void underneath(double top) {
        drawNotes(pen_, table_.notes, top);
        drawSource(pen_, table_.head.source);
    }

    PaperPage page() && {
        PaperPage page;
        page.drawing = std::move(pen_).take();
        return page;
    }

  private:
    template <class Each>
    void eachColumn(Each&& each) {
        double left = kPageLeft;
        for (std::size_t n = 0; n < layout_.columns.size(); ++n) {
            const double right = left + layout_.widths[n];
            each(table_.columns[layout_.columns[n]], layout_.columns[n], left, right);
            left = right;
        }
    }

    void write(const std::string& text, Align align, double left, double right, double base, Hand hand) {
        const double x = align == Align::Right    ? right - kPad
                         : align == Align::Middle ? (left + right) / 2
                                                  : left + kPad;
        pen_.writeWithin(text, {x, base}, right - left - 2 * kPad, hand, align);
    }

    const PaperTable& table_;
    const Layout& layout_;
    CardPen pen_;
};

/// Rows that stand under each other on one page, at least one.
std::vector<Span> spans(const PaperTable& table, const Layout& layout, double room) {
    std::vector<Span> all{{0, 0}};
    double used = 0;
    for (std::size_t n = 0; n < table.rows.size(); ++n) {
        const double height = heightOf(table, table.rows[n], layout);
        if (used + height > room && all.back().to > all.back().from) {
            all.push_back({n, n});
            used = 0;
        }
        used += height;
        all.back().to = n + 1;
    }
    return all;
}

}  // namespace

std::vector<PaperPage> tablePages(const PaperTable& table) {
    const auto all = layouts(table);
    std::vector<std::pair<const Layout*, Span>> plan;
    for (const Layout& layout : all) {
        Desk trial(table, layout);
        const double top = trial.columnHeads(trial.head(1, 1));
        for (const Span& span : spans(table, layout, kPageFoot - notesHeight(table.notes) - top)) {
            plan.emplace_back(&layout, span);
        }
    }
    std::vector<PaperPage> pages;
    for (const auto& [layout, span] : plan) {
        Desk desk(table, *layout);
        const double top = desk.head(pages.size() + 1, plan.size());
        double y = desk.columnHeads(top);
        for (std::size_t n = span.from; n < span.to; ++n) {
            y = desk.row(n, y);
        }
        desk.upright(top, y);
        desk.underneath(y);
        pages.push_back(std::move(desk).page());
    }
    return pages;
}

PaperTable withColumns(PaperTable table, const std::vector<std::string>& keys) {
    PaperTable chosen = table;
    chosen.columns.clear();
    chosen.rows.assign(table.rows.size(), {});
    chosen.kept = 0;
    for (const std::string& key : keys) {
        for (std::size_t n = 0; n < table.columns.size(); ++n) {
            if (table.columns[n].key != key) {
                continue;
            }
            if (n < table.kept && chosen.kept == chosen.columns.size()) {
                ++chosen.kept;
            }
            chosen.columns.push_back(table.columns[n]);
            for (std::size_t row = 0; row < table.rows.size(); ++row) {
                chosen.rows[row].push_back(table.rows[row][n]);
            }
        }
    }
    return chosen.columns.empty() ? std::move(table) : std::move(chosen);
}

}  // namespace crosstick::press
