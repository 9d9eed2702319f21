#pragma once

#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/plan/plan.h"

namespace crosstick::film {

/// An element in the block of an order of march.
struct MarchRow {
    drawing::Point symbol;    ///< middle of its frame
    std::string unit;         ///< what the symbol is composed of
    std::string number;       ///< its place in the column, from 1
    std::string designation;  ///< "1 SQD"
    std::string role;         ///< "POINT"
    std::string behind;       ///< "20 m" to the next below it; empty for the last of a stack
};

/// The block of an order of march, laid out round its upper left corner at 0, 0 (engraving D1). Millimetres.
struct MarchBlock {
    drawing::Box bounds;
    std::string title;
    std::vector<std::vector<MarchRow>> stacks;  ///< beside each other, seven rows each at most; read down, then right
    std::string foot;                           ///< strength and length, where every strength is known
    double stackWidth = 0;
    double footBase = 0;  ///< base line of the foot
};

// Where things stand in a stack, from its left edge (engraving D1).
inline constexpr double kMarchArrow = 6;
inline constexpr double kMarchSymbol = 16;
inline constexpr double kMarchNumber = 24;
inline constexpr double kMarchDesignation = 28;
inline constexpr double kMarchRole = 42;
inline constexpr double kMarchTitleBase = 6.5;

/// @param column  null: a block that says that there is no such column
[[nodiscard]] MarchBlock marchBlock(const plan::Force& force, const plan::Column* column, const drawing::Gauge& gauge);

/// What blocks on the paper take of a window, as lines over them, in film millimetres: for whoever looks for free room.
[[nodiscard]] std::vector<std::vector<drawing::Point>> inkOnPaper(const plan::Plan& plan, const drawing::Gauge& gauge);

}  // namespace crosstick::film
