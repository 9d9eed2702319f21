#include "ui/phases/rail.h"

#include <algorithm>
#include <utility>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>
#include <QTimer>

#include "ui/phases/film_naming.h"
#include "ui/phases/film_tab.h"
#include "ui/phases/phase_square.h"

namespace crosstick::phases {
namespace {

constexpr int kTabHigh = 23;

}  // namespace

Rail::Rail(work::Work& work, QWidget* parent) : QWidget(parent), work_(work), more_(new QToolButton(this)) {
    setAccessibleName(tr("Phase rail"));
    more_->setFixedHeight(kTabHigh);
    more_->setFocusPolicy(Qt::TabFocus);
    more_->setPopupMode(QToolButton::InstantPopup);
    more_->setMenu(new QMenu(more_));
    connect(more_->menu(), &QMenu::aboutToShow, this, &Rail::fillMore);
    more_->hide();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(8, 8, 4, 1);
    row->setSpacing(4);
    row->addWidget(more_);
    row->addStretch(1);
    connect(&work_, &work::Work::planReplaced, this, [this] {
        endNaming();
        renew();
    });
    connect(&work_, &work::Work::planChanged, this, [this] {  // a drag changes the plan at every step, not its films
        if (films_ != &work_.plan().films() || phases_ != &work_.plan().phases()) {
            renew();
        }
    });
    connect(&work_, &work::Work::tableChanged, this, &Rail::renew);
}

void Rail::setLight(look::Light light) {
    light_ = light;
    renew();
    update();
}

Rail::Focus Rail::focus() const {
    if (more_->hasFocus()) {
        return {{}, {}, true};
    }
    for (const QWidget* part : parts_) {
        if (!part->hasFocus()) {
            continue;
        }
        if (const auto* square = qobject_cast<const PhaseSquare*>(part)) {
            return {square->number(), {}};
        }
        if (const auto* tab = qobject_cast<const FilmTab*>(part)) {
            return {{}, tab->film()};
        }
    }
    return {};
}

/// To the part that had it; where that hangs here no more, to the working film or the chosen phase.
void Rail::giveBack(const Focus& focus) {
    if (!focus.isHere()) {
        return;
    }
    QWidget* next = more_->isHidden() ? nullptr : more_;
    for (QWidget* part : parts_) {
        const auto* square = qobject_cast<const PhaseSquare*>(part);
        const auto* tab = qobject_cast<const FilmTab*>(part);
        if (part->isHidden() || (focus.more && next == more_)) {
            continue;
        }
        if ((square != nullptr && focus.phase == square->number()) || (tab != nullptr && focus.film == tab->film())) {
            next = part;
            break;
        }
        if ((square != nullptr && square->isChecked()) || (tab != nullptr && tab->isChecked())) {
            next = part;
        }
    }
    if (next != nullptr) {
        next->setFocus(Qt::TabFocusReason);
    }
}

void Rail::renew() {
    const Focus kept = focus();
    const std::vector<QWidget*> old = std::exchange(parts_, {});
    for (QWidget* part : old) {
        layout()->removeWidget(part);
    }
    films_ = &work_.plan().films();
    phases_ = &work_.plan().phases();
    if (work_.isOpen()) {
        hang();
    }
    fit();
    giveBack(kept);
    for (QWidget* part : old) {  // hidden sooner, it would hand the keyboard on to whatever stands beside the rail
        if (std::find(parts_.begin(), parts_.end(), part) == parts_.end()) {
            part->hide();
            part->deleteLater();
        }
    }
    if (nameField_ != nullptr && std::find(parts_.begin(), parts_.end(), nameField_) == parts_.end()) {
        endNaming();  // its film hangs here no more
    }
    update();
}

void Rail::hangPart(QWidget* part) {
    static_cast<QHBoxLayout*>(layout())->insertWidget(static_cast<int>(parts_.size()), part);
    parts_.push_back(part);
    part->installEventFilter(this);
    part->show();
}

/// Not at once: whoever resizes it is in the middle of laying things out, and what hides or shows then lays them anew.
void Rail::resizeEvent(QResizeEvent* /*event*/) {
    if (!std::exchange(isToFit_, true)) {
        QTimer::singleShot(0, this, [this] {
            isToFit_ = false;
            const Focus kept = focus();
            fit();
            giveBack(kept);
        });
    }
}

void Rail::setRoll(Roll roll) {
    if (roll_ != roll) {
        roll_ = roll;
        renew();
    }
}

void Rail::fit() {
    if (roll_ == Roll::Down) {  // everything stands on the part that is rolled down
        for (QWidget* part : parts_) {
            part->hide();
        }
        more_->hide();
        return;
    }
    for (const auto hanging :
         {Hanging::All, Hanging::NamedChosen, Hanging::Numbers, Hanging::WorkingFilm, Hanging::ChosenPhase}) {
        hangAs(hanging);
        if (needed() <= width()) {
            return;
        }
    }
}

void Rail::hangAs(Hanging hanging) {
    int away = 0;
    for (QWidget* part : parts_) {
        bool hangs = true;
        if (auto* square = qobject_cast<PhaseSquare*>(part)) {
            square->setNamed(hanging == Hanging::All || (hanging == Hanging::NamedChosen && square->isChecked()));
            hangs = hanging < Hanging::ChosenPhase || square->isChecked();
        } else if (auto* tab = qobject_cast<FilmTab*>(part)) {
            hangs = hanging < Hanging::WorkingFilm || tab->isChecked();
        }
        part->setVisible(hangs);
        away += hangs ? 0 : 1;
    }
    more_->setVisible(away > 0);
    more_->setText(QStringLiteral("+%1").arg(away));
    more_->setAccessibleName(tr("%1 more films and phases").arg(away));
    more_->setToolTip(more_->accessibleName());
}

int Rail::needed() const {
    const QMargins margins = layout()->contentsMargins();
    int wide = margins.left() + margins.right() + (more_->isHidden() ? 0 : more_->sizeHint().width());
    for (const QWidget* part : parts_) {
        wide += part->isHidden() ? 0 : part->sizeHint().width() + layout()->spacing();
    }
    return wide;
}

/// What does not hang.
void Rail::fillMore() {
    QMenu* menu = more_->menu();
    menu->clear();
    for (QWidget* part : parts_) {
        if (!part->isHidden()) {
            continue;
        }
        if (const auto* square = qobject_cast<const PhaseSquare*>(part)) {
            connect(menu->addAction(square->accessibleName()), &QAction::triggered, this,
                    [this, number = square->number()] { work_.setPhase(number); });
        } else if (const auto* tab = qobject_cast<const FilmTab*>(part)) {
            connect(menu->addAction(tab->accessibleName()), &QAction::triggered, this,
                    [this, film = tab->film()] { work_.setWorkingFilm(film); });
        }
    }
}

bool Rail::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress && qobject_cast<QAbstractButton*>(watched) != nullptr) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
            case Qt::Key_Left:
                return stepPhase(-1), true;
            case Qt::Key_Right:
                return stepPhase(1), true;
            case Qt::Key_Up:
                return stepFilm(1), true;
            case Qt::Key_Down:
                return stepFilm(-1), true;
            default:
                break;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void Rail::stepPhase(int by) {
    const auto& phases = work_.plan().phases();
    for (std::size_t n = 0; n < phases.size(); ++n) {
        const auto next = static_cast<std::ptrdiff_t>(n) + by;
        if (phases[n].number == work_.phase() && next >= 0 && next < static_cast<std::ptrdiff_t>(phases.size())) {
            const int number = phases[static_cast<std::size_t>(next)].number;
            work_.setPhase(number);
            renew();
            giveBack({number, {}, false});
            return;
        }
    }
}

