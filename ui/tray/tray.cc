#include "ui/tray/tray.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyle>

#include "ui/look/spoken.h"
#include "ui/tools/place_tool.h"

namespace crosstick::tray {
namespace {

constexpr int kMargin = 12;
constexpr QSize kField{252, 32};
constexpr int kOffersLeft = 284;
constexpr int kGap = 8;
constexpr int kAllWide = 42;
constexpr std::size_t kMostRecent = 5;

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString keyOf(std::size_t place) {
    return place == 0 ? Tray::tr("Enter") : Tray::tr("Alt %1").arg(place + 1);
}

}  // namespace

Tray::Tray(work::Work& work, table::LightTable& table, std::function<QString(const Error&)> say,
           const press::Faces* faces, QWidget* parent)
    : QWidget(parent),
      work_(work),
      table_(table),
      say_(std::move(say)),
      faces_(faces),
      asks_(new QLabel(tr("Type a measure, then its grid"), this)),
      cap_(new QLabel(tr("Enter"), this)),
      meaning_(new QLabel(this)),
      field_(new QLineEdit(this)),
      all_(new QToolButton(this)),
      groups_(new QScrollArea(this)) {
    setAccessibleName(tr("Measure tray"));
    setFixedHeight(kHeight);
    asks_->setFont(look::face(11));
    asks_->setBuddy(field_);
    cap_->setFont(look::face(11));
    cap_->setAlignment(Qt::AlignCenter);
    meaning_->setFont(look::face(12));
    meaning_->setTextFormat(Qt::PlainText);
    meaning_->setWordWrap(true);
    field_->setFont(look::face(13, look::Weight::Bold));
    field_->setAccessibleName(asks_->text());
    field_->setMaxLength(400);
    field_->installEventFilter(this);
    all_->setText(tr("All"));
    all_->setToolTip(tr("Every measure, by trade groups  F2"));
    all_->setAccessibleName(tr("Every measure, by trade groups"));
    all_->setCheckable(true);
    groups_->setAccessibleName(tr("Measures by trade groups"));
    groups_->setFrameShape(QFrame::NoFrame);
    groups_->setFocusPolicy(Qt::NoFocus);
    groups_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    groups_->hide();
    for (std::size_t n = 0; n < kOffers; ++n) {
        auto* offer = new Offer(faces_, light_, this);
        offer->setAccessibleName(tr("Match %1").arg(n + 1));
        connect(offer, &Offer::clicked, this, [this, n] { choose(n); });
        offers_.push_back(offer);
    }
    connect(all_, &QToolButton::clicked, this, [this](bool down) {
        setRaised(down);
        field_->setFocus();
    });
    connect(field_, &QLineEdit::textEdited, this, &Tray::read);
    connect(field_, &QLineEdit::returnPressed, this, &Tray::enter);
    connect(&table_, &table::LightTable::placed, this, &Tray::afterPlaced);
    connect(&table_, &table::LightTable::givenUp, this, [this] {
        if (isVisible()) {
            hung_.reset();
            Q_EMIT left();
        }
    });
    connect(&work_, &work::Work::tableChanged, this, [this] {
        if (isVisible()) {
            renew();
        }
    });
}

void Tray::setLight(look::Light light) {
    light_ = light;
    const look::Colours c = look::colours(light);
    QPalette p = palette();
    p.setColor(QPalette::WindowText, c.inkTwo);
    asks_->setPalette(p);
    cap_->setStyleSheet(QStringLiteral("border: 1px solid %1; background: %2; color: %3;")
                            .arg(c.edge.name(), c.well.name(), c.ink.name()));
    groups_->setStyleSheet(
        QStringLiteral("QScrollArea, QScrollArea > QWidget > QWidget { background: %1; }").arg(c.lino.name()));
    if (isVisible()) {
        renew();
    }
}

void Tray::setRecent(std::vector<std::string> kinds) {
    recent_ = std::move(kinds);
}

void Tray::begin(const QString& letters) {
    field_->setFocus();
    makeRoomFor(letters);
    field_->deselect();
    field_->end(false);
    field_->insert(letters);
    read();
}

void Tray::makeRoomFor(const QString& letters) {
    if (std::exchange(isFresh_, false) && !letters.isEmpty() && letters.front().isLetter()) {
        field_->clear();
    }
}

void Tray::letGo() {
    table_.holdHandAt(std::nullopt);
    if (std::exchange(hung_, std::nullopt) && table_.isDrawing()) {
        table_.setTool(nullptr);
    }
    field_->clear();
    line_ = {};
    picked_ = nullptr;
    isFresh_ = false;
}

void Tray::setRaised(bool raised) {
    if (raised_ != raised) {
        raised_ = raised;
        all_->setChecked(raised);
        setFixedHeight(raised ? kRaised : kHeight);
        read();
        lay();
    }
}

void Tray::read() {
    line_ = measures::readTypedLine(field_->text().toStdString());
    const bool all = raised_ && line_.words.empty();
    offered_ = measures::meantBy(line_.words, all ? std::vector<std::string>{} : recent_,
                                 raised_ ? measures::catalogue().size() : kOffers);
    // What was chosen by hand stays chosen while its grid is typed.
    const auto same = std::find_if(offered_.begin(), offered_.end(),
                                   [this](const measures::Meant& one) { return one.entry == picked_; });
    const bool stays = same != offered_.end() && line_.words == pickedFor_;
    chosen_ = stays ? static_cast<std::size_t>(same - offered_.begin()) : 0;
    renew();
}

std::optional<measures::Meant> Tray::taken() const {
    return chosen_ < offered_.size() ? std::optional(offered_[chosen_]) : std::nullopt;
}

std::size_t Tray::pointsSet() const {
    return hung_ && table_.isBusy() ? table_.wet().line.size() - 1 : 0;
}

QString Tray::wordsAlone() const {
    const auto meant = taken();
    const QString words = text(line_.words);
    return meant && !meant->label.empty() ? words.left(words.size() - text(meant->label).size()).trimmed() : words;
}

void Tray::renew() {
    hang();
    means_ = meaningOf();
    table_.holdHandAt(means_.places.empty() ? std::nullopt : std::optional(means_.places.back()));
    refuse(means_.refused ? means_.words : QString());
    if (raised_) {
        layGroups();
    }
}

/// Words put a measure on the pointer, in place of what hung there by this tray; what another tool has begun is left in
/// peace.
void Tray::hang() {
    const auto meant = line_.words.empty() ? std::nullopt : taken();
    const bool isOthersWork = isOthersTool() && table_.isBusy();
    if (hung_ && table_.isBusy()) {
        return;  // what is wet is ended or given up, never dropped for another word
    }
    if (meant && work_.workingFilm() && !isOthersWork && !numberFault(*meant)) {
        if (!(hung_ == meant)) {
            table_.setTool(std::make_unique<tools::PlaceTool>(*meant));
            hung_ = meant;
        }
    } else if (hung_) {
        table_.setTool(nullptr);
        hung_.reset();
    }
}

bool Tray::isDrawingAnother() const {
    return hung_ && table_.isBusy() && !line_.words.empty() && !(taken() == hung_);
}

/// Under the field, with the field's edge: the reason, or nothing.
void Tray::refuse(const QString& why) {
    const bool isRefused = !why.isEmpty();
    field_->setProperty("refused", isRefused);
    field_->style()->unpolish(field_);
    field_->style()->polish(field_);
    const look::Colours c = look::colours(light_);
    QPalette p = meaning_->palette();
    p.setColor(QPalette::WindowText, isRefused ? c.error : c.ink);
    meaning_->setPalette(p);
    const auto meant = raised_ ? taken() : std::nullopt;  // there is room for what the measure is for
    const QString help = meant ? QStringLiteral("\n\n") + look::spoken(meant->entry->help) : QString();
    meaning_->setText(isRefused ? QStringLiteral("\u25a0 ") + why : means_.words + help);
    meaning_->setAccessibleName(isRefused ? why : means_.enters ? tr("Enter %1").arg(means_.words) : means_.words);
    cap_->setVisible(means_.enters && !isRefused);
    lay();
}

void Tray::choose(std::size_t which) {
    if (which >= offered_.size()) {
        return;
    }
    pick(which);
    if (line_.words.empty()) {  // a picture was taken: its words stand in the line
        const measures::Entry& entry = *picked_;
        const QString words = text(entry.abbreviation.empty() ? entry.name : entry.abbreviation).toLower();
        field_->setText(words + QLatin1Char(' ') + field_->text().trimmed());
        pickedFor_ = words.toStdString();
        read();
    } else {
        renew();
    }
    field_->setFocus();
}

void Tray::pick(std::size_t which) {
    chosen_ = which;
    picked_ = offered_[which].entry;
    pickedFor_ = line_.words;
}

void Tray::step(int by) {
    const auto count = static_cast<int>(offered_.size());
    if (count > 0) {
        pick(static_cast<std::size_t>(((static_cast<int>(chosen_) + by) % count + count) % count));
        renew();
    }
}

void Tray::enter() {
    if (!means_.enters) {
        refuse(means_.words);
    } else if (means_.places.empty()) {
        enterWithoutPlace();
    } else if (line_.words.empty() && !table_.isDrawing()) {
        if (const auto place = work_.grid()->onGrid(means_.places.front())) {
            table_.centreOn(*place);
        }
    } else {
        enterPlaces();
    }
}

void Tray::enterWithoutPlace() {
    if (table_.isBusy()) {
        table_.finishTool();
        return;
    }
    if (!hung_) {
        choose(chosen_);
    }
    hung_.reset();  // it hangs on the pointer from now on, the tray has done with it
    Q_EMIT left();
}

void Tray::enterPlaces() {
    const std::vector<geodesy::PlanePoint> places = means_.places;
    for (const geodesy::PlanePoint place : places) {
        table_.pressAt(place);
    }
    // Several places in one line are all of it; one by one they are ended by an Enter without a place.
    const auto meant = taken();
    if (places.size() > 1 && hung_ && meant && pointsSet() >= static_cast<std::size_t>(meant->entry->points.least)) {
        table_.finishTool();
    }
    if (table_.isBusy()) {
        setLine(text(line_.words));
    }
}

void Tray::setLine(const QString& words) {
    field_->setText(words.isEmpty() ? words : words + QLatin1Char(' '));
    read();
}

/// Something was drawn, by the pointer too: it is the last used, and the next one of it hangs on the pointer.
void Tray::afterPlaced() {
    if (!isVisible()) {
        return;
    }
    if (hung_) {
        const std::string kind(hung_->entry->kind);
        std::erase(recent_, kind);
        recent_.insert(recent_.begin(), kind);
        recent_.resize(std::min(recent_.size(), kMostRecent));
        Q_EMIT recentChanged();
    }
    hung_.reset();
    setLine(wordsAlone());
    isFresh_ = true;
}

bool Tray::takeKey(QKeyEvent& event) {
    const bool isAlt = event.modifiers().testFlag(Qt::AltModifier);
    if (isAlt && event.key() >= Qt::Key_1 && event.key() < Qt::Key_1 + static_cast<int>(kOffers)) {
        choose(static_cast<std::size_t>(event.key() - Qt::Key_1));
        return true;
    }
    if (!isAlt && !event.modifiers().testFlag(Qt::ControlModifier) && !event.text().isEmpty()) {
        makeRoomFor(event.text());
    }
    const bool inRows = raised_ && field_->text().isEmpty();
    switch (event.key()) {
        case Qt::Key_Down:
            step(1);
            return true;
        case Qt::Key_Up:
            step(-1);
            return true;
        case Qt::Key_Right:
        case Qt::Key_Left:
            if (inRows) {
                step(event.key() == Qt::Key_Right ? kRows : -kRows);
            }
            return inRows;
        case Qt::Key_Backspace:
            if (field_->text().isEmpty() && table_.isBusy()) {
                table_.takeBackPoint();
                read();
                return true;
            }
            return false;
        case Qt::Key_Escape:
            if (hung_ && table_.isBusy()) {  // back one step: the points that were set
                table_.setTool(nullptr);
                hung_.reset();
                read();
            } else {
                Q_EMIT left();
            }
            return true;
        default:
            return false;
    }
}

bool Tray::eventFilter(QObject* watched, QEvent* event) {
    if (watched == field_ && event->type() == QEvent::ShortcutOverride) {  // Alt and a figure are the tray's here
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->modifiers().testFlag(Qt::AltModifier) && key->key() >= Qt::Key_1 && key->key() <= Qt::Key_9) {
            event->accept();
            return true;
        }
    }
    if (watched == field_ && event->type() == QEvent::KeyPress && takeKey(*static_cast<QKeyEvent*>(event))) {
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

void Tray::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    setLight(light_);
    read();
}

void Tray::resizeEvent(QResizeEvent* /*event*/) {
    lay();
}

void Tray::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.lino);
    painter.fillRect(QRect(0, 0, width(), 2), c.ink);
}

