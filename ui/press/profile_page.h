#pragma once

#include "core/movement/profile.h"
#include "ui/press/paper_head.h"

namespace crosstick::press {

/// The ground along a route as a picture: way to the right, height up, drawn so many times too high as its foot says;
/// route points and crossed lines over it, steep parts thick with their slope. What the model does not know is a gap.
[[nodiscard]] PaperPage profilePage(const plan::Plan& plan, const movement::RouteFigures& figures,
                                    const movement::Profile& profile);

}  // namespace crosstick::press
