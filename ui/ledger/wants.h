#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QString>

#include "core/movement/route_figures.h"
#include "ui/work/work.h"

namespace crosstick::ledger {

/// What a route's figures may want to be given.
enum class Want { Day, Angle, Pace, Rate, Start };

/// A figure that is not there: a word in its place, a line for whoever asks why, and what would give it.
struct Gap {
    QString word, why;
    std::optional<Want> want;
};
[[nodiscard]] Gap noPaces();
/// @param figures  of the route, that have no time or no arrival
[[nodiscard]] Gap noTime();
[[nodiscard]] Gap noArrival(const movement::RouteFigures& figures);
/// @param say  words a fault
[[nodiscard]] Gap noClimb(const work::Work& work, const std::function<QString(const Error&)>& say);

/// What would give figures where a fault keeps them away; nothing where nothing that is typed would.
[[nodiscard]] std::optional<Want> wantOf(const plan::Plan& plan, const Error& fault);
/// What is not given yet, in the order in which it is asked for.
/// @param isDrawn  the route is in the plan: it can be given a start
[[nodiscard]] std::vector<Want> wantsOf(const movement::RouteFigures& figures, bool isDrawn);

[[nodiscard]] QString question(Want want);
[[nodiscard]] QString example(Want want, const plan::Heading& heading);  ///< of an answer
[[nodiscard]] std::string caption(Want want);                            ///< of the step it is
/// The plan with the answer in it, or why it cannot be taken.
/// @param say  words a fault
[[nodiscard]] tl::expected<plan::Plan, QString> answered(Want want, const plan::Plan& plan, const plan::ItemId& route,
                                                         const QString& typed,
                                                         const std::function<QString(const Error&)>& say);

}  // namespace crosstick::ledger
