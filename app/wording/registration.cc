#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> registrationWords() {
    static constexpr std::array kWords{
        Words{"registration/too-few-marks",
              "{marks} marks are too few: this takes at least {least}, in different parts of the sheet."},
        Words{"registration/too-many-marks", "{marks} marks are more than the {most} that are fitted. Leave some out."},
        Words{"registration/same-place",
              "Marks {first} and {second} have the same pixel or the same place. Keep one of them, or correct it."},
        Words{"registration/one-line",
              "The marks lie on one line, or on so few lines that they leave the fit open. Add marks aside from it, at "
              "least {least} in all, near the sheet's corners."},
        Words{"registration/contrary",
              "No fit puts these marks the right way round. Check that x counts to the right and y down, and that "
              "easting stands before northing."},
        Words{"registration/no-columns",
              "\"{text}\" names no columns that can be used. Name them x,y,easting,northing or x,y,grid; x,y for "
              "points."},
        Words{"registration/no-rows", "There is no row in it. Write one row for each, as x,y,easting,northing."},
        Words{"registration/list-too-long", "It is too long: at most {most} bytes are read. Shorten it."},
        Words{"registration/short-row", "There is no {column} in this row. Add it, with commas between."},
        Words{"registration/no-number", "\"{text}\" is no number, and {column} must be one. Correct it."},
        Words{"registration/off-picture", "\"{text}\" lies too far out for {column}. Check the columns' order."},
        Words{"registration/more-bad-rows", "{rows} more rows cannot be read. Correct those above first."},
        Words{"registration/no-square",
              "\"{text}\" does not say in which 100 km square. Write the first place in full, as 18S UJ 45 62, or name "
              "the square with --square \"18S UJ\"."},
        Words{"registration/no-grid",
              "\"{text}\": easting and northing alone do not tell their grid. Say it with --crs, as the sheet's margin "
              "names it: --crs EPSG:32625."},
        Words{"registration/cannot-write",
              "{file} could not be written: {why}. Choose another place or make room there."},
        Words{"registration/too-wide",
              "Laid out by this fit the picture would run far beyond its marks. Add marks near its corners, or take a "
              "simpler model."},
    };
    return kWords;
}

}  // namespace crosstick::app
