#pragma once

#include <string>

#include <QByteArray>

namespace crosstick::press {

/// A font file in memory under another family name, so that the font database can only mean this very face: one of the
/// same name that is installed on the machine would else be taken in its place. Only the table of names is replaced.
/// @param font    an sfnt file (TrueType or OpenType)
/// @param family  ASCII; becomes the family, the style is "Regular"
/// @param title   ASCII; full and PostScript name, which embedded faces bear
/// @return        empty where the bytes are no sfnt file
[[nodiscard]] QByteArray underOwnFamily(QByteArray font, const std::string& family, const std::string& title);

}  // namespace crosstick::press
