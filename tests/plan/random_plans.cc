#include "tests/plan/random_plans.h"

#include <array>

namespace crosstick::plan::testing {

std::size_t RandomPlans::below(std::size_t limit) {
    return limit == 0 ? 0 : chance_() % limit;
}
bool RandomPlans::coin() {
    return below(2) == 0;
}
double RandomPlans::between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(chance_);
}

std::string RandomPlans::word() {
    static constexpr std::array kPieces{
        "BOD", "KIN", "LA", "DLE", "SORR", "EL", "\xC3\x84\xC3\x9F", "\xC5\x81\xC3\xB3", "\"q\"", "7", "/", "\n"};
    std::string text;
    for (std::size_t n = below(4); n-- > 0;) {
        text += kPieces[below(kPieces.size())];
    }
    return text;
}

geodesy::PlanePoint RandomPlans::point() {
    return {Metres(between(300000, 700000)), Metres(between(0, 9000000))};
}
Instant RandomPlans::instant() {
    return Instant(std::chrono::seconds(1800000000 + static_cast<std::int64_t>(below(10000000))));
}

UnknownFields RandomPlans::unknown() {
    static constexpr std::array kValues{"1.5", "null", R"({"a":[1,2,{"b":"c"}]})", R"("text")", "[]", "true"};
    UnknownFields fields;
    for (std::size_t n = below(3); n-- > 0;) {
        fields["later_" + std::to_string(below(100))] = kValues[below(kValues.size())];
    }
    return fields;
}

Measure RandomPlans::measure() {
    static constexpr std::array kKinds{"phase-line", "checkpoint", "objective", "boundary", "from-a-newer-program"};
    Measure m;
    m.id = ids_.next();
    m.kind = kKinds[below(kKinds.size())];
    for (std::size_t n = below(30); n-- > 0;) {
        m.points.push_back(point());
    }
    m.name = word();
    m.number = coin() ? std::to_string(below(99)) : word();
    if (coin()) {
        m.fields = {{"left_unit", word()}, {"right_unit", word()}};
    }
    m.anchor = below(5) == 0 ? Anchor::Paper : Anchor::Ground;
    m.state = static_cast<PlaceState>(below(3));
    m.standing = coin() ? Standing::Present : Standing::Planned;
    m.whose = below(4) == 0 ? Whose::Enemy : Whose::Own;
    if (coin()) {
        m.relations = {word(), word()};
    }
    m.why = word();
    m.tie = word();
    if (coin()) {
        m.from = instant();
        m.until = instant();
    }
    if (coin()) {
        m.tracedFrom = TraceSource{word(), word(), word(), unknown()};
    }
    m.unknown = unknown();
    return m;
}

Film RandomPlans::film(const Plan& plan) {
    Film f;
    f.id = ids_.next();
    f.name = word();
    f.phases = {static_cast<int>(below(9)), static_cast<int>(below(9))};
    if (coin()) {
        f.scale = Scale{50000};
    }
    if (coin()) {
        f.gauge = drawing::Gauge::of(between(4, 8), between(0.25, 0.7), between(1.8, 4));
    }
    if (coin() && !plan.sheets().empty()) {
        f.groundSheet = plan.sheets().front()->id;
    }
    f.pinned = coin();
    if (coin()) {
        f.inset = Inset{ids_.next(), {point(), point(), {point()}, unknown()}, unknown()};
    }
    std::string key;
    for (std::size_t n = below(12); n-- > 0 && !plan.measures().isEmpty();) {
        key = orderBetween(key, "");
        Showing showing{anyMeasure(plan)->id, key, std::nullopt, std::nullopt};
        if (coin()) {
            showing.symbolAt = point();
        }
        if (coin()) {
            showing.labelAt = point();
        }
        if (coin()) {
            showing.standsWith = anyMeasure(plan)->id;
            showing.pointsTo = anyMeasure(plan)->id;
        }
        for (std::size_t figures = coin() ? below(3) : 0; figures > 0; --figures) {
            const LegPiece leg{anyMeasure(plan)->id, coin() ? anyMeasure(plan)->id : ItemId{}, figures, 3};
            showing.figures.push_back({leg, point(), unknown()});
        }
        showing.unknown = unknown();
        f.shows.push_back(showing);
    }
    f.unknown = unknown();
    return f;
}

LegNotes RandomPlans::legNotes() {
    LegNotes leg;
    if (coin()) {
        leg.going = coin() ? Going::Road : Going::CrossCountry;
        leg.halt = Minutes(between(0, 60));
        leg.catching = word();
        leg.remark = word();
        leg.rally = ids_.next();
        leg.inContact = word();
        leg.ifSeparated = word();
    }
    return leg;
}

