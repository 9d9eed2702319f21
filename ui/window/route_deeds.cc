// What is done with whole routes: turned round, cut, put together, taken in another's place.
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/movement/paper_figures.h"
#include "core/plan/edits.h"
#include "core/plan/route_edits.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

QString title(const plan::Route& route) {
    return text(movement::routeTitle(route.name));
}

double apart(geodesy::PlanePoint a, geodesy::PlanePoint b) {
    return std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value());
}

/// "QUILL 2", or the next number that no route has.
std::string freeName(const plan::Plan& plan, const std::string& name) {
    for (int n = 2;; ++n) {
        const std::string next = name + ' ' + std::to_string(n);
        if (!plan.routeNamed(next)) {
            return next;
        }
    }
}

/// Where a way comes nearest to a place: on a bend, or between it and the next.
struct Spot {
    std::size_t vertex = 0;
    geodesy::PlanePoint at;
    bool isBend = true;
};

Spot nearestOn(const plan::Route& route, geodesy::PlanePoint place, double nearBend) {
    Spot best;
    double away = std::numeric_limits<double>::infinity();
    for (std::size_t n = 0; n + 1 < route.vertices.size(); ++n) {
        const geodesy::PlanePoint a = route.vertices[n];
        const geodesy::PlanePoint b = route.vertices[n + 1];
        const double east = (b.easting - a.easting).value();
        const double north = (b.northing - a.northing).value();
        const double square = east * east + north * north;
        const double along =
            square > 0
                ? ((place.easting - a.easting).value() * east + (place.northing - a.northing).value() * north) / square
                : 0;
        const double share = std::clamp(along, 0.0, 1.0);
        const geodesy::PlanePoint foot{a.easting + Metres(east * share), a.northing + Metres(north * share)};
        if (const double off = apart(foot, place); off < away) {
            away = off;
            const bool atEnd = apart(foot, b) < apart(foot, a);
            const bool isBend = apart(foot, atEnd ? b : a) <= nearBend;
            best = {isBend ? n + (atEnd ? 1U : 0U) : n, foot, isBend};
        }
    }
    return best;
}

}  // namespace

void Window::addRouteDeeds(QMenu* menu) {
    const auto key = [](const char* keys) { return QKeySequence(QString::fromLatin1(keys)); };
    add(menu, "route-reverse", tr("Walk it the other way"), key("Ctrl+Shift+B"), [this] { reverseRoute(); });
    add(menu, "route-split", tr("Split at the chosen point"), key("Ctrl+Shift+X"),
        [this] { splitRoute(std::nullopt); });
    add(menu, "route-join", tr("Join the nearest route on to its end"), key("Ctrl+Shift+J"), [this] { joinRoute(); });
    add(menu, "route-swap", tr("Swap primary and alternate"), key("Ctrl+Shift+A"), [this] { swapRoute(); });
}

void Window::addRouteDeedsHere(QMenu& menu, const QPoint& at) {
    const plan::RoutePtr route = work_.ledgerRoute();
    const bool isChosen = route && (route->id == *work_.selected() ||
                                    std::any_of(route->stops.begin(), route->stops.end(), [&](const plan::Stop& stop) {
                                        return stop.measure == *work_.selected();
                                    }));
    if (!isChosen || work_.grid() == nullptr) {
        return;
    }
    const QPoint spot = table_->mapFromGlobal(at);
    const auto place =
        work_.grid()->inPlan(table_->view().place({static_cast<double>(spot.x()), static_cast<double>(spot.y())}));
    menu.addSeparator();
    menu.addAction(actions_.at("route-reverse"));
    if (place) {
        connect(menu.addAction(tr("Split it here")), &QAction::triggered, this,
                [this, at = *place] { splitRoute(at); });
    }
    menu.addAction(actions_.at("route-join"));
    menu.addAction(actions_.at("route-swap"));
}

/// Where none is shown, the first primary one is taken in hand.
void Window::showARoute() {
    if (work_.ledgerRoute()) {
        return;
    }
    const auto& routes = work_.plan().routes();
    const auto primary = std::find_if(routes.begin(), routes.end(),
                                      [](const plan::RoutePtr& one) { return one->use == plan::Use::Primary; });
    if (primary != routes.end()) {
        const bool wanted = detailsWanted_;
        work_.select((*primary)->id);
        detailsWanted_ = wanted;
    }
}

plan::RoutePtr Window::routeInHand() {
    const plan::RoutePtr route = work_.isOpen() && !work_.wetPlan() ? work_.ledgerRoute() : nullptr;
    if (!route) {
        say(tr("No route is chosen. Click one, or one of its points."));
    }
    return route;
}

