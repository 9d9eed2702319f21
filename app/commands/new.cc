#include "app/command.h"

namespace crosstick::app {

void addNew(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
