#include <gtest/gtest.h>

#include <QApplication>

#include "tests/places.h"
#include "ui/look/theme.h"

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    QApplication application(argc, argv);
    if (!crosstick::look::bringFace(crosstick::places::share())) {
        return 1;
    }
    return RUN_ALL_TESTS();
}
