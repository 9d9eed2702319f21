#pragma once

#include <QProxyStyle>

namespace crosstick::look {

/// Fusion with check boxes as a form has them: a square with a tick in it, from the palette.
class TickedStyle final : public QProxyStyle {
  public:
    TickedStyle();
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    /// By night in the ink of the palette: the toolkit's own pictures are blue and white.
    [[nodiscard]] QIcon standardIcon(StandardPixmap which, const QStyleOption* option,
                                     const QWidget* widget) const override;
    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
};

}  // namespace crosstick::look
