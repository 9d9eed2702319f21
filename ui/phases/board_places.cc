// Where the parts of the rail rolled down stand.
#include <algorithm>

#include <QScrollBar>

#include "ui/phases/phase_board.h"

namespace crosstick::phases {
namespace {

constexpr int kFoot = 2;
constexpr int kDeedsTop = 8;

}  // namespace

std::vector<int> PhaseBoard::phaseNumbers() const {
    std::vector<int> numbers;
    for (const PhaseSquare* head : heads_) {
        numbers.push_back(head->number());
    }
    return numbers;
}

BoardLayout PhaseBoard::layoutNow() const {
    return {width(), static_cast<int>(heads_.size()), firstColumn_};
}

/// Of the cards as they would be, if the one that a hand pulls at were let go.
std::vector<Span> PhaseBoard::spans() const {
    std::vector<Span> spans;
    const std::vector<int> all = phaseNumbers();
    for (const FilmCard* card : cards_) {
        const bool isPulled = pulled_ && pulled_->film == card->film() && pulled_->grip != FilmCard::Grip::Whole;
        spans.push_back(isPulled ? pulled_->span : spanOf(card->facts().phases, all));
    }
    return spans;
}

void PhaseBoard::place() {
    if (heads_.empty() || width() < 2) {
        return;
    }
    const BoardLayout layout = layoutNow();
    firstColumn_ = layout.first();
    scroll_->setGeometry(0, BoardLayout::kHead, std::min(width(), layout.right() + 2 * BoardLayout::kApart),
                         height() - BoardLayout::kHead - kFoot);
    placeHeads(layout);
    placeCards(layout);
    placeDeeds(layout);
    update();
}

void PhaseBoard::placeHeads(const BoardLayout& layout) {
    QRect band;
    for (std::size_t n = 0; n < heads_.size(); ++n) {
        const QRect head = layout.head(static_cast<int>(n));
        heads_[n]->setVisible(!head.isNull());
        heads_[n]->setGeometry(head);
        if (!head.isNull() && heads_[n]->isChecked() && !work_.plan().phases().empty()) {
            band = layout.column(static_cast<int>(n));
        }
    }
    body_->setBand(band);
}

std::vector<QRect> PhaseBoard::gapsOf(const BoardLayout& layout, const FilmCard& card, const Span& span) const {
    std::vector<QRect> gaps;
    const std::vector<int> all = phaseNumbers();
    const std::set<int>& phases = card.facts().phases;
    for (int column = std::max(span.first, layout.first());
         column <= std::min(span.last, layout.first() + layout.seen() - 1); ++column) {
        const bool isPulled = pulled_ && pulled_->film == card.film();
        if (!phases.empty() && !isPulled && !phases.contains(all[static_cast<std::size_t>(column)])) {
            const QRect at = layout.column(column).translated(-card.x(), 0);
            gaps.emplace_back(at.left(), 0, at.width(), BoardLayout::kCard);
        }
    }
    return gaps;
}

void PhaseBoard::placeCards(const BoardLayout& layout) {
    const std::vector<Span> all = spans();
    rows_ = rowsOf(all);
    const int rows = (rows_.empty() ? 0 : *std::max_element(rows_.begin(), rows_.end()) + 1) + 1;  // and the sheet
    const int high = rows * (BoardLayout::kCard + BoardLayout::kApart) + BoardLayout::kApart;
    for (std::size_t n = 0; n < cards_.size(); ++n) {
        const QRect at = layout.card(all[n], rows - 2 - rows_[n]).translated(0, BoardLayout::kApart);
        cards_[n]->setVisible(!at.isNull() && at.width() > 0);
        if (!cards_[n]->isHidden()) {
            cards_[n]->setGeometry(at);
            cards_[n]->setGaps(gapsOf(layout, *cards_[n], all[n]));
        }
    }
    const Span whole{layout.first(), layout.first() + layout.seen() - 1};
    sheet_->setGeometry(layout.card(whole, rows - 1).translated(0, BoardLayout::kApart));
    sheet_->show();
    body_->resize(scroll_->viewport()->width(), std::max(high, scroll_->viewport()->height()));
}

void PhaseBoard::placeDeeds(const BoardLayout& layout) {
    int top = kDeedsTop;
    for (DeedButton* button : deedButtons_) {
        button->setVisible(layout.hasRoom() && top + DeedButton::kHigh < height());
        button->setGeometry(layout.right() + BoardLayout::kApart + 8, top, BoardLayout::kDeeds - 12, DeedButton::kHigh);
        top += DeedButton::kHigh + 2;
    }
}

void PhaseBoard::see(int column) {
    const BoardLayout layout = layoutNow();
    if (column < layout.first()) {
        firstColumn_ = column;
    } else if (column >= layout.first() + layout.seen()) {
        firstColumn_ = column - layout.seen() + 1;
    }
    place();
}

}  // namespace crosstick::phases
