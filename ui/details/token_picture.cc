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
    const drawing::Box room = tokenRoom(size());
    paintToken(painter, {0, 0},
               shown_ ? symbols::tokenOf(*shown_, entry_, room, {}) : symbols::tokenOf(entry_, room, {}), faces_,
               light_);
}

drawing::Box tokenRoom(QSize pixels) {
    return {0, 0, pixels.width() / kPerMm, pixels.height() / kPerMm};
}

void paintToken(QPainter& painter, QPointF at, const drawing::Drawing& token, const press::Faces& faces,
                look::Light light) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(at);
    painter.scale(kPerMm, kPerMm);
    const press::Inks inks = light == look::Light::Night ? press::nightInks() : press::dayInks();
    press::paint(painter, token, {faces, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
    painter.restore();
}

}  // namespace crosstick::details
