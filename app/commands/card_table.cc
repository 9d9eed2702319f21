#include <fmt/format.h>

#include "app/commands/angle_words.h"
#include "app/commands/card_forms.h"
#include "app/commands/text_table.h"
#include "core/movement/rate_text.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

using geodesy::AngleUnit;

std::string figure(const std::optional<std::int64_t>& value) {
    return value ? std::to_string(*value) : std::string{};
}

std::string headText(const CardContent& content, AngleUnit unit, TimeZone zone, const std::string& modelName) {
    const movement::RouteFigures& figures = content.figures;
    std::string text = plain(content.paper.name) + ", " + std::string(movement::useText(figures.use)) + ", grid " +
                       figures.gridCrs + '\n';
    text += angleText(figures.gm, unit, modelName);
    if (figures.use == plan::Use::Vehicle) {
        return text + "A vehicle: no paces, no rate of people on foot\n";
    }
    text += "Pace count " + plain(movement::paceText(figures)) + '\n';
    text += figures.rate || figures.timing ? "Rate " + plain(movement::rateText(figures, zone)) + '\n'
                                           : "Rate not given: times unknown\n";
    return text;
}

void addLeg(TextTable& table, const movement::PaperLeg& leg) {
    for (std::size_t at = 0; at < leg.pieces.size(); ++at) {
        const movement::PaperPiece& piece = leg.pieces[at];
        const bool first = at == 0;
        const bool last = at + 1 == leg.pieces.size();
        const std::string number =
            leg.pieces.size() == 1
                ? std::to_string(leg.number)
                : fmt::format("{}{}", leg.number,
                              at < 26 ? std::string(1, static_cast<char>('a' + at)) : '.' + std::to_string(at + 1));
        table.add({number, first ? plain(leg.from) : "bend", last ? plain(leg.to) : "bend", piece.toGrid,
                   piece.magnetic, piece.backMagnetic, piece.grid, piece.backGrid, std::to_string(piece.metres),
                   std::to_string(piece.groundMetres), figure(piece.paces), last ? leg.time : "",
                   last ? leg.arrival : "", last ? std::to_string(leg.metresSoFar) : "", last ? leg.timeSoFar : "",
                   last ? figure(leg.climb) : "", last ? figure(leg.descent) : "", last ? plain(leg.tie) : ""});
    }
}

std::string crossingsText(const movement::PaperRoute& paper) {
    std::string text;
    for (const movement::PaperLeg& leg : paper.legs) {
        for (const movement::PaperCrossing& crossing : leg.crossings) {
            text += fmt::format("  {}  {} m after {}{}\n", plain(crossing.label), crossing.metresFromLast,
                                plain(leg.from), crossing.arrival.empty() ? "" : ", " + crossing.arrival);
        }
    }
    return text.empty() ? text : "Crosses\n" + text;
}

}  // namespace

std::string cardTable(const plan::Plan& plan, const CardContent& content, AngleUnit unit,
                      const std::string& modelName) {
    const movement::PaperRoute& paper = content.paper;
    TextTable table({{"leg", Side::Left},
                     {"from", Side::Left},
                     {"to", Side::Left},
                     {"grid", Side::Left},
                     {"mag"},
                     {"back"},
                     {"grid az"},
                     {"back"},
                     {"map m"},
                     {"ground m"},
                     {"paces"},
                     {"time"},
                     {"arrive"},
                     {"m so far"},
                     {"so far"},
                     {"climb"},
                     {"descent"},
                     {"tie", Side::Left}});
    table.add({"", "", plain(paper.startLabel), paper.startGrid, "", "", "", "", "", "", "", "", paper.startTime, "",
               "", "", "", plain(paper.startTie)});
    for (const movement::PaperLeg& leg : paper.legs) {
        addLeg(table, leg);
    }
    table.add({"all", "", "", "", "", "", "", "", std::to_string(paper.metres), std::to_string(paper.groundMetres),
               figure(paper.paces), paper.time, paper.arrival, "", "", figure(paper.climb), figure(paper.descent), ""});
    std::string text = headText(content, unit, plan.heading().zone, modelName);
    for (const movement::DatedLight& dated : content.light) {
        text += "Light " + isoDate(dated.date) + ": " + movement::lightText(dated.light, plan.heading().zone) + '\n';
    }
    text += content.figures.start ? "Start " + dateTimeGroup(*content.figures.start, plan.heading().zone) + '\n'
                                  : "Start not given: clock times unknown\n";
    text += '\n' + table.text();
    if (paper.onward) {
        text +=
            fmt::format("On to {}: magnetic {}, back {}, grid {}, {} m. Not in the sums.\n", plain(paper.onwardTo),
                        paper.onward->magnetic, paper.onward->backMagnetic, paper.onward->grid, paper.onward->metres);
    }
    text += crossingsText(paper);
    if (content.evacuation) {
        for (const movement::EvacuationLine& line : movement::evacuationLines(*content.evacuation, unit)) {
            text += plain(line.lead + ' ' + line.text) + '\n';
        }
    }
    for (const movement::PaperLeg& leg : paper.legs) {
        if (!leg.notes.empty()) {
            text += fmt::format("Leg {}: {}\n", leg.number, plain(fmt::format("{}", fmt::join(leg.notes, ", "))));
        }
    }
    if (content.figures.administrative) {
        text += fmt::format("Before the start point {} m, administrative, not in the sums.\n",
                            numberText(content.figures.administrative->groundDistance.value(), 0));
    }
    if (content.figures.steepest) {
        text +=
            fmt::format("Steepest {} %, {} m after the start.\n", numberText(content.figures.steepest->slope * 100, 0),
                        numberText(content.figures.steepest->along.value(), 0));
    }
    text += paper.climb ? "" : "Climb is unknown: no height model covers the route.\n";
    text += paper.fromContours ? "Climb and descent are from contours read by hand.\n" : "";
    return text + "Sums are of the figures shown. Planning and training aid: check by map and compass.\n";
}

}  // namespace crosstick::app
