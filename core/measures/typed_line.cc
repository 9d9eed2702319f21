#include "core/measures/typed_line.h"

#include <algorithm>
#include <cctype>
#include <optional>

#include "core/geodesy/grid_reference.h"

namespace crosstick::measures {
namespace {

constexpr std::size_t kMost = 400;
constexpr Metres kCoarsest{100};

using Tokens = std::vector<std::string>;

bool isDigits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

bool isLetters(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0; });
}

Tokens tokensOf(std::string_view text) {
    Tokens tokens;
    std::string token;
    for (const char letter : text.substr(0, kMost)) {
        if (std::isspace(static_cast<unsigned char>(letter)) == 0) {
            token += letter;
        } else if (!token.empty()) {
            tokens.push_back(std::move(token));
            token.clear();
        }
    }
    if (!token.empty()) {
        tokens.push_back(std::move(token));
    }
    return tokens;
}

std::string joined(const Tokens& tokens, std::size_t from, std::size_t to) {
    std::string text;
    for (std::size_t n = from; n < to; ++n) {
        text += (n == from ? "" : " ") + tokens[n];
    }
    return text;
}

/// "458084", "4583 0845": six to ten digits in one group, or in two that are alike.
bool isFigures(const Tokens& tokens, std::size_t from, std::size_t to) {
    if (to - from == 1) {
        const std::size_t count = tokens[from].size();
        return isDigits(tokens[from]) && count >= 6 && count <= 10 && count % 2 == 0;
    }
    return to - from == 2 && isDigits(tokens[from]) && isDigits(tokens[from + 1]) &&
           tokens[from].size() == tokens[from + 1].size() && tokens[from].size() >= 3 && tokens[from].size() <= 5;
}

/// "FL 5427 9806", "FL54279806": the letters of a square before figures.
bool isSquareWithFigures(const Tokens& tokens) {
    if (tokens.empty() || tokens[0].size() < 2 || !isLetters(std::string_view(tokens[0]).substr(0, 2))) {
        return false;
    }
    Tokens rest = tokens;
    rest[0].erase(0, 2);
    return isFigures(rest, rest[0].empty() ? 1 : 0, rest.size());
}

bool isPlace(const std::string& text) {
    const Tokens tokens = tokensOf(text);
    if (isFigures(tokens, 0, tokens.size()) || isSquareWithFigures(tokens)) {
        return true;
    }
    // Bare numbers are figures or degrees; those of one digit ("3 5") are somebody's number.
    const bool isShort = std::any_of(tokens.begin(), tokens.end(), [](const std::string& t) { return t.size() < 2; });
    const bool isBare = std::all_of(tokens.begin(), tokens.end(), [](const std::string& t) { return isDigits(t); });
    if (tokens.size() < 2 && !std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c); })) {
        return false;
    }
    if (isBare && (isShort || tokens.size() <= 2)) {
        return false;
    }
    const auto read = geodesy::parsePoint(text);
    return read && (!read->square || *read->square <= kCoarsest);
}

std::optional<Tokens> parted(const std::string& text, std::string_view by) {
    Tokens places;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t to = std::min(text.find_first_of(by, from), text.size());
        const std::string place =
            joined(tokensOf(text.substr(from, to - from)), 0, tokensOf(text.substr(from, to - from)).size());
        if (!place.empty() && !isPlace(place)) {
            return std::nullopt;
        }
        if (!place.empty()) {
            places.push_back(place);
        }
        from = to + 1;
    }
    return places.empty() ? std::nullopt : std::optional(std::move(places));
}

/// "4583 0845 4590 0850": pairs of figures, or groups that are whole by themselves.
std::optional<Tokens> inGroups(const Tokens& tokens) {
    Tokens places;
    std::size_t n = 0;
    while (n < tokens.size()) {
        const std::size_t wide = isFigures(tokens, n, n + 1)                             ? 1
                                 : n + 2 <= tokens.size() && isFigures(tokens, n, n + 2) ? 2
                                                                                         : 0;
        if (wide == 0) {
            return std::nullopt;
        }
        places.push_back(joined(tokens, n, n + wide));
        n += wide;
    }
    return places;
}

std::optional<Tokens> placesIn(const std::string& text) {
    if (isPlace(text)) {
        return Tokens{text};
    }
    if (auto places = parted(text, ";")) {
        return places;
    }
    if (auto places = parted(text, ",;")) {
        return places;
    }
    return inGroups(tokensOf(text));
}

/// Where the begin of a place stands at the end of a line: after the last comma that parts places from it, figures that
/// are too few, or a grid zone with letters.
std::size_t beginOfUnfinished(const Tokens& tokens) {
    const auto isZone = [](const std::string& token) {
        const auto letters = std::find_if(token.begin(), token.end(), [](unsigned char c) { return !std::isdigit(c); });
        const auto digits = letters - token.begin();
        return digits >= 1 && digits <= 2 && token.end() - letters >= 1 &&
               std::isalpha(static_cast<unsigned char>(*letters)) != 0;
    };
    for (std::size_t n = 1; n < tokens.size(); ++n) {
        const bool goesOn = n + 1 < tokens.size() && (isLetters(tokens[n + 1]) ? tokens[n + 1].size() == 2 : true);
        if (isZone(tokens[n]) && (goesOn || tokens[n].size() >= 5)) {
            return n;
        }
    }
    const std::size_t last = tokens.size() - 1;
    if (tokens.empty() || !isDigits(tokens[last])) {
        return tokens.size();
    }
    const bool two = last > 0 && isDigits(tokens[last - 1]) && tokens[last - 1].size() >= 2 &&
                     tokens[last - 1].size() >= tokens[last].size();
    if (two) {
        return last - 1;
    }
    const bool follows = last > 0 && isDigits(tokens[last - 1]);  // "cp 3 458": the number is said, a grid begins
    return tokens[last].size() >= 4 || (follows && tokens[last].size() >= 2) ? last : tokens.size();
}

}  // namespace

TypedLine readTypedLine(std::string_view typed) {
    const Tokens tokens = tokensOf(typed);
    // At the begin two letters are an abbreviation, not a square: "cp 4583 0845".
    const bool abbreviated = !tokens.empty() && tokens[0].size() == 2 && isLetters(tokens[0]);
    for (std::size_t from = abbreviated ? 1 : 0; from < tokens.size(); ++from) {
        if (auto places = placesIn(joined(tokens, from, tokens.size()))) {
            return {joined(tokens, 0, from), std::move(*places), {}};
        }
    }
    if (tokens.empty()) {
        return {};
    }
    const std::size_t cut = beginOfUnfinished(tokens);
    return {joined(tokens, 0, cut), {}, joined(tokens, cut, tokens.size())};
}

}  // namespace crosstick::measures
