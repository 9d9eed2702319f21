#include "ui/phases/film_tab.h"

#include <algorithm>

#include <QPainter>

#include "ui/phases/focus_outline.h"
#include "ui/press/film_marks.h"

namespace crosstick::phases {
namespace {

constexpr int kHigh = 23;
constexpr double kMostNameWide = 190;
constexpr double kBeside = 7;

}  // namespace

QSize FilmTab::sizeHint() const {
    const double name = std::min(nameWide(), kMostNameWide);
    return {static_cast<int>(std::ceil(kBeside + name + 8 + press::notchesWide(facts().place))), kHigh};
}

void FilmTab::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF room = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setOpacity(facts().seen ? 1 : 0.6);
    paintFilm(painter, room);
    painter.setFont(look::face(12, facts().works ? look::Weight::Bold : look::Weight::Regular));
    paintName(painter, QRectF(kBeside, 1, room.right() - kBeside - press::notchesWide(facts().place), kHigh - 1));
    painter.setOpacity(1);
    outlineFocus(painter, *this, look::colours(light()));
}

}  // namespace crosstick::phases
