#include "app/command.h"

namespace crosstick::app {

void addCard(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
