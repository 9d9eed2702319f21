#include "core/film/registration.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/film/faults.h"
#include "core/film/ground_lines.h"
#include "core/film/window_span.h"

namespace crosstick::film {
namespace {

using geodesy::PlanePoint;

/// The grid that a film is registered in.
struct Ground {
    std::string crs;
    plan::SheetPtr sheet;  ///< null for a plan without one
    TickGrid ticks;
};

Ground groundOf(plan::SheetPtr sheet, const plan::Plan& plan) {
    const Scale scale = sheet ? sheet->scale : Scale{};
    return {sheet ? sheet->crs : plan.planeCrs(), std::move(sheet), {scale, gridInterval(scale)}};
}

Window extentOf(const plan::Sheet& sheet) {
    const auto& place = sheet.placement;
    Window extent = Window::none();
    for (const double column : {0.0, static_cast<double>(sheet.columns)}) {
        for (const double row : {0.0, static_cast<double>(sheet.rows)}) {
            extent.add({place.corner.easting + Metres(place.eastPerColumn * column + place.eastPerRow * row),
                        place.corner.northing + Metres(place.northPerColumn * column + place.northPerRow * row)});
        }
    }
    return extent;
}

Window extentOf(const std::vector<GroundLine>& lines) {
    Window extent = Window::none();
    for (const GroundLine& line : lines) {
        for (const PlanePoint point : line) {
            extent.add(point);
        }
    }
    return extent;
}

Span middlePart(Span all, Metres most) {
    if (all.length() <= most) {
        return all;
    }
    const Metres middle = (all.low + all.high) / 2;
    return {middle - most / 2, middle + most / 2};
}

Window partThatFits(const Window& sheet, Scale scale) {
    for (const WindowRoom& room : kA4Rooms) {
        if (sheet.east.length() <= onGround(room.width, scale) &&
            sheet.north.length() <= onGround(room.height, scale)) {
            return sheet;
        }
    }
    Window best = Window::none();
    double most = 0;
    for (const WindowRoom& room : kA3Rooms) {
        const Window part{middlePart(sheet.east, onGround(room.width, scale)),
                          middlePart(sheet.north, onGround(room.height, scale))};
        const double area = part.east.length().value() * part.north.length().value();
        if (area > most) {
            most = area;
            best = part;
        }
    }
    return best;
}

/// Shortest distance from a crossing to anything drawn.
Metres clearance(PlanePoint crossing, const std::vector<GroundLine>& lines) {
    double nearest = std::numeric_limits<double>::infinity();
    for (const GroundLine& line : lines) {
        for (std::size_t at = 0; at < line.size(); ++at) {
            const PlanePoint& a = line[at];
            const PlanePoint& b = line[std::min(at + 1, line.size() - 1)];
            const double dx = (b.easting - a.easting).value();
            const double dy = (b.northing - a.northing).value();
            const double px = (crossing.easting - a.easting).value();
            const double py = (crossing.northing - a.northing).value();
            const double square = dx * dx + dy * dy;
            const double t = square > 0 ? std::clamp((px * dx + py * dy) / square, 0.0, 1.0) : 0.0;
            nearest = std::min(nearest, std::hypot(px - t * dx, py - t * dy));
        }
    }
    return Metres(nearest);
}

constexpr PaperMm kLabelRoom{10};
constexpr PaperMm kTickClearance{7};
constexpr std::size_t kNearest = 40;  ///< crossings looked at for each corner

std::vector<PlanePoint> crossingsIn(const Window& window, Metres interval) {
    std::vector<PlanePoint> all;
    for (const Metres northing : linesIn(window.north, interval)) {
        for (const Metres easting : linesIn(window.east, interval)) {
            all.push_back({easting, northing});
        }
    }
    return all;
}

/// The crossing for one corner: near it, and clear of what is drawn as long as that costs less than a third of the
/// window.
PlanePoint tickNear(PlanePoint corner, std::vector<PlanePoint> crossings, const Window& window, Scale scale,
                    const std::vector<GroundLine>& lines) {
    const auto distance = [corner](PlanePoint p) {
        return std::hypot((p.easting - corner.easting).value(), (p.northing - corner.northing).value());
    };
    std::stable_sort(crossings.begin(), crossings.end(),
                     [&](PlanePoint a, PlanePoint b) { return distance(a) < distance(b); });
    crossings.resize(std::min(crossings.size(), kNearest));
    const double price = std::min(window.east.length(), window.north.length()).value() / 3;
    PlanePoint best = crossings.front();
    double least = std::numeric_limits<double>::infinity();
    for (const PlanePoint crossing : crossings) {
        const bool clear = clearance(crossing, lines) >= onGround(kTickClearance, scale);
        const double cost = distance(crossing) + (clear ? 0 : price);
        if (cost < least) {
            least = cost;
            best = crossing;
        }
    }
    return best;
}

std::vector<PlanePoint> ticksIn(const Window& window, const TickGrid& grid, const std::vector<GroundLine>& lines) {
    std::vector<PlanePoint> crossings = crossingsIn(window.shrunk(onGround(kTickInset, grid.scale)), grid.interval);
    std::vector<PlanePoint> ticks;
    for (const PlanePoint corner :
         {PlanePoint{window.east.low, window.north.low}, PlanePoint{window.east.high, window.north.low},
          PlanePoint{window.east.low, window.north.high}, PlanePoint{window.east.high, window.north.high}}) {
        if (crossings.empty()) {
            break;
        }
        ticks.push_back(tickNear(corner, crossings, window, grid.scale, lines));
        std::erase(crossings, ticks.back());
    }
    return ticks;
}

Result<Window> windowOn(const Ground& ground, const std::vector<GroundLine>& lines) {
    const Metres interval = ground.ticks.interval;
    const Metres step = interval / 10;
    const std::optional<Window> sheet =
        ground.sheet ? std::optional(extentOf(*ground.sheet).roundedIn(step)) : std::nullopt;
    if (lines.empty()) {
        if (!sheet) {
            return fail(kNoGround);
        }
        return partThatFits(*sheet, ground.ticks.scale).roundedIn(step);
    }
    Window window = extentOf(lines).grown(onGround(kLabelRoom, ground.ticks.scale)).roundedOut(step);
    if (sheet) {
        window = window.cut(*sheet);
        if (window.isEmpty()) {
            return fail(kOffTheSheet, {{"sheet", ground.sheet->name}});
        }
    }
    const Metres inset = onGround(kTickInset, ground.ticks.scale);
    const Window limits = sheet ? *sheet : window.grown(interval * 3);
    return Window{holdingTwoLines(window.east, limits.east, interval, inset),
                  holdingTwoLines(window.north, limits.north, interval, inset)};
}

Result<plan::Registration> ticksOn(const Ground& ground, const Window& window, const std::vector<GroundLine>& lines) {
    plan::Registration registration{{window.east.low, window.north.low},
                                    {window.east.high, window.north.high},
                                    ticksIn(window, ground.ticks, lines)};
    if (registration.ticks.size() < 3) {
        return fail(kTooFewCrossings, {{"count", static_cast<std::int64_t>(registration.ticks.size())},
                                       {"interval", ground.ticks.interval.value()}});
    }
    return registration;
}

Result<std::vector<GroundLine>> linesOn(const Ground& ground, const plan::Plan& plan) {
    return geodesy::PlaneLink::between(plan.planeCrs(), ground.crs).map([&](const geodesy::PlaneLink& link) {
        return groundLines(plan, link);
    });
}

Result<plan::Registration> registrationOn(const Ground& ground, const plan::Plan& plan) {
    const auto lines = linesOn(ground, plan);
    if (!lines) {
        return tl::unexpected(lines.error());
    }
    return windowOn(ground, *lines).and_then([&](const Window& window) { return ticksOn(ground, window, *lines); });
}

}  // namespace

Metres gridInterval(Scale scale) {
    if (scale.denominator < 10000) {
        return Metres(100);
    }
    return scale.denominator <= 100000 ? Metres(1000) : Metres(10000);
}

Result<plan::Registration> proposeRegistration(const plan::Plan& plan) {
    return registrationOn(groundOf(plan.sheets().empty() ? nullptr : plan.sheets().front(), plan), plan);
}

Result<plan::Registration> proposeTicks(const plan::Plan& plan, PlanePoint southWest, PlanePoint northEast,
                                        std::optional<TickGrid> grid) {
    Ground ground = groundOf(plan.sheets().empty() ? nullptr : plan.sheets().front(), plan);
    ground.ticks = grid.value_or(ground.ticks);
    return linesOn(ground, plan).and_then([&](const std::vector<GroundLine>& lines) {
        return ticksOn(ground, {{southWest.easting, northEast.easting}, {southWest.northing, northEast.northing}},
                       lines);
    });
}

Scale scaleOf(const plan::Plan& plan, const plan::Film& film) {
    const plan::SheetPtr sheet = plan.groundSheet(film);
    return film.scale ? *film.scale : sheet ? sheet->scale : Scale{};
}

TickGrid printedTicks(Scale scale) {
    return {scale, gridInterval(scale)};
}

TickGrid ticksFor(const plan::Plan& plan, const plan::Film* film) {
    return film != nullptr && film->inset ? TickGrid{scaleOf(plan, *film), kInsetInterval}
           : plan.sheets().empty()        ? printedTicks(Scale{})
                                          : printedTicks(plan.sheets().front()->scale);
}

bool sharesRegistration(const plan::Plan& plan, const plan::Film& film) {
    const std::string first = plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
    return !film.inset && plan.gridCrs(film) == first;
}

Result<plan::Registration> registrationFor(const plan::Plan& plan, const plan::Film& film) {
    if (film.inset) {
        return film.inset->place;
    }
    if (plan.registration() && sharesRegistration(plan, film)) {
        return *plan.registration();
    }
    return registrationOn(groundOf(plan.groundSheet(film), plan), plan);
}

}  // namespace crosstick::film
