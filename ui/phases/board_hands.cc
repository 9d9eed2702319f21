// What hands and keys do on the rail rolled down.
#include <algorithm>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollBar>
#include <QWheelEvent>

#include "core/plan/film_edits.h"
#include "ui/phases/phase_board.h"

namespace crosstick::phases {
namespace {

/// The end of a span set at a column; the other end stays, and a span has at least one column.
Span stretched(Span span, FilmCard::Grip end, int column) {
    if (end == FilmCard::Grip::FirstPhase) {
        span.first = std::min(column, span.last);
    } else {
        span.last = std::max(column, span.first);
    }
    return span;
}

}  // namespace

void PhaseBoard::choosePhase(int number) {
    work_.setPhase(number);
    const std::vector<int> all = phaseNumbers();
    see(static_cast<int>(std::find(all.begin(), all.end(), number) - all.begin()));
}

/// One of another phase brings its phase along: what is chosen lies on the sheet.
void PhaseBoard::chooseFilm(const plan::FilmId& film) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (held && !held->phases.empty() && !held->phases.contains(work_.phase())) {
        choosePhase(*held->phases.begin());
    }
    work_.setWorkingFilm(film);
    renew();
    if (FilmCard* card = cardOf(film)) {
        scroll_->ensureWidgetVisible(card, 0, BoardLayout::kApart);
    }
}

