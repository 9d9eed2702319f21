// A plan as the lines that would make it so.
#include <fmt/format.h>

#include "app/commands/plan_lines.h"
#include "core/movement/route_figures.h"
#include "core/movement/typed_timing.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

/// Clauses of one line.
class Clauses {
  public:
    explicit Clauses(std::string head) : text_(std::move(head)) {}

    void put(std::string_view word, const std::string& text) {
        text_ += (isEmpty_ ? ": " : "; ") + std::string(word) + (word.empty() || text.empty() ? "" : " ") + plain(text);
        isEmpty_ = false;
    }
    void putIf(std::string_view word, const std::string& text) {
        if (!text.empty()) {
            put(word, text);
        }
    }
    /// @return the line with its end, or nothing where it has no clause
    [[nodiscard]] std::string line() const { return isEmpty_ ? std::string{} : text_ + '\n'; }

  private:
    /// What a line cannot hold becomes what it can.
    static std::string plain(std::string text) {
        for (char& letter : text) {
            letter = letter == ';' ? ',' : static_cast<unsigned char>(letter) < 0x20 ? ' ' : letter;
        }
        return text;
    }

    std::string text_;
    bool isEmpty_ = true;
};

/// To the second, in the plan's zone, so that nothing of a time is lost.
std::string moment(const std::optional<Instant>& when, TimeZone zone) {
    return when ? isoTime(*when, zone) : std::string{};
}

std::string elementName(const plan::Plan& plan, const std::optional<Uuid>& id) {
    const plan::Element* element = id ? plan.force().element(*id) : nullptr;
    return element == nullptr ? std::string{} : element->name;
}

std::string measureLabel(const plan::Plan& plan, const std::optional<plan::ItemId>& id) {
    const auto measure = id ? plan.measure(*id) : nullptr;
    return measure ? movement::label(*measure) : std::string{};
}

std::string routeName(const plan::Plan& plan, const std::optional<plan::ItemId>& id) {
    const auto route = id ? plan.route(*id) : nullptr;
    return route ? route->name : std::string{};
}

std::string ruleWord(plan::TimeRule rule) {
    return rule == plan::TimeRule::ByLight ? "light" : rule == plan::TimeRule::Naismith ? "naismith" : "tobler";
}

std::string goingWord(plan::Going going) {
    return going == plan::Going::Road ? "road" : "cross-country";
}

std::string headingLines(const plan::Heading& heading) {
    std::string text;
    if (heading.hHour) {
        text += "h-hour: " + moment(heading.hHour, heading.zone) + '\n';
    }
    if (heading.pace) {
        Clauses pace("pace");
        pace.put("", numberText(heading.pace->doublePacesPer100));
        pace.putIf("", heading.pace->note);
        text += pace.line();
    }
    if (heading.rate) {
        Clauses rate("rate");
        rate.put("", numberText(heading.rate->rate.value()));
        rate.putIf("", heading.rate->note);
        text += rate.line();
    }
    if (heading.timing) {
        const plan::MarchRates& rates = heading.timing->rates;
        text += fmt::format("timing: {}; {}; rates {} {} {} {}\n", ruleWord(heading.timing->rule),
                            goingWord(heading.timing->going), numberText(rates.roadByDay.value()),
                            numberText(rates.roadByNight.value()), numberText(rates.crossCountryByDay.value()),
                            numberText(rates.crossCountryByNight.value()));
    }
    if (heading.navigator) {
        text += "drift: " + movement::navigatorText(*heading.navigator) + '\n';
    }
    Clauses before("before");
    for (const plan::Preparation& one : heading.preparations) {
        before.put("", one.name + '=' + numberText(one.lasts.value()));
    }
    return text + before.line();
}

std::string phaseLines(const plan::Plan& plan) {
    std::string text;
    for (const plan::Phase& phase : plan.phases()) {
        Clauses line(fmt::format("phase {}{}", phase.number, phase.name.empty() ? "" : ' ' + phase.name));
        line.put("from", phase.from ? moment(phase.from, plan.heading().zone) : "none");
        line.put("until", phase.until ? moment(phase.until, plan.heading().zone) : "none");
        text += line.line();
    }
    return text;
}

