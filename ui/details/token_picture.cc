#include "ui/details/token_picture.h"

#include <QPainter>

#include "symbols/specimen/specimen.h"
#include "ui/press/painter.h"

namespace crosstick::details {
namespace {

constexpr double kPerMm = 5;
constexpr QSize kOnCard{52, 52};

}  // namespace

TokenPicture::TokenPicture(const measures::Entry& entry, const press::Faces& faces, const look::Light& light,
                           QWidget* parent)
    : QWidget(parent), entry_(entry), faces_(faces), light_(light) {
    setFixedSize(kOnCard);
    setAccessibleName(tr("How it is drawn"));
}

void TokenPicture::show(const plan::MeasurePtr& measure) {
    if (measure && (!shown_ || !(*shown_ == *measure))) {
        shown_ = measure;
        update();
    }
}

void TokenPicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const drawing::Box room{0, 0, width() / kPerMm, height() / kPerMm};
    const drawing::Drawing token =
        shown_ ? symbols::tokenOf(*shown_, entry_, room, {}) : symbols::tokenOf(entry_, room, {});
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kPerMm, kPerMm);
    const press::Inks inks = light_ == look::Light::Night ? press::nightInks() : press::dayInks();
    press::paint(painter, token, {faces_, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
}

}  // namespace crosstick::details
