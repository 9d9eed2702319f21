#include <cmath>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/geodesy/grid_reference.h"
#include "core/geodesy/place_text.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

constexpr unsigned kSeed = 4306479;
constexpr int kPlaces = 3000;

/// Evenly over the sphere.
class AnyPlace {
  public:
    GeoPoint next() { return {Degrees(std::asin(height_(random_)) * 180 / M_PI), Degrees(longitude_(random_))}; }

  private:
    std::mt19937 random_{kSeed};
    std::uniform_real_distribution<double> height_{-1, 1};
    std::uniform_real_distribution<double> longitude_{-180, 180};
};

/// Metres on the ground between two places near one another, rough.
double apart(GeoPoint a, GeoPoint b) {
    const double east =
        std::remainder((a.longitude - b.longitude).value(), 360) * std::cos(a.latitude.value() * M_PI / 180);
    return std::hypot((a.latitude - b.latitude).value(), east) * 111320;
}

double apart(const GridPoint& a, const GridPoint& b) {
    return apart(geographic(a).value(), geographic(b).value());
}

TEST(Points, ForwardAndBackClose) {
    AnyPlace places;
    for (int n = 0; n < kPlaces; ++n) {
        const GeoPoint place = places.next();
        const GeoPoint back = geographic(gridPoint(place).value()).value();
        ASSERT_LT(apart(place, back), 1e-7) << kSeed << ' ' << degreesText(place);
    }
}

TEST(Points, EveryTextThatIsPrintedIsReadBack) {
    AnyPlace places;
    for (int n = 0; n < kPlaces; ++n) {
        const GeoPoint place = places.next();
        const GridPoint point = gridPoint(place).value();
        const auto read = [&](const std::string& text) {
            const auto reference = parsePoint(text);
            EXPECT_TRUE(reference) << kSeed << ' ' << text;
            return reference.value().southWest;
        };
        ASSERT_LT(apart(read(gridText(point)), point), 0.001) << gridText(point);
        ASSERT_LT(apart(read(degreesText(place)), point), 0.02) << degreesText(place);
        ASSERT_LT(apart(read(sexagesimalText(place)), point), 0.4) << sexagesimalText(place);
        ASSERT_LT(apart(read(mgrsText(point, Digits::Metre)), point), 1.5) << mgrsText(point, Digits::Metre);
        const std::string exact = numberText(place.latitude.value()) + ' ' + numberText(place.longitude.value());
        ASSERT_LT(apart(read(exact), point), 1e-7) << exact;
    }
}

/// A reference read and printed again at its own precision is the same; each shorter one begins its longer ones.
TEST(Points, MgrsReadAndPrintedIsTheSame) {
    AnyPlace places;
    for (int n = 0; n < kPlaces; ++n) {
        const GridPoint point = gridPoint(places.next()).value();
        for (const Digits digits : {Digits::SquareOnly, Digits::TenKilometres, Digits::Kilometre, Digits::Hundred,
                                    Digits::Ten, Digits::Metre}) {
            const std::string printed = mgrs(point, digits).value();
            const auto read = parsePoint(printed);
            ASSERT_TRUE(read) << kSeed << ' ' << printed;
            // The corner of a square that a band's or a zone's edge cuts can lie in the next one; a metre inside it is
            // in it if the square is small.
            const Metres into(digits == Digits::Metre ? 0.5 : 0);
            const GridPoint inside{read->southWest.zone,
                                   {read->southWest.at.easting + into, read->southWest.at.northing + into}};
            if (digits >= Digits::Ten) {
                ASSERT_EQ(mgrs(inside, digits), printed) << kSeed;
            }
            ASSERT_LE(read->southWest.at.easting, point.at.easting) << printed;
            ASSERT_LE(read->southWest.at.northing, point.at.northing) << printed;
            ASSERT_GT(read->southWest.at.easting + *read->square, point.at.easting) << printed;
            ASSERT_GT(read->southWest.at.northing + *read->square, point.at.northing) << printed;
        }
    }
}

TEST(Points, BlanksAndCaseDoNotMatter) {
    AnyPlace places;
    for (int n = 0; n < 500; ++n) {
        const GridPoint point = gridPoint(places.next()).value();
        const std::string packed = mgrs(point, Digits::Ten).value();
        std::string spoken = mgrsText(point, Digits::Ten);
        for (char& c : spoken) {
            c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
        ASSERT_EQ(parsePoint(packed)->southWest, parsePoint(spoken)->southWest) << kSeed << ' ' << spoken;
    }
}

/// Any bytes at all: an answer or an error, and the error's text on one line.
TEST(Points, AnyTextIsAnsweredOrRefused) {
    std::mt19937 random(kSeed);
    const std::string letters = "0123456789 NSEWUMJ.,-+°'\":;/DLAT\xc2\xb0\xff\n";
    std::uniform_int_distribution<std::size_t> any(0, letters.size() - 1);
    std::uniform_int_distribution<int> length(0, 30);
    int read = 0;
    for (int n = 0; n < 100000; ++n) {
        std::string text;
        for (int more = length(random); more > 0; --more) {
            text += letters[any(random)];
        }
        const auto reference = parsePoint(text);
        if (reference) {
            ++read;
            const PlanePoint at = reference->southWest.at;
            ASSERT_TRUE(isFinite(at.easting) && isFinite(at.northing)) << kSeed << ' ' << text;
            ASSERT_TRUE(geographic(reference->southWest)) << text;
        }
    }
    EXPECT_GT(read, 100) << "the random text never was a place, so nothing was tried";
}

}  // namespace
}  // namespace crosstick::geodesy
