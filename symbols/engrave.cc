#include "symbols/engrave.h"

#include <algorithm>
#include <array>
#include <set>

#include "core/drawing/clip.h"
#include "core/measures/catalogue.h"
#include "symbols/action_boxes.h"
#include "symbols/areas.h"
#include "symbols/boundary.h"
#include "symbols/desk.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/fires.h"
#include "symbols/line_labels.h"
#include "symbols/point_marks.h"
#include "symbols/routes.h"

namespace crosstick::symbols {
namespace {

Standing standingOf(const plan::Measure& measure) {
    const bool planned = measure.standing == plan::Standing::Planned || measure.state == plan::PlaceState::Assumed;
    return planned ? Standing::Planned : Standing::Present;
}

Manner mannerOf(const plan::Measure& measure, bool onRoute, const Engraving& engraving) {
    const bool isEnemy = measure.whose == plan::Whose::Enemy;
    const bool onePen = engraving.pens == PenMode::OnePen;
    Manner manner;
    manner.ink = onePen    ? drawing::Ink::Black
                 : isEnemy ? drawing::Ink::Red
                 : onRoute ? drawing::Ink::Blue
                           : drawing::Ink::Black;
    manner.side = isEnemy ? Side::Enemy : Side::Own;
    manner.standing = standingOf(measure);
    manner.halo = engraving.surface == Surface::LightTable ? drawing::Halo::Paper : drawing::Halo::None;
    manner.doubled = isEnemy && onePen;
    return manner;
}

Manner routeManner(const Engraving& engraving) {
    Manner manner;
    manner.ink = engraving.pens == PenMode::OnePen ? drawing::Ink::Black : drawing::Ink::Blue;
    manner.halo = engraving.surface == Surface::LightTable ? drawing::Halo::Paper : drawing::Halo::None;
    return manner;
}

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
            subject.manner = mannerOf(*subject.measure, subject.onRoute, engraving);
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

enum class Family { Box, Coordination, Post, Target, Words, NamedLine, Boundary, Area, Fire, Attack, Route, Unknown };

Family familyOf(const Subject& subject) {
    if (subject.route != nullptr) {
        return Family::Route;
    }
    const std::string& kind = subject.measure->kind;
    const measures::Entry* entry = measures::find(kind);
    if (entry == nullptr) {
        return Family::Unknown;
    }
    static const std::map<std::string, Family, std::less<>> kOwn{
        {"boundary", Family::Boundary},     {"coordination-point", Family::Coordination},
        {"observation-post", Family::Post}, {"target-reference-point", Family::Target},
        {"support-by-fire", Family::Fire},  {"direction-of-main-attack", Family::Attack}};
    if (const auto own = kOwn.find(kind); own != kOwn.end()) {
        return own->second;
    }
    switch (entry->shape) {
        case measures::Shape::Area:
            return Family::Area;
        case measures::Shape::Line:
            return Family::NamedLine;
        case measures::Shape::Text:
            return Family::Words;
        case measures::Shape::Point:
            break;
    }
    return Family::Box;
}

std::size_t pointsNeeded(const Subject& subject) {
    if (subject.route != nullptr) {
        return 2;
    }
    const measures::Entry* entry = measures::find(subject.measure->kind);
    return entry == nullptr ? 1 : static_cast<std::size_t>(entry->points.least);
}

// A16: what has no length is a dot with its name beside, and a remark.
bool isSound(Desk& desk, Subject& subject, Family family) {
    const bool isLineOrArea = family == Family::NamedLine || family == Family::Boundary || family == Family::Area ||
                              family == Family::Attack || family == Family::Route;
    if (isLineOrArea) {
        subject.points = family == Family::Route ? subject.points : drawing::cleaned(subject.points);
        if (family == Family::Area && subject.points.size() > 1 &&
            drawing::length(subject.points.front() - subject.points.back()) < 0.05) {
            subject.points.pop_back();
        }
    }
    const std::size_t needed = isLineOrArea ? 2 : pointsNeeded(subject);
    const bool hasLength = drawing::Path(subject.points).length() >= 0.05;
    if (subject.points.size() >= needed && (hasLength || (!isLineOrArea && family != Family::Fire))) {
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

/// The order in which the points of a support by fire are drawn.
Points fireLine(const Points& p) {
    return {p[2], p[0], p[1], p[3]};
}

/// Does nothing of it lie in the window? Points say so for themselves.
bool isOutside(Desk& desk, const Subject& subject, Family family) {
    if (subject.points.size() < 2) {
        return false;
    }
    const bool isArea = family == Family::Area;
    const drawing::Path path(family == Family::Fire ? fireLine(subject.points) : subject.points, isArea);
    const drawing::Box& window = desk.window();
    const TurnedBox whole{window.middle(), window.width(), window.height(), Degrees(0)};
    return drawing::inside(path, window).empty() && !(isArea && holds(subject.points, whole));
}

void place(Desk& desk, Subject& subject, Family family, const std::vector<Subject*>& routes) {
    switch (family) {
        case Family::Box:
            return placeActionBox(desk, subject,
                                  subject.onRoute ? legsAt(subject.points.front(), routes) : std::vector<Vector>{});
        case Family::Coordination:
            return placeCoordinationPoint(desk, subject);
        case Family::Post:
            return placeObservationPost(desk, subject);
        case Family::Target:
            return placeTargetReferencePoint(desk, subject);
        case Family::Words:
            return placeWords(desk, subject);
        case Family::NamedLine:
            return placeNamedLine(desk, subject, lineRows(*subject.measure));
        case Family::Boundary:
            return placeBoundary(desk, subject);
        case Family::Area:
            return placeArea(desk, subject);
        case Family::Fire:
            return placeSupportByFire(desk, subject);
        case Family::Attack:
            return placeMainAttack(desk, subject);
        case Family::Unknown:
            return placeUnknown(desk, subject);
        case Family::Route:
            return;
    }
}

struct Sorted {
    Subject* subject;
    Family family;
};

/// The ink of all lines is known before a letter is placed.
void noteInk(Desk& desk, const std::vector<Sorted>& sorted) {
    for (const Sorted& one : sorted) {
        const bool isLine = one.subject->points.size() > 1;
        if (isLine && one.family != Family::Fire) {
            desk.taken().draw(one.subject->points, one.subject->order, one.family == Family::Area);
        } else if (one.family == Family::Fire) {
            const Points& p = one.subject->points;
            desk.taken().draw(fireLine(p), one.subject->order);
        }
    }
}

// Engraving A14: spot symbols and their numbers, line-end labels, boundary designations, area names, leg labels, words.
constexpr std::array<std::array<Family, 5>, 6> kTurns{{
    {Family::Coordination, Family::Post, Family::Target, Family::Fire, Family::Box},
    {Family::NamedLine, Family::NamedLine, Family::NamedLine, Family::NamedLine, Family::NamedLine},
    {Family::Boundary, Family::Boundary, Family::Boundary, Family::Boundary, Family::Boundary},
    {Family::Area, Family::Attack, Family::Area, Family::Area, Family::Area},
    {Family::Route, Family::Route, Family::Route, Family::Route, Family::Route},
    {Family::Words, Family::Unknown, Family::Words, Family::Words, Family::Words},
}};

/// Areas and lines lie under routes, routes under symbols: the order of painting.
int layerOf(Family family) {
    switch (family) {
        case Family::Area:
            return 0;
        case Family::Boundary:
        case Family::NamedLine:
        case Family::Attack:
        case Family::Unknown:
            return 1;
        case Family::Route:
            return 2;
        default:
            return 3;
    }
}

void placeInTurn(Desk& desk, const std::vector<Sorted>& sorted, const std::vector<Subject*>& routes) {
    for (const auto& turn : kTurns) {
        if (turn.front() == Family::Route) {
            letterRoutes(desk, routes);
            continue;
        }
        // What was set aside by hand stands first, so that nothing is placed in its way.
        for (const bool byHand : {true, false}) {
            for (const Sorted& one : sorted) {
                if (one.subject->symbolAt.has_value() == byHand &&
                    std::find(turn.begin(), turn.end(), one.family) != turn.end()) {
                    place(desk, *one.subject, one.family, routes);
                }
            }
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
    std::vector<Sorted> sorted;
    std::vector<Subject*> routes;
    std::vector<Sorted> unsound;
    for (Subject& subject : subjects) {
        const Family family = familyOf(subject);
        if (!isSound(desk, subject, family)) {
            unsound.push_back({&subject, family});
            continue;
        }
        if (isOutside(desk, subject, family)) {
            desk.remark(subject, kOutsideWindow);
            continue;
        }
        sorted.push_back({&subject, family});
        if (family == Family::Route) {
            routes.push_back(&subject);
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
                     [](const Sorted& a, const Sorted& b) { return layerOf(a.family) < layerOf(b.family); });
    EngravedFilm film;
    for (const Sorted& one : sorted) {
        drawing::Drawing whole = drawing::clipped(std::move(one.subject->ink), desk.window());
        whole.append(one.subject->letters);
        film.items.push_back({one.subject->id(), std::move(whole)});
    }
    film.remarks = desk.takeRemarks();
    return film;
}

}  // namespace crosstick::symbols
