#pragma once

#include <QColor>
#include <QRgb>

#include "ui/press/painter.h"

namespace crosstick::table {

enum class Theme { Day, Night };

/// The roles of colour on the light table.
struct Palette {
    QColor desk;   ///< round the sheet
    QColor sheet;  ///< ground under the films where a plan has no sheet
    QColor card;   ///< rim
    QColor well;   ///< corner block
    QColor ink;
    QColor inkTwo;  ///< second lines
    QColor edge;    ///< borders of rim, sheet and block
    QColor grid;    ///< grid lines where no sheet prints them
    QColor ours;    ///< what never prints
    press::Inks pens;
};
[[nodiscard]] Palette palette(Theme theme);

/// A sheet's colour as it is seen by night: tone inverted by luminance, one hue, contours kept at about 2 to 1.
[[nodiscard]] QRgb byNight(QRgb day);

}  // namespace crosstick::table
