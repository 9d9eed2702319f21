#include "core/registration/figures.h"

#include <cmath>

#include <fmt/format.h>

#include "core/units/number_text.h"

namespace crosstick::registration {
namespace {

constexpr double kFarthestStretch = 5;  // per cent

Degrees angleOf(PixelPoint step) {
    return degrees(Radians(std::atan2(step.y, step.x)));
}

/// Between -180 and 180 degrees.
Degrees turned(Degrees angle) {
    return Degrees(std::remainder(angle.value(), 360));
}

Metres roundedUp(Metres most) {
    constexpr std::array kSteps{10.0, 25.0, 50.0};
    for (double decade = 1; decade < 1e9; decade *= 10) {
        for (const double step : kSteps) {
            if (most.value() <= step * decade) {
                return Metres(step * decade);
            }
        }
    }
    return most;
}

std::string shortMetres(Metres length) {
    return numberText(length.value(), length.value() < 10 ? 1 : 0) + " m";
}

std::string offText(const Proof& proof) {
    const std::string ground = shortMetres(proof.ground) + " on the ground";
    return proof.paper ? numberText(proof.paper->value(), 1) + " mm = " + ground
                       : numberText(proof.pixels, 1) + " pixels = " + ground;
}

}  // namespace

const char* nameOf(Kind kind) {
    constexpr std::array kNames{"similarity", "affine", "projective", "quadratic"};
    return kNames[static_cast<std::size_t>(kind)];
}

Figures figuresOf(const Model& model, PixelPoint at, std::optional<Scale> scale, std::optional<double> dotsPerMetre) {
    const PixelStep step = model.stepAt(at);
    const PixelPoint east = step.pixels(Metres(1), Metres(0));
    const PixelPoint north = step.pixels(Metres(0), Metres(1));
    const double alongEast = std::hypot(east.x, east.y);
    const double alongNorth = std::hypot(north.x, north.y);
    const auto perCent = [](double found, double due) { return (found / due - 1) * 100; };
    Figures figures;
    const double mean = std::sqrt(alongEast * alongNorth);
    const double due = scale && dotsPerMetre ? *dotsPerMetre / scale->denominator : mean;
    figures.isAbsolute = scale && dotsPerMetre && std::abs(perCent(mean, due)) < kFarthestStretch;
    figures.stretchEast = perCent(alongEast, figures.isAbsolute ? due : mean);
    figures.stretchNorth = perCent(alongNorth, figures.isAbsolute ? due : mean);
    figures.rotation = turned(angleOf(east));
    figures.skew = turned(angleOf(east) - angleOf(north) - Degrees(90));
    return figures;
}

Proof proofOf(const Fit& fit, std::optional<Scale> scale) {
    Proof proof;
    for (std::size_t n = 0; n < fit.residuals.size(); ++n) {
        const Residual& residual = fit.residuals[n];
        if (!residual.isBlunder && residual.ground() > proof.ground) {
            proof.worst = n;
            proof.ground = residual.ground();
            proof.pixels = residual.size();
        }
    }
    if (scale) {
        proof.paper = onPaper(proof.ground, *scale);
    }
    if (fit.leaveOneOut) {
        proof.goodFor = roundedUp(std::max(proof.ground, 2 * *fit.leaveOneOut));
    }
    return proof;
}

std::string proofText(const Fit& fit, const Proof& proof, std::size_t marks, std::string_view crossing) {
    if (!proof.goodFor) {
        return fit.residuals.size() == 2 ? "Two marks cannot be checked: add a third."
                                         : "This fit cannot be checked: add a mark.";
    }
    const std::string which = proof.worst < marks ? fmt::format("mark {}", proof.worst + 1)
                              : crossing.empty()  ? std::string("a crossing that was found")
                                                  : fmt::format("the crossing {}", crossing);
    std::string text = fmt::format("Worst mark {} ({}); good for {} m work.", offText(proof), which,
                                   numberText(proof.goodFor->value()));
    if (fit.choice == Choice::CannotTell && fit.runnerUp) {
        text += fmt::format(" Cannot tell {} from {}: add marks at the corners.", nameOf(fit.model.kind()),
                            nameOf(fit.runnerUp->kind));
    }
    if (fit.choice == Choice::TooFew) {
        text += " Too few marks to tell stretch from a slip: add marks until there are at least five.";
    }
    return text;
}

}  // namespace crosstick::registration