Timing RandomPlans::timing() {
    const auto rate = [&] { return KilometresPerHour(between(0.5, 6)); };
    return {static_cast<TimeRule>(below(3)),
            coin() ? Going::Road : Going::CrossCountry,
            {rate(), rate(), rate(), rate()},
            unknown()};
}

Route RandomPlans::route(const Plan& plan) {
    Route r;
    r.id = ids_.next();
    r.name = word();
    r.use = static_cast<Use>(below(3));
    for (std::size_t n = 2 + below(9); n-- > 0;) {
        r.vertices.push_back(point());
    }
    for (std::size_t at = 0; at < r.vertices.size() && !plan.measures().isEmpty(); at += 1 + below(3)) {
        r.stops.push_back({at, anyMeasure(plan)->id, unknown(), legNotes()});
    }
    if (coin()) {
        r.onwardTo = ids_.next();
    }
    if (coin()) {
        r.start = instant();
    }
    if (coin()) {
        r.notLaterThan = instant();
    }
    if (coin()) {
        r.decision = Decision{word(), word(), word()};
        r.contours = {{point(), Metres(between(-100, 4000))}, {point(), Metres(between(0, 90))}};
    }
    r.why = word();
    r.ifNotFound = word();
    r.unknown = unknown();
    return r;
}

Sheet RandomPlans::sheet() {
    Sheet s;
    s.id = ids_.next();
    s.path = word() + ".tif";
    s.bytes = static_cast<std::int64_t>(below(1000000));
    s.sha256 = std::string(64, 'a');
    s.crs = "EPSG:32625";
    s.columns = static_cast<int>(below(9999));
    s.rows = static_cast<int>(below(9999));
    s.placement = {point(), between(1, 5), between(-1, 1), between(-1, 1), between(-5, -1)};
    s.scale = Scale{25000};
    s.series = word();
    s.name = word();
    s.number = word();
    s.edition = word();
    s.datum = word();
    if (coin()) {
        s.declination = PrintedDeclination{
            Degrees(between(-20, 20)), CalendarDate(std::chrono::year(2019), std::chrono::March, std::chrono::day(1)),
            Degrees(between(-1, 1)), unknown()};
    }
    s.elevationPath = word();
    if (coin()) {
        s.datumShift = {word(), Metres(between(1, 90)), word(), Metres(between(0, 1))};
    }
    s.elevationUnit = static_cast<HeightUnit>(below(4));
    if (coin()) {
        s.asFilm = between(0, 1);
    }
    if (coin()) {
        s.stretch = PaperStretch{between(-1, 1), between(-1, 1)};
    }
    if (coin()) {
        s.marks = {{{between(0, 9999), between(0, 9999)}, point()}, {{between(0, 9999), 0}, point()}};
    }
    for (std::uint64_t corner = coin() ? 0 : 4; corner > 0; --corner) {
        s.neatline.push_back({between(0, 9999), between(0, 9999)});
    }
    s.unknown = unknown();
    return s;
}

Heading RandomPlans::heading() {
    Heading h;
    h.name = word();
    h.marking = word();
    h.author = word();
    h.unit = word();
    h.distribution = word();
    h.cautions = word();
    h.zone = {'O', std::chrono::minutes(-120)};
    h.date = CalendarDate(std::chrono::year(2027), std::chrono::March, std::chrono::day(13));
    if (coin()) {
        h.prepared = instant();
        h.effective = instant();
    }
    h.declination = coin() ? DeclinationSource::Model : DeclinationSource::Sheet;
    h.plane = {static_cast<int>(1 + below(60)), coin() ? geodesy::Hemisphere::North : geodesy::Hemisphere::South};
    if (coin()) {
        h.pace = PaceProfile{between(55, 80), word(), unknown()};
        h.rate = MarchRate{KilometresPerHour(between(1, 5)), word(), unknown()};
        h.gauge = drawing::Gauge::of(between(4, 8), between(0.25, 0.7), between(1.8, 4));
    }
    if (coin()) {
        h.courses = {{word(), Metres(between(100, 600)), between(60, 400), Going::Road, Light::Night, unknown()}};
        h.evacuation = Evacuation{ids_.next(), coin() ? std::optional(ids_.next()) : std::nullopt, std::nullopt,
                                  MarchRate{KilometresPerHour(between(1, 3)), word(), unknown()}, unknown()};
        h.issues = {{instant(), word(), {ids_.next(), ids_.next()}, unknown()}};
    }
    if (coin()) {
        h.timing = timing();
        h.navigator = NavigatorErrors{between(0, 0.5), Degrees(between(0, 45)), unknown()};
        h.hHour = instant();
        h.preparations = {{word(), Minutes(between(0, 300)), unknown()}, {"rest", Minutes(60)}};
    }
    h.unknown = unknown();
    return h;
}

