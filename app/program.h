#pragma once

#include <string>
#include <vector>

#include "app/command.h"

namespace crosstick::app {

/// Reads a command line (without the program's name) and does what it says.
/// An argument that begins with a minus sign and a digit or a point is a POINT or a number, never an option.
Exit run(std::vector<std::string> arguments, const Surroundings& surroundings);

}  // namespace crosstick::app
