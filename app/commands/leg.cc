#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/wording/wording.h"
#include "core/geodesy/place_text.h"
#include "core/geodesy/plane_angles.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

struct LegOptions {
    std::string from, to, date, profile, rate;
    bool json = false;
};

/// What a pace profile and a rate add to a leg.
struct March {
    std::optional<double> paces;  ///< double paces, on ground distance
    std::optional<Minutes> time;
};

March marchOver(const geodesy::Leg& leg, const LegOptions& options) {
    March march;
    if (const auto profile = checkedNumber(options.profile)) {
        march.paces = leg.groundDistance.value() / 100 * *profile;
    }
    if (const auto rate = checkedNumber(options.rate)) {
        march.time = Minutes(leg.groundDistance.value() / 1000 / *rate * 60);
    }
    return march;
}

void putBearing(Json& json, const std::string& kind, const std::optional<geodesy::Bearing>& bearing) {
    json[kind + "_azimuth_deg"] = bearing ? number(bearing->forward) : Json();
    json["back_" + kind + "_azimuth_deg"] = bearing ? number(bearing->back) : Json();
}

void putEnd(Json& json, const std::string& end, const geodesy::GridPoint& point) {
    json[end + "_easting_m"] = number(point.at.easting);
    json[end + "_northing_m"] = number(point.at.northing);
}

Json jsonOf(const geodesy::Leg& leg, const March& march) {
    Json json;
    json["from"] = mgrsJson(leg.from);
    json["to"] = mgrsJson(leg.to);
    json["zone"] = leg.from.zone.number;
    json["hemisphere"] = hemisphereLetter(leg.from.zone);
    putEnd(json, "from", leg.from);
    putEnd(json, "to", leg.to);
    putBearing(json, "grid", leg.grid);
    putBearing(json, "true", leg.trueNorth);
    putBearing(json, "magnetic", leg.magnetic);
    json["grid_distance_m"] = number(leg.gridDistance);
    json["ground_distance_m"] = number(leg.groundDistance);
    json["slope_distance_m"] = nullptr;  // two places alone have no heights
    json["climb_m"] = nullptr;
    json["descent_m"] = nullptr;
    json["paces"] = number(march.paces);
    json["minutes"] = number(march.time);
    json["convergence_deg"] = number(leg.middle.grid.convergence);
    putDeclination(json, leg.middle);
    json["date"] = isoDate(leg.middle.date);
    json["height_m"] = number(leg.middle.height);
    return json;
}

std::string exactText(const geodesy::Bearing& bearing) {
    return numberText(bearing.forward.value(), 4) + " / " + numberText(bearing.back.value(), 4);
}

void writeBearing(std::ostream& out, std::string_view name, const std::optional<geodesy::Bearing>& bearing) {
    using geodesy::AngleUnit;
    using geodesy::azimuthText;
    if (!bearing) {
        out << fmt::format("  {:<18}{}\n", name, "none");
        return;
    }
    const auto pair = [&](AngleUnit unit) {
        return azimuthText(bearing->forward, unit) + " / " + azimuthText(bearing->back, unit);
    };
    out << fmt::format("  {:<18}{:<14}{:<16}{}\n", name, pair(AngleUnit::Degrees), pair(AngleUnit::Mils),
                       exactText(*bearing));
}

void writeDistance(std::ostream& out, std::string_view name, Metres distance) {
    out << fmt::format("  {:<18}{:<30}{}\n", name, geodesy::distanceText(distance) + " m",
                       numberText(distance.value(), 3));
}

