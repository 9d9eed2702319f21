#include "app/command.h"

namespace crosstick::app {

void addAbout(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
