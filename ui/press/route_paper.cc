#include "ui/press/route_paper.h"

#include <fmt/format.h>

#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;

PaperColumn column(const char* key, const char* head, double width, double most, Align align = Align::Right) {
    PaperColumn one;
    one.key = key;
    one.heads = {said(head)};
    one.align = align;
    one.width = width;
    one.most = most;
    one.rows = align == Align::Left ? 4 : 2;  // so that all cells of a row begin at its top
    return one;
}

std::vector<PaperColumn> columnsOf(geodesy::AngleUnit unit) {
    const bool mils = unit == geodesy::AngleUnit::Mils;
    std::vector<PaperColumn> columns{column("leg", "Leg", 9, 10, Align::Left),
                                     column("to", "To", 18, 26, Align::Left),
                                     column("grid", "Grid", 24, 26, Align::Left),
                                     column("tie", "Tie", 34, 60, Align::Left),
                                     column("magnetic", mils ? "Mag. mils" : "Mag.", 14, 16),
                                     column("back_magnetic", "Back", 12, 14),
                                     column("grid_azimuth", "Grid az.", 13, 15),
                                     column("back_grid_azimuth", "Back", 12, 14),
                                     column("map_m", "Map m", 13, 15),
                                     column("ground_m", "Ground m", 15, 17),
                                     column("paces", "Paces", 12, 15),
                                     column("time", "Time", 11, 14),
                                     column("arrive", "Arrive", 13, 15),
                                     column("climb", "Climb m", 13, 15),
                                     column("descent", "Descent m", 15, 17),
                                     column("map_m_so_far", "m so far", 14, 16),
                                     column("time_so_far", "So far", 12, 14),
                                     column("notes", "Notes", 26, 60, Align::Left)};
    columns[1].first.weight = Weight::Bold;
    columns[4].first = {2.6, Weight::Bold};
    return columns;
}

std::string figure(const std::optional<std::int64_t>& value) {
    return value ? std::to_string(*value) : std::string{};
}

/// "4", or "4b" for one of several pieces.
std::string numberOf(const movement::PaperLeg& leg, std::size_t at) {
    constexpr std::size_t kLetters = 26;
    const std::string number = std::to_string(leg.number);
    if (leg.pieces.size() == 1) {
        return number;
    }
    return number + (at < kLetters ? std::string(1, static_cast<char>('a' + at)) : fmt::format(".{}", at + 1));
}

std::vector<PaperCell> pieceRow(const movement::PaperLeg& leg, std::size_t at) {
    const movement::PaperPiece& piece = leg.pieces[at];
    const bool last = at + 1 == leg.pieces.size();
    const auto ofLeg = [&](const std::string& text) { return PaperCell{last ? text : std::string{}}; };
    return {{numberOf(leg, at)},
            {last ? leg.to : said("bend")},
            {piece.toGrid},
            ofLeg(leg.tie),
            {piece.magnetic},
            {piece.backMagnetic},
            {piece.grid},
            {piece.backGrid},
            {std::to_string(piece.metres)},
            {std::to_string(piece.groundMetres)},
            {figure(piece.paces)},
            ofLeg(leg.time),
            ofLeg(leg.arrival),
            ofLeg(figure(leg.climb)),
            ofLeg(figure(leg.descent)),
            ofLeg(std::to_string(leg.metresSoFar)),
            ofLeg(leg.timeSoFar),
            ofLeg(joined(leg.notes, ", "))};
}

std::vector<PaperCell> startRow(const movement::PaperRoute& paper, std::size_t columns) {
    std::vector<PaperCell> row(columns);
    row[1].first = paper.startLabel;
    row[2].first = paper.startGrid;
    row[3].first = paper.startTie;
    row[12].first = paper.startTime;
    return row;
}

std::vector<PaperCell> totalRow(const movement::PaperRoute& paper, std::size_t columns) {
    std::vector<PaperCell> row(columns);
    row[0].first = said("all");
    row[8].first = std::to_string(paper.metres);
    row[9].first = std::to_string(paper.groundMetres);
    row[10].first = figure(paper.paces);
    row[11].first = paper.time;
    row[12].first = paper.arrival;
    row[13].first = figure(paper.climb);
    row[14].first = figure(paper.descent);
    return row;
}

}  // namespace

std::vector<CardFact> lightFacts(const std::vector<CardLight>& light) {
    std::vector<CardFact> facts;
    for (const CardLight& dated : light) {
        std::vector<std::string> parts;
        for (const movement::LightFigure& figure : dated.figures) {
            parts.push_back(said(figure.name) + ' ' + figure.text);
        }
        facts.push_back({said("Light"), dated.date + ": " + joined(parts, ", ")});
    }
    return facts;
}

PaperTable routePaper(const plan::Plan& plan, const movement::RouteFigures& figures, const movement::PaperRoute& paper,
                      const CardWords& words, geodesy::AngleUnit unit) {
    PaperTable table;
    table.head.title = words.title;
    table.head.purpose = words.purpose;
    table.head.kind = said("ROUTE CARD");
    table.head.marking = plan.heading().marking;
    table.head.left = words.left;
    table.head.right = words.right;
    for (CardFact& fact : lightFacts(words.light)) {
        table.head.right.push_back(std::move(fact));
    }
    table.head.source = words.source;
    table.columns = columnsOf(unit);
    table.kept = 2;
    table.rows.push_back(startRow(paper, table.columns.size()));
    for (const movement::PaperLeg& leg : paper.legs) {
        for (std::size_t at = 0; at < leg.pieces.size(); ++at) {
            table.rows.push_back(pieceRow(leg, at));
        }
    }
    table.rows.push_back(totalRow(paper, table.columns.size()));
    table.notes = words.notes;
    if (figures.fromContours) {
        table.notes.push_back({said("Climb:"), said("read from contours by hand, even between them"), OnCard::Last});
    }
    return table;
}

}  // namespace crosstick::press
