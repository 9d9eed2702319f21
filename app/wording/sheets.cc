#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> sheetsWords() {
    static constexpr std::array kWords{
        Words{"sheets/file-missing",
              "{file} is not there or cannot be read. Check the name, or say where the file is now."},
        Words{"sheets/not-a-raster", "{file} is no TIFF that can be read ({why}). Give a GeoTIFF in its place."},
        Words{"sheets/damaged",
              "{file} is damaged and cannot be read in full ({why}). Copy it again from where it came from."},
        Words{"sheets/no-crs",
              "{file} does not say in which grid it lies. Write its projection into the file, as the sheet's margin "
              "names "
              "it."},
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
    };
    return kWords;
}

}  // namespace crosstick::app
