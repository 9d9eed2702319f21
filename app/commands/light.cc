#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/light_forms.h"
#include "core/geodesy/place_text.h"

namespace crosstick::app {
namespace {

struct LightOptions {
    std::string point, date, zone = "Z";
    bool json = false;
};

struct Answer {
    geodesy::GridPoint point;
    geodesy::GeoPoint place;
    CalendarDate date;
    ZoneRules zone;
    sky::Light light;
};

Result<Answer> answerTo(const LightOptions& options, Instant now) {
    const auto reference = geodesy::parsePoint(asTyped(options.point));
    if (!reference) {
        return tl::unexpected(reference.error());
    }
    const auto place = geodesy::geographic(reference->southWest);
    if (!place) {
        return tl::unexpected(place.error());
    }
    const auto zone = ZoneRules::parse(asTyped(options.zone), std::nullopt);
    if (!zone) {
        return tl::unexpected(zone.error());
    }
    const CalendarDate date =
        options.date.empty() ? localDate(now, zone->at(now)) : parseIsoDate(asTyped(options.date)).value();
    const CalendarDate next(std::chrono::sys_days(date) + std::chrono::days(1));
    return sky::lightBetween(*place, zone->startOf(date), zone->startOf(next)).map([&](const sky::Light& light) {
        return Answer{reference->southWest, *place, date, *zone, light};
    });
}

Json jsonOf(const Answer& answer) {
    Json json;
    json["mgrs"] = mgrsJson(answer.point);
    json["latitude_deg"] = number(answer.place.latitude);
    json["longitude_deg"] = number(answer.place.longitude);
    json["date"] = isoDate(answer.date);
    json["from"] = isoTime(answer.light.from, answer.zone.at(answer.light.from));
    json["until"] = isoTime(answer.light.until, answer.zone.at(answer.light.until));
    putLight(json, answer.light, answer.zone);
    return json;
}

void writeForPeople(std::ostream& out, const Answer& answer) {
    const auto row = [&](std::string_view name, const std::string& text) {
        out << fmt::format("  {:<18}{}\n", name, text);
    };
    const Instant noon = answer.light.noon;
    out << fmt::format("{}  {}\n", geodesy::mgrsText(answer.point, geodesy::Digits::Ten),
                       geodesy::degreesText(answer.place));
    out << fmt::format("{}, clocks as at {}\n", isoDate(answer.date), isoTime(noon, answer.zone.at(noon)));
    bool uncertain = false;
    for (const sky::LightRow& event : sky::rowsOf(answer.light)) {
        row(event.name, sky::eventText(answer.light, *event.event, answer.zone));
        uncertain = uncertain || (event.event->first && event.event->first->certainty != sky::Certainty::Sure);
    }
    row("moon lit",
        sky::moonLitText(answer.light.moonLit) + " at " + clockTime(answer.light.noon, answer.zone.at(noon)));
    if (uncertain) {
        out << "Uncertain: sun or moon turns within 0.02 degree of the horizon, and a hill or the air decides.\n";
    }
    out << "Sun's centre at -12, -6 and -0:50 degrees, moon's upper limb at -0:34; a level horizon at sea level.\n";
}

Exit lightCommand(const LightOptions& options, const Surroundings& surroundings) {
    const auto answer = answerTo(options, surroundings.now);
    if (!answer) {
        return couldNot(surroundings, answer.error());
    }
    if (options.json) {
        say(surroundings.out, Json::array({jsonOf(*answer)}));
    } else {
        writeForPeople(surroundings.out, *answer);
    }
    return Exit::Done;
}

constexpr std::string_view kManual = R"(Twilight, sun and moon at a place on one calendar date.

Sunrise and sunset: the sun's upper limb on a level horizon, its centre at -0:50 degrees. Civil and
nautical twilight begin and end where its centre is 6 and 12 degrees below (nautical: BMNT and EENT).
Transit: the sun in the meridian. Moonrise and moonset: the moon's upper limb at -0:34. What does not
happen on the date is "none" (null in JSON); what turns within 0.02 degree of its horizon is
"uncertain". Near the poles an event may happen twice on a date: "second" in JSON. The moon's lit part
is that at the middle of the date. Hills are not reckoned with.

The date is that of the zone, and so are the times: a letter (Z, R, ...), an offset (+02:00), or a
name with its summer time (Europe/Oslo); never the zone of this machine. A POINT is written as for
"crosstick grid". Sun and moon by ERFA (the IAU's SOFA routines), good to some seconds, for dates from
1970 to 2050.

  crosstick light "25T FL 5427 9806" --date 2027-03-13 --zone O)";

}  // namespace

void addLight(CLI::App& program, Action& action) {
    auto options = std::make_shared<LightOptions>();
    CLI::App* command = program.add_subcommand("light", std::string(kManual));
    command->add_option("POINT", options->point, "The place")->type_name("")->required();
    command->add_option("--date", options->date, "Date in the zone, as 2027-03-13; today where not given")
        ->type_name("DATE")
        ->check(CLI::Validator(dateFault, ""));
    command->add_option("--zone", options->zone, "Zone of date and times: a letter, +HH:MM or a name; Z if not given")
        ->type_name("ZONE");
    command->add_flag("--json", options->json, "One array with one object, times as 2027-03-13T05:16:41-02:00");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return lightCommand(*options, surroundings); };
    });
}

}  // namespace crosstick::app
