#pragma once

#include <filesystem>

#include <QColor>
#include <QFont>

class QApplication;

namespace crosstick::look {

enum class Light { Day, Night };

/// The roles of colour of everything round the table.
struct Colours {
    QColor desk, lino, card, well, band, ink, inkTwo, edge, rule, ours, wash, error, warning, hint;
};
[[nodiscard]] Colours colours(Light light);

/// Registers the bundled face for the window. False where it is missing: the window then takes the system's.
[[nodiscard]] bool bringFace(const std::filesystem::path& share);

enum class Weight { Regular, Bold };
/// The window's face at a size in logical pixels.
[[nodiscard]] QFont face(int pixels, Weight weight = Weight::Regular);

/// Dresses the application: Fusion style, the palette of the light, and the sheet for fields, buttons and menus.
/// Before the first window is shown, so that night opens without a flash.
/// @param ordinary  how heavy letters are that have no weight of their own: bold where the picture is dimmed far
void dress(QApplication& application, Light light, Weight ordinary = Weight::Regular);

/// The colours of a table that lies on a card, its rows banded.
[[nodiscard]] QPalette tablePalette(QPalette from, Light light);

}  // namespace crosstick::look
