#include <cmath>

#include "core/drawing/steps.h"
#include "sample-data/sheet/themes.h"

namespace crosstick::demo {
namespace {

/// A brook grows from 0.15 at its spring to its width at the mouth: drawn in pieces, each a little wider.
void drawBrook(const Canvas& canvas, const PegLine& pegs, double mouth) {
    const Course course(pathOf(placesOf(pegs)));
    constexpr double kPiece = 2;
    for (const double d : drawing::steps(0, course.length(), kPiece)) {
        const double share = d / course.length();
        canvas.stroke(course.piece(d, d + kPiece + 0.1), ink::kWater, 0.15 + (mouth - 0.15) * share, Qt::RoundCap);
    }
}

}  // namespace

void drawWater(const Canvas& canvas, const Json& cover) {
    for (const NamedPegs& brook : canvas.ground.brooks) {
        const bool isLong = brook.name == "Mirrel Brook" || brook.name == "Tessock Brook" || brook.name == "Kelp Brook";
        drawBrook(canvas, brook.pegs, isLong ? 0.35 : 0.25);
    }
    const QPainterPath lake = pathOf(canvas.ground.lake, true);
    canvas.stroke(lake, ink::kWater, 0.2);
    canvas.stroke(pathOf(canvas.ground.shore, true), ink::kWater, 0.2);
    for (const Line& islet : canvas.ground.islets) {
        canvas.stroke(pathOf(islet, true), ink::kWater, 0.2);
    }
    for (const Json& wall : cover.at("harbour_walls")) {
        canvas.stroke(pathOf(lineOf(wall)), ink::kBlack, 0.35);
    }
    for (const Json& jetty : cover.at("jetties")) {
        canvas.stroke(pathOf(lineOf(jetty)), ink::kBlack, 0.45);
        canvas.stroke(pathOf(lineOf(jetty)), ink::kPaper, 0.15);
    }
}

}  // namespace crosstick::demo
