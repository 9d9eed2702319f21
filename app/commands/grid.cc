#include "app/command.h"

namespace crosstick::app {

void addGrid(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
