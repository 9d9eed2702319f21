#pragma once

#include "core/measures/catalogue.h"
#include "symbols/engrave.h"

namespace crosstick::symbols {

/// What of a token's letters is drawn: in a legend, whose text says the rest, those that make a symbol what it is, as
/// "RHSL" in a box or a task's letter; in a list those in and at a symbol.
enum class TokenLetters { OfKind, OfSymbols };

/// A measure as a small picture in the middle of a room: drawn by its own function, made smaller where it is too large;
/// pens stay as they are. Lines and areas are drawn without their names.
[[nodiscard]] drawing::Drawing token(const plan::Measure& shown, const measures::Entry& entry,
                                     const Engraving& engraving, const drawing::Box& room, TokenLetters letters);

}  // namespace crosstick::symbols
