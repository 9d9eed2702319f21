#include "app/commands/card_forms.h"
#include "app/commands/light_forms.h"
#include "core/geodesy/plane_angles.h"
#include "core/movement/gm_angle.h"

namespace crosstick::app {
namespace {

Json time(const std::optional<Instant>& when, TimeZone zone) {
    return when ? Json(isoTime(*when, zone)) : Json(nullptr);
}

Json pieceJson(const movement::Piece& piece) {
    return {{"from_easting_m", number(piece.from.easting)},
            {"from_northing_m", number(piece.from.northing)},
            {"to_easting_m", number(piece.to.easting)},
            {"to_northing_m", number(piece.to.northing)},
            {"grid_azimuth_deg", number(piece.gridAzimuth)},
            {"back_grid_azimuth_deg", number(geodesy::backAzimuth(piece.gridAzimuth))},
            {"magnetic_azimuth_deg", number(piece.magneticAzimuth)},
            {"back_magnetic_azimuth_deg", number(geodesy::backAzimuth(piece.magneticAzimuth))},
            {"true_azimuth_deg", number(piece.trueAzimuth)},
            {"map_distance_m", number(piece.mapDistance)},
            {"ground_distance_m", number(piece.groundDistance)},
            {"slope_distance_m", number(piece.slopeDistance)},
            {"climb_m", number(piece.climb)},
            {"descent_m", number(piece.descent)},
            {"paces", number(piece.paces)},
            {"minutes", number(piece.time)}};
}

Json legJson(const movement::Leg& leg, TimeZone zone) {
    Json pieces = Json::array();
    for (const movement::Piece& piece : leg.pieces) {
        pieces.push_back(pieceJson(piece));
    }
    return {{"leg", leg.number},
            {"from", leg.fromLabel},
            {"from_grid", leg.fromGrid},
            {"to", leg.toLabel},
            {"to_grid", leg.toGrid},
            {"map_distance_m", number(leg.mapDistance)},
            {"ground_distance_m", number(leg.groundDistance)},
            {"slope_distance_m", number(leg.slopeDistance)},
            {"climb_m", number(leg.climb)},
            {"descent_m", number(leg.descent)},
            {"paces", number(leg.paces)},
            {"minutes", number(leg.time)},
            {"ground_distance_so_far_m", number(leg.groundSoFar)},
            {"minutes_so_far", number(leg.timeSoFar)},
            {"arrival", time(leg.arrival, zone)},
            {"pieces", std::move(pieces)}};
}

Json crossingJson(const movement::Crossing& crossing, TimeZone zone) {
    return {{"line", crossing.label},
            {"leg", crossing.leg},
            {"easting_m", number(crossing.at.easting)},
            {"northing_m", number(crossing.at.northing)},
            {"map_distance_from_last_m", number(crossing.mapFromLast)},
            {"map_distance_so_far_m", number(crossing.mapSoFar)},
            {"ground_distance_so_far_m", number(crossing.groundSoFar)},
            {"minutes_so_far", number(crossing.timeSoFar)},
            {"arrival", time(crossing.arrival, zone)}};
}

Json gmJson(const movement::GmAngle& gm, const std::string& modelName) {
    return {{"gm_angle_deg", number(gm.angle)},
            {"gm_angle_source", gm.source == plan::DeclinationSource::Model ? "model" : "sheet"},
            {"declination_deg", gm.model ? number(gm.model->declination) : Json(nullptr)},
            {"declination_sigma_deg", gm.model ? number(gm.model->sigma) : Json(nullptr)},
            {"declination_model", gm.model ? Json(modelName) : Json(nullptr)},
            {"declination_date", isoDate(gm.date)},
            {"declination_height_m", number(gm.height)},
            {"convergence_deg", number(gm.convergence)},
            {"model_gm_angle_deg", number(movement::modelledAngle(gm))},
            {"printed_gm_angle_deg", number(gm.printed)},
            {"printed_less_model_deg", number(movement::disagreement(gm))},
            {"middle_easting_m", number(gm.middle.easting)},
            {"middle_northing_m", number(gm.middle.northing)}};
}

/// A date each.
Json lightJson(const std::vector<movement::DatedLight>& lights, TimeZone zone) {
    Json list = Json::array();
    for (const movement::DatedLight& dated : lights) {
        Json json{{"date", isoDate(dated.date)}};
        putLight(json, dated.light, ZoneRules(zone));
        list.push_back(std::move(json));
    }
    return list;
}

Json onwardJson(const std::optional<movement::Onward>& onward) {
    if (!onward) {
        return nullptr;
    }
    Json json = pieceJson(onward->piece);
    json["to"] = onward->toLabel;
    return json;
}

Json routeJson(const plan::Plan& plan, const CardContent& content, const std::string& modelName) {
    const movement::RouteFigures& figures = content.figures;
    const TimeZone zone = plan.heading().zone;
    Json json{{"route", figures.name},
              {"use", figures.use == plan::Use::Primary ? "primary" : "alternate"},
              {"grid_crs", figures.gridCrs}};
    json.update(gmJson(figures.gm, modelName));
    json["light"] = lightJson(content.light, zone);
    json["double_paces_per_100_m"] = figures.pace ? number(figures.pace->doublePacesPer100) : Json(nullptr);
    json["pace_note"] = figures.pace ? Json(figures.pace->note) : Json(nullptr);
    json["rate_kmh"] = figures.rate ? number(figures.rate->rate) : Json(nullptr);
    json["rate_note"] = figures.rate ? Json(figures.rate->note) : Json(nullptr);
    json["start"] = time(figures.start, zone);
    json["arrival"] = time(figures.arrival, zone);
    json["map_distance_m"] = number(figures.mapDistance);
    json["ground_distance_m"] = number(figures.groundDistance);
    json["slope_distance_m"] = number(figures.slopeDistance);
    json["climb_m"] = number(figures.climb);
    json["descent_m"] = number(figures.descent);
    json["paces"] = number(figures.paces);
    json["minutes"] = number(figures.time);
    json["legs"] = Json::array();
    for (const movement::Leg& leg : figures.legs) {
        json["legs"].push_back(legJson(leg, zone));
    }
    json["crossings"] = Json::array();
    for (const movement::Crossing& crossing : content.crossings) {
        json["crossings"].push_back(crossingJson(crossing, zone));
    }
    json["onward"] = onwardJson(figures.onward);
    return json;
}

}  // namespace

std::string cardJson(const plan::Plan& plan, const std::vector<CardContent>& routes, const std::string& modelName) {
    Json all = Json::array();
    for (const CardContent& content : routes) {
        all.push_back(routeJson(plan, content, modelName));
    }
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace crosstick::app
