#include "core/movement/gm_angle.h"

#include "core/movement/faults.h"

namespace crosstick::movement {
namespace {

constexpr Degrees kDisagreement{0.5};

}  // namespace

Degrees broughtTo(const plan::PrintedDeclination& printed, CalendarDate date) {
    const auto days = std::chrono::sys_days(date) - std::chrono::sys_days(printed.date);
    return printed.gmAngle + printed.yearlyChange * (static_cast<double>(days.count()) / 365.25);
}

std::optional<Degrees> modelledAngle(const GmAngle& gm) {
    return gm.model ? std::optional(geodesy::gmAngle(gm.model->declination, gm.convergence)) : std::nullopt;
}

std::optional<Degrees> disagreement(const GmAngle& gm) {
    const auto modelled = modelledAngle(gm);
    if (!modelled || !gm.printed || abs(*gm.printed - *modelled) <= kDisagreement) {
        return std::nullopt;
    }
    return *gm.printed - *modelled;
}

std::optional<geodesy::PlanePoint> middleOfWork(const plan::Plan& plan, const WorkGrid& grid) {
    if (const auto& films = plan.registration()) {
        return geodesy::PlanePoint{(films->southWest.easting + films->northEast.easting) / 2,
                                   (films->southWest.northing + films->northEast.northing) / 2};
    }
    if (!plan.sheets().empty() && plan.sheets().front()->columns > 0) {
        const plan::Sheet& sheet = *plan.sheets().front();
        const plan::Placement& p = sheet.placement;
        const double column = sheet.columns / 2.0;
        const double row = sheet.rows / 2.0;
        return geodesy::PlanePoint{p.corner.easting + Metres(column * p.eastPerColumn + row * p.eastPerRow),
                                   p.corner.northing + Metres(column * p.northPerColumn + row * p.northPerRow)};
    }
    geodesy::PlanePoint sum{};
    double count = 0;
    const auto add = [&](const std::vector<geodesy::PlanePoint>& points) {
        for (const geodesy::PlanePoint point : points) {
            sum = {sum.easting + point.easting, sum.northing + point.northing};
            ++count;
        }
    };
    for (const plan::RoutePtr& route : plan.routes()) {
        add(route->vertices);
    }
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (measure->anchor == plan::Anchor::Ground) {
            add(measure->points);
        }
    });
    const auto onGrid = grid.onGrid({sum.easting / count, sum.northing / count});
    return count > 0 && onGrid ? std::optional(*onGrid) : std::nullopt;
}

Result<GmAngle> gmAngleAt(const plan::Plan& plan, const WorkGrid& grid, geodesy::PlanePoint middle,
                          const geodesy::MagneticModel* model, const sheets::HeightSource* heights) {
    if (!plan.heading().date.ok()) {
        return fail(kNoDate);
    }
    const auto place = grid.plane().geographic(middle);
    const auto factors = grid.plane().factors(middle);
    if (!place || !factors) {
        return tl::unexpected(place ? factors.error() : place.error());
    }
    GmAngle gm{};
    gm.source = plan.heading().declination;
    gm.convergence = factors->convergence;
    gm.middle = middle;
    gm.date = plan.heading().date;
    if (heights != nullptr) {
        if (const auto inPlan = grid.inPlan(middle)) {
            gm.height = heights->heightAt(*inPlan);
        }
    }
    if (!plan.sheets().empty() && plan.sheets().front()->declination && plan.sheets().front()->declination->date.ok()) {
        gm.printed = broughtTo(*plan.sheets().front()->declination, gm.date);
    }
    Result<geodesy::Declination> modelled = fail(kNoModel);
    if (model != nullptr) {
        modelled = model->at(*place, gm.date, gm.height.value_or(Metres(0)));
    }
    if (modelled) {
        gm.model = *modelled;
    }
    if (gm.source == plan::DeclinationSource::Sheet) {
        if (!gm.printed) {
            return fail(kNoPrintedAngle);
        }
        gm.angle = *gm.printed;
        return gm;
    }
    if (!modelled) {
        return tl::unexpected(modelled.error());
    }
    gm.angle = geodesy::gmAngle(modelled->declination, gm.convergence);
    return gm;
}

}  // namespace crosstick::movement
