#include "symbols/specimen/stage.h"

#include <utility>

#include "symbols/token.h"

namespace crosstick::symbols {
namespace {

constexpr Scale kScale{25000};
constexpr geodesy::PlanePoint kOrigin{Metres(500000), Metres(5000000)};  // on the central meridian: grid north is true

geodesy::PlanePoint ground(drawing::Point p) {
    return {kOrigin.easting + onGround(PaperMm(p.x), kScale), kOrigin.northing - onGround(PaperMm(p.y), kScale)};
}

std::vector<geodesy::PlanePoint> ground(const std::vector<drawing::Point>& points) {
    std::vector<geodesy::PlanePoint> all;
    all.reserve(points.size());
    for (const drawing::Point p : points) {
        all.push_back(ground(p));
    }
    return all;
}

Uuid identity(const std::string& name) {
    return namedUuid(Uuid{{0x5e}}, name);
}

/// A sheet that prints no declination to speak of, so that legs have azimuths without a magnetic model.
plan::Sheet sheet(const std::string& crs) {
    plan::Sheet sheet;
    sheet.id = identity("sheet");
    sheet.crs = crs;
    sheet.columns = sheet.rows = 1000;
    sheet.placement = {ground({-400, -400}), 20, 0, 0, -20};
    sheet.scale = kScale;
    sheet.declination = plan::PrintedDeclination{Degrees(0), std::chrono::year(2027) / 1 / 1, Degrees(0)};
    return sheet;
}

plan::Plan emptyPlan(const drawing::Box& room) {
    plan::Heading heading;
    heading.date = std::chrono::year(2027) / 1 / 1;
    heading.declination = plan::DeclinationSource::Sheet;
    heading.plane = {31, geodesy::Hemisphere::North};
    plan::PlanBuilder first{plan::Plan{}};
    first.id(identity("specimen")).heading(heading);
    plan::Plan plan = std::move(first).build();
    plan::PlanBuilder builder{plan};
    builder.put(sheet(plan.planeCrs()))
        .registration(plan::Registration{ground({0, room.height()}), ground({room.width(), 0}), {}});
    return std::move(builder).build();
}

}  // namespace

Stage::Stage(const drawing::Box& room, const drawing::Gauge& gauge, PenMode pens)
    : room_(room), plan_(emptyPlan(room)), gauge_(gauge), pens_(pens) {
    film_.id = identity("film");
    film_.scale = kScale;
}

plan::ItemId Stage::show(std::optional<drawing::Point> symbolAt) {
    const plan::ItemId id = identity("item " + std::to_string(film_.shows.size()));
    const std::string last = film_.shows.empty() ? "" : film_.shows.back().order;
    film_.shows.push_back(
        {id, plan::orderBetween(last, ""), symbolAt ? std::optional(ground(*symbolAt)) : std::nullopt, std::nullopt});
    return id;
}

Stage& Stage::add(const Exhibit& exhibit) {
    plan::Measure measure;
    measure.id = show(exhibit.symbolAt);
    measure.kind = exhibit.kind;
    measure.points = ground(exhibit.points);
    measure.name = exhibit.name;
    measure.number = exhibit.number;
    measure.standing = exhibit.standing;
    measure.whose = exhibit.whose;
    measure.fields = exhibit.fields;
    exhibits_.push_back(measure.id);
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(measure));
    plan_ = std::move(builder).build();
    return *this;
}

Stage& Stage::add(const ExhibitRoute& exhibit) {
    plan::Route route;
    route.id = show({});
    route.name = exhibit.name;
    route.use = exhibit.use;
    route.vertices = ground(exhibit.vertices);
    for (const ExhibitRoute::Stop& stop : exhibit.stops) {
        route.stops.push_back({stop.vertex, exhibits_.at(stop.exhibit)});
    }
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(route));
    plan_ = std::move(builder).build();
    return *this;
}

Engraving Stage::engraving(const film::Frame& frame) const {
    Engraving engraving{
        .plan = plan_, .film = film_, .frame = frame, .gauge = gauge_, .pens = pens_, .reserved = {}, .figures = {}};
    for (const plan::RoutePtr& route : plan_.routes()) {
        if (auto figures = movement::routeFigures(plan_, *route, nullptr, nullptr)) {
            engraving.figures.emplace(route->id, std::move(*figures));
        }
    }
    return engraving;
}

drawing::Drawing Stage::engraved() const {
    const auto frame = film::Frame::of(plan_, film_);
    // Both grids are the same, so there is always a frame.
    return frame ? drawing::moved(engrave(engraving(*frame)).all(), {room_.left, room_.top}) : drawing::Drawing{};
}

drawing::Drawing Stage::token(const measures::Entry& entry, const drawing::Box& room) const {
    const auto frame = film::Frame::of(plan_, film_);
    const plan::MeasurePtr shown = exhibits_.empty() ? nullptr : plan_.measure(exhibits_.back());
    return frame && shown ? symbols::token(*shown, entry, engraving(*frame), room, TokenLetters::OfSymbols)
                          : drawing::Drawing{};
}

}  // namespace crosstick::symbols
