#include "ui/table/hand_words.h"

#include <cmath>

#include <fmt/format.h>

#include "core/geodesy/place_text.h"
#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"
#include "ui/press/said.h"

namespace crosstick::table {

using press::spoken;

namespace {

std::string azimuthWords(const work::Work& work, const movement::Piece& piece) {
    if (!isFinite(piece.magneticAzimuth)) {
        return "---";
    }
    const Degrees angle = fullCircle(piece.magneticAzimuth);
    if (work.angles() == geodesy::AngleUnit::Mils) {
        const auto tens = std::llround(mils(angle).value() / 10) * 10 % 6400;
        return spoken("%1 mils M", {fmt::format("{:04}", tens)});
    }
    return fmt::format("{:03}\u00b0 M", std::llround(angle.value()) % 360);
}

}  // namespace

std::string fourFigures(Metres line) {
    const auto tens = static_cast<std::int64_t>(std::floor(line.value() / 10));
    return fmt::format("{:04}", ((tens % 10000) + 10000) % 10000);
}

std::string placeWords(const work::Work& work, geodesy::PlanePoint onGrid) {
    if (work.grid() == nullptr) {
        return {};
    }
    std::string words = work.grid()->gridText(onGrid);
    const auto point = work.grid()->plane().grid(onGrid);
    if (point && work.grid()->plane().facts().onWgs84) {
        words = geodesy::mgrsText(*point, geodesy::Digits::Ten);
    }
    const auto inPlan = work.grid()->inPlan(onGrid);
    const auto height =
        work.heights() != nullptr && inPlan ? work.heights()->heightAt(*inPlan) : std::optional<Metres>();
    words += "  \u00b7  ";
    words += height                      ? spoken("height %1 m", {std::to_string(std::llround(height->value()))})
             : work.heights() == nullptr ? spoken("height: no model")
                                         : spoken("height unknown");
    if (const auto place = work.grid()->plane().geographic(onGrid)) {
        words += "  \u00b7  " + fmt::format("{:.4f} {}  {:.4f} {}", std::abs(place->latitude.value()),
                                            place->latitude.value() < 0 ? 'S' : 'N', std::abs(place->longitude.value()),
                                            place->longitude.value() < 0 ? 'W' : 'E');
    }
    return words;
}

Tag tagFor(const work::Work& work, const tools::Wet& wet, const std::string& hint, const std::string& film) {
    Tag tag;
    using Belongs = tools::Wet::Belongs;
    const std::string what = spoken(wet.what);
    tag.third = wet.belongs == Belongs::Nowhere     ? what
                : wet.belongs == Belongs::ToThePlan ? spoken("%1, for all films", {what})
                : film.empty()                      ? spoken("%1: no film to draw on", {what})
                                                    : spoken("%1, on %2", {what, film});
    if (wet.told) {
        return {wet.told->first, wet.told->second, wet.told->third};
    }
    if (!wet.from || wet.line.empty()) {
        tag.second = spoken(hint);
        return tag;
    }
    const auto figures = work.figuresBetween(wet.line[*wet.from], wet.line.back());
    if (!figures || figures->legs.empty() || figures->legs.front().pieces.empty()) {
        tag.second = spoken(hint);
        return tag;
    }
    const movement::Leg& leg = figures->legs.front();
    tag.first = azimuthWords(work, leg.pieces.front()) + "   " +
                std::to_string(std::llround(leg.mapDistance.value() / 10) * 10) + " m";
    tag.second =
        leg.paces ? spoken("%1 paces", {std::to_string(std::llround(*leg.paces))}) + " \u00b7 " : std::string{};
    if (leg.time) {
        tag.second += movement::timeText(*leg.time) + " \u00b7 ";
    }
    tag.second +=
        leg.climb ? spoken("climb %1 m", {std::to_string(std::llround(leg.climb->value()))}) : spoken("climb unknown");
    return tag;
}

std::vector<geodesy::PlanePoint> pointsOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return route->vertices;
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure && measure->anchor == plan::Anchor::Ground ? measure->points : std::vector<geodesy::PlanePoint>{};
}

std::filesystem::path besideFolder(const std::filesystem::path& folder, const std::string& file) {
    const std::filesystem::path path(file);
    return path.is_absolute() ? path : folder / path;
}

}  // namespace crosstick::table
