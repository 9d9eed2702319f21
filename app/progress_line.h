#pragma once

#include <chrono>
#include <iosfwd>
#include <string>

#include "core/sheets/foreign_reader.h"

namespace crosstick::app {

/// How far something is that takes over a second, on one line of standard error; quicker things say nothing.
class ProgressLine {
  public:
    /// @param patience  before anything is said
    ProgressLine(std::ostream& err, std::string what, std::chrono::milliseconds patience = std::chrono::seconds(1));
    ~ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    /// What a reader tells, told here. It must not outlive the line.
    [[nodiscard]] sheets::Watch watch();

  private:
    using Clock = std::chrono::steady_clock;
    std::ostream& err_;
    std::string what_;
    Clock::time_point next_;
    bool said_ = false;

    void tell(sheets::messages::Progress progress);
};

}  // namespace crosstick::app
