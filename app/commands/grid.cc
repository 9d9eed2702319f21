#include <istream>
#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/wording/wording.h"
#include "core/geodesy/place_text.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

struct GridOptions {
    std::vector<std::string> points;
    std::string date, height;
    bool json = false;
};

/// One place that was asked for, and how an error names it: "line 3", "point 2".
struct Asked {
    std::string text, where;
};

struct Answer {
    std::string input;
    geodesy::GridReference reference;
    geodesy::GeoPoint place;
    geodesy::Norths norths;
};

bool isBlank(const std::string& line) {
    return line.find_first_not_of(" \t\r") == std::string::npos;
}

std::vector<Asked> askedFor(const GridOptions& options, std::istream& in) {
    std::vector<Asked> asked;
    if (!options.points.empty()) {
        for (std::size_t n = 0; n < options.points.size(); ++n) {
            asked.push_back(
                {asTyped(options.points[n]), options.points.size() > 1 ? fmt::format("point {}: ", n + 1) : ""});
        }
        return asked;
    }
    std::string line;
    for (int number = 1; std::getline(in, line); ++number) {
        if (!isBlank(line)) {
            asked.push_back({line, fmt::format("line {}: ", number)});
        }
    }
    return asked;
}

Result<Answer> answerTo(const Asked& asked, const geodesy::MagneticModel& model, CalendarDate date, Metres height) {
    const auto reference = geodesy::parsePoint(asked.text);
    if (!reference) {
        return tl::unexpected(reference.error());
    }
    const auto place = geodesy::geographic(reference->southWest);
    if (!place) {
        return tl::unexpected(place.error());
    }
    return geodesy::norths(reference->southWest, model, date, height).map([&](const geodesy::Norths& norths) {
        return Answer{asked.text, *reference, *place, norths};
    });
}

Json jsonOf(const Answer& answer) {
    const geodesy::GridPoint& point = answer.reference.southWest;
    Json json;
    json["input"] = answer.input;
    json["mgrs"] = mgrsJson(point);
    json["square_m"] = number(answer.reference.square);
    json["zone"] = point.zone.number;
    json["hemisphere"] = hemisphereLetter(point.zone);
    json["easting_m"] = number(point.at.easting);
    json["northing_m"] = number(point.at.northing);
    json["latitude_deg"] = number(answer.place.latitude);
    json["longitude_deg"] = number(answer.place.longitude);
    json["convergence_deg"] = number(answer.norths.grid.convergence);
    json["scale_factor"] = number(answer.norths.grid.scale);
    putDeclination(json, answer.norths);
    json["date"] = isoDate(answer.norths.date);
    json["height_m"] = number(answer.norths.height);
    return json;
}

/// The digits that name a square of that side; 1 m for finer ones and for exact points.
geodesy::Digits digitsOf(std::optional<Metres> square) {
    int digits = 5;
    for (double side = 1; square && side < square->value() && digits > 0; side *= 10) {
        --digits;
    }
    return static_cast<geodesy::Digits>(digits);
}

std::string squareText(std::optional<Metres> square) {
    if (!square) {
        return {};
    }
    const double side = square->value();
    const std::string size = side >= 1000 ? numberText(side / 1000) + " km" : numberText(side) + " m";
    return "square of " + size + "; the figures are those of its south-west corner";
}

void writeForPeople(std::ostream& out, const Answer& answer) {
    const geodesy::GridPoint& point = answer.reference.southWest;
    const auto row = [&](std::string_view name, const std::string& shown, const std::string& exact) {
        const std::string line = exact.empty() ? shown : fmt::format("{:<43}{}", shown, exact);
        out << fmt::format("  {:<14}{}\n", name, line);
    };
    out << geodesy::mgrsText(point, digitsOf(answer.reference.square)) << '\n';
    if (answer.reference.square) {
        row("names a", squareText(answer.reference.square), "");
    }
    row(point.zone.number == 0 ? "UPS" : "UTM", geodesy::gridText(point), "metres");
    row("WGS 84", geodesy::sexagesimalText(answer.place), geodesy::degreesText(answer.place));
    row("Grid north", geodesy::convergenceText(answer.norths.grid.convergence) + " of true north",
        numberText(answer.norths.grid.convergence.value(), 6));
    row("Scale", numberText(answer.norths.grid.scale, 6), numberText(answer.norths.grid.scale, 9));
    if (answer.norths.gmAngle) {
        const Degrees angle = *answer.norths.gmAngle;
        row("G-M angle", fmt::format("{} ({})", geodesy::gmAngleText(angle), numberText(angle.value(), 6)), "");
    }
    row("Declination", declinationText(answer.norths), "");
    out << '\n';
}

