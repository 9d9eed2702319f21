#include "ui/details/unit_picker.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "symbols/unit_symbol.h"
#include "ui/look/spoken.h"
#include "ui/press/painter.h"

namespace crosstick::details {
namespace {

constexpr int kPictureHigh = 92;
constexpr double kPixelsPerMm = 96 / 25.4;

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QComboBox* listOf(std::span<const measures::UnitWord> words, const QString& name, const QString& none,
                  QWidget* parent) {
    auto* list = new QComboBox(parent);
    list->setAccessibleName(name);
    list->setMinimumContentsLength(4);
    list->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    if (!none.isEmpty()) {
        list->addItem(none, QString());
    }
    for (const measures::UnitWord& word : words) {
        list->addItem(look::spoken(word.name), text(word.word));
    }
    return list;
}

/// An enemy's symbol in the enemy's red, as a film has it.
symbols::Manner mannerOf(const measures::UnitSymbol& unit) {
    symbols::Manner manner;
    if (unit.affiliation == measures::Affiliation::Hostile) {
        manner.ink = drawing::Ink::Red;
        manner.side = symbols::Side::Enemy;
    }
    return manner;
}

}  // namespace

UnitPicture::UnitPicture(const press::Faces* faces, const look::Light& light, QWidget* parent)
    : QWidget(parent), faces_(faces), light_(light) {
    setFixedHeight(kPictureHigh);
    setAccessibleName(tr("The symbol as it will be drawn"));
}

void UnitPicture::show(const measures::UnitSymbol& unit) {
    unit_ = unit;
    update();
}

void UnitPicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.well);
    if (faces_ == nullptr) {
        return;
    }
    symbols::UnitSketch sketch = symbols::sketchUnit(unit_, mannerOf(unit_), {});
    sketch.ink.append(std::move(sketch.letters));
    const drawing::Box box = drawing::extent(sketch.ink).grown(1);
    const double perMm =
        std::min({2 * kPixelsPerMm, width() / std::max(box.width(), 1.0), height() / std::max(box.height(), 1.0)});
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(width() / 2.0, height() / 2.0);
    painter.scale(perMm, perMm);
    painter.translate(-box.middle().x, -box.middle().y);
    const press::Inks inks = light_ == look::Light::Night ? press::nightInks() : press::dayInks();
    press::paint(painter, sketch.ink, {*faces_, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
}

UnitPicker::UnitPicker(const press::Faces* faces, const look::Light& light, QWidget* parent) : QWidget(parent) {
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(12, 2, 12, 2);
    rows->setSpacing(3);
    picture_ = new UnitPicture(faces, light, this);
    rows->addWidget(picture_);
    side_ = listOf(measures::unitSides(), tr("Whose unit"), {}, this);
    size_ = listOf(measures::unitSizes(), tr("Size of the unit"), tr("no size"), this);
    icon_ = listOf(measures::unitIcons(), tr("Branch of the unit"), tr("no branch"), this);
    hq_ = new QToolButton(this);
    hq_->setText(tr("HQ"));
    hq_->setCheckable(true);
    hq_->setAccessibleName(tr("Headquarters"));
    hq_->setToolTip(tr("A headquarters: a staff from the frame, whose foot is the place"));
    auto* first = new QHBoxLayout;
    first->setSpacing(3);
    first->addWidget(side_, 1);
    first->addWidget(size_, 1);
    first->addWidget(hq_);
    rows->addLayout(first);
    rows->addWidget(icon_);
    unread_ = new QLabel(this);
    unread_->setWordWrap(true);
    unread_->setFont(look::face(11));
    rows->addWidget(unread_);
    for (QComboBox* list : {side_, size_, icon_}) {
        connect(list, &QComboBox::activated, this, &UnitPicker::pick);
    }
    connect(hq_, &QToolButton::clicked, this, &UnitPicker::pick);
}

void UnitPicker::show(const QString& words) {
    unit_ = measures::readUnit(words.toStdString());
    picture_->show(unit_);
    side_->setCurrentIndex(static_cast<int>(unit_.affiliation));
    size_->setCurrentIndex(size_->findData(QString::fromStdString(unit_.echelon)));
    int icon = -1;
    for (int n = 0; n < icon_->count() && icon < 0; ++n) {
        const auto one = measures::readUnit(icon_->itemData(n).toString().toStdString());
        icon = one.icons == unit_.icons && one.letters == unit_.letters ? n : -1;
    }
    icon_->setCurrentIndex(icon);  // none of the list: several that were typed
    hq_->setChecked(unit_.isHeadquarters);
    QStringList unread;
    for (const std::string& word : unit_.unread) {
        unread << QString::fromStdString(word);
    }
    unread_->setVisible(!unread.isEmpty());
    unread_->setText(tr("Not understood, so beside the symbol: %1").arg(unread.join(QStringLiteral(" "))));
}

void UnitPicker::pick() {
    unit_.affiliation = static_cast<measures::Affiliation>(side_->currentIndex());
    unit_.echelon = size_->currentData().toString().toStdString();
    if (icon_->currentIndex() >= 0) {
        const auto icon = measures::readUnit(icon_->currentData().toString().toStdString());
        unit_.icons = icon.icons;
        unit_.letters = icon.letters;
    }
    unit_.isHeadquarters = hq_->isChecked();
    const QString words = QString::fromStdString(measures::unitWords(unit_));
    show(words);
    Q_EMIT picked(words);
}

}  // namespace crosstick::details
