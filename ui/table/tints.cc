#include "ui/table/tints.h"

namespace crosstick::table {

TintForm tintForm(work::Tint tint, Theme theme) {
    if (tint == work::Tint::None) {
        return {};
    }
    if (theme == Theme::Night) {
        const QColor band(0x7a, 0x1a, 0x12);
        switch (tint) {
            case work::Tint::Amber:
                return {{}, band, 0, 1.5};
            case work::Tint::Rose:
                return {{}, band, 0, 3};
            default:
                return {{}, band, 2.5, 3.5};
        }
    }
    switch (tint) {
        case work::Tint::Amber:
            return {QColor(0xde, 0x64, 0x00), {}};
        case work::Tint::Rose:
            return {QColor(0xd0, 0x18, 0x7f), {}};
        default:
            return {QColor(0x00, 0x87, 0x92), {}};
    }
}

press::Inks tinted(press::Inks inks, work::Tint tint, Theme theme) {
    if (const QColor ink = tintForm(tint, theme).ink; ink.isValid()) {
        inks.pens.fill(ink);
    }
    return inks;
}

}  // namespace crosstick::table
