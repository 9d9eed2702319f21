#include "tests/symbols/made_film.h"

#include "core/measures/catalogue.h"
#include "tests/movement/kettle_plan.h"

namespace crosstick::symbols::testing {
namespace {

using movement::kettleId;

constexpr double kWest = 650000;
constexpr double kNorth = 5105000;
/// Leg labels by the sheet's printed angle, so that no magnetic model is needed.
plan::Heading heading() {
    plan::Heading heading = movement::kettlePlan().heading();
    heading.declination = plan::DeclinationSource::Sheet;
    return heading;
}

}  // namespace

geodesy::PlanePoint MadeFilm::ground(drawing::Point p) const {
    return {Metres(kWest) + onGround(PaperMm(p.x), scale_), Metres(kNorth) - onGround(PaperMm(p.y), scale_)};
}
std::vector<geodesy::PlanePoint> MadeFilm::ground(const drawing::Points& points) const {
    std::vector<geodesy::PlanePoint> all;
    for (const drawing::Point p : points) {
        all.push_back(ground(p));
    }
    return all;
}
std::optional<geodesy::PlanePoint> MadeFilm::ground(const std::optional<drawing::Point>& p) const {
    return p ? std::optional(ground(*p)) : std::nullopt;
}

MadeFilm::MadeFilm() {
    plan::Sheet sheet = *movement::kettlePlan().sheets().front();
    sheet.columns = sheet.rows = 100;
    sheet.placement = {ground(drawing::Point{-40, -40}), 100, 0, 0, -100};
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(kettleId("made plan"))
        .heading(heading())
        .put(sheet)
        .registration(plan::Registration{ground(drawing::Point{kWindow.left, kWindow.bottom}),
                                         ground(drawing::Point{kWindow.right, kWindow.top}),
                                         {}});
    plan_ = std::move(builder).build();
    film_.id = kettleId("made film");
    film_.name = "MADE";
}

void MadeFilm::show(const plan::ItemId& item, const Made& made) {
    const std::string last = film_.shows.empty() ? "" : film_.shows.back().order;
    const auto named = [this](std::optional<std::size_t> n) {
        return n ? std::optional(film_.shows[*n].item) : std::nullopt;
    };
    film_.shows.push_back({item, plan::orderBetween(last, ""), ground(made.symbolAt), ground(made.labelAt),
                           named(made.standsWith), named(made.pointsTo)});
}

MadeFilm& MadeFilm::add(const Made& made) {
    plan::Measure measure;
    measure.id = kettleId("item " + std::to_string(film_.shows.size()));
    measure.kind = made.kind;
    measure.points = ground(made.points);
    if (const auto* entry = measures::find(made.kind); entry != nullptr && entry->lies == measures::Lies::OnThePaper) {
        measure.anchor = plan::Anchor::Paper;
        for (std::size_t n = 0; n < made.points.size(); ++n) {
            measure.points[n] = {Metres(made.points[n].x), Metres(made.points[n].y)};
        }
    }
    measure.name = made.name;
    measure.number = made.number;
    measure.standing = made.standing;
    measure.whose = made.whose;
    measure.fields = made.fields;
    show(measure.id, made);
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(measure));
    plan_ = std::move(builder).build();
    return *this;
}

MadeFilm& MadeFilm::add(const MadeRoute& made) {
    plan::Route route;
    for (std::size_t n = 0; n < made.stops.size(); ++n) {
        const std::size_t vertex = made.stops[n];
        add(Made{.kind = "checkpoint", .points = {made.vertices[vertex]}, .number = std::to_string(n + 1)});
        route.stops.push_back({vertex, film_.shows.back().item});
    }
    route.id = kettleId("item " + std::to_string(film_.shows.size()));
    route.name = made.name;
    route.use = made.use;
    route.vertices = ground(made.vertices);
    show(route.id, {});
    plan::PlanBuilder builder{plan_};
    builder.put(std::move(route));
    plan_ = std::move(builder).build();
    return *this;
}

