#include "ui/press/route_card_words.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "core/geodesy/crs.h"
#include "core/movement/rate_text.h"
#include "core/units/number_text.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using geodesy::AngleUnit;

/// "25 000": thousands apart, as scales are printed.
std::string thousands(double value) {
    std::string digits = numberText(value, 0);
    for (std::ptrdiff_t at = std::ssize(digits) - 3; at > 0; at -= 3) {
        digits.insert(static_cast<std::size_t>(at), " ");
    }
    return digits;
}

/// "13 MAR 27", cut from a date-time group so that months are spelled in one place.
std::string dateText(CalendarDate date) {
    const std::string group = dateTimeGroup(std::chrono::sys_days(date), TimeZone{});
    return group.size() < 12 ? isoDate(date) : group.substr(0, 2) + ' ' + group.substr(7, 3) + ' ' + group.substr(10);
}

std::string exactAngle(Degrees angle, AngleUnit unit) {
    const std::string side = angle.value() < 0 ? " W" : " E";
    return unit == AngleUnit::Mils ? said("%1 mils", {numberText(mils(abs(angle)).value(), 1)}) + side
                                   : numberText(abs(angle).value(), 2) + "°" + side;
}

/// "25T FL FM, WGS 84" where grids are MGRS; the grid's own name elsewhere.
std::string gridText(const movement::RouteFigures& figures) {
    const auto plane = geodesy::Plane::of(figures.gridCrs);
    if (!plane) {
        return figures.gridCrs;
    }
    const geodesy::CrsFacts& facts = plane->facts();
    const auto middle = plane->grid(figures.gm.middle);
    const auto parts =
        middle ? geodesy::mgrsParts(*middle, geodesy::Digits::SquareOnly) : tl::unexpected(middle.error());
    // grids of the legs begin with a square's letters only where they are MGRS
    if (!parts || figures.legs.empty() || figures.legs.front().fromGrid.front() < 'A') {
        return joined({facts.projection, facts.datum}, ", ");
    }
    std::vector<std::string> squares;
    const auto take = [&](const std::string& grid) {
        const std::string square = grid.substr(0, grid.find(' '));
        if (std::find(squares.begin(), squares.end(), square) == squares.end()) {
            squares.push_back(square);
        }
    };
    take(figures.legs.front().fromGrid);
    for (const movement::Leg& leg : figures.legs) {
        take(leg.toGrid);
    }
    return parts->zone + ' ' + joined(squares, " ") + ", " + facts.datum;
}

std::string modelText(const movement::GmAngle& gm, AngleUnit unit, const std::string& modelName) {
    if (!gm.model) {
        return said("no model for %1", {dateText(gm.date)});
    }
    return said("%1 by %2, %3, height %4, one sigma %5",
                {exactAngle(gm.model->declination - gm.convergence, unit), modelName, dateText(gm.date),
                 gm.height ? numberText(gm.height->value(), 0) + " m" : said("0 taken"),
                 unit == AngleUnit::Mils ? said("%1 mils", {numberText(mils(gm.model->sigma).value(), 1)})
                                         : numberText(gm.model->sigma.value(), 2) + "°"});
}

std::string printedText(const plan::Plan& plan, const movement::GmAngle& gm, AngleUnit unit) {
    if (!gm.printed || plan.sheets().empty() || !plan.sheets().front()->declination) {
        return said("the sheet's is not entered");
    }
    const plan::PrintedDeclination& printed = *plan.sheets().front()->declination;
    return said("%1 by the sheet, printed %2 for %3",
                {exactAngle(*gm.printed, unit), exactAngle(printed.gmAngle, unit), dateText(printed.date)});
}

std::vector<CardFact> leftFacts(const plan::Plan& plan, const movement::RouteFigures& figures) {
    const plan::Heading& heading = plan.heading();
    if (figures.use == plan::Use::Vehicle) {
        return {{said("Sheet"), sheetText(plan)},
                {said("Grid"), gridText(figures)},
                {said("Vehicle"), said("no paces, no rate on foot")}};
    }
    return {{said("Sheet"), sheetText(plan)},
            {said("Grid"), gridText(figures)},
            {said("Pace count"), movement::paceText(figures)},
            {said("Rate"), movement::rateText(figures, heading.zone)},
            {said("Start"), figures.start ? dateTimeGroup(*figures.start, heading.zone) : said("not given")}};
}

