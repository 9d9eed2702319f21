#include "core/movement/paper_figures.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/movement/gm_angle.h"
#include "core/movement/runs_along.h"
#include "core/movement/work_grid.h"
#include "core/units/number_text.h"

namespace crosstick::movement {
namespace {

using geodesy::AngleUnit;

std::int64_t whole(double value) {
    return static_cast<std::int64_t>(std::floor(value + 0.5));
}

std::int64_t tens(Metres distance) {
    return whole(geodesy::roundedDistance(distance).value());
}

std::optional<std::int64_t> whole(const std::optional<Metres>& length) {
    return length ? std::optional(whole(length->value())) : std::nullopt;
}

void add(std::optional<std::int64_t>& sum, const std::optional<std::int64_t>& part) {
    sum = sum && part ? std::optional(*sum + *part) : std::nullopt;
}

std::string clock(const std::optional<Instant>& when, TimeZone zone) {
    return when ? clockTime(*when, zone) : std::string{};
}

std::string timeOrNothing(const std::optional<Minutes>& time) {
    return time ? timeText(*time) : std::string{};
}

PaperPiece paperPiece(const Piece& piece, const WorkGrid& grid, AngleUnit unit) {
    PaperPiece paper;
    paper.magnetic = geodesy::azimuthText(piece.magneticAzimuth, unit);
    paper.backMagnetic = geodesy::azimuthText(geodesy::backAzimuth(piece.magneticAzimuth), unit);
    paper.grid = geodesy::azimuthText(piece.gridAzimuth, unit);
    paper.backGrid = geodesy::azimuthText(geodesy::backAzimuth(piece.gridAzimuth), unit);
    paper.metres = tens(piece.mapDistance);
    paper.groundMetres = tens(piece.groundDistance);
    if (piece.paces) {
        paper.paces = whole(*piece.paces);
    }
    paper.toGrid = grid.gridText(piece.to);
    return paper;
}

std::string tieOf(const plan::Plan& plan, const plan::ItemId& id) {
    const auto measure = plan.measure(id);
    return measure ? measure->tie : std::string{};
}

std::string named(const std::string& label, std::string_view without) {
    return label.empty() ? std::string(without) : label;
}

/// What the leader says about a leg, each with the word that it is known by.
std::vector<std::string> notesOf(const Leg& leg) {
    std::vector<std::string> notes;
    const auto note = [&](std::string_view lead, const std::string& text) {
        if (!text.empty()) {
            notes.push_back(std::string(lead) + text);
        }
    };
    if (leg.notes.halt) {
        notes.push_back("halt " + numberText(leg.notes.halt->value(), 0) + " min");
    }
    note("catch: ", leg.notes.catching);
    note("rally: ", leg.rallyLabel);
    note("in contact: ", leg.notes.inContact);
    note("if separated: ", leg.notes.ifSeparated);
    note("", leg.notes.remark);
    return notes;
}

PaperLeg paperLeg(const Leg& leg, const plan::Plan& plan, const WorkGrid& grid, AngleUnit unit) {
    PaperLeg paper;
    paper.number = leg.number;
    paper.from = named(leg.fromLabel, "start");
    paper.to = named(leg.toLabel, "end");
    paper.fromGrid = leg.fromGrid;
    paper.toGrid = leg.toGrid;
    paper.tie = tieOf(plan, leg.to);
    paper.paces = 0;
    for (const Piece& piece : leg.pieces) {
        paper.pieces.push_back(paperPiece(piece, grid, unit));
        paper.metres += paper.pieces.back().metres;
        paper.groundMetres += paper.pieces.back().groundMetres;
        add(paper.paces, paper.pieces.back().paces);
    }
    paper.climb = whole(leg.climb);
    paper.descent = whole(leg.descent);
    if (leg.steepest) {
        paper.steepest = whole(leg.steepest->slope * 100);
    }
    paper.fromContours = leg.fromContours;
    paper.notes = notesOf(leg);
    paper.time = timeOrNothing(leg.time);
    paper.timeSoFar = timeOrNothing(leg.timeSoFar);
    paper.arrival = clock(leg.arrival, plan.heading().zone);
    return paper;
}

PaperCrossing paperCrossing(const Crossing& crossing, const Leg& leg, TimeZone zone) {
    PaperCrossing paper{crossing.label, tens(crossing.mapFromLast), 0, 0, clock(crossing.arrival, zone)};
    Metres left = crossing.mapFromLast;
    while (paper.piece + 1 < leg.pieces.size() && left > leg.pieces[paper.piece].mapDistance) {
        left -= leg.pieces[paper.piece++].mapDistance;
    }
    paper.share = std::clamp(left / leg.pieces[paper.piece].mapDistance, 0.0, 1.0);
    return paper;
}

void placeCrossings(PaperRoute& paper, const RouteFigures& figures, const std::vector<Crossing>& met, TimeZone zone) {
    for (const Crossing& crossing : met) {
        const auto at = static_cast<std::size_t>(crossing.leg - 1);
        paper.legs[at].crossings.push_back(paperCrossing(crossing, figures.legs[at], zone));
    }
}

double stepped(Degrees angle, AngleUnit unit) {
    const double size = std::abs(angle.value());
    return unit == AngleUnit::Mils ? std::floor(mils(Degrees(size)).value() / 10 + 0.5) * 10
                                   : std::floor(size * 2 + 0.5) / 2;
}

/// Beside what a leg runs, after what its leader says of it; a run is told where it begins.
void noteRuns(PaperRoute& paper, const std::vector<RunAlong>& runs) {
    for (const RunAlong& run : runs) {
        PaperLeg& leg = paper.legs[static_cast<std::size_t>(run.leg - 1)];
        leg.notes.push_back(fmt::format("along {} {} m from {} m after {}", run.label, tens(run.mapTo - run.mapFrom),
                                        tens(run.mapFromLast), leg.from));
    }
}

}  // namespace

std::string timeText(Minutes time) {
    const std::int64_t minutes = whole(time.value());
    return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

std::string_view useText(plan::Use use) {
    return use == plan::Use::Primary ? "primary" : use == plan::Use::Alternate ? "alternate" : "vehicle";
}

std::string routeTitle(const std::string& name) {
    return name == "RTE" || name.starts_with("RTE ") ? name : name.empty() ? "RTE" : "RTE " + name;
}

std::string gmAngleText(Degrees angle, AngleUnit unit) {
    const double size = stepped(angle, unit);
    const std::string side = size == 0 ? "" : angle.value() > 0 ? " E" : " W";
    return numberText(size) + (unit == AngleUnit::Mils ? " mils" : "°") + side;
}

std::string gmRuleText(Degrees angle, AngleUnit unit) {
    const double size = stepped(angle, unit);
    if (size == 0) {
        return "grid to magnetic: add nothing";
    }
    return fmt::format("grid to magnetic: {} {}", angle.value() > 0 ? "subtract" : "add", numberText(size));
}

std::string gmCautionText(const GmAngle& gm, AngleUnit unit) {
    const auto apart = disagreement(gm);
    if (!apart) {
        return {};
    }
    const std::string size = unit == AngleUnit::Mils ? numberText(mils(abs(*apart)).value(), 0) + " mils"
                                                     : numberText(abs(*apart).value(), 1) + "°";
    return fmt::format("Sheet and model differ by {}. Check the sheet's diagram and its date.", size);
}

Result<PaperRoute> paperFigures(const plan::Plan& plan, const RouteFigures& figures, AngleUnit unit) {
    const auto grid = WorkGrid::of(plan);
    const auto met = crossings(plan, figures);
    const auto runs = runsAlong(plan, figures);
    if (!grid || !met || !runs) {
        return tl::unexpected(!grid ? grid.error() : !met ? met.error() : runs.error());
    }
    PaperRoute paper;
    paper.name = routeTitle(figures.name);
    const TimeZone zone = plan.heading().zone;
    paper.startTime = clock(figures.start, zone);
    paper.paces = 0;
    for (const Leg& leg : figures.legs) {
        PaperLeg next = paperLeg(leg, plan, *grid, unit);
        paper.metres = next.metresSoFar = paper.metres + next.metres;
        paper.groundMetres = next.groundMetresSoFar = paper.groundMetres + next.groundMetres;
        add(paper.paces, next.paces);
        next.pacesSoFar = paper.paces;
        paper.legs.push_back(std::move(next));
    }
    if (!figures.legs.empty()) {
        paper.startLabel = paper.legs.front().from;
        paper.startGrid = paper.legs.front().fromGrid;
        paper.startTie = tieOf(plan, figures.legs.front().from);
    }
    placeCrossings(paper, figures, *met, zone);
    noteRuns(paper, *runs);
    paper.climb = whole(figures.climb);
    paper.descent = whole(figures.descent);
    paper.fromContours = figures.fromContours;
    paper.time = timeOrNothing(figures.time);
    paper.arrival = clock(figures.arrival, zone);
    if (figures.onward) {
        paper.onward = paperPiece(figures.onward->piece, *grid, unit);
        paper.onwardTo = figures.onward->toLabel;
    }
    return paper;
}

}  // namespace crosstick::movement
