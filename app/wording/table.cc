#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> tableWords() {
    static constexpr std::array kWords{
        Words{
            "table/nothing-to-see",
            "The plan {plan} has no sheet and nothing drawn: nothing can be painted. Draw on it, or name a place with "
            "--at."},
        Words{"table/no-such-film", "The plan has no film named {film}. \"crosstick show\" lists its films."},
        Words{"table/folder-missing",
              "{file} cannot be written: there is no folder {folder}. Make it, or name another."},
        Words{"table/cannot-write", "{file} could not be written ({why}). What stood there before is untouched."},
    };
    return kWords;
}

}  // namespace crosstick::app
