#include "core/film/paper.h"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "core/film/faults.h"
#include "core/units/number_text.h"

namespace crosstick::film {
namespace {

std::vector<Paper> bothWays(double narrow, double wide) {
    return {{PaperMm(narrow), PaperMm(wide)}, {PaperMm(wide), PaperMm(narrow)}};
}

std::vector<Paper> a4() {
    return bothWays(210, 297);
}
std::vector<Paper> a3() {
    return bothWays(297, 420);
}
/// 8.5 by 11 inches.
std::vector<Paper> letter() {
    return bothWays(215.9, 279.4);
}

constexpr double kLeast = 10;
constexpr double kMost = 5000;  ///< a PDF page holds 5080

bool isSide(const std::optional<double>& side) {
    return side && *side >= kLeast && *side <= kMost;
}

}  // namespace

PaperChoice usualPapers() {
    return {"A4 or A3", {a4(), a3()}};
}

Result<PaperChoice> parsePaper(std::string_view text) {
    std::string name(text);
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    if (name == "a4") {
        return PaperChoice{"A4", {a4()}};
    }
    if (name == "a3") {
        return PaperChoice{"A3", {a3()}};
    }
    if (name == "letter") {
        return PaperChoice{"Letter", {letter()}};
    }
    const auto between = name.find('x');
    if (between != std::string::npos) {
        const auto width = parseNumber(std::string_view(name).substr(0, between));
        const auto height = parseNumber(std::string_view(name).substr(between + 1));
        if (isSide(width) && isSide(height)) {
            return PaperChoice{fmt::format("{} x {} mm", numberText(*width), numberText(*height)),
                               {{{PaperMm(*width), PaperMm(*height)}}}};
        }
    }
    return fail(kNoSuchPaper, {{"text", std::string(text)}});
}

}  // namespace crosstick::film