void Tray::lay() {
    asks_->setGeometry(kMargin, 7, kField.width(), 15);
    field_->setGeometry(kMargin, 23, kField.width(), kField.height());
    const int cap = cap_->isVisibleTo(this) ? cap_->fontMetrics().horizontalAdvance(cap_->text()) + 10 : 0;
    const int left = kMargin + (cap > 0 ? cap + 6 : 0);
    const int wide = kMargin + kField.width() - left;
    const int high = raised_ ? kRaised - 62 : kHeight - 59;
    const QFontMetrics usual(look::face(12));
    meaning_->setFont(look::face(usual.horizontalAdvance(meaning_->text()) > wide ? 11 : 12));
    // A long reason takes the room of the pictures rather than be cut.
    isLong_ = meaning_->heightForWidth(wide) > high;
    meaning_->setAlignment(Qt::AlignLeft | (raised_ ? Qt::AlignTop : Qt::AlignVCenter));
    meaning_->setGeometry(left, 57, isLong_ ? width() - left - kMargin : wide, high);
    cap_->setGeometry(kMargin, raised_ ? 57 : 57 + (high - 18) / 2, cap, 18);
    all_->setGeometry(width() - kMargin - kAllWide, 10, kAllWide, 26);
    groups_->setVisible(raised_);
    groups_->setGeometry(kOffersLeft, 4, std::max(0, width() - kOffersLeft - 2 * kMargin - kAllWide), kRaised - 6);
    layOffers();
}

/// As many pictures as there is room for, the chosen one among them.
void Tray::layOffers() {
    const int room = width() - kOffersLeft - kMargin - kAllWide;
    const auto fit = static_cast<std::size_t>(std::clamp(room / (Offer::kSize.width() + kGap), 0, 5));
    const std::size_t first = fit > 0 && chosen_ >= fit ? chosen_ - fit + 1 : 0;
    const bool isOthersWork = isOthersTool() && table_.isBusy();
    for (std::size_t n = 0; n < offers_.size(); ++n) {
        Offer* offer = offers_[n];
        const bool isShown =
            n < offered_.size() && n >= first && n < first + fit && !isOthersWork && !raised_ && !isLong_;
        if (isShown) {
            offer->show(offered_[n], work_.plan(), keyOf(n));
            offer->setChecked(n == chosen_ && !line_.words.empty());
            offer->move(kOffersLeft + static_cast<int>(n - first) * (Offer::kSize.width() + kGap), 10);
        }
        offer->setVisible(isShown);
    }
}

}  // namespace crosstick::tray
