#include <array>
#include <string_view>

#include <fmt/format.h>

#include "app/commands/card_forms.h"
#include "app/commands/csv.h"
#include "app/commands/light_forms.h"
#include "core/geodesy/plane_angles.h"

namespace crosstick::app {
namespace {

constexpr std::array<std::string_view, 27> kColumns{"route",
                                                    "leg",
                                                    "piece",
                                                    "from",
                                                    "from_grid",
                                                    "to",
                                                    "to_grid",
                                                    "tie",
                                                    "grid_azimuth_deg",
                                                    "back_grid_azimuth_deg",
                                                    "magnetic_azimuth_deg",
                                                    "back_magnetic_azimuth_deg",
                                                    "map_distance_m",
                                                    "ground_distance_m",
                                                    "climb_m",
                                                    "descent_m",
                                                    "paces",
                                                    "minutes",
                                                    "ground_distance_so_far_m",
                                                    "minutes_so_far",
                                                    "arrival",
                                                    "gm_angle_deg",
                                                    "gm_angle_source",
                                                    "leg_notes",
                                                    "heights_from",
                                                    "collection_grid",
                                                    "pick_up_grid"};

/// The light of the date on which a piece ends.
std::vector<std::string> lightOf(const CardContent& content, std::optional<Instant> when, TimeZone zone) {
    const movement::DatedLight* dated = movement::lightAt(content.light, when, zone);
    return dated == nullptr ? std::vector<std::string>(lightColumns().size())
                            : lightCells(dated->light, ZoneRules(zone));
}

std::vector<std::string> joined(std::vector<std::string> cells, const std::vector<std::string>& more) {
    cells.insert(cells.end(), more.begin(), more.end());
    return cells;
}

/// How far the route has come at the end of a piece.
struct SoFar {
    Metres ground{0};
    std::optional<Minutes> time = Minutes(0);
};

std::vector<std::string> pieceCells(const CardContent& content, const movement::Leg& leg, std::size_t at,
                                    const SoFar& soFar, TimeZone zone) {
    const movement::Piece& piece = leg.pieces[at];
    const movement::PaperLeg& paper = content.paper.legs[static_cast<std::size_t>(leg.number - 1)];
    const bool first = at == 0;
    const bool last = at + 1 == leg.pieces.size();
    const auto arrival = movement::arrivalAfter(content.figures.start, soFar.time);
    return {harmless(content.figures.name),
            std::to_string(leg.number),
            std::to_string(at + 1),
            harmless(first ? paper.from : "bend"),
            first ? leg.fromGrid : paper.pieces[at - 1].toGrid,
            harmless(last ? paper.to : "bend"),
            paper.pieces[at].toGrid,
            last ? harmless(paper.tie) : "",
            csvFigure(piece.gridAzimuth, 4),
            csvFigure(geodesy::backAzimuth(piece.gridAzimuth), 4),
            csvFigure(piece.magneticAzimuth, 4),
            csvFigure(geodesy::backAzimuth(piece.magneticAzimuth), 4),
            csvFigure(piece.mapDistance, 3),
            csvFigure(piece.groundDistance, 3),
            csvFigure(piece.climb, 1),
            csvFigure(piece.descent, 1),
            csvFigure(piece.paces, 2),
            csvFigure(piece.time, 2),
            csvFigure(soFar.ground, 3),
            csvFigure(soFar.time, 2),
            arrival ? isoTime(*arrival, zone) : "",
            csvFigure(content.figures.gm.angle, 6),
            content.figures.gm.source == plan::DeclinationSource::Model ? "model" : "sheet",
            last ? harmless(fmt::format("{}", fmt::join(paper.notes, "; "))) : "",
            piece.fromContours ? "contours"
            : piece.climb      ? "model"
                               : "",
            content.evacuation && content.evacuation->collection ? content.evacuation->collection->grid : "",
            content.evacuation && content.evacuation->pickUp ? content.evacuation->pickUp->grid : ""};
}

}  // namespace

Result<std::string> cardCsv(const plan::Plan& plan, const std::vector<CardContent>& routes,
                            const std::vector<std::string>& columns) {
    std::vector<std::vector<std::string>> records{joined({kColumns.begin(), kColumns.end()}, lightColumns())};
    const TimeZone zone = plan.heading().zone;
    for (const CardContent& content : routes) {
        SoFar soFar;
        for (const movement::Leg& leg : content.figures.legs) {
            for (std::size_t at = 0; at < leg.pieces.size(); ++at) {
                const movement::Piece& piece = leg.pieces[at];
                soFar.ground += piece.groundDistance;
                soFar.time = soFar.time && piece.time ? std::optional(*soFar.time + *piece.time) : std::nullopt;
                const auto arrival = movement::arrivalAfter(content.figures.start, soFar.time);
                records.push_back(joined(pieceCells(content, leg, at, soFar, zone), lightOf(content, arrival, zone)));
            }
        }
    }
    return csvOf(records, columns);
}

}  // namespace crosstick::app
