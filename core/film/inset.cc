#include "core/film/inset.h"

#include <algorithm>
#include <utility>

#include "core/drawing/clip.h"
#include "core/drawing/path.h"
#include "core/film/block.h"
#include "core/film/faults.h"
#include "core/film/lettering.h"
#include "core/film/registration.h"
#include "core/film/window_span.h"
#include "core/measures/catalogue.h"
#include "core/plan/edits.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;
using geodesy::PlanePoint;

constexpr double kAbove = 1.1;  ///< from the frame to the foot of its letters

/// The part grown so that ticks find their crossings at a scale.
Window windowFor(PlanePoint a, PlanePoint b, Scale scale) {
    Window part = Window::none();
    part.add(a);
    part.add(b);
    part = part.roundedOut(kInsetInterval / 10);
    const Window limits = part.grown(kInsetInterval * 3);
    const Metres inset = onGround(kTickInset, scale);
    return {holdingTwoLines(part.east, limits.east, kInsetInterval, inset),
            holdingTwoLines(part.north, limits.north, kInsetInterval, inset)};
}

template <std::size_t N>
bool fits(const Window& window, Scale scale, const std::array<WindowRoom, N>& rooms) {
    return std::any_of(rooms.begin(), rooms.end(), [&](const WindowRoom& room) {
        return onPaper(window.east.length(), scale) <= room.width &&
               onPaper(window.north.length(), scale) <= room.height;
    });
}

/// Does what a thing draws on the ground lie in a box, partly at least? All in film millimetres.
bool touches(const std::vector<Point>& points, bool isRing, const Box& box) {
    if (points.size() == 1) {
        return box.contains(points.front());
    }
    return isRing ? !drawing::clippedRing(points, box).empty()
                  : !drawing::clipped(drawing::Polyline{points, false}, box).empty();
}

/// Which things of the parent lie in the inset's window.
class Touching {
  public:
    Touching(const plan::Plan& plan, const Frame& frame) : plan_(plan), frame_(frame) {}
    [[nodiscard]] bool operator()(const plan::ItemId& item) const {
        if (const plan::RoutePtr route = plan_.route(item)) {
            return touches(onFilm(route->vertices), false, frame_.window());
        }
        const plan::MeasurePtr measure = plan_.measure(item);
        const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
        const bool isRing = entry != nullptr && entry->shape == measures::Shape::Area;
        return measure && measure->anchor == plan::Anchor::Ground && !measure->points.empty() &&
               touches(onFilm(measure->points), isRing, frame_.window());
    }

  private:
    const plan::Plan& plan_;
    const Frame& frame_;

    [[nodiscard]] std::vector<Point> onFilm(const std::vector<PlanePoint>& points) const {
        std::vector<Point> film;
        film.reserve(points.size());
        for (const PlanePoint point : points) {
            film.push_back(frame_.onFilm(point));
        }
        return film;
    }
};

void showWhatTouches(plan::Film& inset, const plan::Plan& plan, const plan::Film& parent) {
    const auto frame = Frame::of(plan, inset);
    if (!frame) {
        return;
    }
    const Touching isTouched(plan, *frame);
    for (const plan::Showing& showing : parent.shows) {
        if (!plan::isShownOn(inset, showing.item) && isTouched(showing.item)) {
            plan::Showing own{showing.item, {}, {}, {}, showing.standsWith, showing.pointsTo};
            own.order = plan::orderBetween(inset.shows.empty() ? std::string{} : inset.shows.back().order, "");
            inset.shows.push_back(std::move(own));
        }
    }
}

/// A frame with its letters above it, or below its upper edge where the film ends sooner.
void addFrame(InsetFrames& frames, const plan::Film& inset, const Frame& own, const Frame& parent) {
    drawing::Polyline corners{{}, true};
    Box box;
    const Box w = own.window();
    for (const Point corner : {Point{w.left, w.top}, {w.right, w.top}, {w.right, w.bottom}, {w.left, w.bottom}}) {
        const Point p = parent.onFilm(own.inPlan(own.filmToGrid(corner)));
        corners.points.push_back(p);
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    drawing::Drawing outline;
    outline.marks.emplace_back(lines({std::move(corners)}));
    frames.drawing.append(parent.window().isEmpty() ? std::move(outline)
                                                    : drawing::clipped(std::move(outline), parent.window()));
    const std::string words = inset.name + " " + scaleText(own.scale());
    const bool hasRoomAbove = parent.window().isEmpty() || box.top - kAbove - kLetters > parent.window().top + kAbove;
    const double base = hasRoomAbove ? box.top - kAbove : box.top + kAbove + kLetters;
    drawing::Drawing letters;
    letters.marks.emplace_back(row(words, {hasRoomAbove ? box.left : box.left + kAbove, base}, kLetters));
    const Box taken = drawing::extent(letters).grown(0.6);
    if (parent.window().isEmpty() || parent.window().contains(taken)) {
        frames.labels.push_back(taken);
        frames.drawing.append(letters);
    }
}

}  // namespace

