#include "app/command.h"

namespace crosstick::app {

void addDraw(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
