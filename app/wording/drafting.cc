#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 8> kWords{{
    {"drafting/never-meets",
     "Drawn straight on, this line passes the other one by for {metres} m. Turn its last piece towards it first."},
    {"drafting/no-line", "A line with no length has no direction in which it could go on. Draw it longer first."},
    {"drafting/sights-part",
     "The lines of sight {first} and {second} lead away from each other: one azimuth is wrong, or read backwards."},
    {"drafting/sights-along",
     "The lines of sight {first} and {second} run along each other and cross nowhere. Take a point farther aside."},
    {"drafting/too-few-sights", "One line of sight makes no point: a second one has to cross it."},
    {"drafting/no-bearing", "\"{text}\" is no azimuth. Write 227, 227 G, 227 T or 4036 mils; plain is magnetic."},
    {"drafting/bearing-range", "\"{text}\" is more than a full circle of 360 degrees or 6400 mils."},
    {"drafting/no-distance",
     "\"{text}\" has no distance behind its azimuth. Write both: 227 2500, or 227 G 2.5 km, up to 100 km."},
}};

}  // namespace

std::span<const Words> draftingWords() {
    return kWords;
}

}  // namespace crosstick::app
