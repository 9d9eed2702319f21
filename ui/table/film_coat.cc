#include "ui/table/film_coat.h"

#include <cmath>

#include <QPainter>

#include "ui/table/tints.h"

namespace crosstick::table {
namespace {

constexpr int kWays = 16;          ///< in which ink is laid down again to grow it
constexpr double kRingStep = 1.5;  ///< logical pixels; ink is no thinner

QImage bare(const QImage& like) {
    QImage image(like.size(), QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(like.devicePixelRatio());
    image.fill(Qt::transparent);
    return image;
}

QImage inked(const QImage& like, const View& view, const FilmInk& film, const press::Brushes& brushes) {
    QImage image = bare(like);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFilm(painter, view, film, brushes);
    return image;
}

/// Everything within some pixels of the ink.
QImage grown(const QImage& ink, double by) {
    QImage image = bare(ink);
    QPainter painter(&image);
    painter.drawImage(QPointF(0, 0), ink);
    const double ratio = ink.devicePixelRatio();
    for (double reach = by; reach > 0; reach -= kRingStep) {
        for (int way = 0; way < kWays; ++way) {
            const double turn = 2 * M_PI * way / kWays;
            painter.drawImage(QPointF(std::round(reach * std::cos(turn) * ratio) / ratio,
                                      std::round(reach * std::sin(turn) * ratio) / ratio),
                              ink);
        }
    }
    return image;
}

/// The band of a tint beside a film's ink, in its colour.
QImage bandOf(const QImage& ink, const TintForm& form) {
    QImage band = grown(ink, form.until);
    QPainter painter(&band);
    if (form.from > 0) {
        painter.setCompositionMode(QPainter::CompositionMode_DestinationOut);
        painter.drawImage(QPointF(0, 0), grown(ink, form.from));
    }
    painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
    painter.fillRect(QRectF(QPointF(0, 0), band.deviceIndependentSize()), form.band);
    return band;
}

}  // namespace

void paintAsItLies(QPainter& painter, const View& view, const FilmInk& film, const press::Brushes& brushes,
                   const work::FilmLook& look, Theme theme, const QImage& under) {
    press::Brushes own = brushes;
    own.inks = tinted(brushes.inks, look.tint, theme);
    painter.save();
    painter.setOpacity(look.strength);
    if (const TintForm form = tintForm(look.tint, theme); form.band.isValid()) {
        press::Brushes bareInk = own;
        bareInk.halo = press::HaloRule::LeftOut;
        painter.drawImage(QPointF(0, 0), bandOf(inked(under, view, film, bareInk), form));
    }
    if (look.strength < 1) {
        painter.drawImage(QPointF(0, 0), inked(under, view, film, own));
    } else {
        paintFilm(painter, view, film, own);
    }
    painter.restore();
}

}  // namespace crosstick::table
