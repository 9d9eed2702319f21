#include "ui/tools/hand_tool.h"

#include <algorithm>

#include "core/measures/catalogue.h"
#include "core/plan/showings.h"

namespace crosstick::tools {
namespace {

bool isPoint(const plan::Plan& plan, const plan::ItemId& item) {
    return !plan.route(item) && pointsOf(plan, item) == 1;
}

/// Words are placed by their letters: those have no other place.
bool isWords(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->shape == measures::Shape::Text;
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

/// The point itself where a place was snapped to, else as far on as the hand went.
geodesy::PlanePoint takenTo(const Event& event, geodesy::PlanePoint origin, geodesy::PlanePoint start) {
    return event.snapped ? event.at
                         : geodesy::PlanePoint{origin.easting + (event.at.easting - start.easting),
                                               origin.northing + (event.at.northing - start.northing)};
}

}  // namespace

std::optional<HandTool::Grip> HandTool::gripOn(const Touched& touched, const Event& event, const Ground& ground) {
    const plan::MeasurePtr measure = ground.plan.measure(touched.item);
    Grip grip{touched.item, What::Aside, 0, event.at, touched.at, ground.plan, false, filmFor(touched, ground),
              ground.touch};
    const bool already = ground.selected == touched.item;
    if (!measure) {  // a route: its name and the figures of its legs are placed by hand
        grip.what = What::Letters;
        grip.leg = touched.leg;
        const bool isLetters = touched.what == Touched::What::Letters || touched.leg;
        return already && isLetters ? std::optional(std::move(grip)) : std::nullopt;
    }
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
    moved_ = again_ = false;
    grip_.reset();
    held_.reset();
    box_.reset();
    const auto hit = hitAt(ground.plan, ground.shown, ground.selected, event.at, ground.reach);
    const auto touched = ground.touch && !(hit && hit->vertex) ? ground.touch(event.at, {}) : std::optional<Touched>();
    pile_ = {event.at, allAt(ground.plan, ground.shown, event.at, ground.reach)};
    if (!hit && !touched) {
        return onBareSheet(event, ground);
    }
    const plan::ItemId item = touched ? touched->item : hit->item;
    if (std::find(pile_.items.begin(), pile_.items.end(), item) == pile_.items.end()) {
        pile_.items.insert(pile_.items.begin(), item);  // by its symbol or its letters
    }
    const bool isOneOfMany =
        ground.selection.size() > 1 && !event.second &&
        std::find(ground.selection.begin(), ground.selection.end(), item) != ground.selection.end();
    if (event.more || isOneOfMany) {
        return chosen(item, event, ground);
    }
    again_ = event.held && ground.selected == item && pile_.items.size() > 1;
    Reply reply;
    reply.select = std::optional(item);
    grip_ = touched ? gripOn(*touched, event, ground) : gripOn(*hit, event, ground);
    if (grip_ && grip_->added) {
        reply.draft = grip_->base;
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
    const geodesy::PlanePoint to = takenTo(event, grip_->origin, grip_->start);
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
            return grip_->leg ? plan::figuresPlaced(grip_->base, grip_->item, grip_->film, *grip_->leg, to)
                              : plan::labelPlaced(grip_->base, grip_->item, grip_->film, to);
        case What::OnPaper: {
            const auto from = ground.onPaper ? ground.onPaper(grip_->start) : std::nullopt;
            const auto at = ground.onPaper ? ground.onPaper(event.at) : std::nullopt;
            return from && at
                       ? plan::movedBy(grip_->base, grip_->item, Metres(at->x - from->x), Metres(at->y - from->y))
                       : grip_->base;
        }
        case What::Several:
            return severalMoved(*grip_, event, ground);
    }
    return grip_->base;
}

Reply HandTool::released(const Event& event, const Ground& ground) {
    if (box_) {
        return boxed(ground);
    }
    Reply reply;
    const bool isDrag = grip_ && (moved_ || grip_->added);
    if (!isDrag && again_) {
        reply.select = next(ground, 1);
    }
    if (!grip_) {
        return reply;
    }
    if (isDrag) {
        static constexpr std::string_view kCaptions[] = {"move a point",  "move",         "set a symbol aside",
                                                         "place a label", "move a block", "move several"};
        const std::string caption(grip_->added ? "add a point" : kCaptions[static_cast<std::size_t>(grip_->what)]);
        reply.commit = Commit{moved_ ? dragged(event, ground) : grip_->base, caption, false};
    } else if (grip_->what == What::Several && event.kind == Event::Kind::Release) {
        reply.select = std::optional(grip_->item);
    }
    reply.draftGone = true;
    grip_.reset();
    moved_ = false;
    return reply;
}

Reply HandTool::take(const Event& event, const Ground& ground) {
    Reply reply;
    if (event.kind <= Event::Kind::Release) {
        hand_ = event.at;
    }
    tell(ground);
    switch (event.kind) {
        case Event::Kind::Press:
        case Event::Kind::Again:
            return pressed(event, ground);
        case Event::Kind::Move:
            if (box_) {
                box_->box.to = event.at;
            }
            if (grip_ && event.held && (moved_ || apart(event.at, grip_->start) > ground.reach * 0.4)) {
                moved_ = true;
                reply.draft = dragged(event, ground);
            }
            return reply;
        case Event::Kind::Release:
            return released(event, ground);
        case Event::Kind::Cancel:
            if (box_) {
                box_.reset();
            } else if (grip_) {
                grip_.reset();
                moved_ = again_ = false;
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
