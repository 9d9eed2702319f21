#include "app/command.h"

namespace crosstick::app {

void addDemo(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
