#pragma once

#include <cstdlib>

#include <unistd.h>

namespace crosstick {

/// Tells who started this process that its window is usable, and ends without tidying: the end is none of the start.
inline void usable() {
    const char word = 'u';
    std::_Exit(write(STDOUT_FILENO, &word, 1) == 1 ? 0 : 1);
}

}  // namespace crosstick
