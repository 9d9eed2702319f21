// Units back into words, and the lists that words are chosen from.
#include <array>

#include <fmt/format.h>

#include "core/measures/unit_words.h"

namespace crosstick::measures {
namespace {

constexpr std::array kSides{UnitWord{"own", "own"}, UnitWord{"eny", "enemy"}, UnitWord{"neu", "neutral"},
                            UnitWord{"unk", "unknown"}};
constexpr std::array kSizes{UnitWord{"tm", "team"},      UnitWord{"sqd", "squad"},   UnitWord{"sec", "section"},
                            UnitWord{"plt", "platoon"},  UnitWord{"coy", "company"}, UnitWord{"bn", "battalion"},
                            UnitWord{"rgt", "regiment"}, UnitWord{"bde", "brigade"}, UnitWord{"div", "division"}};
constexpr std::array kIcons{UnitWord{"inf", "infantry"},
                            UnitWord{"mech", "mechanised infantry"},
                            UnitWord{"rec", "reconnaissance"},
                            UnitWord{"arm", "armour"},
                            UnitWord{"at", "antitank"},
                            UnitWord{"mor", "mortar"},
                            UnitWord{"art", "field artillery"},
                            UnitWord{"ad", "air defence"},
                            UnitWord{"eng", "engineer"},
                            UnitWord{"med", "medical"},
                            UnitWord{"sig", "signal"},
                            UnitWord{"MP", "military police"},
                            UnitWord{"SF", "special forces"},
                            UnitWord{"avn", "rotary aviation"},
                            UnitWord{"sup", "supply"},
                            UnitWord{"trn", "transport"},
                            UnitWord{"mnt", "maintenance"},
                            UnitWord{"cbrn", "CBRN"},
                            UnitWord{"inf mtn", "mountain infantry"},
                            UnitWord{"inf abn", "airborne infantry"},
                            UnitWord{"inf aas", "air assault infantry"}};

/// By the order of UnitIcon.
constexpr std::array kIconWords{"inf", "rec", "arm", "at",  "mor", "art",  "ad",  "eng", "med",
                                "sig", "avn", "sup", "trn", "mnt", "cbrn", "mtn", "abn", "aas"};

void add(std::string& words, std::string_view word) {
    words += words.empty() ? "" : " ";
    words += word;
}

void addDesignation(std::string& words, const UnitSymbol& unit) {
    if (!unit.designation.empty() && !unit.higher.empty()) {
        add(words, unit.designation + '/' + unit.higher);
    } else if (!unit.designation.empty()) {
        // With its stroke it is read as a designation whatever it is.
        const UnitSymbol alone = readUnit(unit.designation);
        add(words, alone.designation == unit.designation ? unit.designation : unit.designation + '/');
    } else if (!unit.higher.empty()) {
        add(words, "of " + unit.higher);
    }
}

}  // namespace

UnitSymbol withoutAmplifiers(UnitSymbol unit) {
    for (std::string* text : {&unit.designation, &unit.higher, &unit.note, &unit.time}) {
        text->clear();
    }
    unit.direction.reset();
    return unit;
}

std::string unitWords(const UnitSymbol& unit) {
    std::string words;
    if (unit.affiliation != Affiliation::Friend) {
        add(words, kSides[static_cast<std::size_t>(unit.affiliation)].word);
    }
    for (const auto& [is, word] : {std::pair(unit.isHeadquarters, "hq"), std::pair(unit.isTaskForce, "tf")}) {
        if (is) {
            add(words, word);
        }
    }
    addDesignation(words, unit);
    for (const UnitIcon icon : unit.icons) {
        add(words, kIconWords.at(static_cast<std::size_t>(icon)));
    }
    for (const std::string& word : {unit.letters, unit.echelon, unit.state}) {
        if (!word.empty()) {
            add(words, word);
        }
    }
    if (unit.isDashed) {
        add(words, "plan");
    }
    if (unit.direction) {
        add(words, fmt::format(">{:03}", unit.direction->value()));
    }
    if (!unit.time.empty()) {
        add(words, '@' + unit.time);
    }
    if (!unit.note.empty()) {
        add(words, '"' + unit.note + '"');
    }
    return words;
}

std::span<const UnitWord> unitSides() {
    return kSides;
}
std::span<const UnitWord> unitSizes() {
    return kSizes;
}
std::span<const UnitWord> unitIcons() {
    return kIcons;
}

}  // namespace crosstick::measures
