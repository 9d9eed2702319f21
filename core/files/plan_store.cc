#include "core/files/plan_store.h"

#include <algorithm>

#include "core/files/faults.h"
#include "core/files/film_views.h"
#include "core/files/geometry_blob.h"
#include "core/files/json_form.h"
#include "core/files/schema.h"
#include "core/geodesy/crs.h"
#include "core/units/sha256.h"

namespace crosstick::files {
namespace {

enum What : std::int64_t { kHeading, kPhases, kRegistration, kSheet, kFilm, kRoute, kMeasure, kForce };

/// Heading, phases, registration and force have no identity of their own: their place in the list of a state is fixed.
Uuid singleton(What what) {
    Uuid id;
    id.bytes[15] = static_cast<std::uint8_t>(what + 1);
    return id;
}

// A measure's four states in one small number; 0 is the usual case (confirmed, ground, present, own).
std::int64_t packed(const plan::Measure& m) {
    const std::int64_t state = m.state == plan::PlaceState::Confirmed ? 0
                               : m.state == plan::PlaceState::Assumed ? 1
                                                                      : 2;
    return state | (m.anchor == plan::Anchor::Paper ? 4 : 0) | (m.standing == plan::Standing::Planned ? 8 : 0) |
           (m.whose == plan::Whose::Enemy ? 16 : 0);
}

void unpack(std::int64_t states, plan::Measure& m) {
    const auto state = states & 3;
    m.state = state == 0   ? plan::PlaceState::Confirmed
              : state == 1 ? plan::PlaceState::Assumed
                           : plan::PlaceState::Unplaced;
    m.anchor = (states & 4) != 0 ? plan::Anchor::Paper : plan::Anchor::Ground;
    m.standing = (states & 8) != 0 ? plan::Standing::Planned : plan::Standing::Present;
    m.whose = (states & 16) != 0 ? plan::Whose::Enemy : plan::Whose::Own;
}

measures::Shape shapeOf(const std::string& kind) {
    const measures::Entry* entry = measures::find(kind);
    return entry == nullptr ? measures::Shape::Line : entry->shape;
}

int srsOf(geodesy::Zone zone) {
    return std::stoi(geodesy::crsOfZone(zone).substr(5));  // after "EPSG:"
}

/// What goes into one row of crosstick_version.
struct Version {
    Uuid item;
    What what;
    Sha256 hash{};
    std::string kind, name, number, body;
    std::int64_t states = 0;
    Blob geometry;
};

Version versionOf(Uuid item, What what, const Json& json, std::string name = {}) {
    Version v{item, what, {}, {}, std::move(name), {}, jsonText(json), 0, {}};
    v.hash = sha256(v.body);
    return v;
}

Version versionOf(const plan::Measure& m, int srs) {
    Version v{m.id, kMeasure, {}, m.kind, m.name, m.number, {}, packed(m), {}};
    Json rest = measureRest(m);
    if (m.anchor == plan::Anchor::Paper) {
        // Millimetres of paper are no places in the plane: they stay in the body, out of every map's sight.
        rest["paper"] = toJson(m).value("points", Json::array());
    } else {
        v.geometry = geometryBlob(m.points, shapeOf(m.kind), srs);
    }
    v.body = rest.is_null() ? std::string{} : jsonText(rest);
    Sha256Stream stream;
    const std::string head = m.kind + '\0' + m.name + '\0' + m.number + '\0' + std::to_string(v.states) + '\0' + v.body;
    stream.add({reinterpret_cast<const std::uint8_t*>(head.data()), head.size()});
    stream.add(v.geometry);
    v.hash = std::move(stream).finish();  // NOLINT(performance-move-const-arg): finish() takes it away
    return v;
}

Version versionOf(const plan::Route& r, int srs) {
    Version v = versionOf(r.id, kRoute, toJson(r), r.name);
    v.kind = "route";
    v.geometry = geometryBlob(r.vertices, measures::Shape::Line, srs);
    return v;
}

/// The statements of a save, prepared once a save.
class Saver {
  public:
    explicit Saver(Database& database)
        : database_(database),
          insert_(database.prepare(
              "INSERT INTO crosstick_version(item, what, hash, kind, name, number, states, body, geom) "
              "VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)")),
          list_(database.prepare("INSERT INTO crosstick_state_item(state, item, version, place) VALUES(1, ?1, ?2, 0) "
                                 "ON CONFLICT(state, item) DO UPDATE SET version=excluded.version")),
          held_(database.prepare("SELECT version FROM crosstick_state_item WHERE state=1 AND item=?1")),
          unlist_(database.prepare("DELETE FROM crosstick_state_item WHERE state=1 AND item=?1")),
          drop_(database.prepare("DELETE FROM crosstick_version WHERE fid=?1")),
          place_(database.prepare("UPDATE crosstick_state_item SET place=?2 WHERE state=1 AND item=?1")),
          hasIssued_(database.wholeOf("SELECT count(*) FROM crosstick_state WHERE id>1") > 0) {}

