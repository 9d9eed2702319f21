#include "core/movement/gm_angle.h"

#include "core/movement/faults.h"

namespace crosstick::movement {

Degrees broughtTo(const plan::PrintedDeclination& printed, CalendarDate date) {
    const auto days = std::chrono::sys_days(date) - std::chrono::sys_days(printed.date);
    return printed.gmAngle + printed.yearlyChange * (static_cast<double>(days.count()) / 365.25);
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
