#pragma once

#include <vector>

#include <QRect>
#include <QString>

#include "ui/look/theme.h"

class QPainter;

namespace crosstick::brief {

/// What stands on the strip at the foot of a brief.
struct StripWords {
    std::vector<int> phases;  ///< their numbers
    int phase = 0;            ///< the one that is told; 0: none
    QString title;            ///< of the film that was laid on last
    QString state;            ///< "Approach · 2 of 6"
    QString keys;             ///< under it, or what was asked for and is not there
};

inline constexpr int kStripHigh = 56;

/// Phase squares at the left, the title in large letters, the state at the right; what has no room is cut at its end.
void paintStrip(QPainter& painter, const QRect& strip, const StripWords& words, look::Light light);

}  // namespace crosstick::brief
