#include "ui/settings/settings_page.h"

#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QSpinBox>
#include <QStyle>
#include <QVBoxLayout>

#include "core/units/time.h"

namespace crosstick::settings {
namespace {

constexpr int kWide = 860;
constexpr int kControlWide = 220;

QLabel* words(const QString& text, int size, look::Weight weight, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::face(size, weight));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

}  // namespace

SettingsPage::SettingsPage(const QString& file, QWidget* parent)
    : QScrollArea(parent), body_(new QWidget), rows_(new QGridLayout) {
    setAccessibleName(tr("Settings"));
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    auto* column = new QVBoxLayout(body_);
    column->setContentsMargins(24, 20, 24, 20);
    column->setSpacing(8);
    column->addWidget(words(tr("Settings"), 15, look::Weight::Bold, body_));
    column->addWidget(words(tr("They hold for this desk, not for a plan. What a new plan takes from them is written "
                               "into it."),
                            12, look::Weight::Regular, body_));
    column->addSpacing(8);
    rows_->setHorizontalSpacing(16);
    rows_->setVerticalSpacing(10);
    rows_->setColumnStretch(2, 1);
    column->addLayout(rows_);
    fill();
    column->addSpacing(8);
    auto* kept = words(tr("Kept in %1").arg(file), 11, look::Weight::Regular, body_);
    kept->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(kept);
    auto* across = new QHBoxLayout;
    auto* defaults = new QPushButton(tr("All as by default"), body_);
    auto* back = new QPushButton(tr("Back, Esc"), body_);
    defaults->setToolTip(tr("Each choice as its row says"));
    back->setToolTip(tr("Esc, or Ctrl+, again"));
    across->addWidget(defaults);
    across->addStretch(1);
    across->addWidget(back);
    column->addLayout(across);
    column->addStretch(1);
    connect(defaults, &QPushButton::clicked, this, [this] { change([](Choices& all) { all = {}; }); });
    connect(back, &QPushButton::clicked, this, &SettingsPage::left);
    body_->setMaximumWidth(kWide);
    setAlignment(Qt::AlignHCenter | Qt::AlignTop);
    setWidget(body_);
    setFocusProxy(body_->findChild<QComboBox*>());
}

void SettingsPage::fill() {
    addChosen(
        tr("Azimuths"), tr("Degrees. Our own choice; Ctrl+M turns it over."),
        {tr("degrees"), tr("mils, 6400 to the circle")},
        [](const Choices& all) { return all.angles == geodesy::AngleUnit::Mils ? 1 : 0; },
        [](Choices& all, int n) { all.angles = n == 1 ? geodesy::AngleUnit::Mils : geodesy::AngleUnit::Degrees; });
    addTyped(
        tr("Symbols, pen, letters of new plans, mm"), tr("6, 0.4, 2. Our own measure; a film may have others."),
        [](const Choices& all) { return sizesShown(all.gauge); },
        [](Choices& all, const QString& typed) {
            const auto gauge = sizesTyped(typed);
            all.gauge = gauge.value_or(all.gauge);
            return gauge ? QString() : tr("Three sizes in mm: symbols 4 to 8, pen 0.25 to 0.7, letters 1.8 to 4.");
        });
    const auto plain = [this](const QString& what, const QString& source, QString Choices::*member) {
        addTyped(
            what, source, [member](const Choices& all) { return all.*member; },
            [member](Choices& all, const QString& typed) {
                all.*member = typed;
                return QString();
            });
    };
    plain(tr("Marking of new plans"), tr("None. The house says what stands at the head and foot of papers."),
          &Choices::marking);
    plain(tr("Prepared by"), tr("Nobody. Who draws says so once."), &Choices::author);
    plain(tr("Unit"), tr("None."), &Choices::unit);
    addTyped(
        tr("Time zone of new plans, its letter"), tr("Z, which everybody can work from."),
        [](const Choices& all) { return QString(QLatin1Char(all.zone)); },
        [](Choices& all, const QString& typed) {
            const auto zone = typed.size() == 1 ? timeZone(typed.front().toLatin1()) : Result<TimeZone>(TimeZone{});
            const bool isZone = typed.size() == 1 && zone.has_value();
            all.zone = isZone ? zone->letter : all.zone;
            return isZone ? QString() : tr("One letter, A to Z without J.");
        });
    fillDrawing();
    addChosen(
        tr("The window opens"), tr("As it was left, so that nothing dazzles at night."),
        {tr("in the light it was left in"), tr("by day"), tr("by night")},
        [](const Choices& all) { return static_cast<int>(all.opens); },
        [](Choices& all, int n) { all.opens = static_cast<Opens>(n); });
    addCounted(tr("Night light, 6 is full, 1 the darkest"), tr("6. Steps are ours; letters are bold at 3 and below."),
               1, 6, &Choices::dimming);
    addCounted(tr("Room for copies of sheets, GB"),
               tr("8. Our own measure. Copies can be made again; holds from the next start on."), kLeastCache,
               kMostCache, &Choices::cacheGigabytes);
}

/// What holds while a film is drawn.
void SettingsPage::fillDrawing() {
    using Wish = drafting::SnapWish;
    addChosen(
        tr("A checkpoint put between numbers given out"),
        tr("The next free number, so that no paper has two of a kind. A house may rule letters."),
        {tr("takes the next free number"), tr("takes a letter, 2A")},
        [](const Choices& all) { return all.inserted == plan::Inserted::Lettered ? 1 : 0; },
        [](Choices& all, int n) { all.inserted = n == 1 ? plan::Inserted::Lettered : plan::Inserted::NextFree; });
    addChosen(
        tr("The hand is drawn to"), tr("Points and ticks, so that nothing goes where it was not put. Our own choice."),
        {tr("points and ticks"), tr("lines too"), tr("the grid too"), tr("lines and the grid too")},
        [](const Choices& all) {
            return (all.snap.lines == Wish::Lines::Yes ? 1 : 0) + (all.snap.grid == Wish::Grid::Yes ? 2 : 0);
        },
        [](Choices& all, int n) {
            all.snap = {n % 2 == 1 ? Wish::Lines::Yes : Wish::Lines::No, n >= 2 ? Wish::Grid::Yes : Wish::Grid::No};
        });
    addTyped(
        tr("Handrail, m beside what it runs along"), tr("100. Our own measure, no figure of doctrine."),
        [](const Choices& all) { return QString::number(all.handrail.value()); },
        [](Choices& all, const QString& typed) {
            bool isNumber = false;
            const Metres far(typed.toInt(&isNumber));
            const bool isInside = isNumber && far >= kLeastHandrail && far <= kMostHandrail;
            all.handrail = isInside ? far : all.handrail;
            return isInside ? QString() : tr("Whole metres from 1 to 10000.");
        });
}

void SettingsPage::addRow(const QString& what, QWidget* control, const QString& source) {
    const int row = rows_->rowCount();
    auto* name = words(what, 12, look::Weight::Bold, body_);
    name->setBuddy(control);
    control->setAccessibleName(what);
    control->setAccessibleDescription(source);
    control->setFixedWidth(kControlWide);
    auto* why = words(tr("Default: %1").arg(source), 11, look::Weight::Regular, body_);
    sources_.push_back(why);
    rows_->addWidget(name, row, 0, Qt::AlignTop);
    rows_->addWidget(control, row, 1, Qt::AlignTop);
    rows_->addWidget(why, row, 2, Qt::AlignTop);
    rows_->setColumnMinimumWidth(0, 200);
}

void SettingsPage::addTyped(const QString& what, const QString& source, std::function<QString(const Choices&)> shown,
                            std::function<QString(Choices&, const QString& typed)> take) {
    auto* field = new QLineEdit(body_);
    addRow(what, field, source);
    auto* refused = words({}, 11, look::Weight::Regular, body_);
    refused->hide();
    rows_->addWidget(refused, rows_->rowCount(), 1, 1, 2);
    refusals_.push_back(refused);
    const auto mark = [field, refused](const QString& why) {
        field->setProperty("refused", !why.isEmpty());
        field->style()->unpolish(field);
        field->style()->polish(field);
        refused->setText(why.isEmpty() ? why : QStringLiteral("\u25a0 ") + why);
        refused->setVisible(!why.isEmpty());
    };
    connect(field, &QLineEdit::editingFinished, this, [this, field, shown, take, mark] {
        if (isFilling_ || field->text() == shown(choices_)) {
            return mark({});
        }
        Choices next = choices_;
        const QString why = take(next, field->text().trimmed());
        mark(why);
        if (why.isEmpty()) {
            change([&next](Choices& all) { all = next; });
        }
    });
    refills_.emplace_back([this, field, shown, mark] {
        if (!field->hasFocus() || !field->property("refused").toBool()) {
            field->setText(shown(choices_));
            mark({});
        }
    });
}

void SettingsPage::addChosen(const QString& what, const QString& source, const QStringList& names,
                             std::function<int(const Choices&)> shown, std::function<void(Choices&, int)> take) {
    auto* box = new QComboBox(body_);
    box->addItems(names);
    addRow(what, box, source);
    connect(box, &QComboBox::activated, this,
            [this, take = std::move(take)](int n) { change([&](Choices& all) { take(all, n); }); });
    refills_.emplace_back([this, box, shown = std::move(shown)] { box->setCurrentIndex(shown(choices_)); });
}

void SettingsPage::addCounted(const QString& what, const QString& source, int least, int most, int Choices::*member) {
    auto* box = new QSpinBox(body_);
    box->setRange(least, most);
    addRow(what, box, source);
    connect(box, &QSpinBox::valueChanged, this, [this, member](int n) {
        if (!isFilling_) {
            change([&](Choices& all) { all.*member = n; });
        }
    });
    refills_.emplace_back([this, box, member] { box->setValue(choices_.*member); });
}

void SettingsPage::change(const std::function<void(Choices&)>& does) {
    Choices next = choices_;
    does(next);
    if (!(next == choices_)) {
        choices_ = next;
        renew();
        Q_EMIT changed(choices_);
    }
}

void SettingsPage::renew() {
    isFilling_ = true;
    for (const auto& refill : refills_) {
        refill();
    }
    isFilling_ = false;
}

void SettingsPage::show(const Choices& choices) {
    choices_ = choices;
    renew();
}

QString SettingsPage::refusal() const {
    for (const QLabel* refused : refusals_) {
        if (!refused->text().isEmpty()) {
            return refused->text();
        }
    }
    return {};
}

void SettingsPage::setLight(look::Light light) {
    light_ = light;
    const look::Colours c = look::colours(light);
    const auto paint = [](QLabel* label, const QColor& ink) {
        QPalette p = label->palette();
        p.setColor(QPalette::WindowText, ink);
        label->setPalette(p);
    };
    for (QLabel* refused : refusals_) {
        paint(refused, c.error);
    }
    for (QLabel* source : sources_) {
        paint(source, c.inkTwo);
    }
    QPalette p = palette();
    p.setColor(QPalette::Window, c.card);
    for (QWidget* ground : {static_cast<QWidget*>(this), viewport(), body_}) {
        ground->setPalette(p);
        ground->setAutoFillBackground(true);
    }
}

void SettingsPage::paintEvent(QPaintEvent* event) {
    QPainter(viewport()).fillRect(viewport()->rect(), look::colours(light_).card);
    QScrollArea::paintEvent(event);
}

void SettingsPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QScrollArea::keyPressEvent(event);
}

}  // namespace crosstick::settings