void Window::reverseRoute() {
    if (const plan::RoutePtr route = routeInHand()) {
        work_.commit(plan::reversed(work_.committed(), route->id), "walk a route the other way");
        say(tr("%1 goes the other way. Catching features, rally points and what to do in contact were for the old way: "
               "say them anew.")
                .arg(title(*route)));
    }
}

/// At a place of the table, else at the chosen route point.
void Window::splitRoute(std::optional<geodesy::PlanePoint> at) {
    const plan::RoutePtr route = routeInHand();
    if (!route) {
        return;
    }
    plan::Plan base = work_.committed();
    std::size_t vertex = 0;
    if (at) {
        const double nearBend = 12 / table_->view().zoom().value();
        const Spot spot = nearestOn(*route, *at, nearBend);
        vertex = spot.vertex + (spot.isBend ? 0U : 1U);
        base = spot.isBend ? base : plan::withPointBefore(base, route->id, vertex, spot.at);
    } else {
        for (const plan::Stop& stop : route->stops) {
            vertex = work_.selected() == stop.measure ? stop.vertex : vertex;
        }
    }
    const plan::RoutePtr held = base.route(route->id);
    if (vertex == 0 || vertex + 1 >= held->vertices.size()) {
        say(at ? tr("A route is split between its ends.")
               : tr("Choose a point of %1 between its ends, or right-click where it is to be split.")
                     .arg(title(*route)));
        return;
    }
    const plan::ItemId second = work_.newId();
    const std::string name = freeName(base, route->name);
    work_.commit(plan::splitAt(base, route->id, vertex, second, name), "split a route");
    say(tr("%1 ends here, and RTE %2 goes on.").arg(title(*route), text(name)));
}

void Window::joinRoute() {
    const plan::RoutePtr route = routeInHand();
    if (!route) {
        return;
    }
    plan::RoutePtr nearest;
    for (const plan::RoutePtr& other : work_.plan().routes()) {
        const auto away = [&](const plan::RoutePtr& one) {
            return apart(route->vertices.back(), one->vertices.front());
        };
        if (other->id != route->id && !other->vertices.empty() && (!nearest || away(other) < away(nearest))) {
            nearest = other;
        }
    }
    if (!nearest || route->vertices.empty()) {
        say(tr("There is no other route to join on to %1.").arg(title(*route)));
        return;
    }
    const double gap = apart(route->vertices.back(), nearest->vertices.front());
    work_.commit(plan::joined(work_.committed(), route->id, nearest->id), "join two routes");
    say(gap < 1 ? tr("%1 now goes on as %2 did.").arg(title(*route), title(*nearest))
                : tr("%1 now goes on as %2 did, straight over the %3 m between them.")
                      .arg(title(*route), title(*nearest))
                      .arg(std::lround(gap)));
}

/// The primary with its one alternate; where there are more, the alternate in hand with the primary.
void Window::swapRoute() {
    const plan::RoutePtr route = routeInHand();
    if (!route) {
        return;
    }
    const plan::Use sought = route->use == plan::Use::Primary ? plan::Use::Alternate : plan::Use::Primary;
    std::vector<plan::RoutePtr> others;
    for (const plan::RoutePtr& other : work_.plan().routes()) {
        if (other->use == sought) {
            others.push_back(other);
        }
    }
    if (route->use == plan::Use::Vehicle || others.empty()) {
        say(tr("There is no %1 route to swap %2 with.")
                .arg(sought == plan::Use::Primary ? tr("primary") : tr("alternate"), title(*route)));
        return;
    }
    if (others.size() > 1) {
        say(sought == plan::Use::Alternate
                ? tr("There are %1 alternates. Choose the one that is to be the primary.").arg(others.size())
                : tr("There are %1 primary routes. Choose the one to go back.").arg(others.size()));
        return;
    }
    work_.commit(plan::swappedUse(work_.committed(), route->id, others.front()->id), "swap primary and alternate");
    const bool nowPrimary = sought == plan::Use::Primary;
    say(tr("%1 is the primary route now, %2 the alternate.")
            .arg(title(nowPrimary ? *route : *others.front()), title(nowPrimary ? *others.front() : *route)));
}

/// From its row in the ledger to what is said of it.
void Window::chooseLeg(const plan::ItemId& point) {
    if (work_.plan().measure(point)) {
        timingWanted_ = false;
        detailsWanted_ = true;
        work_.select(point);
        arrange();
        details_->askForLeg();
    } else {
        say(tr("This leg ends on no route point, so nothing can be said of it. Place a checkpoint on its end."));
    }
}

}  // namespace crosstick::window
