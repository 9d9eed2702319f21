#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/tasks.h"

namespace crosstick::plan {

/// A part of ours that moves and is tasked as one: a squad, a headquarters.
struct Element {
    Uuid id;
    std::string unit;      ///< its symbol, in the words of a unit: "1/2/C inf sqd"
    std::string name;      ///< "1 Sqd"
    std::string callSign;  ///< "P11"
    int people = 0;        ///< 0: not said
    UnknownFields unknown = {};
    friend bool operator==(const Element&, const Element&) = default;
};

/// An element's place in a column.
struct Serial {
    Uuid element;
    std::string role;              ///< "POINT", "HQ", "REAR"
    std::optional<Metres> behind;  ///< from its last man to the next element's first; none: the column's interval
    UnknownFields unknown = {};
    friend bool operator==(const Serial&, const Serial&) = default;
};

/// An order of march: one source for the block on the film and the march table.
struct Column {
    Uuid id;
    std::string name;             ///< "Approach"
    std::vector<Serial> serials;  ///< the head first
    int files = 1;                ///< abreast
    Metres apart{5};              ///< between people of a file (trade.md 6: 2 or 5 m, FM 21-18, from memory)
    Metres interval{20};          ///< between elements; ours, no doctrinal figure
    UnknownFields unknown = {};
    friend bool operator==(const Column&, const Column&) = default;
};

/// Who we are, in which order we move, what each is to do, and what is reported.
struct Force {
    std::vector<Element> elements;
    std::vector<Column> columns;
    std::vector<Task> tasks = {};    ///< at most one for an element in a phase
    std::vector<Event> events = {};  ///< in the order of the execution checklist
    UnknownFields unknown = {};
    friend bool operator==(const Force&, const Force&) = default;

    [[nodiscard]] const Element* element(const Uuid& id) const;  ///< null where there is none
    [[nodiscard]] const Task* task(const Uuid& element, int phase) const;
    /// The column of a name, in any case of letters; the first for no name; null where there is none.
    [[nodiscard]] const Column* columnNamed(std::string_view name) const;
};

}  // namespace crosstick::plan
