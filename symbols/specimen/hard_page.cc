#include <cmath>
#include <numbers>

#include "symbols/specimen/pages.h"
#include "symbols/specimen/samples.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Vector;

/// Some exhibits together in one room.
void addStage(Flow& flow, const std::string& caption, Vector size, const std::vector<Exhibit>& exhibits,
              const drawing::Gauge& gauge, PenMode pens) {
    const drawing::Box room = flow.room(size, {caption});
    Stage stage(room, gauge, pens);
    for (const Exhibit& exhibit : exhibits) {
        stage.add(exhibit);
    }
    flow.draw(stage.engraved());
}

Exhibit boundary(std::vector<Point> points) {
    return {
        .kind = "boundary",
        .points = std::move(points),
        .fields = {{"left_unit", "LEFT"}, {"right_unit", "RIGHT"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}}};
}

/// Lines to all sides, lettered: no name is upside down.
std::vector<Exhibit> rose(Point middle) {
    std::vector<Exhibit> all;
    for (int azimuth = 0; azimuth < 360; azimuth += 30) {
        const double turn = azimuth * std::numbers::pi / 180;
        const Vector u{std::sin(turn), -std::cos(turn)};
        all.push_back(
            {.kind = "phase-line", .points = {middle + u * 12, middle + u * 44}, .name = std::to_string(azimuth)});
    }
    return all;
}

void addLines(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Lines: all directions, leaving the window, crossing themselves, both ways");
    addStage(flow, "all directions", {124, 124}, rose({62, 62}), gauge, pens);
    addStage(
        flow, "leaves the window and comes back: every stretch is named", {150, 124},
        {{.kind = "phase-line", .points = swing({-10, 44}, {160, 44}, 66), .name = "AGATE"},
         {.kind = "boundary",
          .points = {{60, -10}, {70, 50}, {58, 80}, {66, 140}},
          .fields = {{"left_unit", "1/B"}, {"right_unit", "2/B"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}}}},
        gauge, pens);
    addStage(flow, "sides follow the travel, letters stay upright", {75, 124},
             {boundary({{5, 12}, {70, 8}}), boundary({{70, 28}, {5, 32}}), boundary({{20, 78}, {22, 44}}),
              boundary({{50, 44}, {52, 78}})},
             gauge, pens);
    addStage(flow, "crosses itself", {75, 40},
             {{.kind = "phase-line",
               .points = {{18, 30}, {40, 26}, {28, 10}, {50, 8}, {30, 32}, {58, 20}},
               .name = "KINK",
               .standing = plan::Standing::Planned}},
             gauge, pens);
    std::vector<Exhibit> arrows;
    double x = 8;
    for (const double length : {12.0, 6.0, 4.0, 2.4, 1.2}) {
        arrows.push_back({.kind = "direction-of-attack", .points = {{x, 12}, {x + length, 12}}});
        arrows.push_back({.kind = "direction-of-main-attack", .points = {{x, 26}, {x + length, 26}}});
        x += length + 9;
    }
    addStage(flow, "short arrows", {75, 40}, arrows, gauge, pens);
    addStage(flow, "short axes", {75, 40},
             {{.kind = "axis-of-advance", .points = {{6, 12}, {34, 12}}, .name = "ASH"},
              {.kind = "axis-of-advance", .points = {{44, 12}, {66, 12}}, .name = "YEW"},
              {.kind = "axis-of-advance", .points = {{6, 30}, {20, 30}}, .name = "BOX"},
              {.kind = "axis-of-advance", .points = {{36, 30}, {42, 30}}, .name = "BAY"}},
             gauge, pens);
    addStage(flow, "half circles and teeth at corners", {75, 40},
             {{.kind = "forward-line-of-own-troops", .points = {{6, 20}, {24, 8}, {34, 20}, {60, 14}, {66, 6}}},
              {.kind = "obstacle-line", .points = {{6, 34}, {24, 24}, {34, 36}, {60, 30}, {66, 22}}}},
             gauge, pens);
    addStage(flow, "an axis with sharp bends", {75, 40},
             {{.kind = "axis-of-advance", .points = {{6, 34}, {30, 30}, {40, 12}, {66, 16}}, .name = "ELM"}}, gauge,
             pens);
}

