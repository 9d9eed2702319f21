#include "app/progress_line.h"

#include <ostream>

#include <fmt/format.h>

namespace crosstick::app {
namespace {

constexpr auto kBetween = std::chrono::milliseconds(250);

}  // namespace

ProgressLine::ProgressLine(std::ostream& err, std::string what, std::chrono::milliseconds patience)
    : err_(err), what_(std::move(what)), next_(Clock::now() + patience) {}

ProgressLine::~ProgressLine() {
    if (said_) {
        err_ << '\n';
    }
}

sheets::Watch ProgressLine::watch() {
    sheets::Watch watch;
    watch.tell = [this](sheets::messages::Progress progress) { tell(progress); };
    return watch;
}

void ProgressLine::tell(sheets::messages::Progress progress) {
    if (Clock::now() < next_) {
        return;
    }
    next_ = Clock::now() + kBetween;
    said_ = true;
    err_ << fmt::format("\r{}: {:3.0f} %", what_, 100.0 * progress.done / progress.of) << std::flush;
}

}  // namespace crosstick::app
