#include "ui/look/machine_fonts.h"

#include <fontconfig/fontconfig.h>

namespace crosstick::look {

// Qt asks for the same list with the same call, which then returns at once; where it fails Qt tells of it.
MachineFonts::MachineFonts() : lister_([] { (void)FcInit(); }) {}

MachineFonts::~MachineFonts() {
    lister_.join();
}

}  // namespace crosstick::look
