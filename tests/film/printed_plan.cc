#include "tests/film/printed_plan.h"

#include "core/units/time.h"

namespace crosstick::film {
namespace {

using movement::at;
using movement::kettleId;

constexpr double kPixels = 100;  ///< a side; the raster itself is not read for films

plan::Sheet placed(plan::Sheet sheet, const std::string& crs, geodesy::PlanePoint upperLeft, Metres wide, Metres high) {
    sheet.crs = crs;
    sheet.columns = sheet.rows = static_cast<int>(kPixels);
    sheet.placement = {upperLeft, wide.value() / kPixels, 0, 0, -high.value() / kPixels};
    return sheet;
}

plan::Measure area(const char* name, const char* kind, const char* ownName, std::vector<geodesy::PlanePoint> points) {
    plan::Measure one;
    one.id = kettleId(name);
    one.kind = kind;
    one.name = ownName;
    one.points = std::move(points);
    return one;
}

std::vector<plan::Measure> further() {
    plan::Measure right =
        area("right", "boundary", "",
             {at(655400, 5096400), at(655400, 5096800), at(655500, 5097600), at(655980, 5098300), at(656180, 5099100),
              at(656750, 5099900), at(656840, 5100120), at(657100, 5100750), at(657500, 5101700), at(657580, 5101800),
              at(657900, 5102200), at(658200, 5102800), at(658500, 5103200)});
    right.fields = {{"left_unit", "2/C"}, {"right_unit", "3/C"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}};
    return {right,
            area("AA HASSOCK", "assembly-area", "HASSOCK",
                 {at(653720, 5097700), at(653720, 5098020), at(653940, 5098100), at(654200, 5097980),
                  at(654300, 5097780), at(654220, 5097560), at(653960, 5097460)}),
            area("OBJ COBNUT", "objective", "COBNUT",
                 {at(656880, 5102900), at(656900, 5103140), at(657060, 5103200), at(657240, 5103160),
                  at(657260, 5102940), at(657120, 5102860)})};
}

plan::Heading heading(plan::Heading heading) {
    heading.author = "Lt Arden";
    heading.unit = "2/C";
    heading.distribution = "copy 2 of 6: 1 Sqd";
    heading.prepared = *parseIsoTime("2027-03-13T11:00:00-02:00");
    heading.effective = *parseIsoTime("2027-03-13T19:00:00-02:00");
    heading.declination = plan::DeclinationSource::Sheet;
    return heading;
}

plan::Film filmOf(const char* name, std::set<int> phases, const std::vector<const char*>& items) {
    plan::Film film;
    film.id = kettleId(name);
    film.name = name;
    film.phases = std::move(phases);
    std::string order;
    for (const char* item : items) {
        order = plan::orderBetween(order, "");
        film.shows.push_back({kettleId(item), order, {}, {}});
    }
    return film;
}

plan::Film withFurther(plan::Film film) {
    for (const char* item : {"right", "AA HASSOCK", "OBJ COBNUT"}) {
        film.shows.push_back({kettleId(item), plan::orderBetween(film.shows.back().order, ""), {}, {}});
    }
    return film;
}

}  // namespace

plan::Plan printedPlan() {
    const plan::Plan base = movement::kettlePlan();
    plan::PlanBuilder builder{base};
    builder.heading(heading(base.heading()))
        .put(placed(*base.sheets().front(), "EPSG:32625", at(651000, 5106000), Metres(9500), Metres(11000)))
        .put(further())
        .put(withFurther(*base.films().front()))
        .put(filmOf("HIGHER", {}, {"left", "right", "LD TRIVET", "PL BODKIN", "PL LADLE", "LOA GASKET", "OBJ COBNUT"}))
        .put(filmOf("LOOK", {3}, {"ORP SORREL", "OBJ COBNUT", "PL LADLE"}));
    const plan::Plan all = std::move(builder).build();
    plan::PlanBuilder ordered{all};
    ordered.order({kettleId("sheet")}, {kettleId("HIGHER"), kettleId("MOVE"), kettleId("LOOK")},
                  {kettleId("RTE QUILL"), kettleId("RTE MITTEN")});
    ordered.registration(
        plan::Registration{at(652300, 5096200),
                           at(659000, 5104500),
                           {at(653000, 5097000), at(658000, 5097000), at(653000, 5104000), at(658000, 5104000)}});
    return std::move(ordered).build();
}

plan::Plan printedOn(const std::string& crs, geodesy::PlanePoint upperLeft, Metres wide, Metres high) {
    const plan::Plan base = printedPlan();
    plan::PlanBuilder builder{base};
    builder.put(placed(*base.sheets().front(), crs, upperLeft, wide, high)).registration(std::nullopt);
    return std::move(builder).build();
}

plan::Plan lineOn(geodesy::Zone zone, const std::vector<geodesy::PlanePoint>& points, const std::string& crs,
                  geodesy::PlanePoint upperLeft, Metres side) {
    plan::Heading heading;
    heading.name = "PLAIN LINE";
    heading.plane = zone;
    heading.date = std::chrono::year(2027) / 3 / 13;
    plan::Sheet sheet;
    sheet.id = kettleId("plain sheet");
    sheet.name = "Plain";
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(kettleId("line plan"))
        .heading(heading)
        .put(placed(sheet, crs, upperLeft, side, side))
        .put(area("PL SLATE", "phase-line", "SLATE", points))
        .put(filmOf("LINE", {1}, {"PL SLATE"}));
    return std::move(builder).build();
}

}  // namespace crosstick::film
