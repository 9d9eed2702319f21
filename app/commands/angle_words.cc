#include "app/commands/angle_words.h"

#include <fmt/format.h>

#include "core/movement/gm_angle.h"
#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"

namespace crosstick::app {

std::string angleSourceText(const movement::GmAngle& gm, const std::string& modelName) {
    const std::string model = gm.model
                                  ? fmt::format("{} for {}, height {}: {}°, one sigma {}°", modelName, isoDate(gm.date),
                                                gm.height ? numberText(gm.height->value(), 0) + " m" : "0 taken",
                                                numberText((gm.model->declination - gm.convergence).value(), 2),
                                                numberText(gm.model->sigma.value(), 2))
                                  : "no model for " + isoDate(gm.date);
    const std::string sheet =
        gm.printed ? fmt::format("the sheet's printed angle on that day: {}°", numberText(gm.printed->value(), 2))
                   : "the sheet's printed angle is not entered";
    return gm.source == plan::DeclinationSource::Model ? "taken: " + model + "; beside it: " + sheet
                                                       : "taken: " + sheet + "; beside it: " + model;
}

std::string angleText(const movement::GmAngle& gm, geodesy::AngleUnit unit, const std::string& modelName) {
    const std::string caution = movement::gmCautionText(gm, unit);
    return "G-M angle " + movement::gmAngleText(gm.angle, unit) + "; " + movement::gmRuleText(gm.angle, unit) + "\n  " +
           angleSourceText(gm, modelName) + '\n' + (caution.empty() ? "" : "  Caution: " + caution + '\n');
}

}  // namespace crosstick::app
