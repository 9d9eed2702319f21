#include "core/geodesy/declination.h"

#include <GeographicLib/MagneticModel.hpp>

#include "core/geodesy/faults.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

// WMM2025 holds from 2025.0 to 2030.0, both ends included; GeographicLib would answer beyond them in silence.
constexpr double kFirstYear = 2025.0;
constexpr double kLastYear = 2030.0;
constexpr Metres kLowest{-1000};
constexpr Metres kHighest{850000};
constexpr Nanotesla kBlackout{2000};

// Total one-sigma of the model's declination: trade 9c, from the WMM2025 report.
Degrees sigmaAt(Nanotesla horizontal) {
    return Degrees(std::hypot(0.26, 5417.0 / horizontal.value()));
}

}  // namespace

struct MagneticModel::Model {
    explicit Model(const std::string& folder) : field("wmm2025", folder) {}
    GeographicLib::MagneticModel field;
};

Result<MagneticModel> MagneticModel::open(const std::filesystem::path& folder) {
    try {
        return MagneticModel(std::make_shared<const Model>(folder.string()));
    } catch (const std::exception& error) {
        return fail(kNoMagneticModel, {{"where", folder.string()}, {"why", std::string(error.what())}});
    }
}

Result<Declination> MagneticModel::at(GeoPoint place, CalendarDate date, Metres height) const {
    const double year = date.ok() ? decimalYear(date) : 0;
    if (!(year >= kFirstYear && year <= kLastYear)) {
        return fail(kDateOutsideModel, {{"date", isoDate(date)}});
    }
    if (!(height >= kLowest && height <= kHighest)) {
        return fail(kHeightOutsideModel, {{"height", height.value()}});
    }
    double east = 0;
    double north = 0;
    double up = 0;
    model_->field(year, place.latitude.value(), place.longitude.value(), height.value(), east, north, up);
    double horizontal = 0;
    double total = 0;
    double declination = 0;
    double inclination = 0;
    GeographicLib::MagneticModel::FieldComponents(east, north, up, horizontal, total, declination, inclination);
    if (Nanotesla(horizontal) < kBlackout) {
        return fail(kWeakField, {{"horizontal", numberText(horizontal, 0)}});
    }
    return Declination{Degrees(declination), sigmaAt(Nanotesla(horizontal)), Nanotesla(horizontal)};
}

std::string MagneticModel::name() const {
    return "WMM2025";
}

}  // namespace crosstick::geodesy
