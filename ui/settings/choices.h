#pragma once

#include <optional>

#include <QSettings>
#include <QString>

#include "core/drafting/snap.h"
#include "core/drawing/drawing.h"
#include "core/geodesy/plane_angles.h"
#include "core/plan/numbering.h"
#include "core/terrain/handrail.h"

namespace crosstick::settings {

/// In which light the window opens.
enum class Opens { AsLeft, ByDay, ByNight };

/// What a person or a house has chosen once for all plans. Not a part of any plan: what a plan needs of it is written
/// into the plan when it begins.
struct Choices {
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
    drawing::Gauge gauge;  ///< of new plans
    QString marking, author, unit;
    char zone = 'Z';
    plan::Inserted inserted = plan::Inserted::NextFree;  ///< of a checkpoint put between numbers that are given out
    drafting::SnapWish snap = {};                        ///< beside points and ticks
    Metres handrail = terrain::kUsualHandrail;           ///< from what it runs beside
    Opens opens = Opens::AsLeft;
    int dimming = 6;         ///< of the night light, 1 to 6
    int cacheGigabytes = 8;  ///< room for our copies of sheets, from the next start on
    friend bool operator==(const Choices&, const Choices&) = default;
};

inline constexpr int kLeastCache = 1, kMostCache = 500;  ///< GB

/// What a file of settings says; where it says nothing, or nothing of use, the default stands.
[[nodiscard]] Choices read(const QSettings& from);
void write(const Choices& choices, QSettings& to);

inline constexpr Metres kLeastHandrail{1}, kMostHandrail{10000};

/// "6, 0.4, 2": symbols, pen, letters in mm.
[[nodiscard]] QString sizesShown(const drawing::Gauge& gauge);
/// Three numbers parted by commas or blanks, within symbols 4 to 8, pen 0.25 to 0.7, letters 1.8 to 4 mm.
[[nodiscard]] std::optional<drawing::Gauge> sizesTyped(const QString& typed);

}  // namespace crosstick::settings