    void put(const Version& v) {
        const std::int64_t old = heldVersion(v.item);
        insert_.bind(1, v.item).bind(2, v.what).bind(3, std::span(v.hash)).bind(5, v.name).bind(7, v.states);
        v.kind.empty() ? insert_.bindNull(4) : insert_.bind(4, v.kind);
        v.number.empty() ? insert_.bindNull(6) : insert_.bind(6, v.number);
        v.body.empty() ? insert_.bindNull(8) : insert_.bind(8, v.body);
        insert_.bind(9, std::span(v.geometry)).run();
        list_.bind(1, v.item).bind(2, database_.lastRow()).run();
        forget(old);
    }
    void remove(const Uuid& item) {
        const std::int64_t old = heldVersion(item);
        unlist_.bind(1, item).run();
        forget(old);
    }
    void order(const plan::Change<plan::Order>& change) {
        if (change.after) {
            std::int64_t at = 0;
            for (const Uuid& id : *change.after) {
                place_.bind(1, id).bind(2, at++).run();
            }
        }
    }

  private:
    Database& database_;
    Statement insert_, list_, held_, unlist_, drop_, place_;
    bool hasIssued_;

    std::int64_t heldVersion(const Uuid& item) {
        held_.bind(1, item);
        const std::int64_t version = held_.step() ? held_.whole(0) : 0;
        held_.reset();
        return version;
    }
    /// A version that no issued state lists has nobody left.
    void forget(std::int64_t version) {
        if (version == 0) {
            return;
        }
        if (hasIssued_) {
            Statement listed = database_.prepare("SELECT 1 FROM crosstick_state_item WHERE version=?1 LIMIT 1");
            if (listed.bind(1, version).step()) {
                return;
            }
        }
        drop_.bind(1, version).run();
    }
};

template <class T, class Make>
void putChanges(Saver& saver, const std::vector<plan::Change<T>>& changes, Make&& make) {
    for (const auto& change : changes) {
        change.after ? saver.put(make(*change.after)) : saver.remove(change.before->id);
    }
}

bool movesPlane(const plan::Difference& d) {
    return d.heading.before && d.heading.after && d.heading.before->plane != d.heading.after->plane;
}

/// Every geometry names its plane, so a plan that moves to another one writes all of them, changed or not.
void putAllPlaces(Saver& saver, const plan::Plan& plan, int srs) {
    for (const plan::RoutePtr& route : plan.routes()) {
        saver.put(versionOf(*route, srs));
    }
    plan.measures().forEach([&](const plan::MeasurePtr& measure) { saver.put(versionOf(*measure, srs)); });
}

constexpr std::size_t kMostBytes = std::size_t{1} << 30U;
constexpr std::size_t kLargestBody = std::size_t{16} << 20U;

/// One row of the current state, not yet understood.
struct Row {
    Statement& statement;
    [[nodiscard]] std::optional<Uuid> item() const { return statement.id(0); }
    [[nodiscard]] std::int64_t what() const { return statement.whole(1); }
    [[nodiscard]] std::string_view body() const { return statement.text(6); }
    [[nodiscard]] std::int64_t place() const { return statement.whole(8); }
};

class Loader {
  public:
    explicit Loader(const std::filesystem::path& file) : file_(file) {}

