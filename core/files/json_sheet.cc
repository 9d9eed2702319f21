// A map sheet as the plan keeps it.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/files/json_form.h"

namespace crosstick::files {
namespace {

constexpr std::array kHeightUnits{"unclear", "m", "ft", "us-ft"};

Json shiftJson(const plan::DatumShift& shift) {
    Json json = Json::object();
    put(json, "name", shift.name);
    put(json, "better_grid", shift.betterGrid);
    const auto accuracy = [&](const char* key, const std::optional<Metres>& metres) {
        if (metres) {
            json[key] = metres->value();
        }
    };
    accuracy("accuracy_m", shift.accuracy);
    accuracy("better_accuracy_m", shift.betterAccuracy);
    return json;
}

void readShift(FieldReader& reader, plan::Sheet& s) {
    if (const Json* shift = reader.object("datum_shift")) {
        FieldReader inner(*shift, "datum_shift");
        const auto metres = [&](const char* key) {
            const auto value = inner.number(key);
            return value ? std::optional(Metres(*value)) : std::nullopt;
        };
        s.datumShift = {inner.text("name"), metres("accuracy_m"), inner.text("better_grid"),
                        metres("better_accuracy_m")};
        if (inner.fault()) {
            reader.wrong("datum_shift", "a name and metres");
        }
    }
}

}  // namespace

Json toJson(const plan::Sheet& s) {
    Json json = {{"id", text(s.id)}, {"path", s.path},       {"bytes", s.bytes}, {"sha256", s.sha256},
                 {"crs", s.crs},     {"columns", s.columns}, {"rows", s.rows},   {"scale", s.scale.denominator}};
    json["placement"] = {s.placement.corner.easting.value(),  s.placement.eastPerColumn,  s.placement.eastPerRow,
                         s.placement.corner.northing.value(), s.placement.northPerColumn, s.placement.northPerRow};
    for (const plan::RasterSpot corner : s.neatline) {
        json["neatline"].push_back({corner.column, corner.row});
    }
    for (const plan::GridMark& mark : s.marks) {
        json["marks"].push_back(
            {mark.spot.column, mark.spot.row, mark.place.easting.value(), mark.place.northing.value()});
    }
    if (s.asFilm) {
        json["as_film"] = *s.asFilm;
    }
    if (s.stretch) {
        json["stretch_percent"] = {s.stretch->eastPercent, s.stretch->northPercent};
    }
    put(json, "series", s.series);
    put(json, "name", s.name);
    put(json, "number", s.number);
    put(json, "edition", s.edition);
    put(json, "datum", s.datum);
    if (!(s.datumShift == plan::DatumShift{})) {
        json["datum_shift"] = shiftJson(s.datumShift);
    }
    if (s.declination) {
        json["printed_gm"] = {{"angle_deg", s.declination->gmAngle.value()},
                              {"date", dateOrNothing(s.declination->date)},
                              {"yearly_deg", s.declination->yearlyChange.value()}};
        put(json["printed_gm"], s.declination->unknown);
    }
    put(json, "elevation", s.elevationPath);
    if (s.elevationUnit != plan::HeightUnit::Unclear) {
        json["elevation_unit"] = kHeightUnits[static_cast<std::size_t>(s.elevationUnit)];
    }
    put(json, s.unknown);
    return json;
}

namespace {

void readPlacement(FieldReader& reader, plan::Sheet& s) {
    std::array<double, 6> g{};
    const Json* list = reader.array("placement");
    if (list == nullptr || list->size() != g.size()) {
        reader.wrong("placement", "six numbers");
        return;
    }
    for (std::size_t n = 0; n < g.size(); ++n) {
        if (!(*list)[n].is_number() || !std::isfinite((*list)[n].get<double>())) {
            reader.wrong("placement", "six numbers");
            return;
        }
        g[n] = (*list)[n].get<double>();
    }
    s.placement = {{Metres(g[0]), Metres(g[3])}, g[1], g[2], g[4], g[5]};
}

void readStretch(FieldReader& reader, plan::Sheet& s) {
    const Json* percent = reader.array("stretch_percent");
    if (percent == nullptr) {
        return;
    }
    const auto isSmall = [](const Json& one) {
        return one.is_number() && std::abs(one.get<double>()) <= plan::kMostStretchPercent;
    };
    if (percent->size() != 2 || !isSmall((*percent)[0]) || !isSmall((*percent)[1])) {
        reader.wrong("stretch_percent", "two numbers from -5 to 5");
        return;
    }
    s.stretch = plan::PaperStretch{(*percent)[0].get<double>(), (*percent)[1].get<double>()};
}

void readNeatline(FieldReader& reader, plan::Sheet& s) {
    const Json* corners = reader.array("neatline");
    if (corners == nullptr) {
        return;
    }
    const auto isSpot = [](const Json& corner) {
        return corner.is_array() && corner.size() == 2 && corner[0].is_number() && corner[1].is_number() &&
               std::abs(corner[0].get<double>()) < 1e7 && std::abs(corner[1].get<double>()) < 1e7;
    };
    if (corners->size() < 3 || corners->size() > plan::kMostNeatlineCorners ||
        !std::all_of(corners->begin(), corners->end(), isSpot)) {
        reader.wrong("neatline", "three to 64 corners, each a column and a row");
        return;
    }
    for (const Json& corner : *corners) {
        s.neatline.push_back({corner[0].get<double>(), corner[1].get<double>()});
    }
}

void readMarks(FieldReader& reader, plan::Sheet& s) {
    const Json* marks = reader.array("marks");
    if (marks == nullptr) {
        return;
    }
    const auto isMark = [](const Json& mark) {
        return mark.is_array() && mark.size() == 4 && std::all_of(mark.begin(), mark.end(), [](const Json& one) {
                   return one.is_number() && std::abs(one.get<double>()) < 1e8;
               });
    };
    if (marks->size() > plan::kMostGridMarks || !std::all_of(marks->begin(), marks->end(), isMark)) {
        reader.wrong("marks", "up to 2000 of column, row, easting and northing");
        return;
    }
    for (const Json& mark : *marks) {
        s.marks.push_back({{mark[0].get<double>(), mark[1].get<double>()},
                           {Metres(mark[2].get<double>()), Metres(mark[3].get<double>())}});
    }
}

void readPrinted(FieldReader& reader, plan::Sheet& s) {
    if (const Json* printed = reader.object("printed_gm")) {
        FieldReader inner(*printed, "printed_gm");
        s.declination = plan::PrintedDeclination{Degrees(inner.number("angle_deg").value_or(0)),
                                                 inner.date("date").value_or(CalendarDate{}),
                                                 Degrees(inner.number("yearly_deg").value_or(0))};
        s.declination->unknown = inner.unknown();
        if (inner.fault() || !s.declination->date.ok()) {
            reader.wrong("printed_gm", "an angle with its date");
        }
    }
}

}  // namespace

Result<plan::Sheet> sheetFrom(const Json& json) {
    FieldReader reader(json, "sheet");
    plan::Sheet s;
    s.id = reader.id("id").value_or(Uuid{});
    s.path = reader.text("path");
    s.bytes = reader.whole("bytes").value_or(0);
    s.sha256 = reader.text("sha256");
    s.crs = reader.text("crs");
    const auto columns = reader.whole("columns").value_or(0);
    const auto rows = reader.whole("rows").value_or(0);
    constexpr std::int64_t kMost = 10'000'000;
    if (columns < 0 || rows < 0 || columns > kMost || rows > kMost) {
        reader.wrong("columns", "a size in pixels");
    }
    s.columns = static_cast<int>(columns);
    s.rows = static_cast<int>(rows);
    const double scale = reader.number("scale").value_or(0);
    if (!(scale >= 1 && scale <= 1e9)) {
        reader.wrong("scale", "the number under the 1 of a scale");
    }
    s.scale = Scale{scale};
    readPlacement(reader, s);
    readNeatline(reader, s);
    readMarks(reader, s);
    readStretch(reader, s);
    s.asFilm = reader.number("as_film");
    if (s.asFilm && !(*s.asFilm >= 0 && *s.asFilm <= 1)) {
        reader.wrong("as_film", "a strength from 0 to 1");
    }
    s.series = reader.text("series");
    s.name = reader.text("name");
    s.number = reader.text("number");
    s.edition = reader.text("edition");
    s.datum = reader.text("datum");
    readShift(reader, s);
    readPrinted(reader, s);
    s.elevationPath = reader.text("elevation");
    s.elevationUnit =
        static_cast<plan::HeightUnit>(reader.choice("elevation_unit", {"unclear", "m", "ft", "us-ft"}, 0));
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    s.unknown = reader.unknown();
    return s;
}

}  // namespace crosstick::files
