#include "core/files/schema.h"

#include "core/files/faults.h"

namespace crosstick::files {
namespace {

// OGC 12-128r18: the tables every GeoPackage has, in their published form.
constexpr const char* kGeoPackage = R"(
CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT);
INSERT INTO gpkg_spatial_ref_sys VALUES
  ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', 'undefined cartesian coordinate reference system'),
  ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', 'undefined geographic coordinate reference system'),
  ('WGS 84 geodetic', 4326, 'EPSG', 4326,
   'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]',
   'longitude/latitude coordinates in decimal degrees on the WGS 84 spheroid');
CREATE TABLE gpkg_contents (
  table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '',
  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')), min_x DOUBLE, min_y DOUBLE,
  max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id));
CREATE TABLE gpkg_geometry_columns (
  table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL,
  z TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id));
CREATE TABLE gpkg_extensions (
  table_name TEXT, column_name TEXT, extension_name TEXT NOT NULL, definition TEXT NOT NULL, scope TEXT NOT NULL,
  CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name));
)";

// crosstick_version: immutable versions of everything a plan holds (what: 0 heading, 1 phases, 2 window and ticks, 3
// sheet, 4 film, 5 route, 6 measure, 7 elements and columns). crosstick_state_item: a state is a list of versions;
// state 1 is the current one. crosstick_shown: which items the films of the current state show, for the films' views.
// The tables are registered as an extension that only writers need to know: reading them as they are is safe.
constexpr const char* kOurs = R"(
CREATE TABLE crosstick_plan (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE, value TEXT NOT NULL);
CREATE TABLE crosstick_version (
  fid INTEGER PRIMARY KEY AUTOINCREMENT, item BLOB NOT NULL, what INTEGER NOT NULL, hash BLOB NOT NULL, kind TEXT,
  name TEXT, number TEXT, states INTEGER NOT NULL DEFAULT 0, body TEXT, geom GEOMETRY);
CREATE TABLE crosstick_state (id INTEGER PRIMARY KEY, name TEXT NOT NULL, at TEXT NOT NULL);
CREATE TABLE crosstick_state_item (
  state INTEGER NOT NULL, item BLOB NOT NULL, version INTEGER NOT NULL, place INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (state, item)) WITHOUT ROWID;
CREATE TABLE crosstick_shown (
  film BLOB NOT NULL, item BLOB NOT NULL, place TEXT NOT NULL, PRIMARY KEY (film, item)) WITHOUT ROWID;
INSERT INTO crosstick_state VALUES (1, 'current', '');
INSERT INTO gpkg_extensions VALUES
  ('crosstick_plan', NULL, 'crosstick_plan', 'the plan: schema version, identity, save count', 'write-only'),
  ('crosstick_version', NULL, 'crosstick_plan', 'immutable versions of what the plan holds', 'write-only'),
  ('crosstick_state', NULL, 'crosstick_plan', 'states of the plan', 'write-only'),
  ('crosstick_state_item', NULL, 'crosstick_plan', 'the versions that make a state', 'write-only'),
  ('crosstick_shown', NULL, 'crosstick_plan', 'what the films of the current state show', 'write-only');
)";

std::string isoMillis(Instant when) {
    std::string text = isoTime(when, TimeZone{});
    text.insert(text.size() - 1, ".000");
    return text;
}

// Schema 1 kept a measure's four states in its body, as words; they became the packed column `states`.
void fromOneToTwo(Database& database) {
    database.run("ALTER TABLE crosstick_version ADD COLUMN states INTEGER NOT NULL DEFAULT 0");
    Statement read = database.prepare(
        "SELECT fid, json_extract(body,'$.state'), json_extract(body,'$.anchor'), "
        "json_extract(body,'$.whose') FROM crosstick_version WHERE what=6");
    Statement write = database.prepare(
        "UPDATE crosstick_version SET states=?2, body=NULLIF(json_remove(body,'$.state','$.anchor','$.whose'),'{}') "
        "WHERE fid=?1");
    while (read.step()) {
        // The packing of plan_store.cc: state in bits 0-1 (confirmed is 0), anchor 2, standing 3, whose 4.
        const std::string_view state = read.text(1);
        const std::int64_t packed = (state == "assumed"    ? 1
                                     : state == "unplaced" ? 2
                                                           : 0) |
                                    (read.text(2) == "paper" ? 4 : 0) | (read.text(3) == "enemy" ? 16 : 0);
        write.bind(1, read.whole(0)).bind(2, packed).run();
    }
    database.run("UPDATE crosstick_plan SET value='2' WHERE key='schema'");
}

}  // namespace

