#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 20> kWords{{
    {"movement/route-too-short", "RTE {route} has fewer than two points. Draw it to its end first."},
    {"movement/route-not-on-grid",
     "RTE {route} has a point that the sheet's grid does not reach. Check its points against the sheet."},
    {"movement/no-date", "The plan has no date, and declination needs one. Give the day that the work is for."},
    {"movement/no-model",
     "There is no magnetic model to take declination from. Take the sheet's printed angle, or put the model back."},
    {"movement/no-printed-angle",
     "The plan takes the sheet's printed G-M angle, and no sheet of it has one with its date. Enter it, or take the "
     "model."},
    {"movement/no-routes", "{file} has no route yet, so there is no card to make. Draw a route first."},
    {"movement/no-such-route", "The plan has no route {route}. It has: {known}."},
    {"movement/bad-course",
     "\"{text}\" is no course: write its metres and the double paces counted, then words, as \"600 444 cross-country "
     "night\"."},
    {"movement/odd-count",
     "\"{text}\" comes to {count} double paces to 100 m, and 30 to 150 are walked. Was every step counted? Add "
     "\"single\"."},
    {"movement/bad-count",
     "A number from 30 to 150: one person's left foot in 100 m. Or a course that was walked, as \"600 372 night\"."},
    {"movement/bad-rate", "Kilometres in an hour, 0.1 to 20, halts left out."},
    {"movement/bad-navigator",
     "\"{typed}\" is no pair of errors: write the pace count's in per cent, 0 to 50, then the compass's in degrees, 0 "
     "to 45, as \"4 1.5\"."},
    {"movement/bad-preparation",
     "\"{typed}\": write what is done and how long, as \"orders 60\" or \"rehearsal 1:30\"."},
    {"movement/card-form",
     "{file} ends in none of .pdf, .html and .csv, and a card is written as one of these. Give the file such an "
     "ending."},
    {"movement/too-long", "Even a start a month earlier closes too late. Check the halts and rates of the plan."},
    {"movement/no-such-column", "The plan has no column {column}. It has: {known}."},
    {"movement/no-rate",
     "The plan has neither a rate of march nor a timing, so that no start can be worked out. Give it one, or --rate."},
    {"movement/no-heights",
     "No elevation model covers RTE {route}, so that its profile is unknown. Give the plan's sheet one that does, or "
     "read contours along the route."},
    {"movement/profile-form",
     "{file} ends in none of .csv, .png and .pdf, and a profile is written as one of these. Give the file such an "
     "ending."},
    {"movement/table-form",
     "{file} ends in none of .pdf, .csv and .html, and this paper is written as one of these. Give the file such an "
     "ending."},
}};

}  // namespace

std::span<const Words> movementWords() {
    return kWords;
}

}  // namespace crosstick::app
