#include "app/command.h"

namespace crosstick::app {

void addShow(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
