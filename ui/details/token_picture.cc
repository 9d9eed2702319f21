#include "ui/details/token_picture.h"

#include <QPainter>
#include <QPixmap>

#include "symbols/specimen/specimen.h"
#include "ui/press/painter.h"

namespace crosstick::details {
namespace {

constexpr double kPerMm = 5;
constexpr QSize kOnCard{52, 52};

void paintToken(QPainter& painter, const measures::Entry& entry, const press::Faces& faces, look::Light light,
                const QSizeF& size) {
    const drawing::Box room{0, 0, size.width() / kPerMm, size.height() / kPerMm};
    const drawing::Drawing token = symbols::tokenOf(entry, room, {});
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kPerMm, kPerMm);
    const press::Inks inks = light == look::Light::Night ? press::nightInks() : press::dayInks();
    press::paint(painter, token, {faces, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
}

}  // namespace

QPixmap tokenPixmap(const measures::Entry& entry, const press::Faces& faces, look::Light light, QSize size,
                    double device) {
    QPixmap pixmap(size * device);
    pixmap.setDevicePixelRatio(device);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintToken(painter, entry, faces, light, size);
    return pixmap;
}

TokenPicture::TokenPicture(const measures::Entry& entry, const press::Faces& faces, const look::Light& light,
                           QWidget* parent)
    : QWidget(parent), entry_(entry), faces_(faces), light_(light) {
    setFixedSize(kOnCard);
    setAccessibleName(tr("How it is drawn"));
}

void TokenPicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    paintToken(painter, entry_, faces_, light_, size());
}

}  // namespace crosstick::details
