// Nothing includes upward: architecture in one test.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "tests/house/source_files.h"

namespace crosstick::testing {
namespace {

struct Floor {
    std::string_view folder;
    int height;
};
// A folder may take in what lies lower, and itself.
constexpr std::array kFloors{
    Floor{"core/units", 0},    Floor{"core/geodesy", 1},      Floor{"core/sky", 2},      Floor{"core/drawing", 2},
    Floor{"core/measures", 3}, Floor{"core/plan", 4},         Floor{"core/worker", 4},   Floor{"core/reading", 6},
    Floor{"core/sheets", 5},   Floor{"core/registration", 6}, Floor{"core/movement", 6}, Floor{"core/terrain", 6},
    Floor{"core/film", 7},     Floor{"core/files", 8},        Floor{"symbols", 9},       Floor{"ui/press", 10},
    Floor{"ui/look", 11},      Floor{"ui/tools", 10},         Floor{"ui/work", 10},      Floor{"ui/table", 11},
    Floor{"ui/ledger", 12},    Floor{"ui/details", 12},       Floor{"ui/phases", 12},    Floor{"ui/copies", 12},
    Floor{"ui/start", 12},     Floor{"ui/registering", 12},   Floor{"ui/march", 12},     Floor{"ui/brief", 12},
    Floor{"ui/settings", 12},  Floor{"ui/window", 13},        Floor{"sample-data", 14},  Floor{"app", 15},
};

const Floor* floorOf(std::string_view path) {
    for (const Floor& floor : kFloors) {
        if (path.starts_with(floor.folder) && path.size() > floor.folder.size() && path[floor.folder.size()] == '/') {
            return &floor;
        }
    }
    return nullptr;
}

bool mayInclude(std::string_view from, std::string_view what) {
    const Floor* below = floorOf(what);
    const Floor* here = floorOf(from);
    return below != nullptr && here != nullptr && (below->height < here->height || below->folder == here->folder);
}

const std::vector<SourceFile>& ours() {
    static const auto kFiles = sourceFiles({"core", "symbols", "ui", "app", "sample-data"}, {".h", ".cc"});
    return kFiles;
}

TEST(Includes, RuleKnowsUpFromDown) {
    EXPECT_TRUE(mayInclude("core/plan/plan.cc", "core/geodesy/crs.h"));
    EXPECT_TRUE(mayInclude("core/plan/plan.cc", "core/plan/film.h"));
    EXPECT_FALSE(mayInclude("core/plan/plan.cc", "core/files/plan_file.h"));
    EXPECT_FALSE(mayInclude("symbols/engrave.cc", "ui/press/painter.h"));
    EXPECT_FALSE(mayInclude("core/plan/plan.cc", "plan.h"));
    EXPECT_EQ(included("#include \"core/units/time.h\""), "\"core/units/time.h");
    EXPECT_EQ(included("#include <QImage>  // picture"), "<QImage");
    EXPECT_EQ(included("int include = 0;"), "");
}

TEST(Includes, EveryFileStandsOnAFloor) {
    ASSERT_GT(ours().size(), 100U);
    for (const SourceFile& file : ours()) {
        EXPECT_NE(floorOf(file.path.string()), nullptr) << file.path << " lies in no folder that has a floor";
    }
}

TEST(Includes, NothingIncludesUpward) {
    for (const SourceFile& file : ours()) {
        for (const std::string& line : file.lines) {
            const std::string what = included(line);
            if (what.starts_with('"')) {
                EXPECT_TRUE(mayInclude(file.path.string(), what.substr(1))) << file.path << ": " << line;
            }
        }
    }
}

TEST(Includes, CoreAndSymbolsKnowNoQt) {
    for (const SourceFile& file : ours()) {
        const std::string path = file.path.string();
        if (!path.starts_with("core/") && !path.starts_with("symbols/")) {
            continue;
        }
        for (const std::string& line : file.lines) {
            const std::string what = included(line);
            EXPECT_FALSE(what.starts_with("<Q") || what.starts_with("\"Q") || what.starts_with("<qt"))
                << path << ": " << line;
        }
    }
}

TEST(Includes, EveryHeaderIsGuardedByPragmaOnce) {
    for (const SourceFile& file : ours()) {
        if (file.path.extension() == ".h") {
            EXPECT_NE(std::find(file.lines.begin(), file.lines.end(), "#pragma once"), file.lines.end()) << file.path;
        }
    }
}

}  // namespace
}  // namespace crosstick::testing
