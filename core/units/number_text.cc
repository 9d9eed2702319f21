#include "core/units/number_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

#include <fmt/format.h>

namespace crosstick {
namespace {

/// "-0", "-0.00" and the like: a minus sign before nothing but zeros.
bool isMinusZero(std::string_view text) {
    return !text.empty() && text.front() == '-' && text.find_first_not_of("-0.") == std::string_view::npos;
}

template <class Number>
std::optional<Number> parseAll(std::string_view text) {
    if (!text.empty() && text.front() == '+') {
        text.remove_prefix(1);
        if (!text.empty() && text.front() == '-') {
            return std::nullopt;
        }
    }
    Number value{};
    const char* end = text.data() + text.size();
    const auto [stop, fault] = std::from_chars(text.data(), end, value);
    if (fault != std::errc() || stop != end || text.empty()) {
        return std::nullopt;
    }
    return value;
}

}  // namespace

std::string numberText(double value) {
    if (value == 0) {
        return "0";
    }
    std::array<char, 32> room{};
    const auto [end, fault] = std::to_chars(room.data(), room.data() + room.size(), value);
    return fault == std::errc() ? std::string(room.data(), end) : fmt::format("{}", value);
}

std::string numberText(double value, int decimals) {
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (isMinusZero(text)) {
        text.erase(0, 1);
    }
    return text;
}

std::optional<double> parseNumber(std::string_view text) {
    const auto value = parseAll<double>(text);
    return value && std::isfinite(*value) ? value : std::nullopt;
}

std::optional<std::int64_t> parseWhole(std::string_view text) {
    return parseAll<std::int64_t>(text);
}

}  // namespace crosstick
