#include "ui/tools/hand_tool.h"

#include "core/measures/catalogue.h"
#include "core/plan/showings.h"

namespace crosstick::tools {
namespace {

geodesy::PlanePoint pointOf(const plan::Plan& plan, const plan::ItemId& item, std::size_t vertex) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return vertex < route->vertices.size() ? route->vertices[vertex] : geodesy::PlanePoint{};
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure && vertex < measure->points.size() ? measure->points[vertex] : geodesy::PlanePoint{};
}

std::size_t pointsOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return route->vertices.size();
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure ? measure->points.size() : 0;
}

bool isPoint(const plan::Plan& plan, const plan::ItemId& item) {
    return !plan.route(item) && pointsOf(plan, item) == 1;
}

/// Words are placed by their letters: those have no other place.
bool isWords(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->shape == measures::Shape::Text;
}

plan::Anchor lies(const plan::Plan& plan, const plan::ItemId& item) {
    const plan::MeasurePtr measure = plan.measure(item);
    return measure ? measure->anchor : plan::Anchor::Ground;
}

bool isUnit(const plan::Plan& plan, const plan::ItemId& item) {
    const plan::MeasurePtr measure = plan.measure(item);
    return measure && measure->kind == "unit";
}

/// The working film where it shows the thing, else the film that the hand found it on.
plan::FilmId filmFor(const Touched& touched, const Ground& ground) {
    const plan::FilmPtr working = ground.plan.film(ground.film);
    return working && plan::isShownOn(*working, touched.item) ? ground.film : touched.film;
}

}  // namespace

std::optional<HandTool::Grip> HandTool::gripOn(const Touched& touched, const Event& event, const Ground& ground) {
    const plan::MeasurePtr measure = ground.plan.measure(touched.item);
    if (!measure) {
        return std::nullopt;  // figures of a route stand where its legs are
    }
    Grip grip{touched.item, What::Aside, 0, event.at, touched.at, ground.plan, false, filmFor(touched, ground),
              ground.touch};
    const bool already = ground.selected == touched.item;
    if (measure->anchor == plan::Anchor::Paper) {
        grip.what = What::OnPaper;
    } else if (touched.what == Touched::What::Letters && !isWords(*measure)) {
        grip.what = What::Letters;
        return already ? std::optional(std::move(grip)) : std::nullopt;
    } else if (measure->points.size() > 1) {
        grip.what = What::Whole;
        return already ? std::optional(std::move(grip)) : std::nullopt;
    } else if (!touched.isAside && !event.second) {
        grip.what = What::Point;
        grip.origin = pointOf(ground.plan, touched.item, 0);
    }
    return grip;
}

std::optional<HandTool::Grip> HandTool::gripOn(const Hit& hit, const Event& event, const Ground& ground) {
    Grip grip{hit.item, What::Whole, 0, event.at, event.at, ground.plan, false, ground.film, ground.touch};
    const bool already = ground.selected == hit.item;
    if (hit.vertex && event.second && isPoint(ground.plan, hit.item)) {
        grip.what = What::Aside;
    } else if (hit.vertex && (already || isPoint(ground.plan, hit.item))) {
        grip.what = What::Point;
        grip.vertex = *hit.vertex;
        grip.origin = pointOf(ground.plan, hit.item, *hit.vertex);
    } else if (hit.before && event.second && already) {
        grip.base = plan::withPointBefore(ground.plan, hit.item, *hit.before, event.at);
        grip.what = What::Point;
        grip.vertex = *hit.before;
        grip.added = true;
    } else if (!already) {
        return std::nullopt;  // the first press only selects: nothing is dragged by mistake
    }
    return grip;
}

Reply HandTool::pressed(const Event& event, const Ground& ground) {
    Reply reply;
    moved_ = false;
    grip_.reset();
    held_.reset();
    const auto hit = hitAt(ground.plan, ground.shown, ground.selected, event.at, ground.reach);
    const auto touched = ground.touch && !(hit && hit->vertex) ? ground.touch(event.at, {}) : std::optional<Touched>();
    if (touched) {
        reply.select = std::optional(touched->item);
        grip_ = gripOn(*touched, event, ground);
    } else if (hit) {
        reply.select = std::optional(hit->item);
        grip_ = gripOn(*hit, event, ground);
        if (grip_ && grip_->added) {
            reply.draft = grip_->base;
        }
    } else {
        reply.select = std::optional<plan::ItemId>();
    }
    return reply;
}

std::optional<plan::Plan> HandTool::joined(geodesy::PlanePoint to) const {
    const auto over = isUnit(grip_->base, grip_->item) && grip_->lay ? grip_->lay(to, grip_->item) : std::nullopt;
    if (!over || over->what != Touched::What::Symbol || !isUnit(grip_->base, over->item)) {
        return std::nullopt;
    }
    plan::Plan row = plan::standingWith(grip_->base, grip_->item, grip_->film, over->item);
    return row == grip_->base ? std::nullopt : std::optional(std::move(row));
}

plan::Plan HandTool::setAside(geodesy::PlanePoint to) const {
    if (auto row = joined(to)) {
        return std::move(*row);
    }
    return plan::setAside(grip_->base, grip_->item, grip_->film,
                          geodesy::PlanePoint{grip_->origin.easting + (to.easting - grip_->start.easting),
                                              grip_->origin.northing + (to.northing - grip_->start.northing)});
}

