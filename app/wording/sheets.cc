#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> sheetsWords() {
    static constexpr std::array kWords{
        Words{"sheets/file-missing",
              "{file} is not there or cannot be read. Check the name, or say where the file is now."},
        Words{
            "sheets/not-a-raster",
            "{file} cannot be read ({why}). A map sheet may be a GeoTIFF, TIFF, PNG, JPEG, BMP, WebP or PDF, a height "
            "model a GeoTIFF, DTED, HGT or ASCII grid."},
        Words{"sheets/damaged",
              "{file} is damaged and cannot be read in full ({why}). Copy it again from where it came from."},
        Words{"sheets/no-crs",
              "{file} does not say in which grid it lies. Say it with --crs, as the sheet's margin names it: --crs "
              "EPSG:32625."},
        Words{"sheets/crs-geographic",
              "{file} lies in degrees ({crs}), not in a grid of metres or feet. Bring it to the grid printed on the "
              "sheet."},
        Words{"sheets/no-placement",
              "{file} does not say where it lies on the ground. Fit it to its grid and write the placement into the "
              "file."},
        Words{"sheets/no-scale", "{file} does not tell its scale. Give it with --scale, as --scale 25000."},
        Words{
            "sheets/too-large",
            "{file} is {columns} by {rows} pixels; at most 100000 a side, 4000 million in a sheet and 100 million in a "
            "height model can be read. Cut it or make it coarser."},
        Words{"sheets/block-too-large",
              "{file} is stored in one piece of {megabytes} MB, more than the 256 MB that are read at a time. Save it "
              "tiled."},
        Words{"sheets/colours",
              "{file} stores its colours in a way that is not read here. Save it as palette, grey or RGB."},
        Words{"sheets/not-heights",
              "{file} holds a picture and no heights. Give a height model (GeoTIFF, DTED, HGT or ASCII grid)."},
        Words{"sheets/height-unit",
              "{file} does not say whether its heights are metres or feet. Say it with --height-unit m or ft."},
        Words{"sheets/other-size",
              "{file} is {columns} by {rows} pixels, which is not the sheet that the plan was drawn on. Put that one "
              "back, or say where it is."},
        Words{"sheets/no-room",
              "{file} cannot be written ({why}). Make room on that disk; copies of sheets can be thrown away."},
        Words{
            "sheets/no-neatline",
            "The edges of the map were not found by themselves: of its grid, {north} lines to the north and {east} to "
            "the east were seen, and their ends do not make four straight edges. Set the corners by hand."},
        Words{
            "sheets/neatline-crosses",
            "The edge of a map goes round it once: with the corner there it crosses itself or holds nothing. It stays "
            "as it was."},
        Words{"sheets/reader",
              "{file} was given up, because {why}. Copy it again from where it came from, or save it in another form."},
    };
    return kWords;
}

}  // namespace crosstick::app
