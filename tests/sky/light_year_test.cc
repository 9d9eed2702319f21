// A year of light at seven latitudes from -70 to 80 against python3-ephem (tests/data/light-2027.txt).
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>

#include <gtest/gtest.h>

#include "core/sky/bodies.h"
#include "core/sky/light.h"
#include "tests/places.h"

namespace crosstick::sky {
namespace {

using std::chrono::days;
using std::chrono::seconds;

const Instant kYear(std::chrono::sys_days(std::chrono::year(2027) / 1 / 1));

struct Place {
    geodesy::GeoPoint at;
    std::map<std::string, std::vector<Instant>> events;
};

std::vector<Place> ephemsYear() {
    std::ifstream file(places::data() / "light-2027.txt");
    std::vector<Place> places;
    for (std::string line; std::getline(file, line);) {
        std::istringstream words(line);
        std::string name;
        words >> name;
        if (name == "place") {
            double latitude = 0;
            double longitude = 0;
            words >> latitude >> longitude;
            places.push_back({{Degrees(latitude), Degrees(longitude)}, {}});
        } else if (name != "#") {
            for (int since = 0; words >> since;) {
                places.back().events[name].push_back(kYear + seconds(since));
            }
        }
    }
    return places;
}

struct Kind {
    const char* name;
    Event Light::*event;
    Degrees level;
    Degrees (Bodies::*altitude)(Seconds) const;
};
const std::vector<Kind>& kinds() {
    static const std::vector<Kind> kKinds{
        {"nautical_dawn", &Light::nauticalDawn, Degrees(-12), &Bodies::sunAltitude},
        {"civil_dawn", &Light::civilDawn, Degrees(-6), &Bodies::sunAltitude},
        {"sunrise", &Light::sunrise, Degrees(-50.0 / 60), &Bodies::sunAltitude},
        {"transit", &Light::transit, Degrees(0), nullptr},
        {"sunset", &Light::sunset, Degrees(-50.0 / 60), &Bodies::sunAltitude},
        {"civil_dusk", &Light::civilDusk, Degrees(-6), &Bodies::sunAltitude},
        {"nautical_dusk", &Light::nauticalDusk, Degrees(-12), &Bodies::sunAltitude},
        {"moonrise", &Light::moonrise, Degrees(-34.0 / 60), &Bodies::moonLimbAltitude},
        {"moonset", &Light::moonset, Degrees(-34.0 / 60), &Bodies::moonLimbAltitude},
    };
    return kKinds;
}

/// The whole year date by date, in UTC.
std::map<std::string, std::vector<Moment>> ourYear(geodesy::GeoPoint place) {
    std::map<std::string, std::vector<Moment>> year;
    for (int day = 0; day < 365; ++day) {
        const Instant midnight = kYear + days(day);
        const Light light = lightBetween(place, midnight, midnight + days(1)).value();
        for (const Kind& kind : kinds()) {
            for (const auto& moment : {(light.*kind.event).first, (light.*kind.event).second}) {
                if (moment) {
                    year[kind.name].push_back(*moment);
                }
            }
        }
    }
    return year;
}

/// How far our altitude is from the level at ephem's time.
double altitudeError(const Place& place, const Kind& kind, Instant theirs) {
    if (kind.altitude == nullptr) {
        return 1;
    }
    const Bodies bodies(place.at, theirs, Seconds(600));
    return std::abs(((bodies.*kind.altitude)(Seconds(0)) - kind.level).value());
}

/// The worst of a kind of event, printed for the record.
struct Worst {
    double seconds = 0, degrees = 0;
    int sure = 0, uncertain = 0, onlyOurs = 0, onlyTheirs = 0;
};

void compare(const Place& place, const Kind& kind, const std::vector<Moment>& ours, Worst& worst) {
    const auto found = place.events.find(kind.name);
    const std::vector<Instant> none;
    const auto& theirs = found == place.events.end() ? none : found->second;
    const auto sameEvent = [](Instant a, Instant b) { return std::chrono::abs(a - b) < std::chrono::minutes(90); };
    for (const Instant when : theirs) {
        const auto our = std::find_if(ours.begin(), ours.end(), [&](const Moment& m) { return sameEvent(m.at, when); });
        ASSERT_NE(our, ours.end()) << kind.name << " at latitude " << place.at.latitude.value() << ": ours lacks "
                                   << isoTime(when, TimeZone{});
        const double late = std::abs(static_cast<double>((our->at - when).count()));
        const double high = altitudeError(place, kind, when);
        EXPECT_TRUE(late <= 60 || high <= 0.005) << kind.name << " at latitude " << place.at.latitude.value() << ", "
                                                 << isoTime(when, TimeZone{}) << ": " << late << " s, " << high;
        worst.degrees = std::max(worst.degrees, kind.altitude == nullptr ? 0 : high);
        if (our->certainty == Certainty::Sure) {
            worst.seconds = std::max(worst.seconds, late);
            ++worst.sure;
        } else {
            ++worst.uncertain;
        }
    }
    for (const Moment& moment : ours) {
        const bool met = std::any_of(theirs.begin(), theirs.end(), [&](Instant w) { return sameEvent(w, moment.at); });
        EXPECT_TRUE(met || moment.certainty != Certainty::Sure)
            << kind.name << " at latitude " << place.at.latitude.value() << ": only ours has "
            << isoTime(moment.at, TimeZone{});
    }
}

TEST(LightYear, AgreesWithEphemWithinAMinuteOrFiveThousandthsOfADegree) {
    const auto places = ephemsYear();
    ASSERT_EQ(places.size(), 7U);
    for (const Place& place : places) {
        const auto ours = ourYear(place.at);
        Worst worst;
        for (const Kind& kind : kinds()) {
            const auto found = ours.find(kind.name);
            compare(place, kind, found == ours.end() ? std::vector<Moment>{} : found->second, worst);
        }
        RecordProperty("latitude " + std::to_string(place.at.latitude.value()), std::to_string(worst.seconds));
        std::cout << "latitude " << place.at.latitude.value() << ": " << worst.sure << " events, worst "
                  << worst.seconds << " s, " << worst.degrees << " degree; uncertain " << worst.uncertain << '\n';
        EXPECT_GT(worst.sure, 1000);
    }
}

}  // namespace
}  // namespace crosstick::sky
