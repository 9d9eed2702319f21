#pragma once

namespace crosstick::table {

/// The calling thread works behind the window's from here on: on a busy machine the system gives the window its turn
/// first. A thread cannot step forward again.
void stepBehind();

}  // namespace crosstick::table
