#pragma once

#include <optional>
#include <string>

#include "core/plan/measure.h"

namespace crosstick::plan {

/// What an element is to do in a phase: one source for the execution matrix and whatever else names tasks.
struct Task {
    Uuid element;
    int phase = 1;
    std::string task;                ///< "support by fire until shifted"
    std::string purpose;             ///< "so that 1 and 2 Sqd reach the buildings"
    std::string place;               ///< "SBF 1"
    std::string trigger;             ///< what begins it: "H-hour"
    std::string codeWord;            ///< "TURBAN"
    std::optional<Uuid> attachedTo;  ///< the element that it stands under in this phase
    UnknownFields unknown = {};
    friend bool operator==(const Task&, const Task&) = default;
};

/// Who has to be at an event's place: the first man or the last, of an element or of the whole column.
enum class WhichMan { First, Last };

/// Something that is reported. Its time is that of a march, or a fixed one.
struct Event {
    Uuid id;
    std::string what;             ///< "tail over LD"
    std::optional<ItemId> place;  ///< a measure: route point or line on the way
    std::optional<ItemId> route;  ///< whose march table has the time; none: `planned` is the time
    WhichMan man = WhichMan::First;
    std::optional<Uuid> element;  ///< whose man; none: the column's
    std::optional<Instant> planned;
    std::string codeWord;          ///< "PEBBLE"
    std::optional<Uuid> reporter;  ///< the element that reports it
    std::optional<Instant> reported, actual;
    UnknownFields unknown = {};
    friend bool operator==(const Event&, const Event&) = default;
};

}  // namespace crosstick::plan
