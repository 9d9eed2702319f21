#include "core/film/ground_lines.h"

#include "core/measures/catalogue.h"

namespace crosstick::film {
namespace {

void add(std::vector<GroundLine>& lines, const std::vector<geodesy::PlanePoint>& points,
         const geodesy::PlaneLink& link) {
    GroundLine line;
    for (const geodesy::PlanePoint point : points) {
        if (const auto reached = link.forward(point)) {
            line.push_back(*reached);
        }
    }
    if (!line.empty()) {
        lines.push_back(std::move(line));
    }
}

bool isArea(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->shape == measures::Shape::Area;
}

std::vector<geodesy::PlanePoint> outline(const plan::Measure& measure) {
    std::vector<geodesy::PlanePoint> points = measure.points;
    if (points.size() > 2 && isArea(measure)) {
        points.push_back(points.front());
    }
    return points;
}

}  // namespace

std::vector<GroundLine> groundLines(const plan::Plan& plan, const geodesy::PlaneLink& link) {
    std::vector<GroundLine> lines;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (measure->anchor == plan::Anchor::Ground && measure->state != plan::PlaceState::Unplaced) {
            add(lines, outline(*measure), link);
        }
    });
    for (const plan::RoutePtr& route : plan.routes()) {
        add(lines, route->vertices, link);
    }
    for (const plan::FilmPtr& film : plan.films()) {
        for (const plan::Showing& showing : film->shows) {
            for (const auto& aside : {showing.symbolAt, showing.labelAt}) {
                if (aside) {
                    add(lines, {*aside}, link);
                }
            }
            for (const plan::FiguresAt& figures : showing.figures) {
                add(lines, {figures.at}, link);
            }
        }
    }
    return lines;
}

}  // namespace crosstick::film
