#include "app/command.h"

namespace crosstick::app {

void addPicture(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
