#include "app/commands/plan_lines.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "app/commands/line_parts.h"
#include "app/commands/timing_options.h"
#include "app/faults.h"
#include "core/movement/route_figures.h"
#include "core/units/number_text.h"
#include "core/units/trimmed.h"

namespace crosstick::app {
namespace {

constexpr std::array<LineKind, 15> kKinds{{
    {"h-hour", "h-hour: 140515OMAR27", takeHHour},
    {"phase", "phase 2 Approach: from 132100OMAR27; until 140030OMAR27", takePhase},
    {"pace", "pace: 74; open hill, night", takePace},
    {"rate", "rate: 1.6; cross-country by night, halts within", takeRate},
    {"timing",
     "timing: light; cross-country; rates 4 3.2 2.4 1.6 (rule rate, light, naismith or tobler; km/h by road day and "
     "night, cross-country day and night)",
     takeTiming},
    {"before", "before: orders=60; rehearsal=1:30", takeBefore},
    {"drift", "drift: 4 1.5 (errors of the navigator's own, pace in per cent and compass in degrees)", takeDrift},
    {"start", "start QUILL: 132100OMAR27; closed 140030OMAR27 (by then the column is to have closed)", takeStart},
    {"leg", "leg QUILL to CP 3: going road; halt 10; rally RLY 1; catching ...; contact ...; separated ...; remark ...",
     takeLeg},
    {"contours",
     "contours QUILL: 40 at 25T FL 5440 9860; 60 at 654730 5099720 (heights read off the sheet; a grid, or metres of "
     "the plan's plane)",
     takeContours},
    {"element", "element 1 Sqd: people 9; call P11; symbol 1/2/C inf sqd", takeElement},
    {"column", "column Approach: elements 1 Sqd as POINT, HQ fwd; files 1; apart 5; interval 20", takeColumn},
    {"task", "task 1 Sqd in 4: task ...; purpose ...; place ...; trigger ...; code ...; under HQ fwd", takeTask},
    {"event",
     "event tail over LD: place LD TRIVET; route QUILL; last of 3 Sqd; planned 132123OMAR27; code ...; reports 3 Sqd; "
     "reported DTG; actual DTG",
     takeEvent},
    {"evacuation", "evacuation: to CCP 1; pick-up MEDEVAC 1; vehicle GROAT; carry 1.2, four men", takeEvacuation},
}};

bool isSame(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

tl::unexpected<Error> noSuch(const PlanLine& line, const std::string& name, std::vector<std::string> known) {
    constexpr std::size_t kMost = 12;  // of a long plan the first ones tell how they are called
    std::string names;
    for (std::size_t n = 0; n < std::min(known.size(), kMost); ++n) {
        names += (names.empty() ? "" : ", ") + known[n];
    }
    names += known.size() > kMost ? ", ..." : "";
    return fail(
        kLineNamesNothing,
        {{"line", std::int64_t{line.number}}, {"name", name}, {"known", names.empty() ? std::string("none") : names}});
}

/// What stands at the end of a line's head: the colon with a blank or the end behind it.
std::size_t headEnd(const std::string& text) {
    for (std::size_t at = text.find(':'); at != std::string::npos; at = text.find(':', at + 1)) {
        if (at + 1 == text.size() || text[at + 1] == ' ') {
            return at;
        }
    }
    return std::string::npos;
}

std::vector<std::string> parted(const std::string& text, char between) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t to = std::min(text.find(between, from), text.size());
        if (std::string part = trimmed(std::string_view(text).substr(from, to - from)); !part.empty()) {
            parts.push_back(std::move(part));
        }
        from = to + 1;
    }
    return parts;
}

Result<plan::Plan> withLine(const plan::Plan& plan, const std::string& text, int number, IdSource& ids) {
    PlanLine line;
    line.number = number;
    const std::size_t end = headEnd(text);
    const std::string head = trimmed(std::string_view(text).substr(0, std::min(end, text.size())));
    for (const LineKind& kind : kKinds) {
        const auto name = after(head, kind.word);
        if (!name) {
            continue;
        }
        line.name = *name;
        line.form = kind.form;
        line.clauses = end == std::string::npos ? std::vector<std::string>{} : parted(text.substr(end + 1), ';');
        return line.clauses.empty() ? misread(line, text) : kind.taken(line, plan, ids);
    }
    std::string words;
    for (const LineKind& kind : kKinds) {
        words += (words.empty() ? "" : ", ") + std::string(kind.word);
    }
    return fail(kLineUnknown, {{"line", std::int64_t{number}}, {"text", text}, {"known", words}});
}

}  // namespace

