// What the menu of a thing offers about its place on the working film.
#include <algorithm>

#include <QMenu>

#include "core/measures/catalogue.h"
#include "core/plan/showings.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr std::size_t kMostOffered = 12;

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString nameOf(const plan::Measure& measure) {
    const auto field = [&](const char* key) {
        const auto found = measure.fields.find(key);
        return found == measure.fields.end() ? std::string() : found->second;
    };
    if (measure.kind == "boundary") {
        return text("Boundary " + field("left_unit") + " - " + field("right_unit"));
    }
    const auto words = measure.fields.find("unit");
    return text(measure.kind == "unit" && words != measure.fields.end() ? words->second : movement::label(measure));
}

const plan::Showing* showingOf(const plan::Film& film, const plan::ItemId& item) {
    const auto found = std::find_if(film.shows.begin(), film.shows.end(),
                                    [&](const plan::Showing& showing) { return showing.item == item; });
    return found == film.shows.end() ? nullptr : &*found;
}

double away(const plan::Measure& measure, geodesy::PlanePoint from) {
    double least = 1e12;
    for (const geodesy::PlanePoint p : measure.points) {
        least = std::min(least, std::hypot((p.easting - from.easting).value(), (p.northing - from.northing).value()));
    }
    return least;
}

/// What a film shows of measures that are wanted, the nearest first.
template <class Wanted>
std::vector<plan::MeasurePtr> nearest(const plan::Plan& plan, const plan::Film& film, geodesy::PlanePoint from,
                                      Wanted&& wanted) {
    std::vector<plan::MeasurePtr> found;
    for (const plan::Showing& showing : film.shows) {
        plan::MeasurePtr measure = plan.measure(showing.item);
        if (measure && measure->anchor == plan::Anchor::Ground && !measure->points.empty() && wanted(*measure)) {
            found.push_back(std::move(measure));
        }
    }
    std::stable_sort(found.begin(), found.end(), [from](const plan::MeasurePtr& a, const plan::MeasurePtr& b) {
        return away(*a, from) < away(*b, from);
    });
    found.resize(std::min(found.size(), kMostOffered));
    return found;
}

bool hasEdge(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && measure.points.size() > 1 && entry->points.most == std::nullopt;
}

}  // namespace

void Window::addPlacings(QMenu& menu, const plan::ItemId& item) {
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    const plan::Showing* showing = film ? showingOf(*film, item) : nullptr;
    const plan::MeasurePtr measure = work_.plan().measure(item);
    if (showing == nullptr) {
        return;
    }
    const plan::FilmId id = film->id;
    const plan::Showing* leader = showingOf(*film, plan::leaderOf(*film, item));
    if (leader != nullptr && leader->symbolAt) {
        connect(menu.addAction(tr("Symbol back on its spot")), &QAction::triggered, this, [this, item, id] {
            work_.commit(plan::setAside(work_.committed(), item, id, std::nullopt), "put a symbol back");
        });
    }
    if (showing->labelAt || !showing->figures.empty()) {
        connect(menu.addAction(tr("Label back in its own place")), &QAction::triggered, this, [this, item, id] {
            work_.commit(plan::labelPlaced(work_.committed(), item, id, std::nullopt), "put a label back");
        });
    }
    if (measure && measure->kind == "unit" && !measure->points.empty()) {
        addRows(menu, *film, *measure);
        addEnds(menu, *film, *leader);
    }
}

void Window::addRows(QMenu& menu, const plan::Film& film, const plan::Measure& unit) {
    const plan::ItemId item = unit.id;
    const plan::FilmId id = film.id;
    const plan::ItemId leader = plan::leaderOf(film, item);
    const auto others = nearest(work_.plan(), film, unit.points.front(), [&](const plan::Measure& other) {
        return other.kind == "unit" && plan::leaderOf(film, other.id) != leader;
    });
    if (!others.empty()) {
        QMenu* rows = menu.addMenu(tr("In a row with"));
        for (const plan::MeasurePtr& other : others) {
            const plan::ItemId with = other->id;
            connect(rows->addAction(nameOf(*other)), &QAction::triggered, this, [this, item, id, with] {
                work_.commit(plan::standingWith(work_.committed(), item, id, with), "put units in a row");
            });
        }
    }
    if (leader != item) {
        connect(menu.addAction(tr("Out of the row")), &QAction::triggered, this, [this, item, id] {
            work_.commit(plan::standingWith(work_.committed(), item, id, std::nullopt), "take a unit out of a row");
        });
    }
}

void Window::addEnds(QMenu& menu, const plan::Film& film, const plan::Showing& showing) {
    const plan::ItemId item = showing.item;
    const plan::FilmId id = film.id;
    const plan::MeasurePtr measure = work_.plan().measure(item);
    if (!measure || measure->points.empty()) {
        return;
    }
    QMenu* ends = menu.addMenu(tr("Extension line ends"));
    const auto offer = [&](const QString& words, std::optional<plan::ItemId> edge) {
        QAction* action = ends->addAction(words);
        action->setCheckable(true);
        action->setChecked(showing.pointsTo == edge);
        connect(action, &QAction::triggered, this, [this, item, id, edge] {
            work_.commit(plan::pointingTo(work_.committed(), item, id, edge), "end an extension line");
        });
    };
    offer(tr("On its own spot"), std::nullopt);
    for (const plan::MeasurePtr& other : nearest(work_.plan(), film, measure->points.front(), hasEdge)) {
        const measures::Entry* entry = measures::find(other->kind);
        const bool isArea = entry != nullptr && entry->shape == measures::Shape::Area;
        offer((isArea ? tr("On the edge of %1") : tr("On %1")).arg(nameOf(*other)), other->id);
    }
}

}  // namespace crosstick::window
