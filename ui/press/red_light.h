#pragma once

#include "ui/press/painter.h"

namespace crosstick::press {

/// How much of the paper's light an ink gives back under a red lamp: 0 black, 1 the paper itself. Only the linear red
/// component of sRGB is kept; a simple model of our own, printed brown fades more than it says.
[[nodiscard]] double shareUnderRedLight(const QColor& ink);
/// Over this an ink is lost under red light; over the second it is faint (our own limits).
inline constexpr double kLostUnderRedLight = 0.5;
inline constexpr double kFaintUnderRedLight = 0.25;

/// The same inks as they look under a red lamp, on paper of its light.
[[nodiscard]] Inks underRedLight(const Inks& inks);

}  // namespace crosstick::press