std::span<const LineKind> lineKinds() {
    return kKinds;
}

std::string trimmed(std::string_view text) {
    return std::string(crosstick::trimmed(text));
}

std::optional<std::string> after(const std::string& clause, std::string_view word) {
    if (!clause.starts_with(word) || (clause.size() > word.size() && clause[word.size()] != ' ')) {
        return std::nullopt;
    }
    return trimmed(std::string_view(clause).substr(word.size()));
}

bool saysNone(const PlanLine& line) {
    return line.clauses.size() == 1 && line.clauses.front() == "none";
}

std::vector<std::string> listed(const std::string& text) {
    return parted(text, ',');
}

tl::unexpected<Error> misread(const PlanLine& line, const std::string& text) {
    return fail(kLineMisread, {{"line", std::int64_t{line.number}}, {"text", text}, {"form", std::string(line.form)}});
}

Result<double> numberIn(const PlanLine& line, const std::string& text, Least least) {
    const auto number = parseNumber(text);
    if (!number || *number < 0 || (least == Least::OverNothing && *number == 0)) {
        return misread(line, text);
    }
    return *number;
}

Result<Instant> momentIn(const PlanLine& line, const std::string& text) {
    const auto moment = parseMoment(text);
    return moment ? moment : misread(line, text);
}

Result<Uuid> elementIn(const PlanLine& line, const plan::Plan& plan, const std::string& name) {
    std::vector<std::string> known;
    for (const plan::Element& element : plan.force().elements) {
        if (isSame(element.name, name)) {
            return element.id;
        }
        known.push_back(element.name);
    }
    return noSuch(line, name, std::move(known));
}

Result<plan::ItemId> routeIn(const PlanLine& line, const plan::Plan& plan, const std::string& name) {
    auto route = plan.routeNamed(name);
    if (!route && name.starts_with("RTE ")) {
        route = plan.routeNamed(name.substr(4));
    }
    if (route) {
        return route->id;
    }
    std::vector<std::string> known;
    for (const plan::RoutePtr& other : plan.routes()) {
        known.push_back(other->name);
    }
    return noSuch(line, name, std::move(known));
}

Result<plan::ItemId> measureIn(const PlanLine& line, const plan::Plan& plan, const std::string& name) {
    std::optional<plan::ItemId> found;
    std::vector<std::string> known;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        const std::string called = movement::label(*measure);
        if (!found && isSame(called, name)) {
            found = measure->id;
        }
        known.push_back(called);
    });
    return found ? Result<plan::ItemId>(*found) : noSuch(line, name, std::move(known));
}

plan::Plan withHeading(const plan::Plan& plan, plan::Heading heading) {
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

plan::Plan withForce(const plan::Plan& plan, plan::Force force) {
    return std::move(plan::PlanBuilder(plan).force(std::move(force))).build();
}

Result<plan::Plan> withLines(const plan::Plan& plan, const std::string& text, IdSource& ids) {
    plan::Plan next = plan;
    int number = 0;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        const std::string one = trimmed(std::string_view(text).substr(from, to - from));
        from = to + 1;
        ++number;
        if (one.empty() || one.front() == '#') {
            continue;
        }
        auto taken = withLine(next, one, number, ids);
        if (!taken) {
            return taken;
        }
        next = std::move(*taken);
    }
    return next;
}

}  // namespace crosstick::app
