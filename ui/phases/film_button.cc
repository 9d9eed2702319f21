#include "ui/phases/film_button.h"

#include <utility>

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include "ui/press/film_marks.h"
#include "ui/table/tints.h"

namespace crosstick::phases {
namespace {

constexpr double kMark = 14;  ///< room of one mark
constexpr double kBesideName = 4;
constexpr double kSwatch = 8;

}  // namespace

FilmButton::FilmButton(work::Work& work, FilmFacts facts, const look::Light& light, QWidget* parent)
    : QAbstractButton(parent), work_(work), light_(light) {
    setCheckable(true);
    setFocusPolicy(Qt::TabFocus);
    setContextMenuPolicy(Qt::CustomContextMenu);
    setFacts(std::move(facts));
    connect(this, &QAbstractButton::clicked, this, [this] { setChecked(facts_.works); });  // the work says which is
}

void FilmButton::setFacts(const FilmFacts& facts) {
    if (facts_ == facts && !text().isEmpty()) {
        return;
    }
    facts_ = facts;
    setText(facts.name);
    setChecked(facts.works);
    setAccessibleName(spoken(facts));
    setAccessibleDescription(countLine(facts));
    setToolTip(accessibleName());
    updateGeometry();
    update();
}

void FilmButton::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        Q_EMIT nameWanted();
    }
}

void FilmButton::paintFilm(QPainter& painter, const QRectF& room) const {
    const look::Colours c = look::colours(light_);
    painter.setBrush(facts_.works ? c.wash : c.well);
    painter.setPen(QPen(facts_.works   ? c.ours
                        : underMouse() ? c.ink
                                       : c.edge,
                        facts_.works ? 2 : 1, facts_.seen ? Qt::SolidLine : Qt::DashLine));
    painter.drawPath(press::filmOutline(room, facts_.place));
    painter.setBrush(Qt::NoBrush);
}

std::vector<QPainterPath> FilmButton::marks() const {
    std::vector<QPainterPath> marks;
    if (facts_.pinned) {
        marks.push_back(press::pin({0, 0}));
    } else if (facts_.works) {
        marks.push_back(press::nib({0, 0}));
    }
    if (facts_.look.strength < 1) {
        marks.push_back(press::halvedSheet({0, 0}));
    }
    return marks;
}

double FilmButton::nameWide() const {
    const QFontMetrics metrics(look::face(12, look::Weight::Bold));
    const double tint = facts_.look.tint == work::Tint::None ? 0 : kSwatch + kBesideName;
    const auto count = static_cast<double>(marks().size());
    return metrics.horizontalAdvance(facts_.name) + count * kMark + (count > 0 ? kBesideName : 0) + tint;
}

void FilmButton::paintName(QPainter& painter, const QRectF& room) const {
    const look::Colours c = look::colours(light_);
    double x = room.left();
    const double middle = room.center().y();
    if (facts_.look.tint != work::Tint::None) {
        const auto theme = light_ == look::Light::Night ? table::Theme::Night : table::Theme::Day;
        const table::TintForm form = table::tintForm(facts_.look.tint, theme);
        painter.fillRect(QRectF(x, middle - kSwatch / 2, kSwatch, kSwatch), form.ink.isValid() ? form.ink : form.band);
        x += kSwatch + kBesideName;
    }
    painter.setPen(QPen(facts_.works ? c.ours : c.ink, 1.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    for (const QPainterPath& mark : marks()) {
        painter.drawPath(mark.translated(x, middle - 8));
        x += kMark;
    }
    x += marks().empty() ? 0 : kBesideName;
    painter.setPen(facts_.works ? c.ours : c.ink);
    const QRectF rest(x, room.top(), room.right() - x, room.height());
    painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(facts_.name, Qt::ElideRight, static_cast<int>(rest.width())));
}

}  // namespace crosstick::phases
