#include "core/movement/elements_said.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <string>

#include "core/measures/unit_words.h"
#include "core/units/trimmed.h"

namespace crosstick::movement {
namespace {

constexpr std::size_t kMost = 60;
constexpr std::size_t kMostFigures = 4;  ///< of a strength

bool isFigures(std::string_view word) {
    return !word.empty() && word.size() <= kMostFigures &&
           std::all_of(word.begin(), word.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

/// "Sqd" of "sqd".
std::string spoken(std::string word) {
    if (!word.empty()) {
        word[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(word[0])));
    }
    return word;
}

/// What people call a unit among themselves: "1 Sqd", "HQ", "WPN Sqd"; nothing where the words are no unit's.
std::optional<std::string> nameOf(std::string_view words) {
    const measures::UnitSymbol unit = measures::readUnit(words);
    const bool saysNothing = unit.icons.empty() && unit.letters.empty() && unit.echelon.empty();
    if (!unit.unread.empty() || saysNothing) {
        return std::nullopt;
    }
    if (unit.isHeadquarters) {
        return "HQ";
    }
    std::string name = !unit.designation.empty() ? unit.designation : unit.letters;
    if (!unit.echelon.empty()) {
        name += (name.empty() ? "" : " ") + spoken(unit.echelon);
    }
    return name.empty() ? std::nullopt : std::optional(std::move(name));
}

plan::Element elementSaid(std::string_view part) {
    plan::Element element;
    const std::size_t last = part.find_last_of(" \t");
    if (last != std::string_view::npos && isFigures(part.substr(last + 1))) {
        element.people = std::stoi(std::string(part.substr(last + 1)));
        part = trimmed(part.substr(0, last));
    }
    const auto name = nameOf(part);
    element.unit = name ? part : kUsualElement;
    element.name = name.value_or(std::string(part));
    return element;
}

}  // namespace

std::vector<plan::Element> elementsSaid(std::string_view line) {
    std::vector<plan::Element> elements;
    while (!line.empty() && elements.size() < kMost) {
        const std::size_t end = std::min(line.find(','), line.size());
        if (const std::string_view part = trimmed(line.substr(0, end)); !part.empty()) {
            elements.push_back(elementSaid(part));
        }
        line.remove_prefix(std::min(end + 1, line.size()));
    }
    return elements;
}

}  // namespace crosstick::movement
