#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 7> kWords{{
    {"terrain/nothing-printed",
     "No printed line passes within 0.6 mm of the {end} place. Click on the middle of a road, stream, shore or "
     "contour, "
     "nearer in."},
    {"terrain/unlike-ends",
     "The lines printed at the two places do not look alike. Click both on the same line, or a bend where one becomes "
     "the other."},
    {"terrain/breaks-off",
     "No printed line leads from the one place to the other. Click a bend between them, on the line."},
    {"terrain/too-far", "The way to this place is too long to be followed at once. Click a bend nearer to the last."},
    {"terrain/off-picture", "This place is off the sheet, and only what is printed on it can be followed."},
    {"terrain/given-up", "The search for the printed line was given up. Click or pull again."},
    {"terrain/no-offset",
     "No handrail runs {metres} m beside this line: it bends back too closely, or has no length. Take a smaller "
     "distance."},
}};

}  // namespace

std::span<const Words> terrainWords() {
    return kWords;
}

}  // namespace crosstick::app