Force RandomPlans::force() {
    Force force;
    Column column;
    column.id = ids_.next();
    column.name = word();
    column.files = static_cast<int>(1 + below(4));
    column.apart = Metres(between(0, 20));
    column.interval = Metres(between(0, 200));
    column.unknown = unknown();
    for (std::size_t n = below(8); n-- > 0;) {
        Element element{ids_.next(), word(), word(), word(), static_cast<int>(below(40)), unknown()};
        Serial serial{element.id, word(), std::nullopt, unknown()};
        if (coin()) {
            serial.behind = Metres(between(0, 100));
        }
        force.elements.push_back(std::move(element));
        column.serials.push_back(std::move(serial));
    }
    force.columns.push_back(std::move(column));
    for (const Element& element : force.elements) {
        if (coin()) {
            force.tasks.push_back({element.id, static_cast<int>(1 + below(5)), word(), word(), word(), word(), word(),
                                   coin() ? std::optional(ids_.next()) : std::nullopt, unknown()});
        }
    }
    for (std::size_t n = below(4); n-- > 0;) {
        Event event;
        event.id = ids_.next();
        event.what = word();
        event.man = coin() ? WhichMan::First : WhichMan::Last;
        event.codeWord = word();
        if (coin()) {
            event.place = ids_.next();
            event.route = ids_.next();
            event.element = ids_.next();
        } else {
            event.planned = instant();
            event.reporter = ids_.next();
            event.reported = instant();
            event.actual = instant();
        }
        event.unknown = unknown();
        force.events.push_back(std::move(event));
    }
    force.unknown = unknown();
    return force;
}

Plan RandomPlans::plan(std::size_t measures) {
    PlanBuilder builder{Plan{}};
    builder.id(ids_.next()).heading(heading());
    std::vector<Measure> many;
    for (std::size_t n = measures; n-- > 0;) {
        many.push_back(measure());
    }
    builder.put(std::move(many));
    builder.put(sheet());
    builder.phases({{1, word(), instant(), std::nullopt, unknown()}, {2, word(), std::nullopt, instant(), unknown()}});
    builder.registration(Registration{point(), point(), {point(), point(), point()}, unknown()});
    builder.force(force());
    Plan base = std::move(builder).build();
    for (int n = 0; n < 3; ++n) {
        PlanBuilder more(base);
        more.put(film(base)).put(route(base));
        base = std::move(more).build();
    }
    return base;
}

MeasurePtr RandomPlans::anyMeasure(const Plan& plan) {
    std::size_t at = below(plan.measures().size());
    MeasurePtr found;
    plan.measures().forEach([&](const MeasurePtr& measure) {
        if (at-- == 0) {
            found = measure;
        }
    });
    return found;
}

Plan RandomPlans::edited(const Plan& plan) {
    PlanBuilder builder(plan);
    switch (below(5)) {
        case 0:
            builder.put(measure());
            break;
        case 1:
            if (const auto victim = anyMeasure(plan)) {
                builder.removeMeasure(victim->id);
            }
            break;
        case 2:
            if (const auto old = anyMeasure(plan)) {
                Measure changed = measure();
                changed.id = old->id;
                builder.put(changed);
            }
            break;
        case 3:
            builder.heading(heading());
            break;
        default:
            return editedLists(plan);
    }
    return std::move(builder).build();
}

Plan RandomPlans::editedLists(const Plan& plan) {
    PlanBuilder builder(plan);
    switch (below(8)) {
        case 6:
            builder.force(force());
            break;
        case 0:
            builder.put(film(plan));
            break;
        case 1:
            builder.put(route(plan));
            break;
        case 2:
            builder.put(sheet());
            break;
        case 3:
            if (!plan.films().empty()) {
                builder.removeFilm(plan.films()[below(plan.films().size())]->id);
            }
            break;
        case 4:
            if (plan.films().size() > 1) {
                builder.order({}, {plan.films().back()->id}, {});
            }
            break;
        case 5:
            if (!plan.routes().empty()) {
                builder.removeRoute(plan.routes()[below(plan.routes().size())]->id);
            }
            break;
        default:
            builder.registration(std::nullopt).phases({});
            break;
    }
    return std::move(builder).build();
}

}  // namespace crosstick::plan::testing
