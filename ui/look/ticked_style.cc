#include "ui/look/ticked_style.h"

#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace crosstick::look {
namespace {

constexpr int kBox = 16;

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

int TickedStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    return metric == PM_IndicatorWidth || metric == PM_IndicatorHeight
               ? kBox
               : QProxyStyle::pixelMetric(metric, option, widget);
}

}  // namespace crosstick::look