bool PhaseBoard::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress && keyTaken(*static_cast<QKeyEvent*>(event))) {
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

bool PhaseBoard::keyTaken(const QKeyEvent& event) {
    if (pulled_) {
        return false;  // a hand is at it: Escape is the card's
    }
    const bool alt = event.modifiers().testFlag(Qt::AltModifier);
    switch (event.key()) {
        case Qt::Key_Escape:
            Q_EMIT left();
            return true;
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Up:
        case Qt::Key_Down:
            return stepTaken(event.key(), alt, event.modifiers().testFlag(Qt::ShiftModifier));
        default:
            break;
    }
    if (alt || event.modifiers().testFlag(Qt::ControlModifier) || event.text().isEmpty()) {
        return false;
    }
    for (const Deed& deed : deeds_) {
        if (deed.does && deed.key == event.text().toUpper()) {
            deed.does();
            return true;
        }
    }
    return false;
}

bool PhaseBoard::stepTaken(int key, bool alt, bool shift) {
    const int by = key == Qt::Key_Left || key == Qt::Key_Down ? -1 : 1;
    const bool isAcross = key == Qt::Key_Left || key == Qt::Key_Right;
    if (!alt) {
        isAcross ? stepPhase(by) : stepFilm(by);
        return true;
    }
    if (!work_.workingFilm()) {
        return true;
    }
    if (isAcross) {
        stretch(by, shift ? FilmCard::Grip::FirstPhase : FilmCard::Grip::LastPhase);
        return true;
    }
    const auto card = std::find_if(cards_.begin(), cards_.end(),
                                   [this](const FilmCard* one) { return one->film() == *work_.workingFilm(); });
    if (card != cards_.end()) {
        restack(*work_.workingFilm(), rows_[static_cast<std::size_t>(card - cards_.begin())] + by);
    }
    return true;
}

void PhaseBoard::stepPhase(int by) {
    const std::vector<int> all = phaseNumbers();
    const auto at = std::find(all.begin(), all.end(), work_.phase());
    const auto next = at - all.begin() + by;
    if (at != all.end() && next >= 0 && next < static_cast<std::ptrdiff_t>(all.size())) {
        choosePhase(all[static_cast<std::size_t>(next)]);
        takeKeyboard();
    }
}

/// Of the films of the phase; the stack grows upward.
void PhaseBoard::stepFilm(int by) {
    const auto films = work_.filmsOnTable();
    const auto at = std::find_if(films.begin(), films.end(),
                                 [this](const plan::FilmPtr& film) { return work_.workingFilm() == film->id; });
    const auto next = at - films.begin() + by;
    if (at != films.end() && next >= 0 && next < static_cast<std::ptrdiff_t>(films.size())) {
        chooseFilm(films[static_cast<std::size_t>(next)]->id);
        takeKeyboard();
    }
}

void PhaseBoard::stretch(int by, FilmCard::Grip end) {
    const plan::FilmId film = *work_.workingFilm();
    FilmCard* card = cardOf(film);
    if (card == nullptr || work_.plan().phases().empty()) {
        return;
    }
    const Span before = spanOf(card->facts().phases, phaseNumbers());
    const int column = (end == FilmCard::Grip::FirstPhase ? before.first : before.last) + by;
    const int last = static_cast<int>(heads_.size()) - 1;
    giveColumns(film, before, stretched(before, end, std::clamp(column, 0, last)));
    takeKeyboard();
}

/// What lay between the ends stays as it was; what an end newly covers is added, what it leaves is taken out.
void PhaseBoard::giveColumns(const plan::FilmId& film, const Span& before, const Span& span) {
    const plan::FilmPtr held = work_.committed().film(film);
    if (!held || span == before) {
        return;
    }
    const std::vector<int> all = phaseNumbers();
    std::set<int> phases;
    for (int column = span.first; column <= span.last; ++column) {
        const int phase = all[static_cast<std::size_t>(column)];
        const bool isNew = column < before.first || column > before.last;
        if (isNew || held->phases.empty() || held->phases.contains(phase)) {
            phases.insert(phase);
        }
    }
    if (phases.empty()) {  // the end was drawn back into a gap
        phases.insert(all[static_cast<std::size_t>(span.first)]);
    }
    work_.commit(plan::withPhasesOf(work_.committed(), film, std::move(phases)), "give a film its phases");
}

void PhaseBoard::restack(const plan::FilmId& film, int row) {
    const std::vector<Span> all = spans();
    const auto card =
        std::find_if(cards_.begin(), cards_.end(), [&](const FilmCard* one) { return one->film() == film; });
    if (card == cards_.end()) {
        return;
    }
    const auto at = static_cast<std::size_t>(card - cards_.begin());
    const std::size_t to = placeOver(all, at, row);
    if (to != at) {
        work_.commit(plan::restackedTo(work_.committed(), film, to), "restack a film");
    }
    takeKeyboard();
}

void PhaseBoard::pull(const plan::FilmId& film, FilmCard::Grip grip, const QPoint& to) {
    FilmCard* card = cardOf(film);
    if (card == nullptr) {
        return;
    }
    const BoardLayout layout = layoutNow();
    const int topRow = rows_.empty() ? 0 : *std::max_element(rows_.begin(), rows_.end());
    const Span span = spanOf(card->facts().phases, phaseNumbers());
    if (grip == FilmCard::Grip::Whole) {
        const int row = std::clamp(BoardLayout::rowAt(to.y() - BoardLayout::kApart / 2), -1, topRow + 1);
        pulled_ = Pulled{film, grip, span, topRow - row};
        card->raise();
        card->move(card->x(), to.y() - card->height() / 2);
        const QRect landing = layout.card(span, row);
        const bool isUp =
            topRow - row >
            rows_[static_cast<std::size_t>(std::find(cards_.begin(), cards_.end(), card) - cards_.begin())];
        const int y = isUp ? landing.top() + BoardLayout::kApart / 2 - 1
                           : landing.bottom() + BoardLayout::kApart + BoardLayout::kApart / 2;
        body_->setLanding(QRect(landing.left(), y, landing.width(), 2));
        return;
    }
    if (!work_.plan().phases().empty()) {
        pulled_ = Pulled{film, grip, stretched(span, grip, layout.columnAt(to.x())), 0};
        placeCards(layout);
    }
}

void PhaseBoard::letGo() {
    body_->setLanding(std::nullopt);
    if (const auto pulled = std::exchange(pulled_, std::nullopt)) {
        const FilmCard* card = cardOf(pulled->film);
        if (pulled->grip == FilmCard::Grip::Whole) {
            restack(pulled->film, pulled->row);
        } else if (card != nullptr) {
            giveColumns(pulled->film, spanOf(card->facts().phases, phaseNumbers()), pulled->span);
        }
        place();
    }
}

void PhaseBoard::giveUp() {
    body_->setLanding(std::nullopt);
    pulled_.reset();
    place();
}

}  // namespace crosstick::phases