    Result<void> take(const Row& row) {
        total_ += row.body().size() + row.statement.blob(7).size();
        if (total_ > kMostBytes || row.body().size() > kLargestBody) {
            return fail(kPlanTooLarge,
                        {{"file", file_.string()}, {"why", std::string("it holds more than a plan can")}});
        }
        const auto item = row.item();
        if (!item) {
            return damaged("an identity is not one");
        }
        if (row.what() == kMeasure) {
            return takeMeasure(row, *item);
        }
        auto json = parseJson(row.body());
        if (!json) {
            return damaged("a body is not readable");
        }
        if (row.what() == kSheet || row.what() == kFilm || row.what() == kRoute) {
            places_.emplace_back(row.place(), *item);
        }
        return takeOther(row.what(), *json);
    }

    [[nodiscard]] plan::Plan plan(const Uuid& identity) && {
        plan::PlanBuilder builder{plan::Plan{}};
        builder.id(identity)
            .heading(std::move(heading_))
            .phases(std::move(phases_))
            .registration(std::move(registration_))
            .force(std::move(force_));
        for (auto& sheet : sheets_) {
            builder.put(std::move(sheet));
        }
        for (auto& film : films_) {
            builder.put(std::move(film));
        }
        for (auto& route : routes_) {
            builder.put(std::move(route));
        }
        builder.put(plan::ChunkedList<plan::Measure>(std::move(measures_)));
        // Rows came by identity: where two share a place, that decides.
        std::stable_sort(places_.begin(), places_.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        plan::Order order;
        for (const auto& [place, item] : places_) {
            order.push_back(item);
        }
        builder.order(order, order, order);
        return std::move(builder).build();
    }

  private:
    std::filesystem::path file_;
    std::size_t total_ = 0;
    plan::Heading heading_;
    std::vector<plan::Phase> phases_;
    std::optional<plan::Registration> registration_;
    plan::Force force_;
    std::vector<plan::Sheet> sheets_;
    std::vector<plan::Film> films_;
    std::vector<plan::Route> routes_;
    std::vector<plan::MeasurePtr> measures_;
    std::vector<std::pair<std::int64_t, Uuid>> places_;  ///< of sheets, films and routes

    [[nodiscard]] tl::unexpected<Error> damaged(const char* why) const {
        return fail(kDamagedPlan, {{"file", file_.string()}, {"why", std::string(why)}});
    }

    Result<void> takeMeasure(const Row& row, const Uuid& item) {
        auto made = std::make_shared<plan::Measure>();
        plan::Measure& m = *made;
        m.id = item;
        m.kind = row.statement.text(2);
        m.name = row.statement.text(3);
        m.number = row.statement.text(4);
        unpack(row.statement.whole(5), m);
        auto points = pointsFromBlob(row.statement.blob(7));
        if (!points || m.kind.empty()) {
            return damaged("a measure's geometry or kind is not readable");
        }
        m.points = std::move(*points);
        if (!row.statement.isNull(6)) {
            auto whole = withBody(std::move(m), row.body());
            if (!whole) {
                return tl::unexpected(whole.error());
            }
            m = std::move(*whole);
        }
        measures_.push_back(std::move(made));
        return {};
    }

    [[nodiscard]] Result<plan::Measure> withBody(plan::Measure m, std::string_view body) const {
        auto json = parseJson(body);
        if (!json) {
            return damaged("a measure's body is not readable");
        }
        if (m.anchor == plan::Anchor::Paper && json->is_object() && json->contains("paper")) {
            const Json paper = std::move((*json)["paper"]);
            json->erase("paper");
            for (const Json& value : paper) {
                const auto point = pointFrom(value);
                if (!point) {
                    return damaged("a place on the paper is not one");
                }
                m.points.push_back(*point);
            }
        }
        return withRest(std::move(m), *json);
    }

    template <class T>
    Result<void> keep(Result<T> value, std::vector<T>& list) {
        if (!value) {
            return tl::unexpected(value.error());
        }
        list.push_back(std::move(*value));
        return {};
    }
    template <class T>
    Result<void> keep(Result<T> value, T& one) {
        if (!value) {
            return tl::unexpected(value.error());
        }
        one = std::move(*value);
        return {};
    }

    Result<void> takeOther(std::int64_t what, const Json& json) {
        switch (what) {
            case kHeading:
                return keep(headingFrom(json), heading_);
            case kPhases:
                return keep(phasesFrom(json), phases_);
            case kRegistration:
                return keep(registrationFrom(json), registration_);
            case kForce:
                return keep(forceFrom(json), force_);
            case kSheet:
                return keep(sheetFrom(json), sheets_);
            case kFilm:
                return keep(filmFrom(json), films_);
            case kRoute:
                return keep(routeFrom(json), routes_);
            default:
                return {};  // something a newer program added without a new schema: left where it is
        }
    }
};

Result<Uuid> identityOf(Database& database) {
    Statement read = database.prepare("SELECT value FROM crosstick_plan WHERE key='identity'");
    const auto identity = read.step() ? parseUuid(read.text(0)) : std::nullopt;
    if (!identity) {
        return fail(kDamagedPlan, {{"file", database.file().string()}, {"why", std::string("it has no identity")}});
    }
    return *identity;
}

}  // namespace

std::string contentHash(const plan::Measure& measure) {
    return hexText(sha256(jsonText(toJson(measure))));
}

Result<plan::Plan> readPlan(Database& database) {
    const auto identity = identityOf(database);
    if (auto good = database.check(); !good) {
        return tl::unexpected(good.error());
    }
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    Loader loader(database.file());
    // Sheets, films and routes in their places; measures by identity, as the list is kept.
    Statement rows = database.prepare(
        "SELECT s.item, v.what, v.kind, v.name, v.number, v.states, v.body, v.geom, s.place "
        "FROM crosstick_state_item s JOIN crosstick_version v ON v.fid=s.version WHERE s.state=1");
    while (rows.step()) {
        if (auto taken = loader.take(Row{rows}); !taken) {
            return tl::unexpected(taken.error());
        }
    }
    if (auto good = database.check(); !good) {
        return tl::unexpected(good.error());
    }
    return std::move(loader).plan(*identity);
}

void writeDifference(Database& database, const plan::Difference& d, const plan::Plan& after, Instant when) {
    const int srs = srsOf(after.heading().plane);
    Saver saver(database);
    if (d.identity) {
        const std::string identity = text(d.identity->second);
        database.prepare("UPDATE crosstick_plan SET value=?1 WHERE key='identity'").bind(1, identity).run();
    }
    if (d.heading.after) {
        saver.put(versionOf(singleton(kHeading), kHeading, toJson(*d.heading.after), d.heading.after->name));
        useSrs(database, srs, geodesy::crsOfZone(after.heading().plane), "undefined");
    }
    if (d.phases.after) {
        saver.put(versionOf(singleton(kPhases), kPhases, toJson(*d.phases.after)));
    }
    if (d.registration.after) {
        saver.put(versionOf(singleton(kRegistration), kRegistration, toJson(*d.registration.after)));
    }
    if (d.force.after) {
        saver.put(versionOf(singleton(kForce), kForce, toJson(*d.force.after)));
    }
    putChanges(saver, d.sheets, [](const plan::Sheet& s) { return versionOf(s.id, kSheet, toJson(s), s.name); });
    putChanges(saver, d.films, [](const plan::Film& f) { return versionOf(f.id, kFilm, toJson(f), f.name); });
    putChanges(saver, d.routes, [&](const plan::Route& r) { return versionOf(r, srs); });
    putChanges(saver, d.measures, [&](const plan::Measure& m) { return versionOf(m, srs); });
    if (movesPlane(d)) {
        putAllPlaces(saver, after, srs);
    }
    saver.order(d.sheetOrder);
    saver.order(d.filmOrder);
    saver.order(d.routeOrder);
    writeFilmViews(database, d, srs, when);
}

}  // namespace crosstick::files
