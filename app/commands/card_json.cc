#include "app/commands/card_forms.h"
#include "app/commands/light_forms.h"
#include "core/geodesy/plane_angles.h"
#include "core/movement/gm_angle.h"
#include "core/movement/rate_text.h"

namespace crosstick::app {
namespace {

/// Rise over run in per cent, negative downhill.
Json steepness(const std::optional<movement::Steepest>& steepest) {
    return steepest ? number(steepest->slope * 100) : Json(nullptr);
}

Json time(const std::optional<Instant>& when, TimeZone zone) {
    return when ? Json(isoTime(*when, zone)) : Json(nullptr);
}

/// Where climb and descent come from; null where they are unknown.
template <class Part>
Json heightsFrom(const Part& part) {
    return part.fromContours ? Json("contours") : part.climb ? Json("model") : Json(nullptr);
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
            {"back_true_azimuth_deg", number(piece.backTrueAzimuth)},
            {"map_distance_m", number(piece.mapDistance)},
            {"ground_distance_m", number(piece.groundDistance)},
            {"slope_distance_m", number(piece.slopeDistance)},
            {"climb_m", number(piece.climb)},
            {"descent_m", number(piece.descent)},
            {"steepest_percent", steepness(piece.steepest)},
            {"heights_from", heightsFrom(piece)},
            {"paces", number(piece.paces)},
            {"minutes", number(piece.time)},
            {"slowed_by_rule", piece.slowed}};
}

Json textOrNull(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

/// What the leader says about a leg.
void putNotes(Json& json, const movement::Leg& leg) {
    const plan::LegNotes& notes = leg.notes;
    json["going"] = !notes.going ? Json(nullptr) : Json(*notes.going == plan::Going::Road ? "road" : "cross-country");
    json["halt_minutes"] = number(notes.halt);
    json["catching"] = textOrNull(notes.catching);
    json["remark"] = textOrNull(notes.remark);
    json["rally_point"] = textOrNull(leg.rallyLabel);
    json["in_contact"] = textOrNull(notes.inContact);
    json["if_separated"] = textOrNull(notes.ifSeparated);
}

Json legJson(const movement::Leg& leg, const movement::PaperLeg& paper, const std::string& fromTie, TimeZone zone) {
    Json pieces = Json::array();
    for (const movement::Piece& piece : leg.pieces) {
        pieces.push_back(pieceJson(piece));
    }
    Json json{{"leg", leg.number},
              {"from", leg.fromLabel},
              {"from_grid", leg.fromGrid},
              {"from_tie", textOrNull(fromTie)},
              {"to", leg.toLabel},
              {"to_grid", leg.toGrid},
              {"to_tie", textOrNull(paper.tie)},
              {"map_distance_m", number(leg.mapDistance)},
              {"ground_distance_m", number(leg.groundDistance)},
              {"slope_distance_m", number(leg.slopeDistance)},
              {"climb_m", number(leg.climb)},
              {"descent_m", number(leg.descent)},
              {"steepest_percent", steepness(leg.steepest)},
              {"steepest_after_m", leg.steepest ? number(leg.steepest->along) : Json(nullptr)},
              {"heights_from", heightsFrom(leg)},
              {"paces", number(leg.paces)},
              {"minutes", number(leg.time)},
              {"ground_distance_so_far_m", number(leg.groundSoFar)},
              {"minutes_so_far", number(leg.timeSoFar)},
              {"arrival", time(leg.arrival, zone)}};
    putNotes(json, leg);
    json["pieces"] = std::move(pieces);
    return json;
}

Json runJson(const movement::RunAlong& run) {
    return {{"line", run.label},
            {"leg", run.leg},
            {"map_distance_from_last_m", number(run.mapFromLast)},
            {"map_distance_from_m", number(run.mapFrom)},
            {"map_distance_to_m", number(run.mapTo)}};
}

Json rateJson(const movement::RateSpan& span, const movement::RouteFigures& figures, TimeZone zone) {
    return {{"from", time(movement::arrivalAfter(figures.start, span.since), zone)},
            {"ground_distance_so_far_m", number(span.from)},
            {"going", span.going == plan::Going::Road ? "road" : "cross-country"},
            {"light", span.light == plan::Light::Night ? "night" : "day"},
            {"rate_kmh", number(span.rate)}};
}

Json paceJson(const movement::UsedPace& used) {
    return {{"ground", movement::nameOf(used.conditions.ground)},
            {"light", movement::nameOf(used.conditions.light)},
            {"double_paces_per_100_m", number(used.pace.doublePacesPer100)},
            {"how", used.pace.how}};
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

Json onwardJson(const std::optional<movement::Onward>& onward) {
    if (!onward) {
        return nullptr;
    }
    Json json = pieceJson(onward->piece);
    json["to"] = onward->toLabel;
    return json;
}

Json pointJson(const std::optional<movement::EvacuationPoint>& point) {
    return point ? Json{{"point", point->label}, {"grid", point->grid}} : Json(nullptr);
}

Json carryJson(const movement::Carry& carry) {
    return {{"from", carry.spot},
            {"from_grid", carry.spotGrid},
            {"ground_distance_m", number(carry.ground)},
            {"minutes", number(carry.time)}};
}

Json evacuationJson(const std::optional<movement::EvacuationFigures>& evacuation) {
    if (!evacuation) {
        return nullptr;
    }
    Json json{{"collection", pointJson(evacuation->collection)},
              {"pick_up", pointJson(evacuation->pickUp)},
              {"carry_rate_kmh", evacuation->rate ? number(evacuation->rate->rate) : Json(nullptr)},
              {"carry_straight", nullptr},
              {"carry_by_route", nullptr},
              {"vehicle", nullptr}};
    if (const auto& carry = evacuation->carry) {
        json["carry_straight"] = carryJson(carry->straight);
        json["carry_straight"]["grid_azimuth_deg"] = number(carry->gridAzimuth);
        json["carry_straight"]["magnetic_azimuth_deg"] = number(carry->magneticAzimuth);
        json["carry_by_route"] = carryJson(carry->byRoute);
        json["carry_by_route"]["off_route_m"] = number(carry->offRoute);
    }
    if (const auto& way = evacuation->onward) {
        json["vehicle"] = {{"route", way->name},
                           {"to_grid", way->toGrid},
                           {"map_distance_m", number(way->mapDistance)},
                           {"ground_distance_m", number(way->groundDistance)},
                           {"from_collection_m", number(way->fromCollection)}};
    }
    return json;
}

Json routeJson(const plan::Plan& plan, const CardContent& content, const std::string& modelName) {
    const movement::RouteFigures& figures = content.figures;
    const TimeZone zone = plan.heading().zone;
    Json json{{"name", figures.name},
              {"kind", movement::useText(figures.use)},
              {"route", figures.name},
              {"use", movement::useText(figures.use)},
              {"grid_crs", figures.gridCrs}};
    json.update(gmJson(figures.gm, modelName));
    json["light"] = datedLightJson(content.light, zone);
    json["double_paces_per_100_m"] = figures.pace ? number(figures.pace->doublePacesPer100) : Json(nullptr);
    json["pace_note"] = figures.pace ? Json(figures.pace->note) : Json(nullptr);
    json["pace_rule"] = movement::paceText(figures);
    json["pace_counts"] = Json::array();
    for (const movement::UsedPace& used : figures.counts) {
        json["pace_counts"].push_back(paceJson(used));
    }
    json["rate_kmh"] = figures.rate ? number(figures.rate->rate) : Json(nullptr);
    json["rate_note"] = figures.rate ? Json(figures.rate->note) : Json(nullptr);
    json["rate_rule"] = movement::rateText(figures, zone);
    json["rates"] = Json::array();
    for (const movement::RateSpan& span : figures.progress.spans) {
        json["rates"].push_back(rateJson(span, figures, zone));
    }
    json["start"] = time(figures.start, zone);
    json["arrival"] = time(figures.arrival, zone);
    json["map_distance_m"] = number(figures.mapDistance);
    json["ground_distance_m"] = number(figures.groundDistance);
    json["slope_distance_m"] = number(figures.slopeDistance);
    json["climb_m"] = number(figures.climb);
    json["descent_m"] = number(figures.descent);
    json["steepest_percent"] = steepness(figures.steepest);
    json["heights_from"] = heightsFrom(figures);
    json["paces"] = number(figures.paces);
    json["minutes"] = number(figures.time);
    json["legs"] = Json::array();
    for (std::size_t n = 0; n < figures.legs.size(); ++n) {
        const std::string& fromTie = n == 0 ? content.paper.startTie : content.paper.legs[n - 1].tie;
        json["legs"].push_back(legJson(figures.legs[n], content.paper.legs[n], fromTie, zone));
    }
    json["crossings"] = Json::array();
    for (const movement::Crossing& crossing : content.crossings) {
        json["crossings"].push_back(crossingJson(crossing, zone));
    }
    json["runs_along"] = Json::array();
    for (const movement::RunAlong& run : content.runs) {
        json["runs_along"].push_back(runJson(run));
    }
    json["onward"] = onwardJson(figures.onward);
    json["evacuation"] = evacuationJson(content.evacuation);
    json["administrative_ground_distance_m"] =
        figures.administrative ? number(figures.administrative->groundDistance) : Json(nullptr);
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