MadeFilm& MadeFilm::add(const plan::Column& column, const std::vector<plan::Element>& elements) {
    plan::Force force = plan_.force();
    force.columns.push_back(column);
    force.elements.insert(force.elements.end(), elements.begin(), elements.end());
    plan::PlanBuilder builder{plan_};
    builder.force(std::move(force));
    plan_ = std::move(builder).build();
    return *this;
}

MadeFilm& MadeFilm::gauge(const drawing::Gauge& gauge) {
    gauge_ = gauge;
    return *this;
}
MadeFilm& MadeFilm::onePen() {
    pens_ = PenMode::OnePen;
    return *this;
}

MadeFilm& MadeFilm::scale(Scale scale) {
    scale_ = scale;
    film_.scale = scale;
    return *this;
}
MadeFilm& MadeFilm::window(const drawing::Box& window) {
    plan::PlanBuilder builder{plan_};
    builder.registration(plan::Registration{
        ground(drawing::Point{window.left, window.bottom}), ground(drawing::Point{window.right, window.top}), {}});
    plan_ = std::move(builder).build();
    return *this;
}

MadeFilm& MadeFilm::reserve(const drawing::Box& box) {
    reserved_.push_back(box);
    return *this;
}

Engraving MadeFilm::engraving(const film::Frame& frame) const {
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

EngravedFilm MadeFilm::engraved() const {
    return engrave(engraving(*film::Frame::of(plan_, film_)));
}
std::vector<LegendRow> MadeFilm::legendRows(LegendExtent extent) const {
    return legend(engraving(*film::Frame::of(plan_, film_)), extent);
}

drawing::Drawing MadeFilm::drawn(std::size_t item) const {
    for (EngravedItem& one : engraved().items) {
        if (one.item == film_.shows[item].item) {
            return std::move(one.drawing);
        }
    }
    return {};
}
drawing::Drawing MadeFilm::drawn() const {
    return drawn(film_.shows.size() - 1);
}

std::vector<std::string> MadeFilm::remarks() const {
    std::vector<std::string> names;
    for (const Remark& remark : engraved().remarks) {
        names.emplace_back(remark.about.name);
    }
    return names;
}

Made sample(std::string_view kind, drawing::Point at) {
    using drawing::Vector;
    using measures::Sign;
    Made made{.kind = std::string(kind), .points = {at}, .name = "FLINT"};
    const measures::Entry* entry = measures::find(kind);
    if (entry == nullptr) {
        return made;
    }
    if (entry->points.most && *entry->points.most > 1) {
        made.points = {at + Vector{-15, 8}, at + Vector{12, 10}, at + Vector{-22, -14}, at + Vector{20, -12}};
        if (*entry->points.most == 2) {  // a sign's middle and its corner
            made.points = {at + Vector{-8, 8}, at + Vector{10, -5}};
        }
        made.points.resize(static_cast<std::size_t>(*entry->points.most));
    } else if (entry->shape == measures::Shape::Line) {
        made.points = {at + Vector{-25, 6}, at + Vector{0, 0}, at + Vector{28, -4}};
    } else if (entry->shape == measures::Shape::Area) {
        made.points = {at + Vector{-18, -9}, at + Vector{4, -14}, at + Vector{20, -2}, at + Vector{6, 13},
                       at + Vector{-14, 10}};
    } else if (entry->shape == measures::Shape::Point) {
        made.name = entry->sign == Sign::TaskWords ? "OBJ PINE" : "";
        made.number = entry->sign == Sign::Unit || entry->sign == Sign::TaskWords ? "" : "3";
    }
    if (entry->sign == Sign::Boundary) {
        made.fields = {{"left_unit", "2/C"}, {"right_unit", "3/C"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}};
    } else if (entry->sign == Sign::Unit) {
        made.fields = {{"unit", "1/2 inf sqd (+)"}};
    }
    return made;
}

}  // namespace crosstick::symbols::testing
