#include "ui/details/number_entry.h"

#include "core/movement/paper_figures.h"
#include "core/movement/route_figures.h"
#include "core/plan/edits.h"
#include "core/plan/numbering.h"
#include "ui/details/faults.h"

namespace crosstick::details {

std::optional<Error> numberFault(const plan::Plan& plan, std::string_view kind, const std::string& number,
                                 const plan::ItemId& measure) {
    const plan::MeasurePtr held = plan.measure(measure);
    const plan::Issue* issue = held && held->number != number ? plan::issueOf(plan, measure) : nullptr;
    if (issue != nullptr) {
        return Error{kNumberIssued, {{"what", movement::label(*held)}, {"papers", issue->papers}}};
    }
    const plan::MeasurePtr holder = plan::holderOf(plan, kind, number, measure);
    if (!holder) {
        return std::nullopt;
    }
    const plan::RoutePtr route = plan::routeThrough(plan, holder->id);
    Error error{route ? kNumberTakenOnRoute : kNumberTaken,
                {{"number", number}, {"next", plan::nextNumber(plan, kind)}}};
    return route ? std::move(error).with("route", movement::routeTitle(route->name)) : error;
}

}  // namespace crosstick::details
