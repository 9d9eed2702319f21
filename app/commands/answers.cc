#include "app/commands/answers.h"

#include <cmath>
#include <ostream>

#include <fmt/format.h>

#include "app/wording/wording.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

constexpr Nanotesla kSluggish{6000};

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    return first == std::string_view::npos ? std::string_view{} : text.substr(first);
}

}  // namespace

Json number(double value) {
    if (!std::isfinite(value)) {
        return nullptr;
    }
    return value == 0 ? 0.0 : value;
}

Json number(const std::optional<double>& value) {
    return value ? number(*value) : Json();
}

void say(std::ostream& out, const Json& array) {
    out << array.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

void putDeclination(Json& answer, const geodesy::Norths& norths) {
    const auto& found = norths.declination;
    answer["declination_deg"] = found ? number(found->declination) : Json();
    answer["declination_sigma_deg"] = found ? number(found->sigma) : Json();
    answer["gm_angle_deg"] = number(norths.gmAngle);
    if (norths.noDeclination) {
        answer["declination_note"] = words(*norths.noDeclination);
    }
}

Json mgrsJson(const geodesy::GridPoint& point) {
    const auto text = geodesy::mgrs(point, geodesy::Digits::Metre);
    return text ? Json(*text) : Json();
}

std::string hemisphereLetter(geodesy::Zone zone) {
    return zone.hemisphere == geodesy::Hemisphere::North ? "n" : "s";
}

std::string declinationText(const geodesy::Norths& norths) {
    if (!norths.declination) {
        return "none: " + (norths.noDeclination ? words(*norths.noDeclination) : std::string{});
    }
    const double value = norths.declination->declination.value();
    return fmt::format("{} {}, one sigma {}; WMM2025 on {} at height {} m", numberText(std::abs(value), 2),
                       value < 0 ? "west" : "east", numberText(norths.declination->sigma.value(), 2),
                       isoDate(norths.date), numberText(norths.height.value()));
}

std::string cautionText(std::optional<Nanotesla> weakestField) {
    std::string text =
        "Caution: a planning aid. Check declination and datum against the sheet; iron, rock and power lines nearby "
        "turn a compass and are not in the model.\n";
    if (weakestField && *weakestField < kSluggish) {
        text += fmt::format("Caution: the horizontal field is only {} nT; a compass is slow and unsure here.\n",
                            numberText(weakestField->value(), 0));
    }
    return text;
}

std::string dateFault(const std::string& text) {
    const auto date = parseIsoDate(trimmed(text));
    return date ? std::string{} : words(date.error());
}

std::string numberFault(const std::string& text) {
    return checkedNumber(text) ? std::string{} : "\"" + text + "\" is no number.";
}

std::string positiveFault(const std::string& text) {
    const auto value = checkedNumber(text);
    return value && *value > 0 ? std::string{} : "\"" + text + "\" is no number above 0.";
}

std::optional<double> checkedNumber(const std::string& text) {
    return parseNumber(trimmed(text));
}

std::string asTyped(const std::string& argument) {
    return std::string(trimmed(argument));
}

CalendarDate dateOr(const std::string& text, Instant now) {
    return parseIsoDate(trimmed(text)).value_or(localDate(now, TimeZone{}));
}

Result<geodesy::MagneticModel> magneticModel(const Surroundings& surroundings) {
    return geodesy::MagneticModel::open(surroundings.share / "magnetic");
}

}  // namespace crosstick::app