/// The stack grows upward.
void Rail::stepFilm(int by) {
    const auto films = work_.filmsOnTable();
    const auto at = std::find_if(films.begin(), films.end(),
                                 [this](const plan::FilmPtr& film) { return work_.workingFilm() == film->id; });
    const auto next = at - films.begin() + by;
    if (at != films.end() && next >= 0 && next < static_cast<std::ptrdiff_t>(films.size())) {
        const plan::FilmId film = films[static_cast<std::size_t>(next)]->id;
        work_.setWorkingFilm(film);
        giveBack({{}, film, false});
    }
}

void Rail::hangFilms() {
    for (const plan::FilmPtr& film : work_.filmsOnTable()) {
        if (naming_ == film->id && nameField_ != nullptr) {
            hangPart(nameField_);
        } else {
            hangTab(*film);
        }
    }
}

void Rail::hangTab(const plan::Film& film) {
    auto* tab = new FilmTab(work_, factsOf(work_, film), light_, this);
    const plan::FilmId id = film.id;
    connect(tab, &QAbstractButton::clicked, this, [this, id] { work_.setWorkingFilm(id); });
    connect(tab, &FilmTab::nameWanted, this, [this, id] { askForName(id); });
    connect(tab, &QWidget::customContextMenuRequested, this,
            [this, id, tab](const QPoint& point) { Q_EMIT filmMenuWanted(id, tab->mapToGlobal(point)); });
    hangPart(tab);
}

