#pragma once

#include <cstdint>

namespace crosstick::testing {

/// What the wicked worker is told to do, as the kind of its order.
enum class Wickedness : std::uint8_t {
    Echo,
    Crash,
    Abort,
    Hang,
    TalkOn,
    CloseAndHang,
    EatMemory,
    HalfARecord,
    EndlessRecord,
    WriteMuch,
    SayWhatISee
};

}  // namespace crosstick::testing
