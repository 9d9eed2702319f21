#include "core/geodesy/parse_angles.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <vector>

#include "core/geodesy/faults.h"
#include "core/geodesy/point_text.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

struct Token {
    enum class Kind { Number, Letter, Comma } kind;
    std::string text;
};

/// The signs and words for degree, minute and second only part the numbers, and so do the words for the two angles.
std::string signsToBlanks(std::string text) {
    for (const std::string_view word :
         {"\u00b0",  "\u00ba", "\u2032",  "\u2033",   "\u2019",    "\u201d",  "'",      "\"",
          ":",       "=",      "DEGREES", "DEGREE",   "DEG",       "MINUTES", "MINUTE", "MIN",
          "SECONDS", "SECOND", "SEC",     "LATITUDE", "LONGITUDE", "LAT",     "LONG",   "LON"}) {
        replaceAll(text, word, " ");
    }
    return text;
}

bool isDigit(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0;
}

/// "46,0407 -31,0097": two commas, each between digits, and a blank or a semicolon between the numbers, are decimal
/// commas.
std::string withDecimalPoints(std::string text) {
    std::vector<std::size_t> commas;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == ',') {
            commas.push_back(at);
        }
    }
    const auto isDecimal = [&](std::size_t at) {
        return at > 0 && at + 1 < text.size() && isDigit(text[at - 1]) && isDigit(text[at + 1]);
    };
    if (commas.size() == 2 && std::all_of(commas.begin(), commas.end(), isDecimal)) {
        for (const std::size_t at : commas) {
            text[at] = '.';
        }
    }
    return text;
}

/// One number: a sign, then digits and points.
std::size_t numberEnd(const std::string& text, std::size_t at) {
    std::size_t end = at + 1;
    while (end < text.size() && (isDigit(text[end]) || text[end] == '.')) {
        ++end;
    }
    return end;
}

