#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/film/inset.h"
#include "core/film/registration.h"
#include "core/film/registration_edits.h"
#include "core/plan/edits.h"
#include "core/plan/set_edits.h"
#include "ui/details/grid_entry.h"
#include "ui/tools/place_tool.h"
#include "ui/tools/registration_tool.h"
#include "ui/tools/route_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

void Window::draw(const std::string& kind) {
    if (!hasFilmToDrawOn()) {
        return;
    }
    const measures::Entry* entry = measures::find(kind);
    if (entry != nullptr && !strokeBecomes(*entry)) {
        takeTool(std::make_unique<tools::PlaceTool>(*entry));
    }
}

void Window::drawRoute(plan::Use use) {
    if (hasFilmToDrawOn()) {
        takeTool(std::make_unique<tools::RouteTool>(use));
    }
}

void Window::removeSelected() {
    const auto& chosen = work_.selection();
    if (!chosen.empty()) {
        const std::string caption = chosen.size() > 1 ? fmt::format("wipe off {} things", chosen.size()) : "wipe off";
        work_.commit(plan::withoutAll(work_.committed(), chosen), caption);
    }
}

void Window::chooseAll() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (film && !table_->isDrawing()) {
        std::vector<plan::ItemId> items;
        for (const plan::Showing& showing : film->shows) {
            items.push_back(showing.item);
        }
        work_.selectAll(std::move(items));
    }
}

void Window::selectNext(int step) {
    std::vector<plan::ItemId> things;
    for (const plan::FilmPtr& film : work_.filmsSeen()) {
        for (const plan::Showing& showing : film->shows) {
            if (std::find(things.begin(), things.end(), showing.item) == things.end()) {
                things.push_back(showing.item);
            }
        }
    }
    if (things.empty()) {
        return;
    }
    const auto at = work_.selected() ? std::find(things.begin(), things.end(), *work_.selected()) : things.end();
    const auto count = static_cast<std::ptrdiff_t>(things.size());
    const std::ptrdiff_t now = at == things.end() ? (step > 0 ? -1 : 0) : at - things.begin();
    work_.select(things[static_cast<std::size_t>(((now + step) % count + count) % count)]);
}

/// The table as a map is held on the march: what lies ahead on the ledger's route is up.
void Window::turnToMarch() {
    const plan::RoutePtr route = work_.ledgerRoute();
    if (!route || route->vertices.size() < 2 || work_.grid() == nullptr) {
        say(tr("There is no route to march by. Draw one, or choose one."));
        return;
    }
    const auto from = work_.grid()->onGrid(route->vertices.front());
    const auto to = work_.grid()->onGrid(route->vertices.back());
    if (from && to) {
        const double east = (to->easting - from->easting).value();
        const double north = (to->northing - from->northing).value();
        table_->turnTo(degrees(Radians(std::atan2(east, north))));
    }
}

/// Window and ticks round what is drawn: they hold for all films, so films printed before no longer fit.
/// Of an inset: other ticks in the window that it has.
void Window::moveRegistration() {
    if (const auto inset = workingInset()) {
        return takeInset(inset->inset->place.southWest, inset->inset->place.northEast);
    }
    plan::PlanBuilder bare(work_.committed());
    bare.registration(std::nullopt);
    auto proposed = film::proposeRegistration(std::move(bare).build());
    if (!proposed) {
        say(outside_.say(proposed.error()));
        return;
    }
    plan::PlanBuilder builder(work_.committed());
    builder.registration(std::move(*proposed));
    work_.commit(std::move(builder).build(), "move ticks and window");
    say(tr("Ticks and window now lie round what is drawn. Films that were printed before no longer fit these."));
}

void Window::holdRegistration() {
    if (work_.grid() == nullptr) {
        return;
    }
    say({});
    work_.select(std::nullopt);
    detailsWanted_ = false;
    arrange();
    table_->setTool(std::make_unique<tools::RegistrationTool>(gridWays()));
    table_->setFocus();
}

/// Typed grids, parted by commas, on the grid of the work.
Result<std::vector<geodesy::PlanePoint>> Window::gridsTyped(const QString& typed) const {
    std::vector<geodesy::PlanePoint> grids;
    const movement::WorkGrid& grid = *work_.grid();
    const auto& registration = work_.plan().registration();
    const auto near = registration ? grid.inPlan(registration->southWest) : Result<geodesy::PlanePoint>{};
    for (const QString& one : typed.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        const auto onGrid =
            details::gridEntered(one.trimmed().toStdString(), work_.plan(), grid, near.value_or(geodesy::PlanePoint{}))
                .and_then([&grid](geodesy::PlanePoint inPlan) { return grid.onGrid(inPlan); });
        if (!onGrid) {
            return tl::unexpected(onGrid.error());
        }
        grids.push_back(*onGrid);
    }
    return grids;
}

