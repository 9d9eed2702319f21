#include "ui/look/ticked_style.h"

#include <QGuiApplication>
#include <QIcon>
#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace crosstick::look {
namespace {

constexpr int kBox = 16;
constexpr int kIcon = 16;
constexpr int kDark = 60;  ///< a ground under this lightness is the night's

}  // namespace

TickedStyle::TickedStyle() : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))) {}

void TickedStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                const QWidget* widget) const {
    if (element != PE_IndicatorCheckBox) {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        return;
    }
    const QPalette& colours = option->palette;
    const QRectF box = QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5);
    const bool focused = option->state.testFlag(State_HasFocus);
    painter->save();
    painter->setBrush(colours.color(QPalette::Base));
    painter->setPen(QPen(colours.color(focused ? QPalette::Link : QPalette::Dark), focused ? 2 : 1));
    painter->drawRect(box);
    if (option->state.testFlag(State_On)) {
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setPen(QPen(colours.color(QPalette::Text), 2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        const auto at = [&](double x, double y) {
            return QPointF(box.left() + box.width() * x, box.top() + box.height() * y);
        };
        painter->drawPolyline(QPolygonF{at(0.22, 0.52), at(0.43, 0.74), at(0.80, 0.26)});
    }
    painter->restore();
}

QIcon TickedStyle::standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const {
    if (which == SP_ToolBarHorizontalExtensionButton) {  // a menu bar asks for it at the start and never shows it:
        return {};                                       // where the menus have no room they fold into one
    }
    QIcon plain = QProxyStyle::standardIcon(which, option, widget);
    const QPalette colours = QGuiApplication::palette();
    if (colours.color(QPalette::Window).lightness() > kDark || plain.isNull()) {
        return plain;
    }
    QImage inked = plain.pixmap(kIcon, kIcon).toImage().convertToFormat(QImage::Format_ARGB32);
    const QColor ink = colours.color(QPalette::Text);
    for (int y = 0; y < inked.height(); ++y) {
        for (int x = 0; x < inked.width(); ++x) {
            const QRgb was = inked.pixel(x, y);
            const double light = 0.3 + 0.7 * qGray(was) / 255;
            inked.setPixel(
                x, y,
                qRgba(qRound(ink.red() * light), qRound(ink.green() * light), qRound(ink.blue() * light), qAlpha(was)));
        }
    }
    return QPixmap::fromImage(inked);
}

int TickedStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    return metric == PM_IndicatorWidth || metric == PM_IndicatorHeight
               ? kBox
               : QProxyStyle::pixelMetric(metric, option, widget);
}

}  // namespace crosstick::look