std::optional<std::vector<Token>> tokensOf(const std::string& text) {
    std::vector<Token> tokens;
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        const bool degreeLetter = c == 'D' && at > 0 && isDigit(text[at - 1]);
        if (c == ' ' || degreeLetter || (c == '/' && at + 1 == text.size())) {
            ++at;
        } else if (c == ',' || c == ';') {
            tokens.push_back({Token::Kind::Comma, ","});
            ++at;
        } else if (std::string_view("NSEW").find(c) != std::string_view::npos) {
            tokens.push_back({Token::Kind::Letter, std::string(1, c)});
            ++at;
        } else {
            const std::size_t end = numberEnd(text, at);
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

bool isKind(const Token& token, Token::Kind kind) {
    return token.kind == kind;
}

/// The tokens of both angles.
struct Halves {
    Tokens first, second;
};

/// Parted at the comma, else by the letters, else half way through the numbers. Nothing where that is no even half.
std::optional<Halves> halvesOf(const Tokens& tokens) {
    const auto is = [&](Token::Kind kind) { return [kind](const Token& token) { return isKind(token, kind); }; };
    const auto comma = std::find_if(tokens.begin(), tokens.end(), is(Token::Kind::Comma));
    if (comma != tokens.end()) {
        return Halves{Tokens(tokens.begin(), comma), Tokens(comma + 1, tokens.end())};
    }
    const auto letter = std::find_if(tokens.begin(), tokens.end(), is(Token::Kind::Letter));
    if (letter == tokens.end()) {
        if (tokens.size() % 2 != 0) {
            return std::nullopt;
        }
        const auto middle = tokens.begin() + static_cast<std::ptrdiff_t>(tokens.size() / 2);
        return Halves{Tokens(tokens.begin(), middle), Tokens(middle, tokens.end())};
    }
    const auto middle =
        letter == tokens.begin() ? std::find_if(letter + 1, tokens.end(), is(Token::Kind::Letter)) : letter + 1;
    return Halves{Tokens(tokens.begin(), middle), Tokens(middle, tokens.end())};
}

struct Angle {
    double value = 0;
    char letter = 0;
};

/// "385322.5" as 38, 53 and 22.5; "0770207" as 77, 2 and 7: so many figures of whole degrees, then pairs.
std::vector<std::string> unpacked(const std::string& number, std::size_t degreeFigures) {
    const std::size_t figures = std::min(number.find('.'), number.size());
    const bool isPacked = isDigit(number[0]) && (figures == degreeFigures + 2 || figures == degreeFigures + 4);
    if (!isPacked) {
        return {number};
    }
    std::vector<std::string> parts{number.substr(0, degreeFigures), number.substr(degreeFigures)};
    if (figures == degreeFigures + 4) {
        parts.back() = number.substr(degreeFigures, 2);
        parts.push_back(number.substr(degreeFigures + 2));
    }
    return parts;
}

/// The numbers of one angle and its letter, which may stand before or behind them.
struct Written {
    std::vector<std::string> numbers;
    char letter = 0;
};

std::optional<Written> writtenIn(const Tokens& half) {
    Written written;
    for (std::size_t at = 0; at < half.size(); ++at) {
        if (half[at].kind == Token::Kind::Number) {
            written.numbers.push_back(half[at].text);
        } else if (half[at].kind == Token::Kind::Letter && written.letter == 0 && (at == 0 || at + 1 == half.size())) {
            written.letter = half[at].text[0];
        } else {
            return std::nullopt;
        }
    }
    const bool isSouthNorth = written.letter == 'N' || written.letter == 'S';
    if (written.numbers.size() == 1 && written.letter != 0) {
        written.numbers = unpacked(written.numbers[0], isSouthNorth ? 2 : 3);
    }
    return written;
}

/// One to three numbers, the last one only with a fraction, minutes and seconds under 60, at most one letter.
Result<Angle> angleOf(const Tokens& half, const std::string& text) {
    const auto written = writtenIn(half);
    if (!written || written->numbers.empty() || written->numbers.size() > 3) {
        return fail(kNotAPoint, {{"text", text}});
    }
    Angle angle{0, written->letter};
    double unit = 1;
    for (std::size_t n = 0; n < written->numbers.size(); ++n) {
        const std::string& figures = written->numbers[n];
        const double number = std::abs(*parseNumber(figures));
        const bool isLast = n + 1 == written->numbers.size();
        const bool hasSign = figures[0] == '-' || figures[0] == '+';
        if ((n > 0 && (number >= 60 || hasSign)) || (!isLast && number != std::floor(number))) {
            return fail(kBadSixty, {{"text", text}, {"found", figures}});
        }
        angle.value += number / unit;
        unit *= 60;
    }
    const bool minus = written->numbers[0].starts_with('-');
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

bool longitudeNamedFirst(const std::string& plain) {
    const auto longitude = plain.find("LON");
    const auto latitude = plain.find("LAT");
    return longitude != std::string::npos && latitude != std::string::npos && longitude < latitude;
}

/// Latitude and longitude in range.
Result<GeoPoint> placeOf(double latitude, double longitude, const std::string& text) {
    if (std::abs(latitude) > 90) {
        return fail(kBadLatitude, {{"text", text}, {"found", latitude}});
    }
    if (std::abs(longitude) > 180) {
        return fail(kBadLongitude, {{"text", text}, {"found", longitude}});
    }
    return GeoPoint{Degrees(latitude), Degrees(longitude == 180 ? -180 : longitude)};
}

}  // namespace

Result<GeoPoint> parseAngles(const std::string& plain) {
    const auto bad = [&](FaultId fault) { return fail(fault, {{"text", plain}}); };
    const auto tokens = tokensOf(withDecimalPoints(signsToBlanks(plain)));
    if (!tokens || countOf(*tokens, Token::Kind::Number) < 2 || countOf(*tokens, Token::Kind::Comma) > 1) {
        return bad(kNotAPoint);
    }
    if (countOf(*tokens, Token::Kind::Letter) == 1) {
        return bad(kOneLetter);
    }
    const auto halves = halvesOf(*tokens);
    if (!halves) {
        return bad(kNotAPoint);
    }
    auto first = angleOf(halves->first, plain);
    auto second = angleOf(halves->second, plain);
    if (!first || !second) {
        return tl::unexpected(first ? second.error() : first.error());
    }
    if (isEastWest(first->letter) || isNorthSouth(second->letter) || longitudeNamedFirst(plain)) {
        std::swap(first, second);
    }
    if (isEastWest(first->letter) || isNorthSouth(second->letter)) {
        return bad(kNotAPoint);  // two letters of one kind, or words that say otherwise
    }
    return placeOf(first->value, second->value, plain);
}

}  // namespace crosstick::geodesy
