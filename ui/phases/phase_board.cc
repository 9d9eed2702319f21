#include "ui/phases/phase_board.h"

#include <algorithm>
#include <utility>

#include <QPainter>
#include <QScrollBar>

#include "core/units/time.h"
#include "ui/phases/film_access.h"
#include "ui/phases/film_naming.h"
#include "ui/table/corner_block.h"

namespace crosstick::phases {
namespace {

constexpr int kSoonMs = 120;

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

/// "2130 – 2330", as far as it is known.
QString timesOf(const plan::Phase& phase, TimeZone zone) {
    if (!phase.from && !phase.until) {
        return {};
    }
    const auto clock = [zone](const std::optional<Instant>& when) {
        return when ? text(clockTime(*when, zone)) : QString();
    };
    return (clock(phase.from) + QStringLiteral(" \u2013 ") + clock(phase.until)).trimmed();
}

}  // namespace

PhaseBoard::PhaseBoard(work::Work& work, const std::filesystem::path& share, QWidget* parent)
    : QWidget(parent),
      work_(work),
      scroll_(new QScrollArea(this)),
      body_(new BoardBody(light_, scroll_)),
      sheet_(new SheetCard(light_, body_)),
      thumbnails_(share) {
    bringFilmAccess();
    setAccessibleName(tr("Films, phase by phase"));
    setAttribute(Qt::WA_OpaquePaintEvent);  // the table under it need not be painted with it
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    scroll_->setWidget(body_);
    soon_.setSingleShot(true);
    soon_.setInterval(kSoonMs);
    connect(&soon_, &QTimer::timeout, this, [this] {
        renew();
        orderPictures();
    });
    connect(&work_, &work::Work::planReplaced, this, [this] {
        endNaming();
        firstColumn_ = 0;
        renewSoon();
    });
    connect(&work_, &work::Work::planChanged, this, [this] {
        if (isVisible() && (films_ != &work_.plan().films() || phases_ != &work_.plan().phases())) {
            renew();
        }
        renewSoon();
    });
    connect(&work_, &work::Work::tableChanged, this, [this] {
        if (isVisible()) {
            renew();
        }
        renewSoon();
    });
    connect(&work_, &work::Work::groundChanged, this, &PhaseBoard::renewSoon);
    connect(&work_.sheetGrounds(), &work::SheetGrounds::changed, this, &PhaseBoard::renewSoon);
    connect(&thumbnails_, &Thumbnails::changed, this, [this](const plan::FilmId& film) {
        if (FilmCard* card = cardOf(film)) {
            card->setPicture(thumbnails_.of(film));
        }
    });
    connect(&thumbnails_, &Thumbnails::sheetChanged, this, [this] { sheet_->setPicture(thumbnails_.sheet()); });
}

void PhaseBoard::setLight(look::Light light) {
    light_ = light;
    for (QWidget* part : findChildren<QWidget*>()) {
        part->update();
    }
    update();
    renewSoon();
}

void PhaseBoard::setDeeds(std::vector<Deed> deeds) {
    for (DeedButton* button : std::exchange(deedButtons_, {})) {
        delete button;
    }
    deeds_ = std::move(deeds);
    for (const Deed& deed : deeds_) {
        auto* button = new DeedButton(deed, light_, this);
        button->installEventFilter(this);
        deedButtons_.push_back(button);
    }
    place();
}

FilmCard* PhaseBoard::cardOf(const plan::FilmId& film) const {
    const auto found =
        std::find_if(cards_.begin(), cards_.end(), [&](const FilmCard* card) { return card->film() == film; });
    return found == cards_.end() ? nullptr : *found;
}

bool PhaseBoard::hasPictures() const {
    return !soon_.isActive() && std::all_of(cards_.begin(), cards_.end(), [this](const FilmCard* card) {
        return !thumbnails_.of(card->film()).isNull();
    });
}

void PhaseBoard::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    renew();
    renewSoon();
}

void PhaseBoard::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    giveUp();
    endNaming();
    soon_.stop();
    thumbnails_.leave();
}

void PhaseBoard::renewSoon() {
    if (isVisible() && !soon_.isActive()) {
        soon_.start();
    }
}

