#include "symbols/specimen/stage.h"

#include <array>
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

/// Who marches in the block of an order of march.
plan::Force force() {
    struct Row {
        const char* unit;
        const char* name;
        const char* role;
        int people;
    };
    static constexpr std::array kRows{Row{"1/2 inf sqd", "1 Sqd", "POINT", 9}, Row{"hq 2/B inf plt", "HQ", "HQ", 3},
                                      Row{"2/2 inf sqd", "2 Sqd", "", 9}, Row{"3/2 inf sqd", "3 Sqd", "REAR", 9}};
    plan::Force force;
    plan::Column column;
    column.id = identity("column");
    for (const Row& row : kRows) {
        const Uuid id = identity(row.name);
        force.elements.push_back({id, row.unit, row.name, "", row.people});
        column.serials.push_back({id, row.role, std::nullopt});
    }
    force.columns.push_back(std::move(column));
    return force;
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
        .registration(plan::Registration{ground({0, room.height()}), ground({room.width(), 0}), {}})
        .force(force());
    return std::move(builder).build();
}

}  // namespace

Stage::Stage(const drawing::Box& room, const drawing::Gauge& gauge, PenMode pens)
    : room_(room), plan_(emptyPlan(room)), gauge_(gauge), pens_(pens) {
    film_.id = identity("film");
    film_.scale = kScale;
}

plan::ItemId Stage::show(const Exhibit& exhibit) {
    const auto named = [this](std::optional<std::size_t> n) {
        return n ? std::optional(exhibits_.at(*n)) : std::nullopt;
    };
    plan::Showing showing;
    showing.item = identity("item " + std::to_string(film_.shows.size()));
    showing.order = plan::orderBetween(film_.shows.empty() ? "" : film_.shows.back().order, "");
    showing.symbolAt = exhibit.symbolAt ? std::optional(ground(*exhibit.symbolAt)) : std::nullopt;
    showing.standsWith = named(exhibit.standsWith);
    showing.pointsTo = named(exhibit.pointsTo);
    film_.shows.push_back(showing);
    return showing.item;
}

Stage& Stage::add(const Exhibit& exhibit) {
    plan::Measure measure;
    measure.id = show(exhibit);
    measure.kind = exhibit.kind;
    measure.points = ground(exhibit.points);
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
    exhibits_.push_back(measure.id);
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(measure));
    plan_ = std::move(builder).build();
    return *this;
}

Stage& Stage::add(const ExhibitRoute& exhibit) {
    plan::Route route;
    route.id = show(Exhibit{});
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
