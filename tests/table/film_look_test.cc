// How films lie on the table: strengths, tints, and what a tint leaves of the pens.
#include "ui/work/film_look.h"

#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include <QColor>

#include "ui/table/tints.h"

namespace crosstick::table {
namespace {

using work::Fading;
using work::FilmLook;
using work::Tint;

TEST(FilmLook, GoesFromStrengthToStrengthAndStopsAtBothEnds) {
    FilmLook look;
    std::vector<int> way;
    for (int n = 0; n < 5; ++n) {
        look = faded(look, Fading::Fainter);
        way.push_back(static_cast<int>(std::lround(look.strength * 100)));
    }
    EXPECT_EQ(way, (std::vector{70, 50, 30, 30, 30}));
    look.strength = 0.6;  // between two of them, as a file or a hand may have it
    EXPECT_DOUBLE_EQ(faded(look, Fading::Fainter).strength, 0.5);
    EXPECT_DOUBLE_EQ(faded(look, Fading::Stronger).strength, 0.7);
    EXPECT_DOUBLE_EQ(faded(FilmLook{}, Fading::Stronger).strength, 1);
}

TEST(FilmLook, TintsComeRoundAndKeepTheRest) {
    Tint tint = Tint::None;
    std::set<Tint> seen;
    for (std::size_t n = 0; n < work::kTints.size(); ++n) {
        seen.insert(tint);
        tint = work::tintAfter(tint);
    }
    EXPECT_EQ(tint, Tint::None);
    EXPECT_EQ(seen.size(), work::kTints.size());
}

struct Lab {
    double l, a, b;
};

/// CIE 1976 L*a*b* for D65 from sRGB (IEC 61966-2-1, CIE 15): from memory.
Lab labOf(const QColor& colour) {
    const auto linear = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    const double r = linear(colour.redF());
    const double g = linear(colour.greenF());
    const double b = linear(colour.blueF());
    const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116; };
    const double x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
    const double y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
    const double z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double apart(const QColor& one, const QColor& other) {
    const Lab a = labOf(one);
    const Lab b = labOf(other);
    return std::hypot(a.l - b.l, a.a - b.a, a.b - b.b);
}

TEST(Tints, TheColourDistanceIsThatOfThePublishedValues) {
    // sRGB red is L* 53.24, a* 80.09, b* 67.20 (common tables).
    const Lab red = labOf(QColor(255, 0, 0));
    EXPECT_NEAR(red.l, 53.24, 0.05);
    EXPECT_NEAR(red.a, 80.09, 0.1);
    EXPECT_NEAR(red.b, 67.20, 0.1);
    EXPECT_NEAR(apart(Qt::white, Qt::black), 100, 0.1);
}

// 2.3 is what an eye just tells apart (common practice); lines on a map want ten times that.
constexpr double kTold = 23;

TEST(Tints, ByDayEachIsToldFromEveryPenFromOursAndFromTheOthers) {
    const press::Inks pens = press::dayInks();
    for (const Tint tint : {Tint::Amber, Tint::Rose, Tint::Teal}) {
        const QColor ink = tintForm(tint, Theme::Day).ink;
        ASSERT_TRUE(ink.isValid());
        for (const QColor& pen : pens.pens) {
            EXPECT_GT(apart(ink, pen), kTold) << ink.name().toStdString() << " and " << pen.name().toStdString();
        }
        EXPECT_GT(apart(ink, palette(Theme::Day).ours), kTold);
        for (const Tint other : {Tint::Amber, Tint::Rose, Tint::Teal}) {
            EXPECT_TRUE(other == tint || apart(ink, tintForm(other, Theme::Day).ink) > kTold);
        }
        const press::Inks inks = tinted(pens, tint, Theme::Day);
        for (const QColor& pen : inks.pens) {
            EXPECT_EQ(pen, ink);
        }
        EXPECT_EQ(inks.paper, pens.paper) << "halos stay the paper's";
    }
}

TEST(Tints, ByNightTheBandsDifferInFormAndThePensKeepTheirRed) {
    const press::Inks pens = press::nightInks();
    std::set<std::pair<double, double>> forms;
    for (const Tint tint : {Tint::Amber, Tint::Rose, Tint::Teal}) {
        const TintForm form = tintForm(tint, Theme::Night);
        EXPECT_TRUE(form.band.isValid());
        EXPECT_EQ(form.band.blue() < 0x20 && form.band.green() < 0x30, true) << "one hue, and no blue light";
        EXPECT_LT(form.from, form.until);
        forms.insert({form.from, form.until});
        EXPECT_EQ(tinted(pens, tint, Theme::Night).pens, pens.pens);
    }
    EXPECT_EQ(forms.size(), 3U);
    EXPECT_FALSE(tintForm(Tint::None, Theme::Night).band.isValid());
    EXPECT_FALSE(tintForm(Tint::None, Theme::Day).ink.isValid());
}

}  // namespace
}  // namespace crosstick::table
