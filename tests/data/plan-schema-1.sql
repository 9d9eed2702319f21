-- A plan as schema 1 wrote it: a measure's state, anchor and side stand as words in its body; no column `states`.
PRAGMA application_id = 1196444487;
PRAGMA user_version = 10300;
CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL, organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT);
INSERT INTO gpkg_spatial_ref_sys VALUES ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', ''), ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', ''), ('EPSG:32625', 32625, 'EPSG', 32625, 'undefined', '');
CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '', last_change DATETIME NOT NULL, min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER);
CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name));
CREATE TABLE gpkg_extensions (table_name TEXT, column_name TEXT, extension_name TEXT NOT NULL, definition TEXT NOT NULL, scope TEXT NOT NULL);
CREATE TABLE crosstick_plan (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE, value TEXT NOT NULL);
CREATE TABLE crosstick_version (fid INTEGER PRIMARY KEY AUTOINCREMENT, item BLOB NOT NULL, what INTEGER NOT NULL, hash BLOB NOT NULL, kind TEXT, name TEXT, number TEXT, body TEXT, geom GEOMETRY);
CREATE TABLE crosstick_state (id INTEGER PRIMARY KEY, name TEXT NOT NULL, at TEXT NOT NULL);
CREATE TABLE crosstick_state_item (state INTEGER NOT NULL, item BLOB NOT NULL, version INTEGER NOT NULL, place INTEGER NOT NULL DEFAULT 0, PRIMARY KEY (state, item)) WITHOUT ROWID;
CREATE TABLE crosstick_shown (film BLOB NOT NULL, item BLOB NOT NULL, place TEXT NOT NULL, PRIMARY KEY (film, item)) WITHOUT ROWID;
INSERT INTO crosstick_state VALUES (1, 'current', '');
INSERT INTO crosstick_plan(key, value) VALUES ('schema', '1'), ('saves', '4'), ('identity', '00000000-0000-8000-8000-000000000001');
INSERT INTO crosstick_version VALUES
 (1, x'00000000000000000000000000000001', 0, x'00', NULL, 'OLD KETTLE', NULL, '{"name":"OLD KETTLE","zone":{"letter":"O","offset_min":-120},"date":"2027-03-13","declination":"model","plane_zone":25,"plane_hemisphere":"n","weather":"fog"}', NULL),
 (2, x'000000000000800080000000000000a1', 6, x'00', 'assembly-area', 'HASSOCK', NULL, '{"state":"assumed","whose":"enemy","why":"cover from sight","colour_of_gate":"blue"}', x'47500001717f00000103000000010000000400000000000000000020410000000000000041000000000000204100000000008000410000000000202041000000000000004100000000000020410000000000000041'),
 (3, x'000000000000800080000000000000a2', 6, x'00', 'checkpoint', '', '3', NULL, x'47500001717f0000010100000000000000000020410000000000000041'),
 (4, x'000000000000800080000000000000f1', 4, x'00', NULL, 'MOVE', NULL, '{"id":"00000000-0000-8000-8000-0000000000f1","name":"MOVE","phases":[1,2],"shows":[{"item":"00000000-0000-8000-8000-0000000000a1","order":"i"},{"item":"00000000-0000-8000-8000-0000000000a2","order":"r"}]}', NULL);
INSERT INTO crosstick_state_item SELECT 1, item, fid, 0 FROM crosstick_version;
INSERT INTO crosstick_shown SELECT x'000000000000800080000000000000f1', item, 'i' FROM crosstick_version WHERE what = 6;
INSERT INTO gpkg_contents VALUES ('crosstick_plan', 'attributes', 'crosstick_plan', '', '2026-11-25T00:00:00.000Z', NULL, NULL, NULL, NULL, NULL), ('crosstick_version', 'features', 'crosstick_version', '', '2026-11-25T00:00:00.000Z', NULL, NULL, NULL, NULL, 32625);
INSERT INTO gpkg_geometry_columns VALUES ('crosstick_version', 'geom', 'GEOMETRY', 32625, 0, 0);
