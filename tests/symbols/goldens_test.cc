// Every kind as text, mark by mark, held against what was looked at and found good.
//
// To renew them after a change of drawing: CROSSTICK_RENEW=1 build/dev/tests/symbols/symbols_tests
// --gtest_filter='*Golden*'. That writes the files and prints what changed; look at a picture before keeping them.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/places.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Points;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

std::filesystem::path folder() {
    return places::data() / "engraving";
}

std::string read(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> linesOf(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line);
    }
    return lines;
}

/// Lines that only one of two texts has, in order: "-" the old one's, "+" the new one's.
std::string changes(const std::string& before, const std::string& after) {
    const auto a = linesOf(before);
    const auto b = linesOf(after);
    std::string out;
    std::size_t n = 0;
    for (const std::string& line : a) {
        const auto found = std::find(b.begin() + static_cast<std::ptrdiff_t>(n), b.end(), line);
        if (found == b.end()) {
            out += "- " + line + '\n';
            continue;
        }
        for (; n < static_cast<std::size_t>(found - b.begin()); ++n) {
            out += "+ " + b[n] + '\n';
        }
        ++n;
    }
    for (; n < b.size(); ++n) {
        out += "+ " + b[n] + '\n';
    }
    return out;
}

void expectGolden(const std::string& name, const std::string& drawn) {
    const std::filesystem::path file = folder() / (name + ".txt");
    const std::string kept = read(file);
    if (std::getenv("CROSSTICK_RENEW") != nullptr && kept != drawn) {
        std::filesystem::create_directories(folder());
        std::ofstream(file, std::ios::binary) << drawn;
        std::cout << file.filename().string() << '\n' << changes(kept, drawn);
        return;
    }
    EXPECT_EQ(changes(kept, drawn), "") << "in " << file << "; look at a picture, then renew with CROSSTICK_RENEW=1";
}

// Places off the round tenths, so that no figure stands on the edge of its third decimal.
constexpr drawing::Point kSpot{100.0137, 75.0219};

class Golden : public ::testing::TestWithParam<std::string> {};

TEST_P(Golden, IsDrawnAsItWasFoundGood) {
    Made made = testing::sample(GetParam(), kSpot);
    MadeFilm present;
    present.add(made);
    made.standing = plan::Standing::Planned;
    MadeFilm planned;
    planned.add(made);
    made.whose = plan::Whose::Enemy;
    MadeFilm enemy;
    enemy.add(made).onePen();
    expectGolden(GetParam(), "present\n" + describe(present.drawn()) + "planned\n" + describe(planned.drawn()) +
                                 "planned, the enemy's, one pen\n" + describe(enemy.drawn()));
}

std::vector<std::string> kinds() {
    std::vector<std::string> all;
    for (const measures::Entry& entry : measures::catalogue()) {
        all.emplace_back(entry.kind);
    }
    return all;
}

INSTANTIATE_TEST_SUITE_P(Kinds, Golden, ::testing::ValuesIn(kinds()), [](const auto& kind) {
    std::string name = kind.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

// What is drawn otherwise where somebody asks for it.
TEST(Golden, OptionsAreDrawnAsTheyWereFoundGood) {
    struct Option {
        const char* kind;
        std::map<std::string, std::string> fields;
    };
    for (const auto& [kind, fields] :
         {Option{"checkpoint", {{"lettered", "yes"}}}, Option{"casualty-collection-point", {{"cross", "yes"}}},
          Option{"main-supply-route", {{"one_way", "yes"}}}, Option{"line-of-contact", {{"half_circles", "yes"}}},
          Option{"slope-arrows", {{"slope", "12"}}}}) {
        Made made = testing::sample(kind, kSpot);
        made.fields = fields;
        MadeFilm present;
        present.add(made);
        made.standing = plan::Standing::Planned;
        MadeFilm onePen;
        onePen.add(made).onePen();
        expectGolden(std::string(kind) + "-option",
                     "present\n" + describe(present.drawn()) + "planned, one pen\n" + describe(onePen.drawn()));
    }
}

TEST(Golden, RoutesAreDrawnAsTheyWereFoundGood) {
    MadeFilm film;
    const Points there{{30.0137, 90.0219}, {60.0137, 80.0219}, {100.0137, 84.0219}, {150.0137, 60.0219}};
    film.add(MadeRoute{.vertices = there, .stops = {0, 1, 3}, .name = "QUILL"});
    film.add(MadeRoute{.vertices = {there[0], there[1], {110.0137, 120.0219}, there[3]},
                       .stops = {2},
                       .name = "MITTEN",
                       .use = plan::Use::Alternate});
    expectGolden("routes", describe(film.engraved().all()));
}

}  // namespace
}  // namespace crosstick::symbols
