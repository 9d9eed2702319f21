#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> pressWords() {
    static constexpr std::array kWords{
        Words{"press/no-face", "The lettering face {file} is missing or damaged. Install the program again."},
        Words{"press/folder-missing", "There is no folder {folder} to write to. Make it first, or name another."},
        Words{"press/cannot-write",
              "{file} could not be written: {why}. Choose another place or free the present one."},
        Words{"press/pdf-refused", "The pages could not be put together as PDF: {why}. Nothing was written."},
        Words{"press/no-pages", "There is no page to print."},
        Words{"press/no-films", "The plan has no film yet. Draw something on one first."},
        Words{"press/specimen-form", "{file} is neither a PDF nor an SVG. Let its name end in .pdf or .svg."},
        Words{"press/no-such-film", "The plan has no film {film}. It has: {films}."}};
    return kWords;
}

}  // namespace crosstick::app
