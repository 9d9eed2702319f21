#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <vector>

#include <QRect>

namespace crosstick::phases {

/// Columns that a card covers, from the first to the last of its phases.
struct Span {
    int first = 0, last = 0;
    [[nodiscard]] bool meets(const Span& other) const { return first <= other.last && other.first <= last; }
    friend bool operator==(const Span&, const Span&) = default;
};

/// The columns of a film among a plan's phases; all of them where it names none that the plan has.
[[nodiscard]] Span spanOf(const std::set<int>& phases, const std::vector<int>& all);

/// In which row each of a stack's cards stands, both counted from the lowest: as low as it may, over every card below
/// it in the stack that it would cover a column with. So films that never lie together share a row.
/// Laws: cards in a row share no column; of two that share one the upper film stands in the upper row.
[[nodiscard]] std::vector<int> rowsOf(const std::vector<Span>& stack);

/// The place in the stack for a card that is let go at a row, counted from the lowest: right over the uppermost card
/// that it shares a column with and that stands lower, else under all those.
/// @param stack  with the card itself at `card`; @param above  rows that it is to stand over (all in rows below)
[[nodiscard]] std::size_t placeOver(const std::vector<Span>& stack, std::size_t card, int row);

/// Where the parts of the rail rolled down stand, in logical pixels. Six phases fit; of more a whole number of columns
/// is seen, from the first on.
class BoardLayout {
  public:
    static constexpr int kHigh = 300;
    static constexpr int kHead = 36;  ///< the row of phases
    static constexpr int kCard = 54;
    static constexpr int kApart = 8;
    static constexpr int kDeeds = 180;  ///< what may be done, at the right, where there is room

    BoardLayout(int width, int phases, int first);
    [[nodiscard]] int first() const { return first_; }
    [[nodiscard]] int seen() const { return seen_; }       ///< columns
    [[nodiscard]] bool hasRoom() const { return roomy_; }  ///< for what stands beside the columns
    [[nodiscard]] int left() const { return left_; }
    [[nodiscard]] int right() const { return right_; }
    [[nodiscard]] QRect head(int column) const;  ///< of a phase; null where it is not seen
    /// A card in its row, counted from the top; null where none of its columns is seen.
    [[nodiscard]] QRect card(const Span& span, int row) const;
    [[nodiscard]] int columnAt(int x) const;  ///< the nearest of those seen
    [[nodiscard]] static int rowAt(int y) { return (y < 0 ? y - kCard : y) / (kCard + kApart); }
    [[nodiscard]] QRect column(int n) const;  ///< its left and right edge, from 0 down

  private:
    int left_, right_, seen_, first_, pitch_;
    bool roomy_;
};

}  // namespace crosstick::phases
