#include "core/geodesy/parse_angles.h"

#include <array>
#include <cctype>
#include <cmath>
#include <optional>
#include <vector>

#include "core/geodesy/faults.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

struct Token {
    enum class Kind { Number, Letter, Comma } kind;
    std::string text;
};

/// The signs for degree, minute and second, in their usual characters: they only part the numbers.
std::string signsToBlanks(std::string text) {
    constexpr std::array<std::string_view, 9> kSigns{"\u00b0", "\u00ba", "\u2032", "\u2033", "\u2019",
                                                     "\u201d", "'",      "\"",     ":"};
    for (const std::string_view sign : kSigns) {
        for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign, at)) {
            text.replace(at, sign.size(), " ");
        }
    }
    constexpr std::string_view kMinus = "\u2212";  // the typographer's minus
    for (auto at = text.find(kMinus); at != std::string::npos; at = text.find(kMinus, at)) {
        text.replace(at, kMinus.size(), "-");
    }
    return text;
}

std::optional<std::vector<Token>> tokensOf(const std::string& text) {
    std::vector<Token> tokens;
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        if (std::isspace(static_cast<unsigned char>(c)) != 0) {
            ++at;
        } else if (c == ',' || c == ';') {
            tokens.push_back({Token::Kind::Comma, ","});
            ++at;
        } else if (std::string_view("NSEW").find(c) != std::string_view::npos) {
            tokens.push_back({Token::Kind::Letter, std::string(1, c)});
            ++at;
        } else {
            std::size_t end = at + 1;
            while (end < text.size() &&
                   (std::isdigit(static_cast<unsigned char>(text[end])) != 0 || text[end] == '.')) {
                ++end;
            }
            const std::string number = text.substr(at, end - at);
            if (!parseNumber(number)) {
                return std::nullopt;
            }
            tokens.push_back({Token::Kind::Number, number});
            at = end;
        }
    }
    return tokens;
}

using Tokens = std::vector<Token>;

std::size_t countOf(const Tokens& tokens, Token::Kind kind) {
    std::size_t count = 0;
    for (const Token& token : tokens) {
        count += token.kind == kind ? 1U : 0U;
    }
    return count;
}

std::size_t secondLetter(const Tokens& tokens) {
    std::size_t seen = 0;
    std::size_t at = 0;
    while (at < tokens.size() && !(tokens[at].kind == Token::Kind::Letter && ++seen == 2)) {
        ++at;
    }
    return at;
}

/// Where the second coordinate begins: at the comma, by the letters, else half way through the numbers.
std::size_t splitAt(const Tokens& tokens) {
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        if (tokens[at].kind == Token::Kind::Comma) {
            return at;
        }
    }
    if (countOf(tokens, Token::Kind::Letter) == 2) {
        if (tokens.front().kind == Token::Kind::Letter) {
            return secondLetter(tokens);
        }
        std::size_t first = 0;
        while (tokens[first].kind != Token::Kind::Letter) {
            ++first;
        }
        return first + 1;
    }
    return tokens.size() / 2;
}

struct Angle {
    double value = 0;
    char letter = 0;
};

/// One to three numbers, the last one only with a fraction, minutes and seconds under 60, at most one letter.
Result<Angle> angleOf(const Tokens& tokens, const std::string& text) {
    Angle angle;
    std::vector<std::string> numbers;
    for (const Token& token : tokens) {
        if (token.kind == Token::Kind::Number) {
            numbers.push_back(token.text);
        } else if (token.kind == Token::Kind::Letter && angle.letter == 0) {
            angle.letter = token.text[0];
        } else {
            return fail(kNotAPoint, {{"text", text}});
        }
    }
    if (numbers.empty() || numbers.size() > 3) {
        return fail(kNotAPoint, {{"text", text}});
    }
    const bool minus = numbers[0].starts_with('-');
    double unit = 1;
    for (std::size_t n = 0; n < numbers.size(); ++n) {
        const double number = std::abs(*parseNumber(numbers[n]));
        const bool isLast = n + 1 == numbers.size();
        const bool hasSign = numbers[n][0] == '-' || numbers[n][0] == '+';
        if ((n > 0 && (number >= 60 || hasSign)) || (!isLast && number != std::floor(number))) {
            return fail(kBadSixty, {{"text", text}, {"found", numbers[n]}});
        }
        angle.value += number / unit;
        unit *= 60;
    }
    if (minus && angle.letter != 0) {
        return fail(kNotAPoint, {{"text", text}});
    }
    if (minus || angle.letter == 'S' || angle.letter == 'W') {
        angle.value = -angle.value;
    }
    return angle;
}

bool isEastWest(char letter) {
    return letter == 'E' || letter == 'W';
}
bool isNorthSouth(char letter) {
    return letter == 'N' || letter == 'S';
}

}  // namespace

Result<GeoPoint> parseAngles(const std::string& upper) {
    const auto bad = [&] { return fail(kNotAPoint, {{"text", upper}}); };
    const auto tokens = tokensOf(signsToBlanks(upper));
    if (!tokens || countOf(*tokens, Token::Kind::Number) < 2 || countOf(*tokens, Token::Kind::Comma) > 1) {
        return bad();
    }
    const auto middle = static_cast<std::ptrdiff_t>(splitAt(*tokens));
    const bool atComma = (*tokens)[static_cast<std::size_t>(middle) % tokens->size()].kind == Token::Kind::Comma;
    auto first = angleOf(Tokens(tokens->begin(), tokens->begin() + middle), upper);
    auto second = angleOf(Tokens(tokens->begin() + middle + (atComma ? 1 : 0), tokens->end()), upper);
    if (!first) {
        return tl::unexpected(first.error());
    }
    if (!second) {
        return tl::unexpected(second.error());
    }
    if (isEastWest(first->letter) || isNorthSouth(second->letter)) {
        std::swap(first, second);
    }
    if (isEastWest(first->letter) || isNorthSouth(second->letter)) {
        return bad();  // two letters of one kind
    }
    if (std::abs(first->value) > 90) {
        return fail(kBadLatitude, {{"text", upper}, {"found", first->value}});
    }
    if (std::abs(second->value) > 180) {
        return fail(kBadLongitude, {{"text", upper}, {"found", second->value}});
    }
    return GeoPoint{Degrees(first->value), Degrees(second->value == 180 ? -180 : second->value)};
}

}  // namespace crosstick::geodesy
