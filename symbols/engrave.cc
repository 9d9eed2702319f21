#include "symbols/engrave.h"

#include <algorithm>
#include <set>

#include "core/drawing/clip.h"
#include "core/measures/catalogue.h"
#include "symbols/area_names.h"
#include "symbols/construction.h"
#include "symbols/desk.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/manner.h"
#include "symbols/routes.h"
#include "symbols/signs.h"
#include "symbols/turns.h"

namespace crosstick::symbols {
namespace {

std::set<plan::ItemId> stopsOn(const plan::Plan& plan, const plan::Film& film) {
    std::set<plan::ItemId> stops;
    for (const plan::Showing& showing : film.shows) {
        if (const auto route = plan.route(showing.item)) {
            for (const plan::Stop& stop : route->stops) {
                stops.insert(stop.measure);
            }
        }
    }
    return stops;
}

bool isFinite(const Points& points) {
    return std::all_of(points.begin(), points.end(), [](Point p) { return drawing::isFinite(p); });
}

/// Paper-anchored points are millimetres from the window's corner already.
Points filmPoints(const Desk& desk, const plan::Measure& measure) {
    if (measure.anchor == plan::Anchor::Ground) {
        return desk.onFilm(measure.points);
    }
    Points points;
    for (const geodesy::PlanePoint p : measure.points) {
        points.push_back({p.easting.value(), p.northing.value()});
    }
    return points;
}

/// Everything shown that has a place, brought to the film.
std::vector<Subject> subjectsOf(Desk& desk) {
    const Engraving& engraving = desk.engraving();
    const auto stops = stopsOn(engraving.plan, engraving.film);
    std::vector<Subject> subjects;
    subjects.reserve(engraving.film.shows.size());
    for (const plan::Showing& showing : engraving.film.shows) {
        Subject subject;
        subject.order = subjects.size() + 1;
        subject.showing = &showing;
        // The plan outlives the engraving and shares its parts: plain pointers to them hold.
        subject.measure = engraving.plan.measure(showing.item).get();
        subject.route = engraving.plan.route(showing.item).get();
        if (subject.measure != nullptr) {
            subject.onRoute = stops.contains(showing.item);
            subject.manner = mannerOf(*subject.measure, subject.onRoute ? Place::OnRoute : Place::ByItself, engraving);
            subject.points = filmPoints(desk, *subject.measure);
        } else if (subject.route != nullptr) {
            subject.manner = routeManner(engraving);
            subject.points = desk.onFilm(subject.route->vertices);
        }
        if (subject.points.empty()) {
            continue;  // unplaced, or shown by a film but gone from the plan
        }
        if (!isFinite(subject.points)) {
            desk.remark(subject, kNotReached);
            continue;
        }
        if (showing.symbolAt) {
            subject.symbolAt = engraving.frame.onFilm(*showing.symbolAt);
        }
        if (showing.labelAt) {
            subject.labelAt = engraving.frame.onFilm(*showing.labelAt);
        }
        subjects.push_back(std::move(subject));
    }
    return subjects;
}

/// The rule that a shown thing is engraved by; nothing for a route, which has its own.
const SignRule* ruleFor(const Subject& subject) {
    if (subject.route != nullptr) {
        return nullptr;
    }
    const measures::Entry* entry = measures::find(subject.measure->kind);
    return entry == nullptr ? &unknownRule() : &ruleOf(entry->sign);
}

bool isUnit(const Subject& subject) {
    const measures::Entry* entry = subject.measure == nullptr ? nullptr : measures::find(subject.measure->kind);
    return entry != nullptr && entry->sign == measures::Sign::Unit;
}

EdgeOf edgeOf(const Subject& subject) {
    const measures::Entry* entry = subject.measure == nullptr ? nullptr : measures::find(subject.measure->kind);
    return {subject.points, entry != nullptr && entry->shape == measures::Shape::Area};
}

/// Units that share an extension line stand with the one that leads them; tips on edges get the edge.
void joinRows(std::vector<Subject>& subjects) {
    std::map<plan::ItemId, Subject*> units;
    std::map<plan::ItemId, Subject*> all;
    for (Subject& subject : subjects) {
        all.emplace(subject.id(), &subject);
        if (isUnit(subject)) {
            units.emplace(subject.id(), &subject);
        }
    }
    for (Subject& subject : subjects) {
        if (const auto& edge = subject.showing->pointsTo) {
            const auto found = all.find(*edge);
            if (found != all.end() && found->second->points.size() > 1) {
                subject.tip = edgeOf(*found->second);
            }
        }
        if (!subject.showing->standsWith || !isUnit(subject)) {
            continue;
        }
        const auto leader = units.find(*subject.showing->standsWith);
        if (leader != units.end() && leader->second != &subject && !leader->second->showing->standsWith) {
            leader->second->row.push_back(&subject);
            subject.follows = true;
        }
    }
}

std::size_t pointsNeeded(const Subject& subject) {
    if (subject.route != nullptr) {
        return 2;
    }
    const measures::Entry* entry = measures::find(subject.measure->kind);
    return entry == nullptr ? 1 : static_cast<std::size_t>(entry->points.least);
}

// A16: what has no length is a dot with its name beside, and a remark.
bool isSound(Desk& desk, const Sorted& one) {
    Subject& subject = *one.subject;
    if (one.isLine()) {
        subject.points = one.isRoute() ? subject.points : drawing::cleaned(subject.points);
        if (one.isRing() && subject.points.size() > 1 &&
            drawing::length(subject.points.front() - subject.points.back()) < 0.05) {
            subject.points.pop_back();
        }
    }
    const std::size_t needed = one.isLine() ? 2 : pointsNeeded(subject);
    const bool needsLength = one.isRoute() || one.rule->body != Body::Spot;
    if (subject.points.size() >= needed && (!needsLength || drawing::Path(subject.points).length() >= 0.05)) {
        return true;
    }
    desk.remark(subject, kNoLength);
    return false;
}

/// The dot of what has no length, and its name by an extension line.
void placeDot(Desk& desk, Subject& subject) {
    constexpr double kDot = 0.8;
    const Point spot = subject.points.front();
    if (!desk.window().contains(spot)) {
        return;
    }
    desk.inkOf(subject).disc(spot, kDot);
    const std::string name =
        subject.route != nullptr ? "RTE " + subject.route->name : movement::label(*subject.measure);
    const Label label{{name}, desk.gauge().letters};
    if (!desk.writeByHand(subject, label, Degrees(0)) && !letterAside(desk, subject, label, spot, ExtensionEnd::Bare)) {
        desk.remark(subject, kLabelLeftOut);
    }
}

/// Does nothing of it lie in the window? Points say so for themselves.
bool isOutside(Desk& desk, const Sorted& one) {
    if (one.subject->points.size() < 2) {
        return false;
    }
    const drawing::Path path(one.along(), one.isRing());
    const drawing::Box& window = desk.window();
    const TurnedBox whole{window.middle(), window.width(), window.height(), Degrees(0)};
    return drawing::inside(path, window).empty() && !(one.isRing() && holds(one.subject->points, whole));
}

Layer layerOf(const Sorted& one) {
    return one.isRoute() ? Layer::Routes : one.rule->layer;
}

/// How far beside its line, left of it positive, ink of a sign runs along with it: teeth, half circles, ticks, the
/// sides of what has a width.
std::vector<double> besides(const Sorted& one) {
    using measures::Sign;
    const measures::Entry* entry =
        one.subject->measure == nullptr ? nullptr : measures::find(one.subject->measure->kind);
    const auto widthBetween = [&](double low, double high) {
        const double half = numberOf(*one.subject->measure, "width", low, high) / 2;
        return std::vector{half, -half};
    };
    switch (entry == nullptr ? Sign::Words : entry->sign) {
        case Sign::ContactLine:
            return isYes(*one.subject->measure, "half_circles") ? std::vector{1.9, -1.9} : std::vector<double>{};
        case Sign::Teeth:
        case Sign::FrontLine:
            return {1.5 * enemySide(*one.subject->measure)};
        case Sign::DangerLine:
            return {1.5, -1.5};
        case Sign::Lane:
            return widthBetween(4, 40);
        case Sign::Axis:
        case Sign::MainAxis:
        case Sign::Avenue:
        case Sign::Corridor:
            return widthBetween(3.4, 12);
        default:
            return {};
    }
}

/// The ink of all lines and every true place are known before a symbol or a letter is placed.
void noteInk(Desk& desk, const std::vector<Sorted>& sorted) {
    for (const Sorted& one : sorted) {
        one.subject->body = {one.along(), one.isRing()};
        if (one.subject->points.size() > 1) {
            desk.taken().draw(one.along(), one.subject->order, one.isRing());
            for (const double beside : besides(one)) {
                desk.taken().draw(drawing::offset(one.along(), beside), one.subject->order);
            }
        } else if (turnOf(one) == Turn::Symbols && !one.subject->follows) {
            desk.taken().mark(one.subject->points.front(), one.subject->order);
        }
    }
}

}  // namespace

drawing::Drawing EngravedFilm::all() const& {
    EngravedFilm copy = *this;
    return std::move(copy).all();
}

drawing::Drawing EngravedFilm::all() && {
    drawing::Drawing whole;
    for (EngravedItem& item : items) {
        whole.append(std::move(item.drawing));
    }
    return whole;
}

EngravedFilm engrave(const Engraving& engraving) {
    Desk desk(engraving);
    std::vector<Subject> subjects = subjectsOf(desk);
    joinRows(subjects);
    std::vector<Sorted> sorted;
    std::vector<Subject*> routes;
    std::vector<Sorted> unsound;
    for (Subject& subject : subjects) {
        const Sorted one{&subject, ruleFor(subject)};
        if (!isSound(desk, one)) {
            unsound.push_back(one);
            continue;
        }
        if (isOutside(desk, one)) {
            desk.remark(subject, kOutsideWindow);
            continue;
        }
        sorted.push_back(one);
        if (one.isRoute()) {
            routes.push_back(&subject);
        }
    }
    for (const Sorted& one : sorted) {
        if (one.subject->onRoute) {
            one.subject->legs = legsAt(one.subject->points.front(), routes);
        }
    }
    noteInk(desk, sorted);
    drawRoutes(desk, routes);
    placeInTurn(desk, sorted, routes);
    for (const Sorted& one : unsound) {
        placeDot(desk, *one.subject);
    }

    sorted.insert(sorted.end(), unsound.begin(), unsound.end());
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Sorted& a, const Sorted& b) { return layerOf(a) < layerOf(b); });
    EngravedFilm film;
    for (const Sorted& one : sorted) {
        drawing::Drawing whole = drawing::clipped(std::move(one.subject->ink), desk.window());
        whole.append(one.subject->letters);
        Subject& subject = *one.subject;
        film.items.push_back(
            {subject.id(), std::move(whole), std::move(subject.parts), subject.handle, subject.isAside});
    }
    film.remarks = desk.takeRemarks();
    return film;
}

}  // namespace crosstick::symbols