std::vector<CardFact> rightFacts(const plan::Plan& plan, const movement::RouteFigures& figures, AngleUnit unit,
                                 const std::string& modelName) {
    const movement::GmAngle& gm = figures.gm;
    const std::string angle = movement::gmAngleText(gm.angle, unit) + ", " + movement::gmRuleText(gm.angle, unit);
    const std::string model = modelText(gm, unit, modelName);
    const std::string printed = printedText(plan, gm, unit);
    const bool byModel = gm.source == plan::DeclinationSource::Model;
    return {{said("G-M angle"), angle, drawing::Weight::Bold},
            {said("taken"), byModel ? model : printed},
            {said("beside it"), byModel ? printed : model}};
}

std::string phasesText(const std::set<int>& phases) {
    if (phases.empty()) {
        return {};
    }
    const int first = *phases.begin();
    const int last = *phases.rbegin();
    if (first == last) {
        return said("phase %1", {std::to_string(first)});
    }
    if (last - first + 1 == std::ssize(phases)) {
        return said("phases %1–%2", {std::to_string(first), std::to_string(last)});
    }
    return said("phases %1", {fmt::format("{}", fmt::join(phases, ", "))});
}

/// The last stop that two routes have in common from their start; none where they begin apart.
std::optional<plan::ItemId> partingPoint(const plan::Route& one, const plan::Route& other) {
    std::optional<plan::ItemId> last;
    for (std::size_t n = 0; n < std::min(one.stops.size(), other.stops.size()); ++n) {
        if (one.stops[n].measure != other.stops[n].measure) {
            break;
        }
        last = one.stops[n].measure;
    }
    return last;
}

/// By what an alternate is taken, in whose hands that lies, and the word for it: ", when the weir is guarded: Plt Ldr,
/// TILLER".
std::string decisionText(const plan::Route& alternate) {
    if (!alternate.decision) {
        return {};
    }
    const plan::Decision& decision = *alternate.decision;
    const std::string who = joined({decision.decider, decision.codeWord}, ", ");
    return (decision.criterion.empty() ? "" : said(", when %1", {decision.criterion})) +
           (who.empty() ? "" : ": " + who);
}

/// Which route stands in for this one, or for which this one does, and where they part.
std::vector<CardNote> otherRoutes(const plan::Plan& plan, const movement::RouteFigures& figures) {
    const plan::RoutePtr own = plan.route(figures.route);
    std::vector<CardNote> notes;
    for (const plan::RoutePtr& other : plan.routes()) {
        if (!own || other->id == own->id || other->use == own->use || own->use == plan::Use::Vehicle ||
            other->use == plan::Use::Vehicle) {
            continue;
        }
        const auto parts = partingPoint(*own, *other);
        const plan::MeasurePtr at = parts ? plan.measure(*parts) : nullptr;
        if (at) {
            notes.push_back({said(own->use == plan::Use::Primary ? "Alternate:" : "Instead of:"),
                             said("%1, parts at %2", {movement::routeTitle(other->name), movement::label(*at)}) +
                                 decisionText(own->use == plan::Use::Alternate ? *own : *other),
                             OnCard::Every});
        }
    }
    return notes;
}

std::string onwardText(const movement::PaperPiece& piece, AngleUnit unit) {
    const auto angle = [unit](const std::string& figures) {
        return unit == AngleUnit::Mils ? said("%1 mils", {figures}) : figures + "°";
    };
    return said("%1, %2 m, back %3, grid %4. Not in the sums.",
                {angle(piece.magnetic), std::to_string(piece.metres), angle(piece.backMagnetic), angle(piece.grid)});
}

