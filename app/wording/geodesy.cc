#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array kWords{
    Words{"geodesy/not-a-point",
          "\"{text}\" is no place that can be read: write MGRS (18S UJ 2348 0647), UTM (18N 323483 4306479), degrees "
          "(38.8894 -77.0352) or degrees, minutes, seconds (38 53 22N 77 02 07W)."},
    Words{"geodesy/empty-point", "No place is given: write one as MGRS, UTM, or latitude and longitude."},
    Words{"geodesy/bad-zone", "\"{text}\": there is no grid zone {found}; zones are 1 to 60."},
    Words{"geodesy/bad-band",
          "\"{text}\": {found} is no latitude band; bands are C to X without I and O, and the letter of a UTM place is "
          "n or s."},
    Words{"geodesy/bad-square",
          "\"{text}\": there is no 100 km square {found} in {zone}; check zone, band and both letters."},
    Words{"geodesy/old-lettering",
          "\"{text}\": square {found} does not occur there on WGS 84; it is the older row lettering of sheets on older "
          "ellipsoids (such as Clarke 1866), where rows are lettered ten on. On WGS 84 the same square is written "
          "{twin}, but the sheet's datum shifts it by up to some 200 m: find the sheet's datum first."},
    Words{"geodesy/odd-digits",
          "\"{text}\" has {found} digits; easting and northing need the same number of digits each."},
    Words{"geodesy/unequal-digits",
          "\"{text}\": the blank does not part {found} in halves; easting and northing need the same number of digits "
          "each."},
    Words{"geodesy/too-many-digits", "\"{text}\" has {found} digits; 22 are the most that can be read."},
    Words{"geodesy/zone-alone",
          "\"{text}\" names grid zone {found}, not a place; add the two letters of a 100 km square and digits."},
    Words{"geodesy/no-zone-number",
          "\"{text}\" has no zone in front of {found}; write it as on the sheet's margin, such as 18S UJ 2348 0647."},
    Words{"geodesy/no-zone",
          "\"{text}\" looks like easting and northing without their zone; write zone and hemisphere in front, such as "
          "18N 323483 4306479."},
    Words{"geodesy/no-hemisphere",
          "\"{text}\" does not say which hemisphere; write {found}N or {found}S in front of easting and northing."},
    Words{"geodesy/one-letter",
          "\"{text}\" has a letter N, S, E or W for one angle only; give both their letters, or none and signs."},
    Words{"geodesy/ambiguous-letter",
          "\"{text}\": S can mean the southern hemisphere or latitude band S in the north, and both exist here; write "
          "\"{zone} south\" or \"{zone} north\" in front of easting and northing."},
    Words{"geodesy/band-mismatch",
          "\"{text}\": these numbers do not lie in latitude band {found}; check them, or write hemisphere N or S."},
    Words{
        "geodesy/off-grid",
        "Easting {easting} m, northing {northing} m lies off the grid of zone {zone} (0 is polar); check for a missing "
        "or exchanged number."},
    Words{"geodesy/bad-latitude", "Latitude {found} is beyond 90 degrees; latitude comes first, north positive."},
    Words{"geodesy/bad-longitude", "Longitude {found} is beyond 180 degrees; longitude comes second, east positive."},
    Words{"geodesy/bad-sixty",
          "\"{text}\": cannot take {found} there; minutes and seconds lie under 60, bear no sign, and only the last "
          "number of an angle has decimals."},
    Words{"geodesy/outside-zone",
          "The place lies too far out to be written in zone {zone} (0 is polar); use points nearer to one another."},
    Words{"geodesy/no-mgrs", "Easting {easting} m, northing {northing} m lies beyond what MGRS letters; use UTM."},
    Words{"geodesy/no-magnetic-model",
          "The magnetic model is not where it should be, in {where} ({why}); install the program again."},
    Words{"geodesy/date-outside-model",
          "WMM2025 holds from 2025.0 to 2030.0 and gives no declination for {date}; use the sheet's printed G-M angle, "
          "brought up to date."},
    Words{"geodesy/height-outside-model",
          "WMM2025 holds from -1000 m to 850000 m and gives no declination at height {height} m."},
    Words{
        "geodesy/weak-field",
        "The horizontal field is {horizontal} nT, under 2000 nT, so near a magnetic pole a compass is of no use; find "
        "direction by other means."},
    Words{"geodesy/unknown-crs",
          "\"{crs}\" is no coordinate reference system that is known; write it as EPSG:32625 or as WKT."},
    Words{"geodesy/crs-not-projected",
          "\"{crs}\" has no plane grid in metres or feet; choose a projected system, such as a UTM zone."},
    Words{"geodesy/no-transformation", "No way is known from \"{from}\" to \"{to}\"; choose another sheet or system."},
    Words{"geodesy/outside-plane",
          "{easting}, {northing} lies where the projection does not reach; check the numbers or the system."},
};

}  // namespace

std::span<const Words> geodesyWords() {
    return kWords;
}

}  // namespace crosstick::app
