// A route's profile read off the sheet's contours by hand.
#include <cmath>

#include <QCoreApplication>

#include "core/plan/route_edits.h"
#include "core/units/number_text.h"
#include "ui/tools/contour_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr double kLowest = -500;  // metres
constexpr double kHighest = 9000;

QString metres(const std::optional<Metres>& length) {
    return QString::number(std::llround(length->value()));
}

/// What the contours read so far give, or what they still lack.
QString told(const plan::Route& route, const movement::RouteFigures& figures) {
    if (figures.climb && !figures.fromContours) {
        return QCoreApplication::translate("Contours",
                                           "The height model covers this route and goes first. The contours are kept.");
    }
    if (figures.climb && figures.descent) {
        return QCoreApplication::translate("Contours", "%1 contours: climb %2 m, descent %3 m, from contours.")
            .arg(route.contours.size())
            .arg(metres(figures.climb), metres(figures.descent));
    }
    return QCoreApplication::translate("Contours",
                                       "%1 contours. Climb is unknown until both ends of the route have a height too.")
        .arg(route.contours.size());
}

}  // namespace

void Window::readContours() {
    const plan::RoutePtr route = work_.isOpen() && !work_.wetPlan() ? work_.ledgerRoute() : nullptr;
    if (!route) {
        return say(tr("Select the route first whose contours are to be read."));
    }
    say({});
    layTrayAway();
    table_->setTool(std::make_unique<tools::ContourTool>(
        route->id, [this, id = route->id](geodesy::PlanePoint onRoute) { askForHeight(id, onRoute); }));
    table_->setFocus();
}

void Window::askForHeight(const plan::ItemId& route, geodesy::PlanePoint onRoute) {
    const plan::RoutePtr held = work_.committed().route(route);
    const QString last = held && !held->contours.empty()
                             ? QString::fromStdString(numberText(held->contours.back().height.value()))
                             : QString();
    question_->ask(
        tr("Height of the contour, m:"), last, [this, route, onRoute](const QString& typed) -> std::optional<QString> {
            const auto height = parseNumber(typed.trimmed().replace(QLatin1Char(','), QLatin1Char('.')).toStdString());
            if (!height || *height < kLowest || *height > kHighest) {
                return tr("Metres above the sea, -500 to 9000, as the sheet prints them.");
            }
            work_.commit(plan::withContour(work_.committed(), route, {onRoute, Metres(*height)}), "read a contour");
            const plan::RoutePtr now = work_.committed().route(route);
            const auto figures = work_.figures().find(route);
            if (now && figures != work_.figures().end()) {
                say(told(*now, figures->second));
            }
            table_->renewTool();
            return std::nullopt;
        });
}

}  // namespace crosstick::window
