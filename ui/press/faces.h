#pragma once

#include <filesystem>
#include <map>
#include <tuple>

#include <QPainterPath>
#include <QRawFont>

#include "core/drawing/text_ruler.h"
#include "core/units/result.h"

namespace crosstick::press {

/// The bundled faces as Qt reads them, made once from the folder that holds them and passed to whoever sets letters.
/// Needs a QGuiApplication (see gui_start.h). Thread: the thread that made it.
class Faces {
  public:
    static constexpr double kSize = 1000;  ///< pixels to the em at which faces are loaded; painters scale from here

    /// When the wide face, megabytes of which most pictures need nothing, is read.
    enum class WideFace {
        Now,         ///< for paper: what is missing is told before anything is set
        WhenNeeded,  ///< for the screen
    };
    /// @param folder  with B612-Regular.otf, B612-Bold.otf, DejaVuSans.ttf, DejaVuSans-Bold.ttf
    /// Errors: press/no-face with "file".
    [[nodiscard]] static Result<Faces> open(const std::filesystem::path& folder, WideFace wide = WideFace::Now);

    [[nodiscard]] const QRawFont& font(drawing::Face face, drawing::Weight weight) const;
    /// Number of a letter's glyph; 0, the replacement box, where the face lacks it.
    [[nodiscard]] quint32 glyph(char32_t letter, drawing::Face face, drawing::Weight weight) const;
    /// The same face at a size in pixels, for letters that are painted in every frame: its glyphs are kept as pictures.
    [[nodiscard]] const QRawFont& sized(drawing::Face face, drawing::Weight weight, double pixels) const;
    /// Width of a letter in em as the font engine has it.
    [[nodiscard]] double advance(char32_t letter, drawing::Face face, drawing::Weight weight) const;
    /// A row of letters as outlines in millimetres, left end of its base line at 0, 0, y down.
    [[nodiscard]] QPainterPath outlines(const drawing::Text& text) const;

  private:
    Faces() = default;
    std::filesystem::path folder_;
    mutable QRawFont fonts_[2][2];  ///< the wide ones may be read when first asked for
    mutable std::map<std::tuple<drawing::Face, drawing::Weight, double>, QRawFont> sized_;  ///< made when first asked
};

}  // namespace crosstick::press
