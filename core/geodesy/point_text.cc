#include "core/geodesy/point_text.h"

#include "core/units/trimmed.h"

namespace crosstick::geodesy {
namespace {

// Letters are looked at as ASCII, whatever locale a window system may have set.
bool isBlank(char c) {
    return c == ' ' || (c >= '\t' && c <= '\r');
}

char upper(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

bool isControl(char c) {
    return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
}

}  // namespace

void replaceAll(std::string& text, std::string_view what, std::string_view by) {
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size())) {
        text.replace(at, what.size(), by);
    }
}

std::string plainText(std::string_view text) {
    std::string plain;
    for (const char c : text) {
        const char shown = isBlank(c) ? ' ' : isControl(c) ? '?' : c;
        plain += upper(shown);
    }
    for (const std::string_view blank : {"\u00a0", "\u2009", "\u202f", "\u2007", "\ufeff"}) {
        replaceAll(plain, blank, " ");
    }
    for (const std::string_view minus : {"\u2212", "\u2013"}) {
        replaceAll(plain, minus, "-");
    }
    return std::string(trimmed(plain));
}

std::string packed(std::string_view plain) {
    std::string out;
    for (const char c : plain) {
        if (!isBlank(c)) {
            out += c;
        }
    }
    return out;
}

std::vector<std::string> wordsOf(std::string_view plain) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : std::string(plain) + ' ') {
        if (!isBlank(c) && c != ',') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    return words;
}

std::string quoted(std::string_view text) {
    constexpr std::size_t kMost = 60;
    std::string shown;
    for (const char c : trimmed(text)) {
        shown += isBlank(c) ? ' ' : isControl(c) ? '?' : c;
    }
    if (shown.size() <= kMost) {
        return shown;
    }
    std::size_t end = kMost - 3;
    while (end > 0 && (static_cast<unsigned char>(shown[end]) & 0xC0U) == 0x80U) {
        --end;  // never in the middle of a UTF-8 letter
    }
    return shown.substr(0, end) + "...";
}

}  // namespace crosstick::geodesy
