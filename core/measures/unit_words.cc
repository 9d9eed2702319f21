#include "core/measures/unit_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "core/units/number_text.h"

namespace crosstick::measures {
namespace {

constexpr std::size_t kMost = 200;

struct SizeWord {
    std::string_view word, echelon;
};
constexpr std::array kSizes{
    SizeWord{"tm", "tm"},       SizeWord{"team", "tm"},      SizeWord{"crew", "tm"},      SizeWord{"sqd", "sqd"},
    SizeWord{"squad", "sqd"},   SizeWord{"sec", "sec"},      SizeWord{"section", "sec"},  SizeWord{"plt", "plt"},
    SizeWord{"platoon", "plt"}, SizeWord{"coy", "coy"},      SizeWord{"company", "coy"},  SizeWord{"battery", "coy"},
    SizeWord{"troop", "coy"},   SizeWord{"bn", "bn"},        SizeWord{"battalion", "bn"}, SizeWord{"squadron", "bn"},
    SizeWord{"rgt", "rgt"},     SizeWord{"regiment", "rgt"}, SizeWord{"bde", "bde"},      SizeWord{"brigade", "bde"},
    SizeWord{"div", "div"},     SizeWord{"division", "div"}};

struct IconWord {
    std::string_view word;
    UnitIcon icon;
};
constexpr std::array kIcons{IconWord{"inf", UnitIcon::Infantry},
                            IconWord{"infantry", UnitIcon::Infantry},
                            IconWord{"rec", UnitIcon::Reconnaissance},
                            IconWord{"reconnaissance", UnitIcon::Reconnaissance},
                            IconWord{"cavalry", UnitIcon::Reconnaissance},
                            IconWord{"arm", UnitIcon::Armour},
                            IconWord{"armour", UnitIcon::Armour},
                            IconWord{"at", UnitIcon::Antitank},
                            IconWord{"antitank", UnitIcon::Antitank},
                            IconWord{"mor", UnitIcon::Mortar},
                            IconWord{"mortar", UnitIcon::Mortar},
                            IconWord{"art", UnitIcon::Artillery},
                            IconWord{"artillery", UnitIcon::Artillery},
                            IconWord{"ad", UnitIcon::AirDefence},
                            IconWord{"eng", UnitIcon::Engineer},
                            IconWord{"engineer", UnitIcon::Engineer},
                            IconWord{"med", UnitIcon::Medical},
                            IconWord{"medical", UnitIcon::Medical},
                            IconWord{"sig", UnitIcon::Signal},
                            IconWord{"signal", UnitIcon::Signal},
                            IconWord{"avn", UnitIcon::Aviation},
                            IconWord{"aviation", UnitIcon::Aviation},
                            IconWord{"sup", UnitIcon::Supply},
                            IconWord{"supply", UnitIcon::Supply},
                            IconWord{"trn", UnitIcon::Transport},
                            IconWord{"transport", UnitIcon::Transport},
                            IconWord{"mnt", UnitIcon::Maintenance},
                            IconWord{"maintenance", UnitIcon::Maintenance},
                            IconWord{"cbrn", UnitIcon::Cbrn},
                            IconWord{"mtn", UnitIcon::Mountain},
                            IconWord{"mountain", UnitIcon::Mountain},
                            IconWord{"abn", UnitIcon::Airborne},
                            IconWord{"airborne", UnitIcon::Airborne},
                            IconWord{"aas", UnitIcon::AirAssault}};

std::string lower(std::string_view text) {
    std::string all(text);
    std::transform(all.begin(), all.end(), all.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    return all;
}

/// Words parted by blanks; what stands in quotes is one, its first letter the quote.
std::vector<std::string> tokensOf(std::string_view words) {
    std::vector<std::string> tokens;
    std::string token;
    bool isQuoted = false;
    const auto end = [&] {
        if (!token.empty()) {
            tokens.push_back(std::move(token));
        }
        token.clear();
    };
    for (const char letter : words.substr(0, kMost)) {
        if (letter == '"') {
            end();
            isQuoted = !isQuoted;
            if (isQuoted) {
                token = "\"";
            }
        } else if (!isQuoted && std::isspace(static_cast<unsigned char>(letter)) != 0) {
            end();
        } else {
            token += letter;
        }
    }
    end();
    return tokens;
}

void addWord(std::string& text, std::string_view word) {
    text += text.empty() ? "" : " ";
    text += word;
}

bool takeAffiliation(UnitSymbol& unit, const std::string& word) {
    static constexpr std::array<std::string_view, 4> kWords{"own", "eny", "neu", "unk"};
    const auto found = std::find(kWords.begin(), kWords.end(), word);
    if (found != kWords.end()) {
        unit.affiliation = static_cast<Affiliation>(found - kWords.begin());
    }
    return found != kWords.end();
}

void addIcon(UnitSymbol& unit, UnitIcon icon) {
    if (std::find(unit.icons.begin(), unit.icons.end(), icon) == unit.icons.end()) {
        unit.icons.push_back(icon);
    }
}

bool takeIcon(UnitSymbol& unit, const std::string& word) {
    if (word == "mech" || word == "mechanised") {
        addIcon(unit, UnitIcon::Infantry);
        addIcon(unit, UnitIcon::Armour);
        return true;
    }
    if (word == "mp" || word == "sf") {
        unit.letters = word == "mp" ? "MP" : "SF";
        return true;
    }
    if (word == "wpn" || word == "weapons") {
        addIcon(unit, UnitIcon::Infantry);
        addWord(unit.note, "WPN");
        return true;
    }
    for (const IconWord& known : kIcons) {
        if (known.word == word) {
            addIcon(unit, known.icon);
            return true;
        }
    }
    return false;
}

/// "inf+mor": all of them are icons, or none is taken.
bool takeIcons(UnitSymbol& unit, const std::string& word) {
    UnitSymbol next = unit;
    std::size_t from = 0;
    while (from <= word.size()) {
        const std::size_t to = std::min(word.find('+', from), word.size());
        if (!takeIcon(next, word.substr(from, to - from))) {
            return false;
        }
        from = to + 1;
    }
    unit = std::move(next);
    return true;
}

bool takeSize(UnitSymbol& unit, const std::string& word) {
    for (const SizeWord& known : kSizes) {
        if (known.word == word) {
            unit.echelon = known.echelon;
            return true;
        }
    }
    return false;
}

bool takeSwitch(UnitSymbol& unit, const std::string& word) {
    if (word == "plan" || word == "susp" || word == "?") {
        unit.isDashed = true;
    } else if (word == "hq" || word == "hqe") {
        unit.isHeadquarters = true;
    } else if (word == "tf") {
        unit.isTaskForce = true;
    } else if (word == "(+)" || word == "(-)" || word == "(+-)") {
        unit.state = word;
    } else {
        return false;
    }
    return true;
}

/// ">045", ">0800m".
bool takeDirection(UnitSymbol& unit, const std::string& word) {
    if (word.size() < 2 || word[0] != '>') {
        return false;
    }
    const bool isMils = word.back() == 'm';
    const auto figure = parseNumber(std::string_view(word).substr(1, word.size() - (isMils ? 2 : 1)));
    if (!figure || *figure < 0 || *figure > (isMils ? 6400 : 360)) {
        return false;
    }
    unit.direction = isMils ? degrees(Mils(*figure)) : Degrees(*figure);
    return true;
}

bool isDesignation(const std::string& token) {
    const bool hasFigure =
        std::any_of(token.begin(), token.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
    const bool isLetter = token.size() == 1 && std::isalpha(static_cast<unsigned char>(token[0])) != 0;
    return hasFigure || isLetter || token.find('/') != std::string::npos;
}

void takeDesignation(UnitSymbol& unit, const std::string& token) {
    const std::size_t stroke = token.find('/');
    unit.designation = token.substr(0, stroke);
    if (stroke != std::string::npos) {
        unit.higher = token.substr(stroke + 1);
    }
}

}  // namespace

UnitSymbol readUnit(std::string_view words) {
    UnitSymbol unit;
    const std::vector<std::string> tokens = tokensOf(words);
    for (std::size_t n = 0; n < tokens.size(); ++n) {
        const std::string& token = tokens[n];
        const std::string word = lower(token);
        if (token[0] == '"') {
            addWord(unit.note, std::string_view(token).substr(1));
        } else if (word == "of" && n + 1 < tokens.size() && tokens[n + 1][0] != '"') {
            unit.higher = tokens[++n];
        } else if (token[0] == '@' && token.size() > 1) {
            unit.time = token.substr(1);
        } else if (!takeAffiliation(unit, word) && !takeSize(unit, word) && !takeSwitch(unit, word) &&
                   !takeDirection(unit, word) && !takeIcons(unit, word)) {
            if (isDesignation(token)) {
                takeDesignation(unit, token);
            } else {
                addWord(unit.note, token);
                unit.unread.push_back(token);
            }
        }
    }
    return unit;
}

}  // namespace crosstick::measures
