// The tree keeps its own rules: names, lengths, and no path of one machine.
#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "tests/house/source_files.h"

namespace crosstick::testing {
namespace {

constexpr std::size_t kLongest = 500;

const std::vector<SourceFile>& everything() {
    static const auto kFiles = sourceFiles({"core", "symbols", "ui", "app", "sample-data", "tests"},
                                           {".h", ".cc", ".txt", ".py", ".sh", ".json", ".md"});
    return kFiles;
}

bool isCode(const SourceFile& file) {
    return file.path.extension() == ".h" || file.path.extension() == ".cc";
}

TEST(Tree, NoFileIsADrawerForEverything) {
    constexpr std::array<std::string_view, 6> kDrawers{"util", "utils", "helper", "common", "manager", "misc"};
    ASSERT_GT(everything().size(), 100U);
    for (const SourceFile& file : everything()) {
        std::string rest = file.path.stem().string() + '_';
        for (auto cut = rest.find_first_of("_-"); cut != std::string::npos; cut = rest.find_first_of("_-")) {
            std::string word = rest.substr(0, cut);
            rest.erase(0, cut + 1);
            if (word.size() > 1 && word.ends_with('s')) {
                word.pop_back();
            }
            EXPECT_EQ(std::find(kDrawers.begin(), kDrawers.end(), word), kDrawers.end()) << file.path;
        }
    }
}

TEST(Tree, NoCodeFileIsTooLong) {
    for (const SourceFile& file : everything()) {
        if (isCode(file) && file.path.filename() != "face_table.cc") {  // a table made by a program
            EXPECT_LE(file.lines.size(), kLongest) << file.path;
        }
    }
}

TEST(Tree, NoDialogStandsBetweenALeaderAndTheTable) {
    // Files are chosen in the desktop's own dialog; everything else is typed and told in place.
    for (const SourceFile& file : everything()) {
        for (const std::string& line : file.lines) {
            if (file.path.string().starts_with("ui/")) {
                EXPECT_EQ(line.find("QInputDialog"), std::string::npos) << file.path;
                EXPECT_EQ(line.find("QMessageBox"), std::string::npos) << file.path;
            }
        }
    }
}

TEST(Tree, NoPathOfOneMachineStandsInIt) {
    // Put together here, or this file would find itself.
    const std::array<std::string, 3> paths{std::string("/wor") + "k/", std::string("/roo") + "t/",
                                           std::string("C:") + "\\"};
    for (const SourceFile& file : everything()) {
        for (std::size_t n = 0; n < file.lines.size(); ++n) {
            for (const std::string& path : paths) {
                // A path of ours ("ui/...") goes on from a letter; one of a machine begins there.
                const std::size_t at = file.lines[n].find(path);
                const bool begins = at != std::string::npos &&
                                    (at == 0 || std::isalnum(static_cast<unsigned char>(file.lines[n][at - 1])) == 0);
                EXPECT_FALSE(begins) << file.path << " line " << n + 1;
            }
        }
    }
}

TEST(Tree, NamesAreLowerCaseWithUnderscores) {
    for (const SourceFile& file : everything()) {
        if (isCode(file)) {
            const std::string name = file.path.stem().string();
            EXPECT_EQ(name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_"), std::string::npos) << file.path;
        }
    }
}

}  // namespace
}  // namespace crosstick::testing
