#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 6> kWords{{
    {"demo/no-data", "{file} is missing or not readable. Install crosstick again, its share folder is not whole."},
    {"demo/damaged-data", "{file} is damaged ({found}). Install crosstick again."},
    {"demo/cannot-write", "{file} cannot be written. Check the folder's permissions and the room on the disk."},
    {"demo/given-up", "Making the demo island was given up. What is there of it is made anew the next time."},
    {"demo/no-folder", "{folder} cannot be made. Choose another folder."},
    {"demo/files-there", "{file} stands there already and is left as it is. Choose another folder, or add --replace."},
}};

}  // namespace

std::span<const Words> demoWords() {
    return kWords;
}

}  // namespace crosstick::app
