#include "ui/tray/offer.h"

#include <QFontMetricsF>
#include <QPainter>

#include "core/plan/numbering.h"
#include "symbols/specimen/specimen.h"
#include "ui/details/token_picture.h"
#include "ui/look/spoken.h"

namespace crosstick::tray {
namespace {

constexpr QSize kToken{72, 52};
constexpr int kWordsLeft = 78;
constexpr int kLine = 14;

QString wordsOf(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// Words in lines of a width, as many as there is room for; the last one is shortened.
QStringList lines(const QString& words, const QFont& font, double wide, qsizetype most) {
    const QFontMetricsF metrics(font);
    QStringList all;
    for (const QString& word : words.split(QLatin1Char(' '))) {
        if (!all.isEmpty() && metrics.horizontalAdvance(all.last() + QLatin1Char(' ') + word) <= wide) {
            all.last() += QLatin1Char(' ') + word;
        } else {
            all.push_back(word);
        }
    }
    if (all.size() > most) {
        all[most - 1] = all.mid(most - 1).join(QLatin1Char(' '));
        all = all.mid(0, most);
    }
    for (QString& line : all) {
        line = metrics.elidedText(line, Qt::ElideRight, wide);
    }
    return all;
}

}  // namespace

Offer::Offer(const press::Faces* faces, const look::Light& light, QWidget* parent)
    : QAbstractButton(parent), faces_(faces), light_(light) {
    setFixedSize(kSize);
    setCheckable(true);
    setFocusPolicy(Qt::NoFocus);  // the caret stays in the field; keys choose from there
}

void Offer::show(const measures::Meant& meant, const plan::Plan& plan, const QString& key) {
    meant_ = meant;
    key_ = key;
    const plan::Called called = plan::calledBy(meant, plan);
    shown_ = {};
    shown_.kind = meant.entry->kind;
    shown_.number = called.number;
    shown_.name = called.name;
    for (const measures::Field& field : meant.entry->fields) {
        const bool isSaid = field.type == measures::FieldType::UnitWords && !meant.unit.empty();
        shown_.fields[std::string(field.key)] = isSaid ? meant.unit : std::string(field.standard);
    }
    token_.reset();
    const QString name = look::spoken(meant.entry->name);
    const QString abbreviation = wordsOf(meant.entry->abbreviation);
    setAccessibleName(abbreviation.isEmpty() ? name : tr("%1, %2").arg(abbreviation, name));
    setAccessibleDescription(key);
    const QString help = look::spoken(meant.entry->help);
    setToolTip(key.isEmpty() ? help : tr("%1 %2").arg(help, key));
    update();
}

void Offer::enterEvent(QEnterEvent* /*event*/) {
    update();
}

void Offer::leaveEvent(QEvent* /*event*/) {
    update();
}

void Offer::paintEvent(QPaintEvent* /*event*/) {
    if (meant_.entry == nullptr) {
        return;
    }
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    const bool isUnder = underMouse();
    painter.fillRect(rect(), isChecked() || isUnder ? c.well : c.card);
    const double pen = isChecked() ? 2 : 1;
    painter.setPen(QPen(isChecked() ? c.ours
                        : isUnder   ? c.ink
                                    : c.edge,
                        pen, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawRect(QRectF(rect()).adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2));
    if (faces_ != nullptr) {
        if (!token_) {
            token_ = symbols::tokenOf(shown_, *meant_.entry, details::tokenRoom(kToken), {});
        }
        details::paintToken(painter, {4, (height() - kToken.height()) / 2.0}, *token_, *faces_, light_);
    }
    double y = 8;
    const double wide = width() - kWordsLeft - 6.0;
    painter.setPen(c.ink);
    if (!meant_.entry->abbreviation.empty()) {
        painter.setFont(look::face(12, look::Weight::Bold));
        painter.drawText(
            QRectF(kWordsLeft, y, wide, 16), Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetricsF(painter.font()).elidedText(wordsOf(meant_.entry->abbreviation), Qt::ElideRight, wide));
        y += 15;
    }
    painter.setFont(look::face(11));
    const qsizetype most = key_.isEmpty() ? 3 : meant_.entry->abbreviation.empty() ? 3 : 2;
    for (const QString& line : lines(look::spoken(meant_.entry->name), painter.font(), wide, most)) {
        painter.drawText(QRectF(kWordsLeft, y, wide, kLine), Qt::AlignLeft | Qt::AlignVCenter, line);
        y += kLine - 1;
    }
    painter.setPen(c.inkTwo);
    painter.drawText(QRectF(0, height() - 17.0, width() - 6.0, 14), Qt::AlignRight | Qt::AlignVCenter, key_);
}

}  // namespace crosstick::tray
