#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> windowWords() {
    static constexpr std::array kWords{
        Words{"details/number-taken", "{number} is taken. Next free: {next}."},
        Words{"details/name-taken", "{name} is the name of another route. Give this one its own."},
        Words{"details/grid-off-sheet", "This grid is {away_km} km off the sheet. Check the first two figures."},
        Words{"details/grid-unread",
              "\"{text}\" is no grid. Write four to ten figures, an even number, or the whole reference."},
        Words{"details/no-title", "A plan needs a title: it stands on every paper. Write one."},
        Words{"details/zone-unread", "\"{text}\" is no zone. Write its letter, A to Z without J."},
        Words{"march/bad-strength", "\"{typed}\" is no strength. Write a whole number of people, 0 to 999."},
        Words{"march/bad-gap", "\"{typed}\" is no distance. Write metres, 0 to 10000."},
        Words{"march/bad-files", "\"{typed}\" is no number of files. Write 1 to 8."},
        Words{"work/heights-given-up",
              "{file} was not read to its end: reading it was given up. Look again reads it from the start."},
        Words{"work/sheet-given-up",
              "{file} was not prepared to its end, so it is shown coarsely at most. Look again begins anew."},
        Words{"window/drop-unread", "{file} cannot be read. Look whether it is still there and may be read."},
        Words{"window/drop-too-large",
              "{file} is larger than {most} MB: no drawing is. Cut it down to what the films need."},
        Words{"window/other-sheet",
              "{file} is another sheet than {name}: its size or its place differs. Choose the one this plan was drawn "
              "on."},
    };
    return kWords;
}

}  // namespace crosstick::app