/// A proposal's grids as they would be typed.
QString Window::gridsToType(const std::vector<geodesy::PlanePoint>& onGrid) const {
    QStringList words;
    for (const geodesy::PlanePoint point : onGrid) {
        if (const auto inPlan = work_.grid()->inPlan(point)) {
            words.push_back(text(details::gridShown(*work_.grid(), *inPlan)));
        }
    }
    return words.join(QStringLiteral(", "));
}

/// Of the inset that is worked on, else of the plan.
void Window::keepRegistration(const plan::Registration& next) {
    const auto plan = film::withRegistration(work_.committed(), work_.workingFilm().value_or(plan::FilmId{}), next);
    if (!plan) {
        return say(outside_.say(plan.error()));
    }
    work_.commit(*plan, "move ticks and window");
    say(tr("Films that were printed before no longer fit these ticks."));
}

/// The working film where it is an inset, which has ticks and a window of its own.
plan::FilmPtr Window::workingInset() const {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    return film && film->inset ? film : nullptr;
}

void Window::askForTicks() {
    if (work_.grid() == nullptr) {
        return;
    }
    const plan::FilmPtr inset = workingInset();
    auto present = inset                         ? Result<plan::Registration>(inset->inset->place)
                   : work_.plan().registration() ? Result<plan::Registration>(*work_.plan().registration())
                                                 : film::proposeRegistration(work_.plan());
    if (!present) {
        say(outside_.say(present.error()));
        return;
    }
    question_->ask(
        inset ? tr("Ticks of the inset on these crossings of the 100 m grid:") : tr("Ticks on these crossings:"),
        gridsToType(present->ticks),
        [this, present = *present,
         grid = film::ticksFor(work_.plan(), inset.get())](const QString& typed) -> std::optional<QString> {
            const auto next = gridsTyped(typed).and_then(
                [&](const auto& crossings) { return film::withTicksAt(present, crossings, grid); });
            if (!next) {
                return outside_.say(next.error());
            }
            keepRegistration(*next);
            return std::nullopt;
        });
}

void Window::askForWindow() {
    if (workingInset()) {
        return askForInset();
    }
    if (work_.grid() == nullptr) {
        return;
    }
    const auto present = work_.plan().registration() ? Result<plan::Registration>(*work_.plan().registration())
                                                     : film::proposeRegistration(work_.plan());
    question_->ask(tr("Window from corner to corner:"),
                   present ? gridsToType({present->southWest, present->northEast}) : QString(),
                   [this](const QString& typed) -> std::optional<QString> {
                       const auto corners = gridsTyped(typed);
                       if (!corners) {
                           return outside_.say(corners.error());
                       }
                       if (corners->size() != 2) {
                           return tr("Two grids, parted by a comma: opposite corners of the window.");
                       }
                       const auto next = film::withWindow(work_.committed(), corners->front(), corners->back());
                       if (!next) {
                           return outside_.say(next.error());
                       }
                       keepRegistration(*next);
                       return std::nullopt;
                   });
}

void Window::showCopies(bool shown) {
    if (!work_.isOpen()) {
        return;
    }
    pages_->setCurrentWidget(shown ? static_cast<QWidget*>(&*copies_) : desk_);
    if (shown) {
        copies_->open();
        copies_->setFocus();
    } else {
        table_->setFocus();
    }
}

/// Nothing but the sheet and a strip: head, sill and card go, and come back when it has been told.
void Window::beginBrief() {
    if (!work_.isOpen() || brief_->telling() != nullptr) {
        return;
    }
    table_->setTool(nullptr);
    work_.select(std::nullopt);
    question_->leave();
    pages_->setCurrentWidget(desk_);
    beforeBrief_ = windowState();
    brief_->setGeometry(centralWidget()->rect());
    brief_->begin();
    across_->setContentsMargins(0, 0, 0, brief::kStripHigh);
    arrange();
    setWindowState(beforeBrief_ | Qt::WindowFullScreen);
}

void Window::endBrief() {
    across_->setContentsMargins(0, 0, 0, 0);
    setWindowState(beforeBrief_);
    arrange();
    table_->setFocus();
}

}  // namespace crosstick::window