/// Cards and heads stay where the films and phases are the same ones: a hand may hold one, a caret stand on it.
void PhaseBoard::renew() {
    films_ = &work_.plan().films();
    phases_ = &work_.plan().phases();
    makeHeads();
    makeCards();
    tellSheet();
    if (nameField_ != nullptr && !std::any_of(cards_.begin(), cards_.end(), [this](const FilmCard* card) {
            return card == nameField_->property("card").value<QObject*>();
        })) {
        endNaming();
    }
    place();
}

void PhaseBoard::makeHeads() {
    std::vector<plan::Phase> phases = work_.plan().phases();
    if (phases.empty()) {
        phases.push_back({0, {}, {}, {}, {}});
    }
    const bool same = std::equal(heads_.begin(), heads_.end(), phases.begin(), phases.end(),
                                 [](const PhaseSquare* head, const plan::Phase& phase) {
                                     return head->number() == phase.number && head->name() == text(phase.name);
                                 });
    if (!same) {
        for (PhaseSquare* head : std::exchange(heads_, {})) {
            head->hide();
            head->deleteLater();
        }
        for (const plan::Phase& phase : phases) {
            auto* head = new PhaseSquare(phase.number, text(phase.name), light_, this);
            head->installEventFilter(this);
            connect(head, &QAbstractButton::clicked, this, [this, number = phase.number] { choosePhase(number); });
            head->show();
            heads_.push_back(head);
        }
    }
    for (std::size_t n = 0; n < heads_.size(); ++n) {
        heads_[n]->setTimes(timesOf(phases[n], work_.plan().heading().zone));
        heads_[n]->setChecked(phases[n].number == work_.phase() || work_.plan().phases().empty());
    }
}

void PhaseBoard::makeCards() {
    const auto& films = work_.plan().films();
    const bool same =
        std::equal(cards_.begin(), cards_.end(), films.begin(), films.end(),
                   [](const FilmCard* card, const plan::FilmPtr& film) { return card->film() == film->id; });
    if (!same) {
        std::map<plan::FilmId, FilmCard*> held;
        for (FilmCard* card : std::exchange(cards_, {})) {
            held.emplace(card->film(), card);
        }
        for (const plan::FilmPtr& film : films) {
            const auto found = held.find(film->id);
            cards_.push_back(found == held.end() ? makeCard(*film) : found->second);
            held.erase(film->id);
        }
        for (const auto& [film, card] : held) {
            card->hide();
            card->deleteLater();
        }
    }
    for (std::size_t n = 0; n < cards_.size(); ++n) {
        cards_[n]->setFacts(factsOf(work_, *films[n]));
    }
}

FilmCard* PhaseBoard::makeCard(const plan::Film& film) {
    auto* card = new FilmCard(work_, factsOf(work_, film), light_, body_);
    const plan::FilmId id = film.id;
    card->installEventFilter(this);
    card->setPicture(thumbnails_.of(id));
    connect(card, &QAbstractButton::clicked, this, [this, id] {
        chooseFilm(id);
        takeKeyboard();
    });
    connect(card, &FilmButton::nameWanted, this, [this, id] { askForName(id); });
    connect(card, &QWidget::customContextMenuRequested, this,
            [this, id, card](const QPoint& point) { Q_EMIT filmMenuWanted(id, card->mapToGlobal(point)); });
    connect(card, &FilmCard::pulled, this, [this, id](FilmCard::Grip grip, const QPoint& to) { pull(id, grip, to); });
    connect(card, &FilmCard::letGo, this, [this](FilmCard::Grip /*grip*/, const QPoint& /*at*/) { letGo(); });
    connect(card, &FilmCard::givenUp, this, &PhaseBoard::giveUp);
    return card;
}

void PhaseBoard::tellSheet() {
    const auto& sheets = work_.plan().sheets();
    if (sheets.empty()) {
        return sheet_->tell(tr("No sheet"), tr("the grid alone"), {});
    }
    const plan::Sheet& sheet = *sheets.front();
    QString name = text(table::cornerRows(work_.plan(), table::View({0, 0, 1, 1}, {}, table::Zoom(1))).first);
    if (sheets.size() > 1) {
        name += tr(", and %1 more").arg(sheets.size() - 1);
    }
    QString what = tr("map sheet, %1").arg(text(table::scaleText(sheet.scale)));
    what += sheet.datum.empty() ? QString() : QStringLiteral(", ") + text(sheet.datum);
    sheet_->tell(name, what,
                 sheet.marks.empty() ? tr("its file says where it lies")
                                     : tr("laid on its grid by %1 crossings").arg(sheet.marks.size()));
}