void addAreas(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Areas: small, narrow, crossing themselves, with corners, side by side");
    addStage(flow, "two rows, one row, outside", {97, 34},
             {{.kind = "objective", .points = blob({18, 17}, 12, 9), .name = "PINE"},
              {.kind = "objective", .points = blob({48, 17}, 14, 3.6), .name = "FIR"},
              {.kind = "objective", .points = blob({76, 22}, 5, 3.5), .name = "ELDER"}},
             gauge, pens);
    addStage(flow, "under 2 mm", {48, 34},
             {{.kind = "landing-zone", .points = {{20, 20}, {20.5, 20}, {20.5, 20.6}}, .name = "ELDER"}}, gauge, pens);
    addStage(flow, "crosses itself", {48, 34},
             {{.kind = "assembly-area", .points = {{6, 6}, {42, 28}, {42, 6}, {6, 28}}, .name = "ASH"}}, gauge, pens);
    addStage(
        flow, "comb at corners", {48, 34},
        {{.kind = "danger-area", .points = {{6, 3}, {42, 3}, {42, 14}, {24, 14}, {24, 31}, {6, 31}}, .number = "1"}},
        gauge, pens);
    addStage(flow, "neighbours", {97, 34},
             {{.kind = "restricted-ground", .points = {{4, 4}, {40, 4}, {40, 30}, {4, 30}}},
              {.kind = "severely-restricted-ground", .points = {{40, 4}, {66, 4}, {66, 30}, {40, 30}}},
              {.kind = "no-go-area", .points = {{66, 4}, {93, 4}, {93, 30}, {66, 30}}, .number = "2"}},
             gauge, pens);
    addStage(flow, "narrow", {48, 34},
             {{.kind = "restricted-ground", .points = {{4, 18}, {44, 12}, {44, 15}, {4, 21}}}}, gauge, pens);
}

/// All samples of a legend, each in the room that a legend gives it.
void addLegendSamples(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Samples of the legend");
    Stage stage({0, 0, 400, 400}, gauge, pens);
    for (const measures::Entry& entry : measures::catalogue()) {
        Exhibit exhibit = sample(entry, sampleSize(entry));
        stage.add(exhibit);
    }
    for (const LegendRow& row : stage.legendRows(LegendExtent::Everything)) {
        const drawing::Box room = flow.room({63, 7}, {row.text});
        flow.draw(drawing::moved(row.sample, {room.left, room.top + 1}));
    }
}

void addCrowd(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Crowded spots");
    std::vector<Exhibit> crowd;
    int number = 0;
    for (const char* kind :
         {"casualty-collection-point", "ammunition-supply-point", "logistics-release-point", "ambulance-exchange-point",
          "traffic-post", "checkpoint", "rally-point", "observation-post"}) {
        crowd.push_back({.kind = kind,
                         .points = {{48 + 4.0 * std::cos(number * 0.8), 36 + 4.0 * std::sin(number * 0.8)}},
                         .number = std::to_string(number + 1)});
        ++number;
    }
    addStage(flow, "eight symbols within 8 mm", {97, 70}, crowd, gauge, pens);
    addStage(flow, "drawn aside by hand", {75, 60},
             {{.kind = "casualty-collection-point", .points = {{14, 50}}, .number = "1", .symbolAt = Point{40, 36}},
              {.kind = "unit", .points = {{14, 20}}, .fields = {{"unit", "3/2 inf sqd"}}, .symbolAt = Point{50, 12}}},
             gauge, pens);
    addStage(flow, "three units on one line", {97, 60},
             {{.kind = "unit", .points = {{50, 52}}, .fields = {{"unit", "1/2 inf sqd"}}},
              {.kind = "unit", .points = {{50, 52}}, .fields = {{"unit", "hq 2/C inf plt"}}, .standsWith = 0},
              {.kind = "unit", .points = {{50, 52}}, .fields = {{"unit", "mor sec of C"}}, .standsWith = 0}},
             gauge, pens);
    addStage(flow, "the line ends on an area's edge", {75, 60},
             {{.kind = "assembly-area", .points = {{8, 40}, {26, 34}, {40, 42}, {34, 56}, {12, 56}}, .name = "HAZEL"},
              {.kind = "unit", .points = {{24, 46}}, .fields = {{"unit", "2/B inf plt"}}, .pointsTo = 0},
              {.kind = "unit", .points = {{24, 46}}, .fields = {{"unit", "med sec"}}, .standsWith = 1}},
             gauge, pens);
    for (const double height : {4.0, 6.0, 8.0}) {
        drawing::Gauge own = gauge;
        own.symbol = height;
        addStage(flow,
                 height == 4   ? "height 4"
                 : height == 6 ? "height 6"
                               : "height 8",
                 {48, 60},
                 {{.kind = "objective-rally-point", .points = {{14, 28}}, .number = "12"},
                  {.kind = "checkpoint", .points = {{34, 28}}, .number = "9"},
                  {.kind = "decision-point", .points = {{14, 46}}, .number = "4"},
                  {.kind = "coordination-point", .points = {{34, 46}}, .number = "1"}},
                 own, pens);
    }
}

}  // namespace

