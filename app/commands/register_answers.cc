#include <algorithm>
#include <ostream>

#include <fmt/format.h>

#include "app/commands/register_forms.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

using registration::Fit;
using registration::Mark;
using registration::Residual;

std::optional<double> onPaperMm(const Registered& registered, Metres ground) {
    return registered.scale ? std::optional(onPaper(ground, *registered.scale).value()) : std::nullopt;
}

Json markJson(const Registered& registered, std::size_t n) {
    const Mark& mark = registered.marks[n];
    const Residual& residual = registered.fit.residuals[n];
    return {{"x", number(mark.at.x)},
            {"y", number(mark.at.y)},
            {"easting_m", number(mark.place.easting)},
            {"northing_m", number(mark.place.northing)},
            {"residual_px", number(residual.size())},
            {"residual_m", number(residual.ground())},
            {"residual_mm", number(onPaperMm(registered, residual.ground()))},
            {"blunder", residual.isBlunder}};
}

Json askedJson(const Registered& registered) {
    Json answers = Json::array();
    for (const registration::PixelPoint at : registered.asked) {
        const auto place = registered.fit.model.place(at);
        answers.push_back({{"x", number(at.x)},
                           {"y", number(at.y)},
                           {"easting_m", place ? number(place->easting) : Json()},
                           {"northing_m", place ? number(place->northing) : Json()}});
    }
    return answers;
}

Json crossingsJson(const Registered& registered) {
    Json list = Json::array();
    for (const registration::Crossing& one : registered.crossings.value_or(std::vector<registration::Crossing>{})) {
        list.push_back({{"x", number(one.at.x)},
                        {"y", number(one.at.y)},
                        {"easting_m", number(one.place.easting)},
                        {"northing_m", number(one.place.northing)},
                        {"confidence", number(one.confidence)}});
    }
    return list;
}

/// "57 crossings for sure, 12 to be looked at".
std::string foundText(const std::vector<registration::Crossing>& crossings) {
    const auto sure = std::count_if(crossings.begin(), crossings.end(), [](const registration::Crossing& one) {
        return one.confidence >= registration::kSure;
    });
    if (crossings.empty()) {
        return "no crossings: the marks stand on no lines that can be seen";
    }
    return fmt::format("{} crossings for sure, {} to be looked at and not used", sure,
                       static_cast<std::ptrdiff_t>(crossings.size()) - sure);
}

std::string choiceText(const Registered& registered) {
    const Fit& fit = registered.fit;
    const std::string name = nameOf(fit.model.kind());
    switch (fit.choice) {
        case registration::Choice::Wished:
            return name + ", as asked";
        case registration::Choice::TooFew:
            return name + ", the simplest: too few marks to choose by";
        case registration::Choice::Clear:
        case registration::Choice::CannotTell:
            break;
    }
    if (!fit.runnerUp) {
        return name;
    }
    return fmt::format("{}; next {} ({} pixels rms)", name, nameOf(fit.runnerUp->kind),
                       numberText(fit.runnerUp->rmsPixels, 2));
}

std::string lengths(const Registered& registered, double pixels, Metres ground) {
    std::string text = numberText(pixels, 2) + " pixels, " + numberText(ground.value(), 1) + " m";
    if (const auto mm = onPaperMm(registered, ground)) {
        text += ", " + numberText(*mm, 2) + " mm";
    }
    return text;
}

void writeMarks(std::ostream& out, const Registered& registered) {
    out << fmt::format("\n  {:>4} {:>10} {:>10} {:>12} {:>12}   {}\n", "mark", "x", "y", "easting", "northing", "off");
    for (std::size_t n = 0; n < registered.marks.size(); ++n) {
        const Mark& mark = registered.marks[n];
        const Residual& residual = registered.fit.residuals[n];
        out << fmt::format(
            "  {:>4} {:>10} {:>10} {:>12} {:>12}   {}{}\n", n + 1, numberText(mark.at.x, 2), numberText(mark.at.y, 2),
            numberText(mark.place.easting.value(), 1), numberText(mark.place.northing.value(), 1),
            lengths(registered, residual.size(), residual.ground()), residual.isBlunder ? "  BLUNDER, left out" : "");
    }
}

void writeAsked(std::ostream& out, const Registered& registered) {
    for (const registration::PixelPoint at : registered.asked) {
        const auto place = registered.fit.model.place(at);
        out << fmt::format(
            "  at {}, {}: {}\n", numberText(at.x), numberText(at.y),
            place ? numberText(place->easting.value(), 1) + " E " + numberText(place->northing.value(), 1) + " N"
                  : "beyond the horizon of this fit");
    }
}

}  // namespace

Json registeredJson(const Registered& registered) {
    const Fit& fit = registered.fit;
    Json marks = Json::array();
    for (std::size_t n = 0; n < registered.marks.size(); ++n) {
        marks.push_back(markJson(registered, n));
    }
    Json models = Json::array();
    for (const registration::Candidate& one : fit.candidates) {
        models.push_back({{"model", nameOf(one.kind)}, {"rms_px", number(one.rmsPixels)}, {"bic", number(one.bic)}});
    }
    return {{"model", nameOf(fit.model.kind())},
            {"rms_px", number(fit.rmsPixels)},
            {"rms_m", number(fit.rmsGround)},
            {"rms_mm", number(onPaperMm(registered, fit.rmsGround))},
            {"leave_one_out_rms_m", number(fit.leaveOneOut)},
            {"marks", std::move(marks)},
            {"crossings", crossingsJson(registered)},
            {"at", askedJson(registered)},
            {"stretch_x_percent", number(registered.figures.stretchEast)},
            {"stretch_y_percent", number(registered.figures.stretchNorth)},
            {"rotation_deg", number(registered.figures.rotation)},
            {"skew_deg", number(registered.figures.skew)},
            {"models", std::move(models)}};
}

void writeRegistered(std::ostream& out, const Registered& registered) {
    const Fit& fit = registered.fit;
    const auto line = [&](const char* name, const std::string& text) {
        out << fmt::format("  {:<14}{}\n", name, text);
    };
    out << proofText(fit, proofOf(fit, registered.scale), registered.marks.size()) << '\n';
    line("Grid", registered.crs.substr(0, 60));
    line("Scale", registered.scale ? fmt::format("1:{:.0f}", registered.scale->denominator)
                                   : "not known: give it with --scale for millimetres on the paper");
    line("Model", choiceText(registered));
    if (registered.crossings) {
        line("Found", foundText(*registered.crossings));
    }
    line("Rms", lengths(registered, fit.rmsPixels, fit.rmsGround));
    if (fit.leaveOneOut) {
        line("Leave one out", lengths(registered, *fit.leaveOneOutPixels, *fit.leaveOneOut));
    }
    line("Stretch", fmt::format("{} % east, {} % north, against {}", numberText(registered.figures.stretchEast, 2),
                                numberText(registered.figures.stretchNorth, 2),
                                registered.figures.isAbsolute ? "the scan's dots to the inch" : "the mean of both"));
    line("Turned", fmt::format("{} degrees clockwise, skew {}", numberText(registered.figures.rotation.value(), 3),
                               numberText(registered.figures.skew.value(), 3)));
    writeMarks(out, registered);
    writeAsked(out, registered);
}

}  // namespace crosstick::app
