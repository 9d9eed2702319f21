#include "core/files/film_views.h"

#include <cctype>

#include "core/files/schema.h"
#include "core/units/sha256.h"

namespace crosstick::files {
namespace {

// Names of tables are made of plain letters; the identity's first digits keep two films of one name apart.
std::string viewName(const plan::Film& film) {
    std::string name = "film_";
    for (const char c : film.name) {
        const auto byte = static_cast<unsigned char>(c);
        name += std::isalnum(byte) != 0 && byte < 128 ? static_cast<char>(std::tolower(byte)) : '_';
    }
    return name.substr(0, 40) + '_' + text(film.id).substr(0, 8);
}

void dropView(Database& database, const plan::Film& film) {
    const std::string name = viewName(film);
    database.run(("DROP VIEW IF EXISTS \"" + name + '"').c_str());
    database.prepare("DELETE FROM gpkg_geometry_columns WHERE table_name=?1").bind(1, name).run();
    database.prepare("DELETE FROM gpkg_contents WHERE table_name=?1").bind(1, name).run();
}

void makeView(Database& database, const plan::Film& film, int srsId, const std::string& at) {
    const std::string name = viewName(film);
    const std::string sql = "CREATE VIEW \"" + name +
                            "\" AS SELECT v.fid AS fid, v.geom AS geom, v.kind AS kind, v.name AS name, "
                            "v.number AS number FROM crosstick_shown h "
                            "JOIN crosstick_state_item s ON s.state=1 AND s.item=h.item "
                            "JOIN crosstick_version v ON v.fid=s.version WHERE h.film=x'" +
                            hexText(film.id.bytes) + "' AND v.geom IS NOT NULL";
    database.run(sql.c_str());
    Statement contents = database.prepare(
        "INSERT INTO gpkg_contents(table_name, data_type, identifier, description, last_change, srs_id) "
        "VALUES(?1, 'features', ?1, ?2, ?3, ?4)");
    const std::string words = "film " + film.name;
    contents.bind(1, name).bind(2, words).bind(3, at).bind(4, std::int64_t{srsId}).run();
    Statement columns = database.prepare("INSERT INTO gpkg_geometry_columns VALUES(?1, 'geom', 'GEOMETRY', ?2, 0, 0)");
    columns.bind(1, name).bind(2, std::int64_t{srsId}).run();
}

/// Only the rows that differ are touched.
void writeShown(Database& database, const Uuid& film, const std::vector<plan::Showing>& before,
                const std::vector<plan::Showing>& after) {
    std::map<Uuid, std::string> old;
    for (const plan::Showing& showing : before) {
        old.emplace(showing.item, showing.order);
    }
    Statement put = database.prepare(
        "INSERT INTO crosstick_shown VALUES(?1, ?2, ?3) ON CONFLICT(film, item) DO UPDATE SET place=excluded.place");
    for (const plan::Showing& showing : after) {
        const auto was = old.find(showing.item);
        if (was == old.end() || was->second != showing.order) {
            put.bind(1, film).bind(2, showing.item).bind(3, showing.order).run();
        }
        if (was != old.end()) {
            old.erase(was);
        }
    }
    Statement drop = database.prepare("DELETE FROM crosstick_shown WHERE film=?1 AND item=?2");
    for (const auto& [item, order] : old) {
        drop.bind(1, film).bind(2, item).run();
    }
}

}  // namespace

void writeFilmViews(Database& database, const plan::Difference& difference, int srsId, Instant when) {
    std::string at = isoTime(when, TimeZone{});
    at.insert(at.size() - 1, ".000");
    static const std::vector<plan::Showing> kNothing;
    for (const auto& change : difference.films) {
        const bool renamed = change.before && change.after && viewName(*change.before) != viewName(*change.after);
        if (change.before && (!change.after || renamed)) {
            dropView(database, *change.before);
        }
        if (change.after && (!change.before || renamed)) {
            makeView(database, *change.after, srsId, at);
        }
        const plan::FilmPtr& either = change.after ? change.after : change.before;
        if (either) {
            writeShown(database, either->id, change.before ? change.before->shows : kNothing,
                       change.after ? change.after->shows : kNothing);
        }
    }
    database.prepare("UPDATE gpkg_contents SET last_change=?1 WHERE table_name='crosstick_version'").bind(1, at).run();
}

}  // namespace crosstick::files