std::string legLine(const plan::Plan& plan, const plan::Route& route, const plan::Stop& stop) {
    const plan::LegNotes& notes = stop.leg;
    Clauses line("leg " + route.name + " to " + measureLabel(plan, stop.measure));
    line.putIf("going", notes.going ? goingWord(*notes.going) : "");
    line.putIf("halt", notes.halt ? numberText(notes.halt->value()) : "");
    line.putIf("rally", measureLabel(plan, notes.rally));
    line.putIf("catching", notes.catching);
    line.putIf("contact", notes.inContact);
    line.putIf("separated", notes.ifSeparated);
    line.putIf("remark", notes.remark);
    return line.line();
}

std::string routeLines(const plan::Plan& plan) {
    std::string text;
    for (const plan::RoutePtr& route : plan.routes()) {
        Clauses start("start " + route->name);
        start.putIf("", moment(route->start, plan.heading().zone));
        start.putIf("closed", moment(route->notLaterThan, plan.heading().zone));
        text += start.line();
        for (const plan::Stop& stop : route->stops) {
            text += legLine(plan, *route, stop);
        }
        Clauses contours("contours " + route->name);
        for (const plan::ContourSpot& spot : route->contours) {
            contours.put("", fmt::format("{} at {} {}", numberText(spot.height.value()),
                                         numberText(spot.at.easting.value()), numberText(spot.at.northing.value())));
        }
        text += contours.line();
    }
    return text;
}

std::string columnLine(const plan::Plan& plan, const plan::Column& column) {
    std::string serials;
    for (const plan::Serial& serial : column.serials) {
        serials += (serials.empty() ? "" : ", ") + elementName(plan, serial.element);
        serials += serial.role.empty() ? "" : " as " + serial.role;
        serials += serial.behind ? " behind " + numberText(serial.behind->value()) : "";
    }
    Clauses line("column " + column.name);
    line.put("elements", serials);
    line.put("files", std::to_string(column.files));
    line.put("apart", numberText(column.apart.value()));
    line.put("interval", numberText(column.interval.value()));
    return line.line();
}

std::string forceLines(const plan::Plan& plan) {
    std::string text;
    for (const plan::Element& element : plan.force().elements) {
        Clauses line("element " + element.name);
        line.put("people", std::to_string(element.people));
        line.putIf("call", element.callSign);
        line.putIf("symbol", element.unit);
        text += line.line();
    }
    for (const plan::Column& column : plan.force().columns) {
        text += columnLine(plan, column);
    }
    for (const plan::Task& task : plan.force().tasks) {
        Clauses line(fmt::format("task {} in {}", elementName(plan, task.element), task.phase));
        line.put("task", task.task);
        line.putIf("purpose", task.purpose);
        line.putIf("place", task.place);
        line.putIf("trigger", task.trigger);
        line.putIf("code", task.codeWord);
        line.putIf("under", elementName(plan, task.attachedTo));
        text += line.line();
    }
    return text;
}

std::string eventLines(const plan::Plan& plan) {
    const TimeZone zone = plan.heading().zone;
    std::string text;
    for (const plan::Event& event : plan.force().events) {
        Clauses line("event " + event.what);
        const std::string of = elementName(plan, event.element);
        line.put(event.man == plan::WhichMan::First ? "first" : "last", of.empty() ? "" : "of " + of);
        line.putIf("place", measureLabel(plan, event.place));
        line.putIf("route", routeName(plan, event.route));
        line.putIf("planned", moment(event.planned, zone));
        line.putIf("code", event.codeWord);
        line.putIf("reports", elementName(plan, event.reporter));
        line.putIf("reported", moment(event.reported, zone));
        line.putIf("actual", moment(event.actual, zone));
        text += line.line();
    }
    return text;
}

std::string evacuationLine(const plan::Plan& plan) {
    const auto& evacuation = plan.heading().evacuation;
    if (!evacuation) {
        return {};
    }
    Clauses line("evacuation");
    line.putIf("to", measureLabel(plan, evacuation->collection));
    line.putIf("pick-up", measureLabel(plan, evacuation->pickUp));
    line.putIf("vehicle", routeName(plan, evacuation->onward));
    if (const auto& carry = evacuation->carry) {
        line.put("carry", numberText(carry->rate.value()) + (carry->note.empty() ? "" : ", " + carry->note));
    }
    return line.line();
}

}  // namespace

std::string linesOf(const plan::Plan& plan) {
    return headingLines(plan.heading()) + phaseLines(plan) + routeLines(plan) + forceLines(plan) + eventLines(plan) +
           evacuationLine(plan);
}

}  // namespace crosstick::app
