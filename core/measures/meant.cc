#include "core/measures/meant.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <optional>
#include <tuple>
#include <utility>

#include "core/measures/unit_words.h"
#include "core/units/trimmed.h"

namespace crosstick::measures {
namespace {

/// How words fit a measure; the lower the better.
enum class Fit {
    Abbreviation,
    Name,
    AbbreviationBegins,
    Initials,
    NameBegins,
    AbbreviationHolds,
    WordsBegin,
    NameHolds,
    Shortened
};

std::string lower(std::string_view text) {
    std::string all(text);
    std::transform(all.begin(), all.end(), all.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    return all;
}

/// Letters and figures alone, lower: "LD/LC" and "ld lc" are one.
std::string bare(std::string_view text) {
    std::string all = lower(text);
    std::erase_if(all, [](unsigned char letter) { return std::isalnum(letter) == 0; });
    return all;
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<std::string> words(1);
    for (const char letter : lower(text)) {
        if (std::isalnum(static_cast<unsigned char>(letter)) != 0) {
            words.back() += letter;
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    if (words.back().empty()) {
        words.pop_back();
    }
    return words;
}

std::string initials(const std::vector<std::string>& words) {
    std::string letters;
    for (const std::string& word : words) {
        letters += word[0];
    }
    return letters;
}

/// Do the typed words begin words of a name, one after the other from its first?
bool beginName(const std::vector<std::string>& typed, const std::vector<std::string>& name) {
    std::size_t at = 0;
    for (std::size_t n = 0; n < typed.size(); ++n, ++at) {
        while (n > 0 && at < name.size() && !name[at].starts_with(typed[n])) {
            ++at;
        }
        if (at >= name.size() || !name[at].starts_with(typed[n])) {
            return false;
        }
    }
    return true;
}

bool beginWords(const std::vector<std::string>& typed, const std::vector<std::string>& name) {
    return std::all_of(typed.begin(), typed.end(), [&](const std::string& word) {
        return std::any_of(name.begin(), name.end(), [&](const std::string& one) { return one.starts_with(word); });
    });
}

/// Are these the name's letters with some left out, the first kept? "bdy" for a boundary.
bool isShortened(const std::string& letters, const std::string& name) {
    std::size_t at = 0;
    for (const char letter : letters) {
        at = name.find(letter, at);
        if (at == std::string::npos) {
            return false;
        }
        ++at;
    }
    return letters.size() > 2 && letters.front() == name.front();
}

/// What hands write for a measure whose sign has no letters.
constexpr std::array kWritten{std::pair<std::string_view, std::string_view>{"bdy", "boundary"}};

bool isWritten(std::string_view letters, std::string_view kind) {
    return std::find(kWritten.begin(), kWritten.end(), std::pair(letters, kind)) != kWritten.end();
}

std::optional<Fit> fitOf(const std::string& letters, const std::vector<std::string>& typed, const Entry& entry) {
    const std::string abbreviation = bare(entry.abbreviation);
    const std::vector<std::string> name = wordsOf(entry.name);
    if ((!abbreviation.empty() && letters == abbreviation) || isWritten(letters, entry.kind)) {
        return Fit::Abbreviation;
    }
    if (typed == name) {
        return Fit::Name;
    }
    if (abbreviation.starts_with(letters)) {
        return Fit::AbbreviationBegins;
    }
    if (typed.size() == 1 && name.size() > 1 && letters == initials(name)) {
        return Fit::Initials;
    }
    if (beginName(typed, name)) {
        return Fit::NameBegins;
    }
    if (letters.size() > 1 && abbreviation.find(letters) != std::string::npos) {
        return Fit::AbbreviationHolds;
    }
    if (beginWords(typed, name)) {
        return Fit::WordsBegin;
    }
    if (letters.size() > 2 && bare(entry.name).find(letters) != std::string::npos) {
        return Fit::NameHolds;
    }
    if (typed.size() == 1 && isShortened(letters, bare(entry.name))) {
        return Fit::Shortened;
    }
    return std::nullopt;
}

struct Ranked {
    Meant meant;
    int band = 0;  ///< abbreviations, whole names, the rest
    std::size_t lately = 0;
    Fit fit = Fit::Abbreviation;
};

std::size_t lately(const Entry& entry, std::span<const std::string> recent) {
    return static_cast<std::size_t>(std::find(recent.begin(), recent.end(), entry.kind) - recent.begin());
}

/// A unit symbol's words: all are understood, and something of them is drawn.
bool isUnit(std::string_view words) {
    const UnitSymbol unit = readUnit(words);
    return unit.unread.empty() && (!unit.icons.empty() || !unit.letters.empty() || !unit.echelon.empty());
}

std::vector<Ranked> ranked(std::string_view words, std::span<const std::string> recent) {
    const std::string letters = bare(words);
    const std::vector<std::string> typed = wordsOf(words);
    const bool unit = isUnit(words);
    std::vector<Ranked> found;
    for (const Entry& entry : catalogue()) {
        const bool composed = unit && entry.sign == Sign::Unit;
        const auto fit = composed ? std::optional(Fit::Name) : fitOf(letters, typed, entry);
        if (fit && !letters.empty()) {
            const int band = *fit == Fit::Abbreviation ? 0 : *fit == Fit::Name ? 1 : 2;
            const std::string unitWords = composed ? std::string(words) : std::string();
            found.push_back({{&entry, {}, unitWords}, band, lately(entry, recent), *fit});
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Ranked& a, const Ranked& b) {
        return std::tie(a.band, a.lately, a.fit) < std::tie(b.band, b.lately, b.fit);
    });
    return found;
}

/// An abbreviation or a whole name with a label behind it; the longest counts.
std::vector<Ranked> labelled(std::string_view words, std::span<const std::string> recent) {
    for (std::size_t cut = words.rfind(' '); cut != std::string_view::npos && cut > 0;
         cut = words.rfind(' ', cut - 1)) {
        std::vector<Ranked> found = ranked(words.substr(0, cut), recent);
        std::erase_if(found, [](const Ranked& one) { return one.band > 1 || !one.meant.unit.empty(); });
        for (Ranked& one : found) {
            one.meant.label = trimmed(words.substr(cut));
        }
        if (!found.empty()) {
            return found;
        }
    }
    return {};
}

std::vector<Meant> everything(std::span<const std::string> recent) {
    std::vector<Meant> all;
    for (const Entry& entry : catalogue()) {
        all.push_back({&entry, {}, {}});
    }
    std::stable_sort(all.begin(), all.end(), [&](const Meant& a, const Meant& b) {
        return lately(*a.entry, recent) < lately(*b.entry, recent);
    });
    return all;
}

}  // namespace

std::vector<Meant> meantBy(std::string_view words, std::span<const std::string> recent, std::size_t most) {
    words = trimmed(words.substr(0, 400));
    std::vector<Meant> meant;
    if (words.empty()) {
        meant = everything(recent);
    } else {
        std::vector<Ranked> found = ranked(words, recent);
        if (found.empty()) {
            found = labelled(words, recent);
        }
        for (Ranked& one : found) {
            meant.push_back(std::move(one.meant));
        }
    }
    meant.resize(std::min(meant.size(), most));
    return meant;
}

std::optional<Meant> meantExactly(std::string_view words) {
    words = trimmed(words.substr(0, 400));
    std::vector<Ranked> found = ranked(words, {});
    std::erase_if(found, [](const Ranked& one) { return one.band > 1 || !one.meant.unit.empty(); });
    if (found.empty()) {
        found = labelled(words, {});
    }
    return found.empty() ? std::nullopt : std::optional(std::move(found.front().meant));
}

}  // namespace crosstick::measures
