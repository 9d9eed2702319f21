#pragma once

#include <span>
#include <vector>

#include "core/registration/model.h"
#include "core/units/result.h"

namespace crosstick::registration {

/// How far a mark is from where the model has it, and what of that is the mark's own doing.
struct Misfit {
    PixelPoint pixels;     ///< model less mark, in pixels at the mark
    PixelPoint ifLeftOut;  ///< the same if the model had been fitted to the other marks; not finite where those do not
                           ///< determine it
    double gain = 0;       ///< by how much the sum of squares falls without the mark, in square pixels
    double spread = 0;     ///< variance of the model at the mark over that of one reading: 0 to 1 for a mark fitted to
};

/// A model by least squares of the differences on the ground (metres east and north, equal weights), which for all but
/// the similarity of a picture with oblong pixels, and the projective model, is the same as in pixels.
struct Solved {
    Model model;
    std::vector<Misfit> misfits;  ///< in the order of the marks
    double squares = 0;           ///< sum of squared differences, in square pixels
};

/// By singular values of the centred, scaled system; the projective model from its linear form by Gauss-Newton steps.
/// What is said of leaving marks out is exact for the linear models and of the first order for the projective one.
/// @param marks  at least fewestMarks(kind)
/// Errors: registration/too-few-marks, registration/one-line where the marks do not determine the model,
///         registration/contrary where the fit turns the picture inside out.
[[nodiscard]] Result<Solved> solve(Kind kind, std::span<const Mark> marks);
/// A mark that the model was not fitted to, against it; `ifLeftOut` is `pixels` then.
/// @param fitted  the marks that it was fitted to
[[nodiscard]] Misfit misfitOf(const Model& model, std::span<const Mark> fitted, const Mark& mark);

}  // namespace crosstick::registration
