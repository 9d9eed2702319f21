#include "app/command.h"

namespace crosstick::app {

void addFilms(CLI::App& /*program*/, Action& /*action*/) {}

}  // namespace crosstick::app
