#include "ui/details/beyond.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

namespace crosstick::details {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Beyond", words);
}

/// How far a place lies beyond the edges of a rectangle, in metres: upward and to the right positive.
struct Off {
    double right = 0, up = 0;
    [[nodiscard]] double distance() const { return std::hypot(right, up); }
};

/// The points that lie beyond, and the farthest of them.
struct Beyond {
    std::size_t count = 0, of = 0;
    Off farthest;
    void take(Off off) {
        ++of;
        count += off.distance() > 0 ? 1U : 0U;
        farthest = off.distance() > farthest.distance() ? off : farthest;
    }
};

double beyond(double at, double least, double most) {
    return at < least ? at - least : std::max(0.0, at - most);
}

/// Off the sheet's raster; its edges are those of the page.
Off offSheet(const plan::Sheet& sheet, geodesy::PlanePoint at) {
    const plan::Placement& p = sheet.placement;
    const double area = p.eastPerColumn * p.northPerRow - p.eastPerRow * p.northPerColumn;
    const double east = (at.easting - p.corner.easting).value();
    const double north = (at.northing - p.corner.northing).value();
    const double column = (east * p.northPerRow - north * p.eastPerRow) / area;
    const double row = (north * p.eastPerColumn - east * p.northPerColumn) / area;
    return {beyond(column, 0, sheet.columns) * std::hypot(p.eastPerColumn, p.northPerColumn),
            -beyond(row, 0, sheet.rows) * std::hypot(p.eastPerRow, p.northPerRow)};
}

/// Off the nearest of the plan's sheets; nothing where one lies in another grid, whose edges run otherwise.
std::optional<Off> offSheets(const plan::Plan& plan, geodesy::PlanePoint at) {
    std::optional<Off> least;
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        if (sheet->crs != plan.sheets().front()->crs) {
            return std::nullopt;
        }
        const Off off = offSheet(*sheet, at);
        least = !least || off.distance() < least->distance() ? off : *least;
    }
    return least;
}

Off offWindow(const plan::Registration& window, geodesy::PlanePoint at) {
    return {beyond(at.easting.value(), window.southWest.easting.value(), window.northEast.easting.value()),
            beyond(at.northing.value(), window.southWest.northing.value(), window.northEast.northing.value())};
}

QString length(double metres) {
    constexpr double kKilometre = 1000;
    if (metres >= kKilometre) {
        return tr("%1 km").arg(QString::number(metres / kKilometre, 'f', 1));
    }
    return metres < 10 ? tr("less than 10 m") : tr("%1 m").arg(std::llround(metres / 10) * 10);
}

struct Edges {
    QString upper, lower, left, right;
};

QString where(const Off& off, const Edges& edges) {
    QStringList names;
    if (off.up != 0) {
        names << (off.up > 0 ? edges.upper : edges.lower);
    }
    if (off.right != 0) {
        names << (off.right > 0 ? edges.right : edges.left);
    }
    return tr("%1 beyond its %2 edge").arg(length(off.distance()), names.join(tr(" and ")));
}

QString inWords(const Beyond& found, const QString& whole, const QString& part, const Edges& edges) {
    const QString place = where(found.farthest, edges);
    return found.of == 1 ? whole.arg(place) : part.arg(found.count).arg(found.of).arg(place);
}

std::vector<geodesy::PlanePoint> onGrid(const work::Work& work, const plan::ItemId& item) {
    std::vector<geodesy::PlanePoint> inPlan;
    if (const plan::RoutePtr route = work.plan().route(item)) {
        inPlan = route->vertices;
    } else if (const plan::MeasurePtr measure = work.plan().measure(item);
               measure && measure->anchor == plan::Anchor::Ground) {
        inPlan = measure->points;
    }
    std::vector<geodesy::PlanePoint> points;
    for (const geodesy::PlanePoint point : inPlan) {
        if (const auto place = work.grid()->onGrid(point)) {
            points.push_back(*place);
        }
    }
    return points;
}

}  // namespace

QString beyondWords(const work::Work& work, const plan::ItemId& item) {
    if (work.grid() == nullptr) {
        return {};
    }
    Beyond sheets;
    Beyond windows;
    for (const geodesy::PlanePoint point : onGrid(work, item)) {
        if (const auto off = offSheets(work.plan(), point)) {
            sheets.take(*off);
        }
        if (const auto& window = work.plan().registration()) {
            windows.take(offWindow(*window, point));
        }
    }
    if (sheets.count > 0) {
        return inWords(sheets, tr("Off the sheet, %1: no film shows it."),
                       tr("Off the sheet: %1 of %2 points, the farthest %3."),
                       {tr("upper"), tr("lower"), tr("left"), tr("right")});
    }
    if (windows.count > 0) {
        return inWords(windows, tr("Outside the window of the films, %1: no film shows it."),
                       tr("Outside the window of the films: %1 of %2 points, the farthest %3."),
                       {tr("north"), tr("south"), tr("west"), tr("east")});
    }
    return {};
}

}  // namespace crosstick::details
