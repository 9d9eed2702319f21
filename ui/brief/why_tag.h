#pragma once

#include <QPainter>
#include <QString>

#include "ui/look/theme.h"

namespace crosstick::brief {

/// What a thing is for, as it lies beside it: its name in bold, the why under it. Where no why is written it says that,
/// smaller and in one row.
struct WhyTag {
    QString name;
    QString why = {};  ///< empty: none is written
    [[nodiscard]] QSizeF size() const;
    void paint(QPainter& painter, const QRectF& place, const look::Colours& colours) const;

  private:
    [[nodiscard]] QString quiet() const;
};

}  // namespace crosstick::brief
