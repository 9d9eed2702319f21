#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>

#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <QRawFont>

#include "core/units/result.h"
#include "sample-data/ground/ground.h"
#include "sample-data/place.h"
#include "sample-data/sheet/course.h"
#include "sample-data/sheet/mask.h"

namespace crosstick::demo {

/// The paper of the sheet: 470 x 450 mm at 300 dots to the inch, the neat line 35 mm from the left and 40 mm from the
/// top.
struct SheetPaper {
    static constexpr int kColumns = 5552;
    static constexpr int kRows = 5315;
    static constexpr double kDotsPerMm = 300 / 25.4;
    static constexpr double kMetresPerMm = 25;
    static constexpr double kFrame = 6;                 ///< millimetres outside the neat line
    static constexpr Spot kCorner{648125, 5106000};     ///< upper left corner of the raster
    static constexpr Spot kSouthWest{649000, 5096000};  ///< of the neat line
    static constexpr Spot kNorthEast{659000, 5105000};

    [[nodiscard]] static QPointF at(Spot spot) {
        return {(spot.east - kCorner.east) / kMetresPerMm, (kCorner.north - spot.north) / kMetresPerMm};
    }
    [[nodiscard]] static QRectF neatLine() {
        return {at({kSouthWest.east, kNorthEast.north}), at({kNorthEast.east, kSouthWest.north})};
    }
};

enum class Cut { Regular, Bold, Italic };

/// The four cuts of the bundled face as outlines.
class Letters {
  public:
    [[nodiscard]] static Result<Letters> open(const std::filesystem::path& faces);
    /// Left end of the base line at 0, 0, millimetres. @param spacing  extra between letters, in em
    [[nodiscard]] QPainterPath row(const QString& text, Cut cut, double capHeight, double spacing = 0) const;
    [[nodiscard]] double width(const QString& text, Cut cut, double capHeight, double spacing = 0) const;
    /// One letter with its advance, for names along curves.
    struct Letter {
        QPainterPath path;
        double advance;
    };
    [[nodiscard]] Letter letter(QChar c, Cut cut, double capHeight) const;

  private:
    std::map<Cut, QRawFont> fonts_;
};

/// The colours of the sheet, of our own design: pale ground, so that black and blue of the films stay the darkest.
namespace ink {
inline const QColor kPaper(255, 255, 255);
inline const QColor kLand(253, 252, 245);
inline const QColor kSea(217, 236, 245);
inline const QColor kWater(31, 120, 168);
inline const QColor kWaterName(31, 95, 136);
inline const QColor kContour(181, 118, 58);
inline const QColor kScree(90, 90, 90);
inline const QColor kWood(205, 228, 184);
inline const QColor kTree(120, 160, 95);
inline const QColor kWoodName(70, 110, 50);
inline const QColor kSand(200, 160, 90);
inline const QColor kRoadA(243, 196, 107);
inline const QColor kRoadB(250, 226, 150);
inline const QColor kBuilding(70, 70, 70);
inline const QColor kGrid(90, 110, 130);
inline const QColor kBlack(25, 25, 25);
inline const QColor kTuft(150, 165, 120);
inline const QColor kQuarry(240, 236, 226);
inline const QColor kIslandName(217, 213, 205);  ///< faint
inline const QColor kSquareName(206, 214, 220);  ///< faint
inline const QColor kShade(88, 80, 110);         ///< hill shading, laid on at most so much:
inline constexpr double kShadeMost = 0.14;
}  // namespace ink

inline constexpr std::uint8_t kOnSea = 0, kOnLand = 1, kOnLake = 2;

/// What every theme draws on: a painter whose unit is a millimetre of the sheet.
struct Canvas {
    QPainter& painter;
    const Letters& letters;
    const Ground& ground;
    std::vector<QRectF>& taken;  ///< by letters and signs that names must not cover
    const QImage& picture;       ///< as far as it is painted
    QImage& bare;                ///< the tints and shading alone: what the rims of letters are cut out to
    Mask& land;                  ///< kOnSea, kOnLand, kOnLake

    void stroke(const QPainterPath& path, const QColor& colour, double width, Qt::PenCapStyle cap = Qt::FlatCap) const;
    void dashes(const QPainterPath& path, const QColor& colour, double width, double on, double off) const;
    void fill(const QPainterPath& path, const QColor& colour) const { painter.fillPath(path, colour); }
    /// Letters with a rim in which only the bare ground is seen.
    void letter(const QPainterPath& row, const QColor& colour, double rimWidth = 0.25) const;
    [[nodiscard]] double heightAt(Spot spot) const { return sampled(ground.heights, spot); }
};

[[nodiscard]] QPainterPath pathOf(const Line& line, bool closed = false);
/// A list's points drawn out by the ground's curve.
[[nodiscard]] Line curved(const Line& points, bool closed = false);
}  // namespace crosstick::demo
