#include "ui/phases/board_layout.h"

#include <algorithm>

namespace crosstick::phases {
namespace {

constexpr int kMost = 6;         ///< columns
constexpr int kLeastWide = 150;  ///< of a column
constexpr int kRoomy = 1000;
constexpr int kAxis = 126;  ///< left of the columns: which way is up
constexpr int kMargin = 12;

}  // namespace

Span spanOf(const std::set<int>& phases, const std::vector<int>& all) {
    Span span{static_cast<int>(all.size()), -1};
    for (int n = 0; n < static_cast<int>(all.size()); ++n) {
        if (phases.contains(all[static_cast<std::size_t>(n)])) {
            span = {std::min(span.first, n), n};
        }
    }
    return span.last < 0 ? Span{0, std::max(0, static_cast<int>(all.size()) - 1)} : span;
}

std::vector<int> rowsOf(const std::vector<Span>& stack) {
    std::vector<int> rows(stack.size(), 0);
    for (std::size_t n = 0; n < stack.size(); ++n) {
        for (std::size_t below = 0; below < n; ++below) {
            if (stack[below].meets(stack[n])) {
                rows[n] = std::max(rows[n], rows[below] + 1);
            }
        }
    }
    return rows;
}

std::size_t placeOver(const std::vector<Span>& stack, std::size_t card, int row) {
    std::vector<Span> others = stack;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(card));
    const std::vector<int> rows = rowsOf(others);
    std::size_t place = others.size();
    std::optional<std::size_t> over;
    for (std::size_t n = 0; n < others.size(); ++n) {
        if (others[n].meets(stack[card])) {
            place = std::min(place, n);
            over = rows[n] < row ? std::optional(n) : over;
        }
    }
    return over ? *over + 1 : place == others.size() ? std::min(card, others.size()) : place;
}

BoardLayout::BoardLayout(int width, int phases, int first) : roomy_(width >= kRoomy) {
    left_ = roomy_ ? kAxis : kMargin;
    right_ = width - (roomy_ ? kDeeds + kMargin : kMargin);
    const int room = right_ - left_ + kApart;
    seen_ = std::clamp(room / (kLeastWide + kApart), 1, std::clamp(phases, 1, kMost));
    first_ = std::clamp(first, 0, std::max(0, phases - seen_));
    pitch_ = room / seen_;
}

QRect BoardLayout::column(int n) const {
    return {left_ + (n - first_) * pitch_, 0, pitch_ - kApart, kHigh};
}

QRect BoardLayout::head(int n) const {
    return n < first_ || n >= first_ + seen_ ? QRect() : QRect(column(n).left(), 6, column(n).width(), 23);
}

QRect BoardLayout::card(const Span& span, int row) const {
    const int from = std::max(span.first, first_);
    const int to = std::min(span.last, first_ + seen_ - 1);
    if (from > to) {
        return {};
    }
    const int left = column(from).left();
    return {left, row * (kCard + kApart), column(to).right() + 1 - left, kCard};
}

int BoardLayout::columnAt(int x) const {
    return std::clamp((x - left_ + kApart / 2) / pitch_, 0, seen_ - 1) + first_;
}

}  // namespace crosstick::phases
