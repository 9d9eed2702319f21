#pragma once

#include "core/measures/catalogue.h"
#include "core/plan/plan.h"

namespace crosstick::drafting {

/// May a measure be said to be another kind, with the points that it has? A line becomes a line or, with three points,
/// an area; an area becomes either; a point a point. A kind that needs a set number of points takes none other.
[[nodiscard]] bool mayBecome(const plan::Measure& measure, const measures::Entry& kind);

/// The plan in which it is that: with the next free number or name where the kind has such and the measure had none,
/// and with the kind's usual fields. What it may not become leaves the plan as it is.
[[nodiscard]] plan::Plan become(const plan::Plan& plan, const plan::ItemId& item, const measures::Entry& kind);

/// Has it no meaning of its own yet: a line or an area that was drawn and not said what it is?
[[nodiscard]] bool isPlain(const plan::Measure& measure);

/// A plain line or area called "ld trivet" is that from then on, under the name TRIVET: the words begin with a kind's
/// abbreviation or whole name, and its points suffice for it. Else, and for every other kind, they are its name, in
/// capitals where the trade names such things by a word.
[[nodiscard]] plan::Plan renamed(const plan::Plan& plan, const plan::ItemId& item, const std::string& words);

}  // namespace crosstick::drafting