std::optional<Scale> insetScale(const plan::Plan& plan, const plan::Film& parent, PlanePoint corner,
                                PlanePoint opposite) {
    const Scale ofParent = scaleOf(plan, parent);
    const auto first = [&](const auto& rooms) -> std::optional<Scale> {
        for (const Scale scale : kInsetScales) {
            if (scale < ofParent && fits(windowFor(corner, opposite, scale), scale, rooms)) {
                return scale;
            }
        }
        return std::nullopt;
    };
    const auto onA4 = first(kA4Rooms);
    return onA4 ? onA4 : first(kA3Rooms);
}

Result<InsetPlace> proposeInset(const plan::Plan& plan, const plan::Film& parent, PlanePoint corner,
                                PlanePoint opposite) {
    const auto scale = insetScale(plan, parent, corner, opposite);
    if (!scale) {
        return fail(kInsetTooLarge, {{"scale", scaleText(scaleOf(plan, parent))}});
    }
    const Window window = windowFor(corner, opposite, *scale);
    return proposeTicks(plan, {window.east.low, window.north.low}, {window.east.high, window.north.high},
                        TickGrid{*scale, kInsetInterval})
        .map([&](plan::Registration&& registration) {
            return InsetPlace{std::move(registration), *scale};
        });
}

plan::Plan withInset(const plan::Plan& plan, const plan::Film& parent, const InsetPlace& place, const plan::FilmId& id,
                     std::string name) {
    plan::Film inset;
    inset.id = id;
    inset.name = std::move(name);
    inset.phases = parent.phases;
    inset.scale = place.scale;
    inset.gauge = parent.gauge;
    inset.inset = plan::Inset{parent.id, place.registration, {}};
    showWhatTouches(inset, plan, parent);
    plan::PlanBuilder builder(plan);
    builder.put(std::move(inset));
    return std::move(builder).build();
}

plan::Plan movedInset(const plan::Plan& plan, const plan::FilmId& inset, const InsetPlace& place) {
    const plan::FilmPtr held = plan.film(inset);
    if (!held || !held->inset) {
        return plan;
    }
    plan::Film next = *held;
    next.scale = place.scale;
    next.inset->place = place.registration;
    if (const plan::FilmPtr parent = plan.film(held->inset->parent)) {
        showWhatTouches(next, plan, *parent);
    }
    plan::PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

Result<plan::Plan> withRegistration(const plan::Plan& plan, const plan::FilmId& film,
                                    const plan::Registration& registration) {
    const plan::FilmPtr held = plan.film(film);
    plan::PlanBuilder builder(plan);
    if (!held || !held->inset) {
        builder.registration(registration);
        return std::move(builder).build();
    }
    const plan::Registration& before = held->inset->place;
    if (before.southWest == registration.southWest && before.northEast == registration.northEast) {
        plan::Film next = *held;
        next.inset->place.ticks = registration.ticks;
        builder.put(std::move(next));
        return std::move(builder).build();
    }
    const Scale scale = scaleOf(plan, *held);
    if (!fits(windowFor(registration.southWest, registration.northEast, scale), scale, kA3Rooms)) {
        return fail(kInsetTooLarge, {{"scale", scaleText(scale)}});
    }
    return movedInset(plan, film, InsetPlace{registration, scale});
}

Result<InsetFrames> insetFrames(const plan::Plan& plan, const plan::Film& parent, const Frame& frame) {
    InsetFrames frames;
    for (const plan::FilmPtr& film : plan.films()) {
        if (!film->inset || film->inset->parent != parent.id) {
            continue;
        }
        const auto own = Frame::of(plan, *film);
        if (!own) {
            return tl::unexpected(own.error());
        }
        addFrame(frames, *film, *own, frame);
    }
    return frames;
}

}  // namespace crosstick::film