std::string exactText(const movement::RouteFigures& figures, const movement::PaperRoute& paper) {
    const std::string relief =
        paper.climb && paper.descent
            ? said(paper.fromContours ? "climb %1 m, descent %2 m from contours" : "climb %1 m, descent %2 m",
                   {std::to_string(*paper.climb), std::to_string(*paper.descent)})
            : said("climb unknown");
    const std::string paces = figures.paces ? said("%1 paces", {numberText(*figures.paces, 0)}) : "";
    return joined({said("exact: ground %1 m", {numberText(figures.groundDistance.value(), 0)}), paces, relief}, ", ");
}

}  // namespace

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (const std::string& part : parts) {
        if (!part.empty()) {
            text += text.empty() ? part : std::string(between) + part;
        }
    }
    return text;
}

std::string sheetText(const plan::Plan& plan) {
    if (plan.sheets().empty()) {
        return said("none");
    }
    const plan::Sheet& sheet = *plan.sheets().front();
    return joined(
        {joined({sheet.name, sheet.number}, " "), sheet.series,
         sheet.edition.empty() ? "" : said("ed. %1", {sheet.edition}), "1:" + thousands(sheet.scale.denominator)},
        ", ");
}

CardWords cardWords(const plan::Plan& plan, const movement::RouteFigures& figures, const movement::PaperRoute& paper,
                    const std::optional<movement::EvacuationFigures>& evacuation, const CardAngles& angles) {
    const AngleUnit unit = angles.unit;
    CardWords words;
    words.title = paper.name;
    words.marking = plan.heading().marking;
    std::vector<std::string> purpose{said(movement::useText(figures.use))};
    for (std::size_t n = 0; n < plan.films().size(); ++n) {
        const plan::Film& film = *plan.films()[n];
        if (std::any_of(film.shows.begin(), film.shows.end(),
                        [&](const plan::Showing& showing) { return showing.item == figures.route; })) {
            words.notches = static_cast<int>(n) + 1;
            purpose.push_back(said("on film %1", {film.name}));
            purpose.push_back(phasesText(film.phases));
            break;
        }
    }
    words.purpose = joined(purpose, ", ");
    words.left = leftFacts(plan, figures);
    words.right = rightFacts(plan, figures, unit, angles.modelName);
    words.light = cardLight(plan, figures);
    const std::string caution = movement::gmCautionText(figures.gm, unit);
    if (!caution.empty()) {
        words.notes.push_back({said("Caution:"), caution, OnCard::Every});
    }
    const plan::RoutePtr route = plan.route(figures.route);
    if (paper.onward) {
        words.notes.push_back({said("On to %1:", {paper.onwardTo}), onwardText(*paper.onward, unit), OnCard::Last});
    }
    if (route && !route->ifNotFound.empty()) {
        words.notes.push_back({said("If not found:"), route->ifNotFound, OnCard::Every});
    }
    for (CardNote& note : otherRoutes(plan, figures)) {
        words.notes.push_back(std::move(note));
    }
    if (evacuation) {
        // where they are fetched stands on every card; how long the carrying is, on the first, which has no sums
        for (movement::EvacuationLine& line : movement::evacuationLines(*evacuation, unit)) {
            const OnCard on = line.lead == "Carry:" ? OnCard::First : OnCard::Every;
            words.notes.push_back({said(line.lead), std::move(line.text), on});
        }
    }
    words.exact = exactText(figures, paper);
    words.source = said(
        "Azimuths and map metres from plotted points in the sheet's grid, ground metres on WGS 84, paces from the "
        "exact ground distance. Sums are of the figures shown. Planning and training aid: check by map and compass.");
    words.briefSource = said(
        "Azimuths and metres in the sheet's grid, paces from the exact ground distance. Sums are of the figures shown. "
        "Planning and training aid: check by map and compass.");
    return words;
}

std::vector<CardLight> cardLight(const plan::Plan& plan, const movement::RouteFigures& figures) {
    std::vector<CardLight> dates;
    for (const movement::DatedLight& dated : movement::routeLight(plan, figures)) {
        dates.push_back({dateText(dated.date).substr(0, 6), movement::lightFigures(dated.light, plan.heading().zone)});
    }
    return dates;
}

}  // namespace crosstick::press
