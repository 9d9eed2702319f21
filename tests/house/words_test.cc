// Every fault that a header declares has words, and the words keep the rules of the voice.
#include <set>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "app/wording/wording.h"
#include "tests/house/source_files.h"

namespace crosstick::testing {
namespace {

struct Declared {
    std::string fault;  ///< "sheets/damaged"
    std::string where;
};

/// Reads `FaultId kName{"folder/what"}` out of the sources.
std::vector<Declared> declaredFaults() {
    std::vector<Declared> faults;
    for (const SourceFile& file : sourceFiles({"core", "symbols", "ui", "app", "sample-data"}, {".h", ".cc"})) {
        std::string text;
        for (const std::string& line : file.lines) {
            text += line + ' ';
        }
        constexpr std::string_view kStart = "FaultId k";
        for (auto at = text.find(kStart); at != std::string::npos; at = text.find(kStart, at + 1)) {
            const auto brace = text.find_first_of("{;)", at);
            if (brace == std::string::npos || text[brace] != '{') {
                continue;
            }
            const auto open = text.find('"', brace);
            const auto close = text.find('"', open + 1);
            faults.push_back({text.substr(open + 1, close - open - 1), file.path.string()});
        }
    }
    return faults;
}

TEST(Words, EveryDeclaredFaultHasThem) {
    const auto faults = declaredFaults();
    ASSERT_GT(faults.size(), 50U);
    for (const Declared& fault : faults) {
        EXPECT_TRUE(app::hasWords(FaultId{fault.fault})) << fault.fault << " of " << fault.where;
    }
}

TEST(Words, NoTwoFaultsShareAnIdentity) {
    std::set<std::string> seen;
    for (const Declared& fault : declaredFaults()) {
        EXPECT_TRUE(seen.insert(fault.fault).second) << fault.fault << " is declared again in " << fault.where;
    }
}

TEST(Words, ASentenceIsOneClearLine) {
    for (const Declared& fault : declaredFaults()) {
        const std::string text = app::words(Error{FaultId{fault.fault}, {}});
        EXPECT_EQ(text.find('\n'), std::string::npos) << text;
        EXPECT_TRUE(text.ends_with('.') || text.ends_with('?')) << fault.fault << ": " << text;
        for (const std::string_view never : {"sorry", "Sorry", "invalid", "Invalid", "!", "rror code"}) {
            EXPECT_EQ(text.find(never), std::string::npos) << text;
        }
    }
}

TEST(Words, ArgumentsStandWhereTheirKeysAre) {
    const Error error{FaultId{"sheets/too-large"},
                      {{"file", std::string("a.tif")}, {"columns", 120000.0}, {"rows", std::int64_t{5}}}};
    EXPECT_EQ(app::words(error).find("a.tif is 120000 by 5 pixels"), 0U);
}

}  // namespace
}  // namespace crosstick::testing
