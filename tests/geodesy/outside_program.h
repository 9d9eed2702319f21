#pragma once

#include <string>
#include <vector>

namespace crosstick::geodesy {

/// What another program (GeodSolve, GeoConvert, cs2cs) answers to lines on its standard input: its lines, or one line
/// that says that it could not be run.
[[nodiscard]] std::vector<std::string> answersOf(const std::string& command, const std::vector<std::string>& lines);
/// The numbers in a line, parted by blanks and tabs.
[[nodiscard]] std::vector<double> numbersIn(const std::string& line);

}  // namespace crosstick::geodesy
