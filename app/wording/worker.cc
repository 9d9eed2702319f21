#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {

std::span<const Words> workerWords() {
    static constexpr std::array kWords{
        Words{"worker/no-program",
              "{program} is missing or cannot be started ({why}). It reads map sheets and belongs beside crosstick: "
              "install crosstick again."},
        Words{"worker/crashed", "The file's reader broke ({how}). Try another copy of the file."},
        Words{"worker/too-long", "The file's reader took too long. Try another copy of the file."},
        Words{"worker/too-much-memory",
              "The file wants more memory than its size explains. Try another copy, or save it in another form."},
        Words{"worker/too-much-output",
              "The copy of the file outgrew the space kept for copies. Make the file smaller."},
        Words{"worker/garbled", "The file's reader gave an answer that is none. Try another copy of the file."},
        Words{"worker/stopped", "Reading was stopped. Nothing was changed."},
    };
    return kWords;
}

}  // namespace crosstick::app
