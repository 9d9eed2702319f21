#include "core/drafting/bearing.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/drafting/faults.h"

namespace crosstick::drafting {
namespace {

using geodesy::AngleUnit;

TEST(Bearing, IsMagneticUnlessSaid) {
    EXPECT_EQ(bearingTyped("227", AngleUnit::Degrees), (Bearing{Degrees(227), North::Magnetic}));
    EXPECT_EQ(bearingTyped(" 227 G", AngleUnit::Degrees), (Bearing{Degrees(227), North::Grid}));
    EXPECT_EQ(bearingTyped("12.5\u00b0 true", AngleUnit::Degrees), (Bearing{Degrees(12.5), North::True}));
    EXPECT_EQ(bearingTyped("1600", AngleUnit::Mils), (Bearing{Degrees(90), North::Magnetic}));
    EXPECT_EQ(bearingTyped("1600 mils g", AngleUnit::Degrees), (Bearing{Degrees(90), North::Grid}));
    EXPECT_EQ(bearingTyped("90deg", AngleUnit::Mils), (Bearing{Degrees(90), North::Magnetic}));
    EXPECT_EQ(bearingTyped("360", AngleUnit::Degrees), (Bearing{Degrees(0), North::Magnetic}));
}

TEST(Bearing, WithADistanceInMetresOrKilometres) {
    const BearingAndDistance grid{{Degrees(227), North::Grid}, Metres(2500)};
    for (const char* text : {"227 G 2500", "227G/2500", "227 g, 2.5 km", "227grid 2500 m"}) {
        EXPECT_EQ(bearingAndDistanceTyped(text, AngleUnit::Degrees), grid) << text;
    }
    EXPECT_EQ(bearingAndDistanceTyped("227 M 400", AngleUnit::Degrees),
              (BearingAndDistance{{Degrees(227), North::Magnetic}, Metres(400)}));
}

TEST(Bearing, WhatIsNoneIsRefusedWithTheReason) {
    for (const char* text : {"", "north", "G 227", "227 X", "-5", "12 13", "1..2"}) {
        EXPECT_EQ(bearingTyped(text, AngleUnit::Degrees).error().fault, kNoBearing) << text;
    }
    EXPECT_EQ(bearingTyped("361", AngleUnit::Degrees).error().fault, kBearingRange);
    EXPECT_EQ(bearingTyped("6500", AngleUnit::Mils).error().fault, kBearingRange);
    for (const char* text : {"227", "227 0", "227 5 miles", "227 G 101 km", "227 G 1 2"}) {
        EXPECT_EQ(bearingAndDistanceTyped(text, AngleUnit::Degrees).error().fault, kNoDistance) << text;
    }
}

// grid = magnetic + G-M angle = true - convergence (trade 4.2): 318 magnetic with 11 east is 329 grid.
TEST(Bearing, GoesFromNorthToNorthAndBack) {
    const Norths norths{Degrees(11), Degrees(1.5)};
    EXPECT_EQ(gridAzimuth({Degrees(318), North::Magnetic}, norths), Degrees(329));
    EXPECT_EQ(gridAzimuth({Degrees(1), North::True}, norths), Degrees(359.5));
    for (const North north : {North::Grid, North::Magnetic, North::True}) {
        for (double azimuth = 0; azimuth < 360; azimuth += 7.3) {
            const Degrees there = gridAzimuth({Degrees(azimuth), north}, norths);
            EXPECT_NEAR(std::remainder(azimuthFrom(north, there, norths).value() - azimuth, 360), 0, 1e-9);
        }
    }
}

}  // namespace
}  // namespace crosstick::drafting
