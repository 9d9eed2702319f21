#pragma once

#include <string>

#include "ui/press/painter.h"

namespace crosstick::press {

/// A drawing as an SVG picture of the room's size in true millimetres; letters are outlines, so that it looks the same
/// where the face is not installed. The same arguments give the same bytes. Needs a QGuiApplication.
/// @param room  what of the drawing is shown, in the drawing's millimetres
[[nodiscard]] std::string svgOf(const drawing::Drawing& drawing, const drawing::Box& room, const std::string& title,
                                const Faces& faces, const Inks& inks);

}  // namespace crosstick::press