void Rail::askForName(const plan::FilmId& film) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held || (naming_ == film && nameField_ != nullptr)) {
        return;
    }
    endNaming();
    naming_ = film;
    beforeName_ = focus();
    nameField_ = new NameField(
        QString::fromStdString(held->name),
        [this, film](const QString& name) { return naming_ == film ? nameFilm(work_, film, name) : std::nullopt; },
        light_, this);
    connect(nameField_, &NameField::done, this, [this] {
        const bool hadKeyboard = nameField_ != nullptr && nameField_->hasFocus();
        const Focus before = beforeName_.value_or(Focus{});
        endNaming();
        renew();
        if (hadKeyboard && before.isHere()) {
            giveBack(before);
        } else if (hadKeyboard) {
            Q_EMIT named();
        }
    });
    renew();
    if (nameField_ != nullptr) {
        nameField_->setFocus(Qt::OtherFocusReason);
    }
}

void Rail::endNaming() {
    naming_.reset();
    beforeName_.reset();
    if (NameField* field = std::exchange(nameField_, nullptr)) {
        field->disconnect(this);
        parts_.erase(std::remove(parts_.begin(), parts_.end(), field), parts_.end());
        layout()->removeWidget(field);
        field->hide();
        field->deleteLater();
    }
}

void Rail::hang() {
    if (work_.plan().phases().empty()) {
        hangFilms();
    }
    for (const plan::Phase& phase : work_.plan().phases()) {
        auto* square = new PhaseSquare(phase.number, QString::fromStdString(phase.name), light_, this);
        square->setChecked(work_.phase() == phase.number);
        const int number = phase.number;
        connect(square, &QAbstractButton::clicked, this, [this, number] {
            work_.setPhase(number);
            renew();
        });
        hangPart(square);
        if (work_.phase() == phase.number) {
            hangFilms();
        }
    }
}

void Rail::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.lino);
    if (roll_ == Roll::Down) {
        painter.setPen(c.ink);
        painter.setFont(look::face(12, look::Weight::Bold));
        painter.drawText(rect().adjusted(8, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, tr("Films, phase by phase"));
        return;
    }
    painter.fillRect(0, 4, width() - 4, 2, c.ink);
    if (parts_.empty()) {
        painter.setPen(c.inkTwo);
        painter.setFont(look::face(12));
        painter.drawText(rect().adjusted(8, 6, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                         tr("No films yet. They hang here, phase by phase."));
    }
}

}  // namespace crosstick::phases