void makeSchema(Database& database, Instant when) {
    database.allowViews();
    database.run("PRAGMA application_id = 1196444487");  // "GPKG"
    database.run("PRAGMA user_version = 10300");
    database.run(kGeoPackage);
    database.run(kOurs);
    Statement contents = database.prepare(
        "INSERT INTO gpkg_contents(table_name, data_type, identifier, description, last_change, srs_id) "
        "VALUES(?1, ?2, ?1, ?3, ?4, ?5)");
    const std::string at = isoMillis(when);
    contents.bind(1, "crosstick_plan").bind(2, "attributes").bind(3, "the plan itself").bind(4, at).bindNull(5).run();
    contents.bind(1, "crosstick_version").bind(2, "features").bind(3, "versions of what the plan holds");
    contents.bind(4, at).bind(5, 0).run();
    database.run("INSERT INTO gpkg_geometry_columns VALUES('crosstick_version', 'geom', 'GEOMETRY', 0, 0, 0)");
    Statement plan = database.prepare("INSERT INTO crosstick_plan(key, value) VALUES(?1, ?2)");
    plan.bind(1, "schema").bind(2, std::to_string(kSchemaVersion)).run();
    plan.bind(1, "saves").bind(2, "0").run();
    const std::string nobody = text(Uuid{});  // until the first save names the plan: an empty plan is a plan, too
    plan.bind(1, "identity").bind(2, nobody).run();
}

Result<int> schemaVersion(Database& database) {
    const auto tables = database.wholeOf(
        "SELECT count(*) FROM sqlite_master WHERE type='table' AND name IN "
        "('crosstick_plan', 'crosstick_version', 'crosstick_state_item')");
    if (auto good = database.check(); !good) {
        return tl::unexpected(good.error());
    }
    if (tables != 3) {
        return fail(kNoPlanInside, {{"file", database.file().string()}});
    }
    const auto version = database.wholeOf("SELECT CAST(value AS INTEGER) FROM crosstick_plan WHERE key='schema'");
    if (auto good = database.check(); !good) {
        return tl::unexpected(good.error());
    }
    if (version < 1) {
        return fail(kDamagedPlan,
                    {{"file", database.file().string()}, {"why", std::string("it names no schema version")}});
    }
    if (version > kSchemaVersion) {
        return fail(kNewerPlan,
                    {{"file", database.file().string()}, {"found", version}, {"known", std::int64_t{kSchemaVersion}}});
    }
    return static_cast<int>(version);
}

Result<void> migrate(Database& database, int from) {
    if (from <= 1) {
        fromOneToTwo(database);
    }
    return database.check();
}

void useSrs(Database& database, int epsg, const std::string& name, const std::string& wkt) {
    Statement srs = database.prepare(
        "INSERT OR REPLACE INTO gpkg_spatial_ref_sys VALUES(?1, ?2, 'EPSG', ?2, ?3, 'the plan''s own plane')");
    srs.bind(1, name).bind(2, std::int64_t{epsg}).bind(3, wkt).run();
    database.prepare("UPDATE gpkg_geometry_columns SET srs_id=?1").bind(1, std::int64_t{epsg}).run();
    database.prepare("UPDATE gpkg_contents SET srs_id=?1 WHERE data_type='features'").bind(1, std::int64_t{epsg}).run();
}

}  // namespace crosstick::files
