#include "core/files/json_form.h"
#include "core/files/json_movement.h"
#include "core/files/json_sizes.h"

namespace crosstick::files {
namespace {

Json zoneJson(TimeZone zone) {
    return {{"letter", std::string(1, zone.letter)}, {"offset_min", zone.offset.count()}};
}

constexpr std::int64_t kFarthestZone = 15L * 60;  ///< minutes from UTC

TimeZone zoneFrom(FieldReader& reader) {
    TimeZone zone;
    if (const Json* object = reader.object("zone")) {
        FieldReader inner(*object, "zone");
        const std::string letter = inner.text("letter");
        const auto offset = inner.whole("offset_min");
        if (letter.size() != 1 || !offset || std::abs(*offset) > kFarthestZone) {
            reader.wrong("zone", "a letter and an offset within 15 hours");
        } else {
            zone = {letter[0], std::chrono::minutes(*offset)};
        }
    }
    return zone;
}

void putIssues(Json& json, const std::vector<plan::Issue>& issues) {
    for (const plan::Issue& issue : issues) {
        Json form = Json::object();
        put(form, "at", std::optional(issue.at));
        put(form, "papers", issue.papers);
        for (const plan::ItemId& item : issue.numbers) {
            form["numbers"].push_back(text(item));
        }
        put(form, issue.unknown);
        json["issues"].push_back(std::move(form));
    }
}

void readIssues(FieldReader& reader, plan::Heading& h) {
    const Json* list = reader.array("issues");
    if (list == nullptr) {
        return;
    }
    for (const Json& value : *list) {
        FieldReader inner(value, "issue");
        const auto at = inner.time("at");
        plan::Issue issue{at.value_or(Instant{}), inner.text("papers")};
        for (const std::string& item : inner.texts("numbers")) {
            const auto id = parseUuid(item);
            if (!id) {
                inner.wrong("numbers", "identities");
                break;
            }
            issue.numbers.push_back(*id);
        }
        issue.unknown = inner.unknown();
        if (!at || inner.fault()) {
            reader.wrong("issues", "a time, papers, and identities");
            return;
        }
        h.issues.push_back(std::move(issue));
    }
}

geodesy::Zone planeFrom(FieldReader& reader) {
    const auto number = reader.whole("plane_zone").value_or(31);
    const auto half = static_cast<geodesy::Hemisphere>(reader.choice("plane_hemisphere", {"n", "s"}, 0));
    if (number < 0 || number > 60) {
        reader.wrong("plane_zone", "0 to 60");
        return {};
    }
    return {static_cast<int>(number), half};
}

}  // namespace

Json toJson(const plan::Heading& h) {
    Json json = Json::object();
    put(json, "name", h.name);
    put(json, "marking", h.marking);
    put(json, "author", h.author);
    put(json, "unit", h.unit);
    put(json, "distribution", h.distribution);
    put(json, "cautions", h.cautions);
    json["zone"] = zoneJson(h.zone);
    put(json, "date", dateOrNothing(h.date));
    put(json, "prepared", h.prepared);
    put(json, "effective", h.effective);
    json["declination"] = h.declination == plan::DeclinationSource::Sheet ? "sheet" : "model";
    json["plane_zone"] = h.plane.number;
    json["plane_hemisphere"] = h.plane.hemisphere == geodesy::Hemisphere::South ? "s" : "n";
    putMovement(json, h);
    putIssues(json, h.issues);
    putGauge(json, h.gauge);
    put(json, h.unknown);
    return json;
}

Result<plan::Heading> headingFrom(const Json& json) {
    FieldReader reader(json, "heading");
    plan::Heading h;
    h.name = reader.text("name");
    h.marking = reader.text("marking");
    h.author = reader.text("author");
    h.unit = reader.text("unit");
    h.distribution = reader.text("distribution");
    h.cautions = reader.text("cautions");
    h.zone = zoneFrom(reader);
    h.date = reader.date("date").value_or(CalendarDate{});
    h.prepared = reader.time("prepared");
    h.effective = reader.time("effective");
    h.declination = static_cast<plan::DeclinationSource>(reader.choice("declination", {"model", "sheet"}, 0));
    h.plane = planeFrom(reader);
    readMovement(reader, h);
    readIssues(reader, h);
    h.gauge = gaugeFrom(reader);
    if (reader.fault()) {
        return tl::unexpected(*reader.fault());
    }
    h.unknown = reader.unknown();
    return h;
}

Json toJson(const std::vector<plan::Phase>& phases) {
    Json list = Json::array();
    for (const plan::Phase& phase : phases) {
        Json json = {{"number", phase.number}};
        put(json, "name", phase.name);
        put(json, "from", phase.from);
        put(json, "until", phase.until);
        put(json, phase.unknown);
        list.push_back(std::move(json));
    }
    return list;
}

Result<std::vector<plan::Phase>> phasesFrom(const Json& json) {
    std::vector<plan::Phase> phases;
    for (const Json& value : json) {
        FieldReader reader(value, "phase");
        plan::Phase phase;
        phase.number = static_cast<int>(reader.whole("number").value_or(0) % 1000);
        phase.name = reader.text("name");
        phase.from = reader.time("from");
        phase.until = reader.time("until");
        phase.unknown = reader.unknown();
        if (reader.fault()) {
            return tl::unexpected(*reader.fault());
        }
        phases.push_back(std::move(phase));
    }
    return phases;
}

}  // namespace crosstick::files
