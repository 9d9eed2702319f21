#include "sample-data/plan/demo_plan.h"

#include "sample-data/data_file.h"

namespace crosstick::demo {
namespace {

/// Every identity of the demo is made from its name, so that the same file comes out each time.
Uuid idOf(const std::string& name) {
    return namedUuid(Uuid{}, "demo " + name);
}

geodesy::PlanePoint pointOf(const Json& pair) {
    const Spot spot = spotOf(pair);
    return {Metres(spot.east), Metres(spot.north)};
}

std::vector<geodesy::PlanePoint> pointsOf(const Json& pairs) {
    std::vector<geodesy::PlanePoint> points;
    for (const Json& pair : pairs) {
        points.push_back(pointOf(pair));
    }
    return points;
}

std::optional<Instant> timeOf(const Json& entry, const char* key) {
    const auto time = entry.contains(key) ? parseIsoTime(entry.at(key).get<std::string>()) : fail(kDamagedData);
    return time ? std::optional(*time) : std::nullopt;
}

plan::Heading headingOf(const Json& data) {
    plan::Heading heading;
    heading.name = data.at("name").get<std::string>();
    heading.marking = data.at("marking").get<std::string>();
    heading.author = data.at("author").get<std::string>();
    heading.unit = data.at("unit").get<std::string>();
    heading.distribution = data.at("distribution").get<std::string>();
    heading.zone = timeZone(data.at("zone").get<std::string>()[0]).value_or(TimeZone{});
    heading.date = parseIsoDate(data.at("date").get<std::string>()).value_or(CalendarDate{});
    heading.prepared = timeOf(data, "prepared");
    heading.effective = timeOf(data, "effective");
    heading.plane = {25, geodesy::Hemisphere::North};
    heading.pace = plan::PaceProfile{data.at("pace").get<double>(), data.at("pace_note").get<std::string>()};
    heading.rate =
        plan::MarchRate{KilometresPerHour(data.at("rate").get<double>()), data.at("rate_note").get<std::string>()};
    heading.hHour = timeOf(data, "h_hour");
    for (const Json& pair : data.at("preparations")) {
        heading.preparations.push_back({pair.at(0).get<std::string>(), Minutes(pair.at(1).get<double>())});
    }
    if (data.contains("evacuation")) {
        const Json& evacuation = data.at("evacuation");
        heading.evacuation.emplace();
        heading.evacuation->collection = idOf(evacuation.at("collection").get<std::string>());
        heading.evacuation->onward = idOf(evacuation.at("onward").get<std::string>());
    }
    return heading;
}

plan::Measure measureOf(const Json& entry) {
    plan::Measure measure;
    measure.id = idOf(entry.at("id").get<std::string>());
    measure.kind = entry.at("kind").get<std::string>();
    if (entry.value("anchor", "") == "paper") {
        measure.anchor = plan::Anchor::Paper;
        for (const Json& pair : entry.at("points")) {
            measure.points.push_back({Metres(pair.at(0).get<double>()), Metres(pair.at(1).get<double>())});
        }
    } else {
        measure.points = pointsOf(entry.at("points"));
    }
    measure.name = entry.value("name", "");
    measure.number = entry.value("number", "");
    measure.fields = entry.value("fields", std::map<std::string, std::string>{});
    measure.state = entry.value("state", "") == "assumed" ? plan::PlaceState::Assumed : plan::PlaceState::Confirmed;
    measure.standing = entry.value("standing", "") == "planned" ? plan::Standing::Planned : plan::Standing::Present;
    measure.relations = entry.value("relation", std::vector<std::string>{});
    measure.why = entry.value("why", "");
    measure.tie = entry.value("tie", "");
    measure.from = timeOf(entry, "from");
    measure.until = timeOf(entry, "until");
    return measure;
}

Uuid elementId(const Json& name) {
    return idOf("element " + name.get<std::string>());
}

plan::Task taskOf(const Json& entry) {
    plan::Task task;
    task.element = elementId(entry.at("element"));
    task.phase = entry.at("phase").get<int>();
    task.task = entry.at("task").get<std::string>();
    task.purpose = entry.value("purpose", "");
    task.place = entry.value("place", "");
    task.trigger = entry.value("trigger", "");
    task.codeWord = entry.value("code_word", "");
    if (entry.contains("attached_to")) {
        task.attachedTo = elementId(entry.at("attached_to"));
    }
    return task;
}

plan::Event eventOf(const Json& entry) {
    plan::Event event;
    event.what = entry.at("what").get<std::string>();
    event.id = idOf("event " + event.what);
    event.place = idOf(entry.at("place").get<std::string>());
    if (entry.contains("route")) {
        event.route = idOf(entry.at("route").get<std::string>());
    }
    event.man = entry.value("man", "") == "last" ? plan::WhichMan::Last : plan::WhichMan::First;
    event.planned = timeOf(entry, "planned");
    event.codeWord = entry.at("code_word").get<std::string>();
    event.reporter = elementId(entry.at("reporter"));
    return event;
}

/// Who marches, in which order, what each is to do, what is reported.
plan::Force forceOf(const Json& data) {
    plan::Force force;
    for (const Json& entry : data.at("elements")) {
        plan::Element element;
        element.id = idOf("element " + entry.at("id").get<std::string>());
        element.unit = entry.at("unit").get<std::string>();
        element.name = entry.at("name").get<std::string>();
        element.people = entry.at("people").get<int>();
        force.elements.push_back(std::move(element));
    }
    const Json& march = data.at("column");
    plan::Column column;
    column.id = idOf("column");
    column.name = march.at("name").get<std::string>();
    column.files = march.at("files").get<int>();
    column.apart = Metres(march.at("apart").get<double>());
    column.interval = Metres(march.at("interval").get<double>());
    for (const Json& entry : march.at("serials")) {
        plan::Serial serial;
        serial.element = idOf("element " + entry.at("element").get<std::string>());
        serial.role = entry.value("role", "");
        column.serials.push_back(std::move(serial));
    }
    force.columns.push_back(std::move(column));
    for (const Json& entry : data.at("tasks")) {
        force.tasks.push_back(taskOf(entry));
    }
    for (const Json& entry : data.at("events")) {
        force.events.push_back(eventOf(entry));
    }
    return force;
}

plan::Route routeOf(const Json& entry) {
    plan::Route route;
    route.id = idOf(entry.at("id").get<std::string>());
    route.name = entry.at("name").get<std::string>();
    const std::string use = entry.at("use").get<std::string>();
    route.use = use == "vehicle" ? plan::Use::Vehicle : use == "alternate" ? plan::Use::Alternate : plan::Use::Primary;
    route.vertices = pointsOf(entry.at("points"));
    for (const Json& stop : entry.at("stops")) {
        route.stops.push_back({stop.at("at").get<std::size_t>(), idOf(stop.at("measure").get<std::string>())});
    }
    if (entry.contains("onward_to")) {
        route.onwardTo = idOf(entry.at("onward_to").get<std::string>());
    }
    route.start = timeOf(entry, "start");
    route.why = entry.value("why", "");
    route.ifNotFound = entry.value("if_not_found", "");
    return route;
}

/// What a film shows, in the order of the lists.
void showOn(plan::Film& film, const Json& entries) {
    for (const Json& entry : entries) {
        for (const Json& name : entry.at("films")) {
            if (name != film.name) {
                continue;
            }
            const std::string last = film.shows.empty() ? std::string{} : film.shows.back().order;
            plan::Showing showing{idOf(entry.at("id").get<std::string>()), plan::orderBetween(last, ""), {}, {}};
            if (entry.contains("aside")) {
                showing.symbolAt = pointOf(entry.at("aside"));
            }
            film.shows.push_back(std::move(showing));
        }
    }
}

plan::Plan planOf(const Json& data, plan::Sheet sheet) {
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(idOf("plan")).heading(headingOf(data.at("heading")));
    sheet.id = idOf("sheet");
    builder.put(std::move(sheet));
    std::vector<plan::Phase> phases;
    for (const Json& entry : data.at("phases")) {
        phases.push_back({entry.at("number").get<int>(), entry.at("name").get<std::string>(), timeOf(entry, "from"),
                          timeOf(entry, "until")});
    }
    builder.phases(std::move(phases));
    builder.registration(plan::Registration{pointOf(data.at("window").at(0)), pointOf(data.at("window").at(1)),
                                            pointsOf(data.at("ticks"))});
    builder.force(forceOf(data.at("force")));
    for (const Json& entry : data.at("measures")) {
        builder.put(measureOf(entry));
    }
    for (const Json& entry : data.at("routes")) {
        builder.put(routeOf(entry));
    }
    for (const Json& entry : data.at("films")) {
        plan::Film film;
        film.name = entry.at("name").get<std::string>();
        film.id = idOf("film " + film.name);
        film.phases = entry.at("phases").get<std::set<int>>();
        film.pinned = entry.value("pinned", false);
        showOn(film, data.at("measures"));
        showOn(film, data.at("routes"));
        builder.put(std::move(film));
    }
    return std::move(builder).build();
}

}  // namespace

Result<plan::Plan> demoPlan(const std::filesystem::path& lists, plan::Sheet sheet) {
    return readData(lists / "plan.json", [&](const Json& data) { return planOf(data, std::move(sheet)); });
}

}  // namespace crosstick::demo
