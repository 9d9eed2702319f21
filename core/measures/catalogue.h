#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/drawing/drawing.h"

namespace crosstick::measures {

enum class Shape { Point, Line, Area, Text };
enum class Group { Points, Lines, Areas, Movement, Support, Words };
/// How sure we are that the code is the standard's: all are from memory, see trade.md's list of what could not be read.
enum class Confidence { High, Medium, Low };

/// A standard's code as export metadata, never as identity (MIL-STD-2525D symbol set 25; from memory).
struct Code {
    std::string_view entity;  ///< six digits, empty where none is known
    Confidence confidence = Confidence::Low;
};

enum class FieldType { Text, Unit, Echelon, Phase };
struct Field {
    std::string_view key;    ///< in files: "left_unit"
    std::string_view label;  ///< on screen: "Left unit"
    FieldType type = FieldType::Text;
    std::string_view standard;  ///< default value
};

/// When a line is dashed.
enum class Dashed { WhenPlanned, Always, Never };
/// Does the film's legend have to explain it?
enum class Legend { Standard, Explain };
/// How many points a measure needs and may have.
struct PointCount {
    int least = 1;
    std::optional<int> most;
};

/// What one kind of measure is. Adding one: a row in catalogue.cc and a drawing function in symbols/.
struct Entry {
    std::string_view kind;          ///< identity in files and code: "phase-line"
    std::string_view name;          ///< "Phase line"
    std::string_view abbreviation;  ///< "PL"; empty where there is none
    Group group;
    Shape shape;
    PointCount points;
    Dashed dashed;
    Legend legend;
    Code code;
    std::span<const Field> fields;
    std::string_view help;  ///< one line
};

/// All kinds, in the order lists show them.
[[nodiscard]] std::span<const Entry> catalogue();
/// Nothing for a kind this version does not know (from a newer program): such a measure is kept and shown as words.
[[nodiscard]] const Entry* find(std::string_view kind);

}  // namespace crosstick::measures
