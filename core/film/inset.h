#pragma once

#include <array>
#include <vector>

#include "core/film/frame.h"
#include "core/film/registration.h"

namespace crosstick::film {

/// Scales that an inset is proposed, the largest first: those that lengths are easily reckoned at. Ours.
inline constexpr std::array kInsetScales{Scale{1000},  Scale{2000},  Scale{2500},  Scale{5000},
                                         Scale{10000}, Scale{12500}, Scale{20000}, Scale{25000}};

/// A place for a part of a film at a larger scale.
struct InsetPlace {
    plan::Registration registration;
    Scale scale;
};

/// The largest of them at which a part of a film and what stands beside it fit on A4, else on A3; nothing where none
/// that is larger than the film's own does.
/// @param corner, opposite  of the part, whichever they are, in the grid of the plan's first sheet
[[nodiscard]] std::optional<Scale> insetScale(const plan::Plan& plan, const plan::Film& parent,
                                              geodesy::PlanePoint corner, geodesy::PlanePoint opposite);

/// That scale, and a window with four ticks on crossings of the 100 m grid: the part rounded outward to tens of metres,
/// and grown where it holds no two lines of that grid each way.
/// Errors: film/inset-too-large with "scale" where no scale larger than the film's own fits; those of geodesy.
[[nodiscard]] Result<InsetPlace> proposeInset(const plan::Plan& plan, const plan::Film& parent,
                                              geodesy::PlanePoint corner, geodesy::PlanePoint opposite);

/// A film at that place, on top of the stack, with all of the parent's things that touch it; symbols and labels stand
/// where the film's own rules put them. It serves the parent's phases.
[[nodiscard]] plan::Plan withInset(const plan::Plan& plan, const plan::Film& parent, const InsetPlace& place,
                                   const plan::FilmId& id, std::string name);
/// Another place for an inset that the plan has: it shows what it showed, and the parent's things that touch it now.
[[nodiscard]] plan::Plan movedInset(const plan::Plan& plan, const plan::FilmId& inset, const InsetPlace& place);

/// The plan with another window or other ticks for what is registered with a film: an inset alone, which shows
/// the parent's things that touch another window, else all films of the plan.
/// Errors: film/inset-too-large with "scale" where an inset would not fit on A3 at its own scale.
[[nodiscard]] Result<plan::Plan> withRegistration(const plan::Plan& plan, const plan::FilmId& film,
                                                  const plan::Registration& registration);

/// Insets of a film as it shows them itself: their frames, each with name and scale at its upper left corner.
struct InsetFrames {
    drawing::Drawing drawing;
    std::vector<drawing::Box> labels;  ///< film millimetres: letters that nothing else should stand on
};
/// Errors: those of Frame.
[[nodiscard]] Result<InsetFrames> insetFrames(const plan::Plan& plan, const plan::Film& parent, const Frame& frame);

}  // namespace crosstick::film
