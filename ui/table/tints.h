#pragma once

#include <QColor>

#include "ui/table/palette.h"
#include "ui/work/film_look.h"

namespace crosstick::table {

/// What a tint makes of a film's ink. By day a colour that no pen has and the sheet hardly prints. By night, where
/// there is one hue, the pens keep their red and a band beside the ink tells one tint from another by its form: narrow,
/// wide, or a line of its own at a distance. All of it is ours; nothing of it is printed.
struct TintForm {
    QColor ink;        ///< of all pens; not valid: they keep their own
    QColor band;       ///< beside the ink; not valid: none
    double from = 0;   ///< logical pixels from the ink's edge where the band begins
    double until = 0;  ///< and where it ends
};
[[nodiscard]] TintForm tintForm(work::Tint tint, Theme theme);
/// The pens of a tinted film; halos keep the paper's colour.
[[nodiscard]] press::Inks tinted(press::Inks inks, work::Tint tint, Theme theme);

}  // namespace crosstick::table
