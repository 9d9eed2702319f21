#include "symbols/specimen/stage.h"

#include <utility>

#include "symbols/token.h"

namespace crosstick::symbols {
namespace {

constexpr geodesy::PlanePoint kOrigin{Metres(500000), Metres(5000000)};  // on the central meridian: grid north is true

geodesy::PlanePoint ground(drawing::Point p, Scale scale) {
    return {kOrigin.easting + onGround(PaperMm(p.x), scale), kOrigin.northing - onGround(PaperMm(p.y), scale)};
}

std::vector<geodesy::PlanePoint> ground(const std::vector<drawing::Point>& points, Scale scale) {
    std::vector<geodesy::PlanePoint> all;
    all.reserve(points.size());
    for (const drawing::Point p : points) {
        all.push_back(ground(p, scale));
    }
    return all;
}

std::optional<geodesy::PlanePoint> ground(const std::optional<drawing::Point>& p, Scale scale) {
    return p ? std::optional(ground(*p, scale)) : std::nullopt;
}

Uuid identity(const std::string& name) {
    return namedUuid(Uuid{{0x5e}}, name);
}

/// A sheet that prints no declination to speak of, so that legs have azimuths without a magnetic model.
plan::Sheet sheet(const std::string& crs, Scale scale) {
    plan::Sheet sheet;
    sheet.id = identity("sheet");
    sheet.crs = crs;
    sheet.columns = sheet.rows = 1000;
    sheet.placement = {ground(drawing::Point{-400, -400}, scale), 20, 0, 0, -20};
    sheet.scale = scale;
    sheet.declination = plan::PrintedDeclination{Degrees(0), std::chrono::year(2027) / 1 / 1, Degrees(0)};
    return sheet;
}

plan::Plan emptyPlan(const drawing::Box& room, Scale scale) {
    plan::Heading heading;
    heading.date = std::chrono::year(2027) / 1 / 1;
    heading.declination = plan::DeclinationSource::Sheet;
    heading.plane = {31, geodesy::Hemisphere::North};
    plan::PlanBuilder first{plan::Plan{}};
    first.id(identity("specimen")).heading(heading);
    plan::Plan plan = std::move(first).build();
    plan::PlanBuilder builder{plan};
    builder.put(sheet(plan.planeCrs(), scale))
        .registration(plan::Registration{
            ground(drawing::Point{0, room.height()}, scale), ground(drawing::Point{room.width(), 0}, scale), {}});
    return std::move(builder).build();
}

}  // namespace

Stage::Stage(const drawing::Box& room, const drawing::Gauge& gauge, PenMode pens, Scale scale)
    : room_(room), plan_(emptyPlan(room, scale)), gauge_(gauge), pens_(pens), scale_(scale) {
    film_.id = identity("film");
    film_.scale = scale;
}

plan::ItemId Stage::show(const Exhibit& exhibit) {
    const auto named = [this](std::optional<std::size_t> n) {
        return n ? std::optional(film_.shows.at(*n).item) : std::nullopt;
    };
    plan::Showing showing;
    showing.item = identity("item " + std::to_string(film_.shows.size()));
    showing.order = plan::orderBetween(film_.shows.empty() ? "" : film_.shows.back().order, "");
    showing.symbolAt = ground(exhibit.symbolAt, scale_);
    showing.labelAt = ground(exhibit.labelAt, scale_);
    showing.standsWith = named(exhibit.standsWith);
    showing.pointsTo = named(exhibit.pointsTo);
    film_.shows.push_back(showing);
    return showing.item;
}

Stage& Stage::add(const Exhibit& exhibit) {
    plan::Measure measure;
    measure.id = show(exhibit);
    measure.kind = exhibit.kind;
    measure.points = ground(exhibit.points, scale_);
    const measures::Entry* entry = measures::find(exhibit.kind);
    if (entry != nullptr && entry->lies == measures::Lies::OnThePaper) {
        measure.anchor = plan::Anchor::Paper;
        for (std::size_t n = 0; n < exhibit.points.size(); ++n) {
            measure.points[n] = {Metres(exhibit.points[n].x), Metres(exhibit.points[n].y)};
        }
    }
    measure.name = exhibit.name;
    measure.number = exhibit.number;
    measure.standing = exhibit.standing;
    measure.whose = exhibit.whose;
    measure.fields = exhibit.fields;
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(measure));
    plan_ = std::move(builder).build();
    return *this;
}

Stage& Stage::add(const ExhibitRoute& exhibit) {
    plan::Route route;
    Exhibit shown;
    shown.labelAt = exhibit.labelAt;
    route.id = show(shown);
    route.name = exhibit.name;
    route.use = exhibit.use;
    route.vertices = ground(exhibit.vertices, scale_);
    for (const ExhibitRoute::Stop& stop : exhibit.stops) {
        route.stops.push_back({stop.vertex, film_.shows.at(stop.exhibit).item});
    }
    for (const auto& [leg, place] : exhibit.figuresAt) {
        const plan::Stop& from = route.stops.at(leg);
        const plan::Stop& to = route.stops.at(leg + 1);
        film_.shows.back().figures.push_back(
            {{from.measure, to.measure, 0, to.vertex - from.vertex - 1}, ground(place, scale_)});
    }
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(route));
    plan_ = std::move(builder).build();
    return *this;
}

Stage& Stage::add(const plan::Force& force) {
    plan::PlanBuilder builder{plan_};
    builder.force(force);
    plan_ = std::move(builder).build();
    return *this;
}

Stage& Stage::reserve(const drawing::Box& box) {
    reserved_.push_back(box);
    return *this;
}

Stage& Stage::drawnWith(const drawing::Gauge& gauge, PenMode pens) {
    gauge_ = gauge;
    pens_ = pens;
    return *this;
}

film::Frame Stage::frame() const {
    return *film::Frame::of(plan_, film_);  // both grids are the same, so there always is one
}

Engraving Stage::engraving(const film::Frame& frame) const {
    Engraving engraving{.plan = plan_,
                        .film = film_,
                        .frame = frame,
                        .gauge = gauge_,
                        .pens = pens_,
                        .reserved = reserved_,
                        .figures = {}};
    for (const plan::RoutePtr& route : plan_.routes()) {
        if (auto figures = movement::routeFigures(plan_, *route, nullptr, nullptr)) {
            engraving.figures.emplace(route->id, std::move(*figures));
        }
    }
    return engraving;
}

EngravedFilm Stage::film() const {
    return engrave(engraving(frame()));
}

std::vector<LegendRow> Stage::legendRows(LegendExtent extent) const {
    return legend(engraving(frame()), extent);
}

drawing::Drawing Stage::engraved() const {
    return drawing::moved(film().all(), {room_.left, room_.top});
}

drawing::Drawing Stage::token(const measures::Entry& entry, const drawing::Box& room) const {
    const plan::MeasurePtr shown = film_.shows.empty() ? nullptr : plan_.measure(film_.shows.back().item);
    return shown ? symbols::token(*shown, entry, engraving(frame()), room, TokenLetters::OfSymbols)
                 : drawing::Drawing{};
}

}  // namespace crosstick::symbols
