#include <array>

#include "core/measures/entries.h"

namespace crosstick::measures {
namespace {

using enum Confidence;
constexpr Group kTasks = Group::Tasks;

/// Drawn where it can be with certainty; where the shape is not sure a legend explains it, and where it is not known
/// the task is written out (a wrong sign is worse than a word).
[[nodiscard]] constexpr Entry task(std::string_view kind, std::string_view name, std::string_view letter,
                                   PointCount anchors, Sign sign, Code code, std::string_view help) {
    return anchored(kind, name, letter, kTasks, anchors, sign, code, help).worded(Wording::Bare).named(Naming::None);
}
[[nodiscard]] constexpr Entry inWords(std::string_view kind, std::string_view name, Code code, std::string_view help) {
    return spot(kind, name, "", kTasks, Sign::TaskWords, code, help)
        .explained()
        .worded(Wording::Bare)
        .named(Naming::None);
}

constexpr std::array kEntries{
    task("task-block", "Block", "B", kThree, Sign::Block, {"340100", High},
         "Both ends of the bar on the enemy's side, then the stem's tail."),
    task("task-breach", "Breach", "B", kThree, Sign::Breach, {"340200", High},
         "Both open ends on the enemy's side, then a point on the rear bar."),
    task("task-bypass", "Bypass", "B", kThree, Sign::Bypass, {"340300", High},
         "Both arrow tips, then a point on the rear bar."),
    task("task-canalize", "Canalize", "C", kThree, Sign::Canalize, {"340400", Medium},
         "Both open ends on the enemy's side, then a point on the rear bar.")
        .explained(),
    task("task-clear", "Clear", "C", kThree, Sign::Clear, {"340500", High},
         "Both ends of the far bar, then a point in the rear."),
    task("task-disrupt", "Disrupt", "D", kThree, Sign::Disrupt, {"341000", Medium},
         "Both ends of the bar, then the tip of the longest arrow."),
    task("task-fix", "Fix", "F", kTwo, Sign::Fix, {"341100", High}, "The tip, then the tail."),
    task("task-destroy", "Destroy", "D", kTwo, Sign::Destroy, {"340900", Medium},
         "The middle, then a corner of the sign.")
        .explained(),
    task("task-neutralize", "Neutralize", "N", kTwo, Sign::Neutralize, {"341600", Medium},
         "The middle, then a corner of the sign.")
        .explained()
        .drawn(Dashed::Always),
    task("task-interdict", "Interdict", "I", kTwo, Sign::Interdict, {"341400", Low},
         "The middle, then the corner on the enemy's side.")
        .explained(),
    task("task-secure", "Secure", "S", kTwo, Sign::Secure, {"342100", Medium},
         "The middle, then the middle of the circle's gap."),
    task("task-occupy", "Occupy", "O", kTwo, Sign::Occupy, {"341700", Medium},
         "The middle, then the middle of the circle's gap.")
        .explained(),
    task("task-retain", "Retain", "R", kTwo, Sign::Retain, {}, "The middle, then the middle of the circle's gap.")
        .explained(),
    task("task-isolate", "Isolate", "I", kTwo, Sign::Isolate, {"341500", Medium},
         "The middle, then the middle of the circle's gap.")
        .explained(),
    task("task-screen", "Screen", "S", kThree, Sign::Security, {"342203", Medium},
         "The unit's middle, then both arrow tips."),
    task("task-guard", "Guard", "G", kThree, Sign::Security, {"342202", Medium},
         "The unit's middle, then both arrow tips."),
    task("task-cover", "Cover", "C", kThree, Sign::Security, {"342201", Medium},
         "The unit's middle, then both arrow tips."),
    task("task-withdraw", "Withdraw", "W", kThree, Sign::Withdraw, {"342400", Medium},
         "The tip, the end of the straight, then the hook's other end.")
        .explained(),
    inWords("task-seize", "Seize", {"342300", Medium}, "In words: where the circle belongs is not remembered surely."),
    inWords("task-follow-and-support", "Follow and support", {"341300", Medium}, "In words."),
    inWords("task-follow-and-assume", "Follow and assume", {"341200", Medium}, "In words."),
    inWords("task-other", "Task in words", {}, "Any other task, written out."),
};

}  // namespace

std::span<const Entry> taskEntries() {
    return kEntries;
}

}  // namespace crosstick::measures
