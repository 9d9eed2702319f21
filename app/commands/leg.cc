#include "app/command.h"

namespace crosstick::app {

void addLeg(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
