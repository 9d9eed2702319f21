#include "tests/movement/kettle_plan.h"

#include "core/units/time.h"

namespace crosstick::movement {
namespace {

using geodesy::PlanePoint;
using Points = std::vector<PlanePoint>;

plan::Measure measure(const std::string& name, const char* kind, const std::string& ownName, const std::string& number,
                      Points points) {
    plan::Measure one;
    one.id = kettleId(name);
    one.kind = kind;
    one.name = ownName;
    one.number = number;
    one.points = std::move(points);
    return one;
}

plan::Measure checkpoint(const std::string& number, PlanePoint place, const char* tie) {
    plan::Measure one = measure("CP " + number, "checkpoint", "", number, {place});
    one.tie = tie;
    return one;
}

std::vector<plan::Measure> points() {
    plan::Measure start = measure("SP 1", "start-point", "", "1", {at(654270, 5098060)});
    start.tie = "track bend at the wood's NE corner";
    plan::Measure release = measure("RP 1", "release-point", "", "1", {at(656400, 5102400)});
    release.tie = "SW corner of Brook Wood, 47 m inside";
    plan::Measure rally = measure("ORP SORREL", "objective-rally-point", "SORREL", "", {at(656700, 5102680)});
    rally.state = plan::PlaceState::Assumed;
    return {start,
            release,
            rally,
            checkpoint("1", at(654470, 5099120), "saddle, end of the long wall, 57 m W of the spur track"),
            checkpoint("2", at(654730, 5099720), "sheepfold, 47 m W of the spur track, 140 m short of the cross track"),
            checkpoint("3", at(655060, 5100640), "weir with footbridge at the lake's outlet"),
            checkpoint("4", at(655400, 5101860), "sheepfold beside the lake path, 140 m S of Stile Gap"),
            checkpoint("5", at(656100, 5102140), "gully where it steepens, hear water"),
            checkpoint("6", at(655660, 5099530), "ford of Mirrel Brook, 176 m E of Road B; the brook catches"),
            checkpoint("7", at(656300, 5100300), "farm track, bend on the low ridge"),
            checkpoint("8", at(656800, 5101050), "Sallow Farm's gate, end of farm track"),
            checkpoint("9", at(656950, 5101900), "cairn on Works Spur")};
}

std::vector<plan::Measure> lines() {
    return {
        measure(
            "LD TRIVET", "line-of-departure", "TRIVET", "",
            {at(653200, 5098400), at(653450, 5098500), at(653750, 5098520), at(654030, 5098460), at(654300, 5098360),
             at(654550, 5098260), at(654800, 5098200), at(655050, 5098250), at(655300, 5098300), at(655510, 5098260),
             at(655700, 5098220), at(655840, 5098250), at(655980, 5098300)}),
        measure(
            "PL BODKIN", "phase-line", "BODKIN", "",
            {at(653700, 5099900), at(653950, 5099950), at(654200, 5099980), at(654530, 5099900), at(654830, 5099840),
             at(654970, 5099900), at(655100, 5099980), at(655250, 5100030), at(655400, 5100083), at(655610, 5100140),
             at(655820, 5100200), at(656200, 5100140), at(656840, 5100120)}),
        measure("PL LADLE", "phase-line", "LADLE", "",
                {at(654000, 5102600), at(654700, 5102250), at(655420, 5102000), at(656050, 5101720),
                 at(656600, 5101550), at(657200, 5101800), at(657580, 5101800)}),
        measure("LOA GASKET", "limit-of-advance", "GASKET", "",
                {at(657420, 5103290), at(657450, 5102900), at(657620, 5102500), at(657900, 5102200)}),
        measure("left", "boundary", "", "",
                {at(653050, 5097000), at(653100, 5097430), at(653200, 5098400), at(653400, 5099200),
                 at(653700, 5099900), at(653860, 5100800), at(653950, 5101600), at(654000, 5102600)}),
    };
}

plan::Route quill() {
    plan::Route route;
    route.id = kettleId("RTE QUILL");
    route.name = "QUILL";
    route.vertices = {at(654270, 5098060), at(654330, 5098520), at(654470, 5099120), at(654730, 5099720),
                      at(655060, 5100640), at(655200, 5100860), at(655200, 5101120), at(655400, 5101860),
                      at(655560, 5102060), at(656100, 5102140), at(656400, 5102400)};
    route.stops = {{0, kettleId("SP 1")}, {2, kettleId("CP 1")}, {3, kettleId("CP 2")}, {4, kettleId("CP 3")},
                   {7, kettleId("CP 4")}, {9, kettleId("CP 5")}, {10, kettleId("RP 1")}};
    route.ifNotFound = "Lake shore on the left hand means CP 3 is missed: follow it down to the weir.";
    return route;
}

plan::Route mitten() {
    plan::Route route;
    route.id = kettleId("RTE MITTEN");
    route.name = "MITTEN";
    route.use = plan::Use::Alternate;
    route.vertices = {at(654270, 5098060), at(654330, 5098520), at(654470, 5099120), at(655660, 5099530),
                      at(655980, 5099950), at(656300, 5100300), at(656800, 5101050), at(656950, 5101900),
                      at(656720, 5102160), at(656400, 5102400)};
    route.stops = {{0, kettleId("SP 1")}, {2, kettleId("CP 1")}, {3, kettleId("CP 6")}, {5, kettleId("CP 7")},
                   {6, kettleId("CP 8")}, {7, kettleId("CP 9")}, {9, kettleId("RP 1")}};
    return route;
}

plan::Heading heading() {
    plan::Heading heading;
    heading.name = "SLOW KETTLE";
    heading.marking = "EXERCISE";
    heading.zone = *timeZone('O');
    heading.date = std::chrono::year(2027) / 3 / 13;
    heading.plane = {25, geodesy::Hemisphere::North};
    heading.pace = plan::PaceProfile{74, "open hill, night"};
    heading.rate = plan::MarchRate{KilometresPerHour(1.6), "cross-country by night, halts within"};
    return heading;
}

plan::Sheet sheet() {
    plan::Sheet sheet;
    sheet.id = kettleId("sheet");
    sheet.crs = "EPSG:32625";
    sheet.name = "Ulmeray";
    sheet.number = "4271";
    sheet.series = "ZT25";
    sheet.edition = "2";
    sheet.datum = "WGS 84";
    sheet.declination = plan::PrintedDeclination{Degrees(-11.5), std::chrono::year(2025) / 1 / 1, Degrees(0.2)};
    return sheet;
}

plan::Force force() {
    plan::Force force;
    plan::Column column;
    column.id = kettleId("column");
    column.name = "Approach";
    const auto march = [&](const char* name, const char* unit, int people) {
        force.elements.push_back({kettleId(name), unit, name, "", people});
        column.serials.push_back({kettleId(name), "", std::nullopt});
    };
    march("1 Sqd", "1/2/C inf sqd", 9);
    march("HQ fwd", "hq 2/C inf plt", 3);
    march("WPN", "WPN/2/C inf sqd", 8);
    march("2 Sqd", "2/2/C inf sqd", 9);
    march("HQ rear", "hq 2/C inf plt", 2);
    march("3 Sqd", "3/2/C inf sqd", 9);
    column.serials.front().role = "POINT";
    column.serials.back().role = "REAR";
    force.columns.push_back(std::move(column));
    return force;
}

plan::Film film(const std::vector<plan::Measure>& measures) {
    plan::Film film;
    film.id = kettleId("MOVE");
    film.name = "MOVE";
    film.phases = {1, 2};
    std::string order;
    const auto show = [&](const plan::ItemId& item) {
        order = plan::orderBetween(order, "");
        film.shows.push_back({item, order, {}, {}});
    };
    for (const plan::Measure& measure : measures) {
        show(measure.id);
    }
    show(kettleId("RTE QUILL"));
    show(kettleId("RTE MITTEN"));
    return film;
}

}  // namespace

PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

plan::ItemId kettleId(const std::string& name) {
    return namedUuid(Uuid{}, "slow kettle " + name);
}

plan::Plan kettlePlan() {
    std::vector<plan::Measure> measures = points();
    for (plan::Measure& line : lines()) {
        measures.push_back(std::move(line));
    }
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(kettleId("plan"))
        .heading(heading())
        .force(force())
        .put(sheet())
        .put(film(measures))
        .put(std::move(measures));
    for (plan::Route route : {quill(), mitten()}) {
        route.onwardTo = kettleId("ORP SORREL");
        route.start = *parseIsoTime("2027-03-13T21:00:00-02:00");
        builder.put(std::move(route));
    }
    return std::move(builder).build();
}

plan::Plan kettlePlanBesideOak() {
    const plan::Plan plan = kettlePlan();
    plan::Film film = *plan.films().front();
    film.shows.push_back({kettleId("MSR OAK"), plan::orderBetween(film.shows.back().order, ""), {}, {}});
    return std::move(plan::PlanBuilder(plan)
                         .put(measure("MSR OAK", "main-supply-route", "OAK", "",
                                      {at(654806.9, 5099904.9), at(654989.2, 5100413.1)}))
                         .put(std::move(film)))
        .build();
}

plan::Plan plainRoute(const std::vector<PlanePoint>& vertices) {
    plan::Route route;
    route.id = kettleId("RTE PLAIN");
    route.name = "PLAIN";
    route.vertices = vertices;
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(kettleId("plain plan")).heading(heading());
    for (std::size_t n = 0; n < vertices.size(); ++n) {
        builder.put(checkpoint(std::to_string(n + 1), vertices[n], ""));
        route.stops.push_back({n, kettleId("CP " + std::to_string(n + 1))});
    }
    builder.put(std::move(route));
    return std::move(builder).build();
}

}  // namespace crosstick::movement
