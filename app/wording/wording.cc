#include "app/wording/wording.h"

#include <array>

#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

std::string_view templateOf(std::string_view fault) {
    const std::array tables{unitsWords(),  geodesyWords(),      skyWords(),      planWords(),    workerWords(),
                            sheetsWords(), registrationWords(), movementWords(), terrainWords(), draftingWords(),
                            filmWords(),   filesWords(),        symbolsWords(),  pressWords(),   tableWords(),
                            demoWords(),   appWords(),          windowWords()};
    for (const auto& table : tables) {
        for (const Words& entry : table) {
            if (entry.fault == fault) {
                return entry.text;
            }
        }
    }
    return {};
}

std::string valueText(const Argument& argument) {
    if (const auto* text = std::get_if<std::string>(&argument.value)) {
        return *text;
    }
    if (const auto* whole = std::get_if<std::int64_t>(&argument.value)) {
        return std::to_string(*whole);
    }
    return numberText(std::get<double>(argument.value));
}

std::string argumentText(const Error& error, std::string_view key) {
    for (const Argument& argument : error.arguments) {
        if (argument.key == key) {
            return valueText(argument);
        }
    }
    return "?";
}

}  // namespace

bool hasWords(FaultId fault) {
    return !templateOf(fault.name).empty();
}

std::string words(const Error& error) {
    const std::string_view text = templateOf(error.fault.name);
    if (text.empty()) {
        std::string bare(error.fault.name);
        for (const Argument& argument : error.arguments) {
            bare += ' ' + argument.key + '=' + valueText(argument);
        }
        return bare;
    }
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto close = text[at] == '{' ? text.find('}', at) : std::string_view::npos;
        if (close == std::string_view::npos) {
            out += text[at++];
            continue;
        }
        out += argumentText(error, text.substr(at + 1, close - at - 1));
        at = close + 1;
    }
    return out;
}

}  // namespace crosstick::app
