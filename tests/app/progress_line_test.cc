#include "app/progress_line.h"

#include <sstream>

#include <gtest/gtest.h>

namespace crosstick::app {
namespace {

TEST(ProgressLine, SaysHowFarItIsOnOneLine) {
    std::ostringstream err;
    {
        ProgressLine line(err, "preparing the map sheet", std::chrono::milliseconds(0));
        line.watch().tell({1, 4});
    }
    EXPECT_EQ(err.str(), "\rpreparing the map sheet:  25 %\n");
}

TEST(ProgressLine, WhatIsQuickSaysNothing) {
    std::ostringstream err;
    {
        ProgressLine line(err, "preparing the map sheet");
        line.watch().tell({1, 4});
    }
    EXPECT_EQ(err.str(), "");
}

}  // namespace
}  // namespace crosstick::app
