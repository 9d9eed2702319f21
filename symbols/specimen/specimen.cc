#include "symbols/specimen/specimen.h"

#include <algorithm>
#include <set>

#include "symbols/signs.h"
#include "symbols/specimen/flow.h"
#include "symbols/specimen/pages.h"
#include "symbols/specimen/samples.h"

namespace crosstick::symbols {
namespace {

std::string_view nameOf(measures::Confidence confidence) {
    switch (confidence) {
        case measures::Confidence::High:
            return "fairly sure";
        case measures::Confidence::Medium:
            return "less sure";
        case measures::Confidence::Low:
            break;
    }
    return "doubtful";
}

std::string codeOf(const measures::Entry& entry) {
    if (entry.code.entity.empty()) {
        return entry.legend == measures::Legend::Explain ? "no code; in the legend" : "no code";
    }
    return std::string(entry.code.entity) + ", " + std::string(nameOf(entry.code.confidence)) +
           (entry.legend == measures::Legend::Explain ? "; in the legend" : "");
}

void addSample(Flow& flow, const measures::Entry& entry, const Exhibit& exhibit, drawing::Vector size,
               const std::vector<std::string>& captions, const drawing::Gauge& gauge, PenMode pens) {
    const drawing::Box room = flow.room(size, captions);
    // Where the symbol stands on its spot by a point of its own; other spots are its middle.
    if (entry.sign == measures::Sign::ActionBox || entry.sign == measures::Sign::Critical ||
        entry.sign == measures::Sign::TaskWords) {
        flow.cross(drawing::Point{room.left, room.top} + exhibit.points.front());
    }
    Stage stage(room, gauge, pens);
    stage.add(marching()).add(exhibit);
    if (entry.sign == measures::Sign::Security) {  // its two arrows start from a unit
        stage.add({.kind = "unit",
                   .points = {exhibit.points.front()},
                   .standing = exhibit.standing,
                   .whose = exhibit.whose,
                   .fields = {{"unit", "rec sqd"}}});
    }
    flow.draw(stage.engraved());
}

/// The catalogue's order, with rooms of one size side by side.
std::vector<measures::Entry> byGroupAndBody() {
    const auto all = measures::catalogue();
    std::vector<measures::Entry> sorted(all.begin(), all.end());
    std::stable_sort(sorted.begin(), sorted.end(), [](const measures::Entry& a, const measures::Entry& b) {
        return std::pair(a.group, ruleOf(a.sign).body) < std::pair(b.group, ruleOf(b.sign).body);
    });
    return sorted;
}

/// Every measure as it stands by itself, group by group.
void addCatalogue(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    std::optional<measures::Group> group;
    std::optional<Body> body;
    for (const measures::Entry& entry : byGroupAndBody()) {
        if (group != entry.group) {
            flow.heading(std::string(measures::nameOf(entry.group)));
        } else if (body != ruleOf(entry.sign).body) {
            flow.endRow();
        }
        group = entry.group;
        body = ruleOf(entry.sign).body;
        const drawing::Vector size = sampleSize(entry);
        addSample(flow, entry, sample(entry, size), size, {std::string(entry.name), codeOf(entry)}, gauge, pens);
    }
}

/// What is drawn otherwise where somebody asks for it: every question that a measure asks answered with yes, and slope
/// arrows from the gentlest to the steepest.
void addAsked(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Drawn on request");
    std::optional<Body> body;
    for (const measures::Entry& entry : measures::catalogue()) {
        const drawing::Vector size = sampleSize(entry);
        const auto show = [&](std::string_view key, const std::string& value, const std::string& asked) {
            if (body && body != ruleOf(entry.sign).body) {
                flow.endRow();
            }
            body = ruleOf(entry.sign).body;
            Exhibit exhibit = sample(entry, size);
            exhibit.fields[std::string(key)] = value;
            addSample(flow, entry, exhibit, size, {std::string(entry.name), asked}, gauge, pens);
        };
        for (const measures::Field& field : entry.fields) {
            if (field.type == measures::FieldType::Answer) {
                show(field.key, "yes", std::string(field.label) + ": yes");
            }
        }
        if (entry.sign == measures::Sign::SlopeArrows) {
            for (const char* slope : {"5", "7", "10", "14"}) {
                show("slope", slope, std::string(slope) + " %");
            }
        }
    }
}

/// One measure of each sign: planned, the enemy's, and planned by the enemy where there is one pen.
void addManners(Flow& flow, const drawing::Gauge& gauge) {
    std::set<measures::Sign> known;
    std::optional<Body> body;
    for (const measures::Entry& entry : measures::catalogue()) {
        if (!known.insert(entry.sign).second) {
            continue;
        }
        if (body != ruleOf(entry.sign).body) {
            flow.endRow();
        }
        body = ruleOf(entry.sign).body;
        const drawing::Vector size = sampleSize(entry);
        Exhibit exhibit = sample(entry, size);
        const std::string name(entry.name);
        exhibit.standing = plan::Standing::Planned;
        addSample(flow, entry, exhibit, size, {name + ", planned"}, gauge, PenMode::Colour);
        exhibit.standing = plan::Standing::Present;
        exhibit.whose = plan::Whose::Enemy;
        addSample(flow, entry, exhibit, size, {"the enemy's"}, gauge, PenMode::Colour);
        addSample(flow, entry, exhibit, size, {"the enemy's, one pen"}, gauge, PenMode::OnePen);
        exhibit.standing = plan::Standing::Planned;
        addSample(flow, entry, exhibit, size, {"suspected, one pen"}, gauge, PenMode::OnePen);
    }
}

void take(std::vector<SpecimenPage>& all, Flow&& flow) {
    for (SpecimenPage& page : std::move(flow).pages()) {
        all.push_back(std::move(page));
    }
}

}  // namespace

std::vector<SpecimenPage> specimen(const drawing::Gauge& gauge, PenMode pens) {
    std::vector<SpecimenPage> pages;
    Flow measures("MEASURES");
    addCatalogue(measures, gauge, pens);
    addAsked(measures, gauge, pens);
    take(pages, std::move(measures));
    Flow manners("PLANNED, THE ENEMY'S, ONE PEN");
    addManners(manners, gauge);
    take(pages, std::move(manners));
    Flow units("UNIT SYMBOLS");
    addUnits(units, gauge, pens);
    take(pages, std::move(units));
    Flow hard("HARD CASES");
    addHardCases(hard, gauge, pens);
    take(pages, std::move(hard));
    Flow film("ROUTES AND A FILM IN LITTLE");
    addFilm(film, gauge, pens);
    take(pages, std::move(film));
    return pages;
}

drawing::Drawing tokenOf(const measures::Entry& entry, const drawing::Box& room, const drawing::Gauge& gauge) {
    Stage stage(room, gauge, PenMode::Colour);
    return stage.add(marching()).add(sample(entry, sampleSize(entry))).token(entry, room);
}

drawing::Drawing tokenOf(const plan::Measure& shown, const measures::Entry& entry, const drawing::Box& room,
                         const drawing::Gauge& gauge) {
    Exhibit exhibit = sample(entry, sampleSize(entry));
    exhibit.name = shown.name;
    exhibit.number = shown.number;
    exhibit.fields = shown.fields;
    exhibit.whose = shown.whose;
    exhibit.standing = shown.standing;
    Stage stage(room, gauge, PenMode::Colour);
    return stage.add(marching()).add(exhibit).token(entry, room);
}

}  // namespace crosstick::symbols
