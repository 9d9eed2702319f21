#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 9> kWords{{
    {"app/bad-angle", "\"{text}\" is no G-M angle. Write it as the sheet prints it, such as 11W or 8.5E."},
    {"app/gm-needs-date", "A printed G-M angle needs the date it holds for: add --printed-date, such as 2019-01-01."},
    {"app/cannot-read", "{file} cannot be read. Check the name and who may read it."},
    {"app/in-the-way", "{file} is there already and is not written over. Move it away, or choose another name."},
    {"app/no-display",
     "There is no display for the window. Commands work without one: \"crosstick --help\" lists them."},
    {"app/line-unknown", "Line {line}: \"{text}\" begins with none of these words: {known}."},
    {"app/line-misread", "Line {line}: \"{text}\" is not understood. Write it so: {form}"},
    {"app/line-names-nothing", "Line {line}: the plan has nothing called {name}. It has: {known}."},
    {"app/no-such-column", "There is no column {column} on this paper. It has: {known}."},
}};

}  // namespace

std::span<const Words> appWords() {
    return kWords;
}

}  // namespace crosstick::app