void addHardCases(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    addLines(flow, gauge, pens);
    addAreas(flow, gauge, pens);
    addCrowd(flow, gauge, pens);
    addLegendSamples(flow, gauge, pens);
}

void addFilm(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    const drawing::Box room = flow.room({388, 240}, {"one film: everything finds its place beside everything else"});
    Stage stage(room, gauge, pens);
    const std::vector<Point> stops{{30, 190}, {90, 150}, {150, 160}, {210, 110}, {280, 90}, {330, 60}};
    stage.add({.kind = "start-point", .points = {stops[0]}, .number = "1"});
    for (std::size_t n = 1; n + 1 < stops.size(); ++n) {
        stage.add({.kind = n == 3 ? "objective-rally-point" : "checkpoint",
                   .points = {stops[n]},
                   .name = n == 3 ? "SORREL" : "",
                   .number = n == 3 ? "" : std::to_string(n)});
    }
    stage.add({.kind = "release-point", .points = {stops.back()}, .number = "1"});
    stage.add(
        ExhibitRoute{.vertices = {stops[0], {52, 170}, stops[1], stops[2], {176, 148}, stops[3], stops[4], stops[5]},
                     .stops = {{0, 0}, {2, 1}, {3, 2}, {5, 3}, {6, 4}, {7, 5}},
                     .name = "HERON"});
    stage.add(ExhibitRoute{
        .vertices = {stops[0], {52, 170}, stops[1], {140, 200}, {220, 190}, {290, 140}, stops[4], stops[5]},
        .stops = {{0, 0}, {2, 1}, {6, 4}, {7, 5}},
        .name = "EGRET",
        .use = plan::Use::Alternate});
    stage.add({.kind = "line-of-departure", .points = swing({12, 178}, {370, 150}, 14), .name = "FLINT"});
    stage.add({.kind = "phase-line", .points = swing({20, 110}, {372, 96}, -10), .name = "AGATE"});
    stage.add({.kind = "limit-of-advance", .points = swing({240, 26}, {376, 40}, 5), .name = "CHERT"});
    stage.add(
        {.kind = "boundary",
         .points = {{190, 4}, {196, 60}, {186, 120}, {194, 180}, {188, 236}},
         .fields = {{"left_unit", "1/2"}, {"right_unit", "2/2"}, {"left_echelon", "sqd"}, {"right_echelon", "sqd"}}});
    stage.add({.kind = "assembly-area", .points = blob({40, 214}, 26, 16), .name = "HAZEL"});
    stage.add({.kind = "objective", .points = blob({330, 28}, 26, 11), .name = "PINE"});
    stage.add({.kind = "restricted-ground", .points = blob({330, 190}, 38, 26)});
    stage.add({.kind = "danger-area", .points = blob({120, 60}, 30, 18), .number = "1"});
    stage.add({.kind = "support-by-fire", .points = {{246, 62}, {262, 76}, {296, 20}, {304, 42}}, .number = "1"});
    stage.add({.kind = "casualty-collection-point", .points = {{224, 128}}, .number = "1"});
    stage.add({.kind = "unit", .points = {{92, 226}}, .fields = {{"unit", "2/B inf plt"}}});
    stage.add({.kind = "unit", .points = {{360, 70}}, .fields = {{"unit", "eny inf sqd ?"}}});
    stage.add({.kind = "obstacle-line", .points = swing({260, 130}, {310, 120}, 3)});
    stage.add({.kind = "target-reference-point", .points = {{316, 20}}, .number = "2"});
    flow.draw(stage.engraved());
}

}  // namespace crosstick::symbols
