#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/registration/model.h"
#include "core/units/result.h"

namespace crosstick::registration {

inline constexpr std::size_t kMostMarks = 2000;

/// A model as the choice saw it, without the blunders.
struct Candidate {
    Kind kind = Kind::Similarity;
    double rmsPixels = 0;
    std::optional<double> bic;  ///< where the marks give at least 4 observations more than it has parameters
    friend bool operator==(const Candidate&, const Candidate&) = default;
};

/// How the model came to be.
enum class Choice : std::uint8_t {
    Wished,      ///< named by whoever asks
    Clear,       ///< the best by more than kClear
    CannotTell,  ///< another comes close: the smaller was taken, and marks at the corners would tell
    TooFew       ///< too few marks to choose: the smallest that they determine
};
inline constexpr double kClear = 4;  ///< difference of the criterion under which two models cannot be told apart

/// How far a mark is from where the fit has it: the mark less the fit.
struct Residual {
    PixelPoint pixels;
    Metres east, north;
    bool isBlunder = false;             ///< left out of the fit
    [[nodiscard]] double size() const;  ///< in pixels
    [[nodiscard]] Metres ground() const;
};

/// A registered picture with its proof.
struct Fit {
    Model model;
    std::vector<Residual> residuals;  ///< in the order of the marks
    double rmsPixels = 0;             ///< over the marks that are no blunders, east and north together
    Metres rmsGround;
    std::optional<double> leaveOneOutPixels;  ///< of each mark against a fit to the others; none where a mark cannot be
                                              ///< spared
    std::optional<Metres> leaveOneOut;
    std::vector<Candidate> candidates;  ///< all that the marks determine, simplest first
    Choice choice = Choice::Clear;
    std::optional<Candidate> runnerUp;  ///< the next by the criterion
    int spare = 0;                      ///< observations more than parameters: 0 cannot be checked
};

/// Registers a picture by least squares.
/// - The model, where none is wished: the least of Schwarz's criterion N ln(S/N) + p ln N, N coordinates, S their
/// squares
///   in pixels, p parameters, among models with N >= p + 4; one with fewer parameters that comes within kClear is taken
///   in its place. No mark is believed to be read better than 0.1 pixel, nor called a blunder for a pixel.
/// - Blunders: the mark whose leaving out improves the fit most is dropped if an F test with 2 and N - p - 2 degrees of
///   freedom, at 0.001 shared among the marks (Bonferroni), says that chance does not do that; the model is chosen anew
///   after each; at most a quarter of the marks. Where none is, of up to 40 marks the two of the most suspect whose
///   leaving out improves a model most, that one or a simpler one, by the same test with 4 and N - p - 4 shared among
///   all pairs, where the rest then fits no worse: two that are wrong by the same hide each other, or make a sheet look
///   bent. One that the last model has no quarrel with is taken back.
/// Errors: registration/too-few-marks, registration/too-many-marks, registration/same-place (rows counted from 1),
///         registration/one-line, registration/contrary.
[[nodiscard]] Result<Fit> fitMarks(std::span<const Mark> marks, std::optional<Kind> wish = std::nullopt);

}  // namespace crosstick::registration
