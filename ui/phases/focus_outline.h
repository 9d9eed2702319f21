#pragma once

#include <QPainter>
#include <QWidget>

#include "ui/look/theme.h"

namespace crosstick::phases {

/// Who has the keyboard is seen: 2 px in our colour, inside the edge.
inline void outlineFocus(QPainter& painter, const QWidget& widget, const look::Colours& colours) {
    if (widget.hasFocus()) {
        painter.setPen(QPen(colours.ours, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(widget.rect().adjusted(1, 1, -1, -1));
    }
}

}  // namespace crosstick::phases
