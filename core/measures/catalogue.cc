#include "core/measures/catalogue.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/measures/entries.h"
#include "core/measures/faults.h"
#include "core/units/number_text.h"

namespace crosstick::measures {
namespace {

struct Whole {
    std::vector<Entry> entries;
    std::vector<std::size_t> byKind;  ///< places in `entries`, by rising kind

    Whole() {
        for (const auto part :
             {pointEntries(), lineEntries(), areaEntries(), taskEntries(), groundEntries(), otherEntries()}) {
            entries.insert(entries.end(), part.begin(), part.end());
        }
        std::stable_sort(entries.begin(), entries.end(),
                         [](const Entry& a, const Entry& b) { return a.group < b.group; });
        for (std::size_t n = 0; n < entries.size(); ++n) {
            byKind.push_back(n);
        }
        std::sort(byKind.begin(), byKind.end(),
                  [this](std::size_t a, std::size_t b) { return entries[a].kind < entries[b].kind; });
    }
};

const Whole& whole() {
    static const Whole kWhole;
    return kWhole;
}

Result<void> inRange(std::string_view typed, double low, double high) {
    const auto number = parseNumber(typed);
    if (!number || *number < low || *number > high) {
        return fail(kBadNumber, {{"low", low}, {"high", high}});
    }
    return {};
}

}  // namespace

std::span<const Entry> catalogue() {
    return whole().entries;
}

const Entry* find(std::string_view kind) {
    const Whole& all = whole();
    const auto found = std::lower_bound(all.byKind.begin(), all.byKind.end(), kind,
                                        [&all](std::size_t n, std::string_view k) { return all.entries[n].kind < k; });
    return found != all.byKind.end() && all.entries[*found].kind == kind ? &all.entries[*found] : nullptr;
}

bool isCrossedOnTheMarch(const Entry& entry) {
    constexpr std::array kCrossed{Sign::NamedLine, Sign::Boundary,   Sign::ContactLine, Sign::FrontLine,
                                  Sign::Teeth,     Sign::DangerLine, Sign::Way};
    return std::find(kCrossed.begin(), kCrossed.end(), entry.sign) != kCrossed.end();
}

Result<void> checkField(const Field& field, std::string_view typed) {
    constexpr std::array<std::string_view, 9> kEchelons{"tm", "sqd", "sec", "plt", "coy", "bn", "rgt", "bde", "div"};
    if (typed.empty()) {
        return {};
    }
    switch (field.type) {
        case FieldType::Azimuth:
            return inRange(typed, 0, 360);
        case FieldType::Millimetres:
            return inRange(typed, 3.4, 40);
        case FieldType::Metres:
            return inRange(typed, 1, 100000);
        case FieldType::Percent:
            return inRange(typed, 1, 100);
        case FieldType::Answer:
            return typed == "yes" || typed == "no" ? Result<void>() : fail(kBadAnswer);
        case FieldType::Side:
            return typed == "left" || typed == "right" ? Result<void>() : fail(kBadSide);
        case FieldType::Echelon:
            return std::find(kEchelons.begin(), kEchelons.end(), typed) != kEchelons.end() ? Result<void>()
                                                                                           : fail(kBadEchelon);
        case FieldType::Text:
        case FieldType::Unit:
        case FieldType::Phase:
        case FieldType::UnitWords:
            break;
    }
    return {};
}

std::string_view nameOf(Group group) {
    switch (group) {
        case Group::Movement:
            return "Movement";
        case Group::Points:
            return "Points";
        case Group::Lines:
            return "Lines";
        case Group::Areas:
            return "Areas";
        case Group::Tasks:
            return "Tasks";
        case Group::Terrain:
            return "Ground";
        case Group::Support:
            return "Support";
        case Group::Units:
            return "Units";
        case Group::Words:
            return "Words";
    }
    return {};
}

}  // namespace crosstick::measures
