#include <gtest/gtest.h>

#include <QApplication>

#include "ui/look/theme.h"

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    QApplication application(argc, argv);
    if (!crosstick::look::bringFace(CROSSTICK_SHARE)) {
        return 1;
    }
    return RUN_ALL_TESTS();
}