plan::Plan HandTool::dragged(const Event& event, const Ground& ground) const {
    const Metres east = event.at.easting - grip_->start.easting;
    const Metres north = event.at.northing - grip_->start.northing;
    const geodesy::PlanePoint to{grip_->origin.easting + east, grip_->origin.northing + north};
    switch (grip_->what) {
        case What::Point:
            if (auto row = joined(event.at)) {
                return std::move(*row);
            }
            return plan::withPoint(grip_->base, grip_->item, grip_->vertex, to);
        case What::Whole:
            return plan::movedBy(grip_->base, grip_->item, east, north);
        case What::Aside:
            return setAside(event.at);
        case What::Letters:
            return plan::labelPlaced(grip_->base, grip_->item, grip_->film, to);
        case What::OnPaper: {
            const auto from = ground.onPaper ? ground.onPaper(grip_->start) : std::nullopt;
            const auto at = ground.onPaper ? ground.onPaper(event.at) : std::nullopt;
            return from && at
                       ? plan::movedBy(grip_->base, grip_->item, Metres(at->x - from->x), Metres(at->y - from->y))
                       : grip_->base;
        }
    }
    return grip_->base;
}

Reply HandTool::released(const Event& event, const Ground& ground) {
    Reply reply;
    if (!grip_) {
        return reply;
    }
    if (moved_ || grip_->added) {
        static constexpr std::string_view kCaptions[] = {"move a point", "move", "set a symbol aside", "place a label",
                                                         "move a block"};
        const std::string caption(grip_->added ? "add a point" : kCaptions[static_cast<std::size_t>(grip_->what)]);
        reply.commit = Commit{moved_ ? dragged(event, ground) : grip_->base, caption, false};
    }
    reply.draftGone = true;
    grip_.reset();
    moved_ = false;
    return reply;
}

std::optional<std::size_t> HandTool::heldPoint(const plan::ItemId& selected) const {
    return held_ && held_->item == selected ? std::optional(held_->vertex) : std::nullopt;
}

/// What the keys do to the selected thing.
Reply HandTool::keyed(const Event& event, const Ground& ground) {
    Reply reply;
    const plan::ItemId item = *ground.selected;
    const std::size_t count = pointsOf(ground.plan, item);
    if (held_ && (held_->item != item || held_->vertex >= count)) {
        held_.reset();  // another thing was selected meanwhile, or an undo took the point away
    }
    switch (event.kind) {
        case Event::Kind::NextPoint:
            held_ = count > 1 ? std::optional(Held{item, held_ ? (held_->vertex + 1) % count : 0}) : std::nullopt;
            break;
        case Event::Kind::LastPoint:
            held_ =
                count > 1 ? std::optional(Held{item, ((held_ ? held_->vertex : 0) + count - 1) % count}) : std::nullopt;
            break;
        case Event::Kind::Nudge:  // the event's place is the displacement
            if (held_) {
                const geodesy::PlanePoint from = pointOf(ground.plan, item, held_->vertex);
                const geodesy::PlanePoint to{from.easting + event.at.easting, from.northing + event.at.northing};
                reply.commit = Commit{plan::withPoint(ground.plan, item, held_->vertex, to), "nudge a point", false};
            } else if (lies(ground.plan, item) == plan::Anchor::Paper) {
                const auto half = [](Metres by) { return Metres(by.value() > 0 ? 0.5 : by.value() < 0 ? -0.5 : 0.0); };
                reply.commit =
                    Commit{plan::movedBy(ground.plan, item, half(event.at.easting), half(-event.at.northing)),
                           "nudge a block", false};
            } else {
                reply.commit =
                    Commit{plan::movedBy(ground.plan, item, event.at.easting, event.at.northing), "nudge", false};
            }
            break;
        case Event::Kind::TakeBack:
            if (held_) {
                reply.commit = Commit{plan::withoutPoint(ground.plan, item, held_->vertex), "take out a point", false};
            }
            break;
        default:
            break;
    }
    return reply;
}

Reply HandTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    switch (event.kind) {
        case Event::Kind::Press:
        case Event::Kind::Again:
            return pressed(event, ground);
        case Event::Kind::Move:
            if (grip_ && event.held && (moved_ || apart(event.at, grip_->start) > ground.reach * 0.4)) {
                moved_ = true;
                reply.draft = dragged(event, ground);
            }
            return reply;
        case Event::Kind::Release:
            return released(event, ground);
        case Event::Kind::Cancel:
            if (grip_) {
                grip_.reset();
                moved_ = false;
                reply.draftGone = true;
            } else if (held_) {
                held_.reset();
            } else {
                reply.select = std::optional<plan::ItemId>();
            }
            return reply;
        case Event::Kind::Nudge:
        case Event::Kind::NextPoint:
        case Event::Kind::LastPoint:
        case Event::Kind::TakeBack:
            return ground.selected && !grip_ ? keyed(event, ground) : reply;
        case Event::Kind::Finish:
            break;
    }
    return reply;
}

}  // namespace crosstick::tools