void writeForPeople(std::ostream& out, const geodesy::Leg& leg, const March& march, const LegOptions& options) {
    const auto end = [&](std::string_view name, const geodesy::GridPoint& point) {
        out << fmt::format("{:<6}{:<22}{}\n", name, geodesy::mgrsText(point, geodesy::Digits::Ten),
                           geodesy::gridText(point));
    };
    end("From", leg.from);
    end("To", leg.to);
    out << fmt::format("  {:<18}{:<14}{:<16}{}\n", "Azimuth / back", "degrees", "mils", "exact degrees");
    writeBearing(out, "Magnetic", leg.magnetic);
    writeBearing(out, "Grid", leg.grid);
    writeBearing(out, "True", leg.trueNorth);
    writeDistance(out, "Map distance", leg.gridDistance);
    writeDistance(out, "Ground distance", leg.groundDistance);
    const auto row = [&](std::string_view name, const std::string& shown, const std::string& exact) {
        out << fmt::format("  {:<18}{:<30}{}\n", name, shown, exact);
    };
    if (march.paces) {
        row("Pace count", fmt::format("{} double paces", numberText(*march.paces, 0)),
            fmt::format("{} at {} to 100 m", numberText(*march.paces, 2), numberText(*checkedNumber(options.profile))));
    }
    if (march.time) {
        row("Time", fmt::format("{} min", numberText(march.time->value(), 0)),
            fmt::format("{} at {} km/h", numberText(march.time->value(), 2), numberText(*checkedNumber(options.rate))));
    }
    if (leg.middle.gmAngle) {
        out << fmt::format("  {:<18}{} ({})\n", "G-M angle", geodesy::gmAngleText(*leg.middle.gmAngle),
                           numberText(leg.middle.gmAngle->value(), 6));
    }
    out << fmt::format("  {:<18}{}\n", "Declination", declinationText(leg.middle) + ", at the leg's middle");
    out << '\n';
    const auto& found = leg.middle.declination;
    out << cautionText(found ? std::optional(found->horizontal) : std::nullopt);
}

Exit legCommand(const LegOptions& options, const Surroundings& surroundings) {
    const auto model = magneticModel(surroundings);
    if (!model) {
        return couldNot(surroundings, model.error());
    }
    const auto from = geodesy::parsePoint(asTyped(options.from));
    const auto to = geodesy::parsePoint(asTyped(options.to));
    if (!from || !to) {
        return couldNot(surroundings, from ? to.error() : from.error());
    }
    const auto leg =
        geodesy::legBetween(from->southWest, to->southWest, *model, dateOr(options.date, surroundings.now));
    if (!leg) {
        return couldNot(surroundings, leg.error());
    }
    const March march = marchOver(*leg, options);
    if (options.json) {
        say(surroundings.out, Json::array({jsonOf(*leg, march)}));
    } else {
        writeForPeople(surroundings.out, *leg, march, options);
    }
    return Exit::Done;
}

constexpr std::string_view kManual = R"(Azimuths and distances of one straight leg between two places.

Both places are taken in the grid zone of the first. Grid azimuth and map distance are those of the
plane, as protractor and ruler give them on the sheet; true azimuth and ground distance are those of
the geodesic on WGS 84, each azimuth at the end where it is read. Magnetic azimuth = grid azimuth -
G-M angle, by the declination at the leg's middle on the date. A POINT is written as for
"crosstick grid"; one in MGRS is the south-west corner of its square.

For people, azimuths are rounded to whole degrees and 10 mils and distances to 10 m, with the exact
figure beside. A leg of no length has no azimuth. Without a profile there is no pace count and
without a rate no time; heights are not known, so there is no climb.

  crosstick leg "25T FL 5430 9806" "25T FL 5444 9766" --profile 74 --rate 1.6 --date 2027-03-13)";

}  // namespace

void addLeg(CLI::App& program, Action& action) {
    auto options = std::make_shared<LegOptions>();
    CLI::App* command = program.add_subcommand("leg", std::string(kManual));
    command->add_option("FROM", options->from, "Where the leg begins")->type_name("")->required();
    command->add_option("TO", options->to, "Where it ends")->type_name("")->required();
    command->add_option("--date", options->date, "Date of the declination, as 2027-03-13; today where not given")
        ->type_name("DATE")
        ->check(CLI::Validator(dateFault, ""));
    command->add_option("--profile", options->profile, "Double paces to 100 m of ground")
        ->type_name("PACES")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_option("--rate", options->rate, "Kilometres an hour, halts included")
        ->type_name("KMH")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_flag("--json", options->json, "One array with one object, in full precision");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return legCommand(*options, surroundings); };
    });
}

}  // namespace crosstick::app
