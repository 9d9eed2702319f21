#pragma once

#include <thread>

namespace crosstick::look {

/// Lists the machine's fonts on a thread of its own; going away it waits for the rest. Made before the application and
/// gone before the first face is asked for: the list takes about as long as the way to the display, and finds it made.
class MachineFonts {
  public:
    MachineFonts();
    ~MachineFonts();
    MachineFonts(const MachineFonts&) = delete;
    MachineFonts& operator=(const MachineFonts&) = delete;

  private:
    std::thread lister_;
};

}  // namespace crosstick::look