Exit grid(const GridOptions& options, const Surroundings& surroundings) {
    const auto model = magneticModel(surroundings);
    if (!model) {
        return couldNot(surroundings, model.error());
    }
    const CalendarDate date = dateOr(options.date, surroundings.now);
    const Metres height(checkedNumber(options.height).value_or(0));
    Exit exit = Exit::Done;
    Json array = Json::array();
    std::optional<Nanotesla> weakest;
    for (const Asked& asked : askedFor(options, surroundings.in)) {
        const auto answer = answerTo(asked, *model, date, height);
        if (!answer) {
            surroundings.err << "crosstick: " << asked.where << words(answer.error()) << '\n';
            exit = Exit::CouldNot;
            continue;
        }
        if (options.json) {
            array.push_back(jsonOf(*answer));
            continue;
        }
        writeForPeople(surroundings.out, *answer);
        if (const auto& found = answer->norths.declination) {
            weakest = std::min(weakest.value_or(found->horizontal), found->horizontal);
        }
    }
    if (options.json) {
        say(surroundings.out, array);
    } else if (weakest) {
        surroundings.out << cautionText(weakest);
    }
    return exit;
}

constexpr std::string_view kManual =
    R"(Writes a place in every form, with convergence, scale, declination and G-M angle.

Without a POINT, places are read from standard input, one a line; a line that cannot be read is
named on standard error, the others are answered all the same, and the exit status is 1.

A POINT (in quotation marks where it has blanks) may be
  MGRS                 "18S UJ 2348 0647", 18SUJ23480647, a square of 100 km to 1 mm, ZAA0000033272
  UTM                  "18N 323483 4306479": zone, hemisphere n or s, easting, northing in metres
                       "18 south 323483 4306479" where the letter S could be the latitude band S
  UPS                  "n 2000000 1555731"
  degrees              "38.8894 -77.0352", "38.8894N 77.0352W", "38,8894 -77,0352"
  and minutes          "38 53.37N 77 02.11W"
  and seconds          "38 53 22N 77 02 07W", "385322N 0770207W"
A reference in MGRS names a square: the figures are those of its south-west corner. All is on WGS 84.

Angles are positive to the east and clockwise. Convergence: grid north from true north. Declination:
magnetic north from true north, by WMM2025, which holds from 2025.0 to 2030.0. G-M angle: magnetic
north from grid north; magnetic azimuth = grid azimuth - G-M angle.

  crosstick grid "18S UJ 2348 0647"
  crosstick grid "-36 -137" --date 2027-03-13 --height 1200 --json)";

}  // namespace

void addGrid(CLI::App& program, Action& action) {
    auto options = std::make_shared<GridOptions>();
    CLI::App* command = program.add_subcommand("grid", std::string(kManual));
    command->add_option("POINT", options->points, "Places; from standard input where none is given")->type_name("");
    command->add_option("--date", options->date, "Date of the declination, as 2027-03-13; today where not given")
        ->type_name("DATE")
        ->check(CLI::Validator(dateFault, ""));
    command
        ->add_option("--height", options->height, "Metres above the ellipsoid, for the declination; 0 where not given")
        ->type_name("METRES")
        ->check(CLI::Validator(numberFault, ""));
    command->add_flag("--json", options->json, "One array of objects, in full precision");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return grid(*options, surroundings); };
    });
}

}  // namespace crosstick::app