void PhaseBoard::orderPictures() {
    if (!isVisible() || !work_.isOpen()) {
        return;
    }
    ThumbnailOrder order;
    order.scene.plan = work_.plan();
    order.scene.figures = work_.figures();
    order.scene.angles = work_.angles();
    for (const plan::FilmPtr& film : work_.plan().films()) {
        order.scene.films.push_back(film->id);
        order.looks[film->id] = work_.look(film->id);
        if (work_.look(film->id).tint != work::Tint::None) {
            order.scene.tinted.insert(film->id);
        }
    }
    const work::SheetGround* ground = work_.sheetGrounds().first();
    order.sheet = ground != nullptr ? ground->copy() : std::filesystem::path{};
    order.size = FilmCard::kPicture;
    order.deviceRatio = devicePixelRatioF();
    order.theme = light_ == look::Light::Night ? table::Theme::Night : table::Theme::Day;
    thumbnails_.order(std::move(order));
}

void PhaseBoard::takeKeyboard() {
    FilmCard* card = work_.workingFilm() ? cardOf(*work_.workingFilm()) : nullptr;
    if (card != nullptr && !card->isHidden()) {
        card->setFocus(Qt::OtherFocusReason);
        return;
    }
    for (PhaseSquare* head : heads_) {
        if (head->isChecked()) {
            head->setFocus(Qt::OtherFocusReason);
        }
    }
}

void PhaseBoard::askForName(const plan::FilmId& film) {
    renew();
    FilmCard* card = cardOf(film);
    const plan::FilmPtr held = work_.plan().film(film);
    if (card == nullptr || card->isHidden() || !held) {
        return;
    }
    endNaming();
    scroll_->ensureWidgetVisible(card, 0, BoardLayout::kApart);
    nameField_ = new NameField(
        text(held->name),
        [this, film](const QString& name) {
            return nameField_ != nullptr ? nameFilm(work_, film, name) : std::nullopt;
        },
        light_, card);
    nameField_->setProperty("card", QVariant::fromValue<QObject*>(card));
    connect(nameField_, &NameField::done, this, [this, card = QPointer<FilmCard>(card)] {
        endNaming();
        if (card) {
            card->setFocus(Qt::OtherFocusReason);
        }
    });
    const QRect room = card->nameRoom();
    nameField_->setGeometry(room.left() - 4, 1, std::max(80, room.width()), nameField_->height());
    nameField_->show();
    nameField_->setFocus(Qt::OtherFocusReason);
}

void PhaseBoard::endNaming() {
    if (NameField* field = std::exchange(nameField_, nullptr)) {
        field->disconnect(this);
        field->hide();
        field->deleteLater();
    }
}

void PhaseBoard::resizeEvent(QResizeEvent* /*event*/) {
    place();
}

void PhaseBoard::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.lino);
    const BoardLayout layout = layoutNow();
    for (std::size_t n = 0; n < heads_.size(); ++n) {
        const QRect column = layout.column(static_cast<int>(n));
        if (layout.head(static_cast<int>(n)).isNull()) {
            continue;
        }
        const bool chosen = heads_[n]->isChecked();
        const bool isLast = static_cast<int>(n) == layout.first() + layout.seen() - 1;
        painter.fillRect(column.left(), 32, column.width() + (isLast ? 0 : BoardLayout::kApart), 2, c.ink);
        if (chosen) {
            painter.fillRect(column.left(), 30, column.width(), 5, c.ink);
        }
    }
    if (layout.hasRoom()) {
        painter.setPen(c.inkTwo);
        painter.setFont(look::face(11));
        const QRect axis(12, BoardLayout::kHead + 8, layout.left() - 24, height() - BoardLayout::kHead - 24);
        painter.drawText(axis, Qt::AlignTop | Qt::AlignLeft, tr("on top"));
        painter.drawText(axis, Qt::AlignBottom | Qt::AlignLeft, tr("lowest"));
        painter.setPen(QPen(c.inkTwo, 1));
        const int x = axis.left() + 60;
        painter.drawLine(x, axis.top() + 2, x, axis.bottom() - 2);
        painter.drawLine(x, axis.top() + 2, x - 4, axis.top() + 9);
        painter.drawLine(x, axis.top() + 2, x + 4, axis.top() + 9);
    }
    painter.fillRect(0, height() - 2, width(), 2, c.ink);
}

}  // namespace crosstick::phases
