#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"

namespace crosstick::movement {

std::string label(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    const bool isBare = entry != nullptr && entry->wording == measures::Wording::Bare;
    std::string text = entry == nullptr ? measure.kind : isBare ? std::string{} : std::string(entry->abbreviation);
    if (!text.empty() && measure.name.starts_with(text + ' ')) {
        text.clear();  // a name that says "PL TRIVET" itself
    }
    for (const std::string& part : {measure.number, measure.name}) {
        if (!part.empty()) {
            text += text.empty() ? part : ' ' + part;
        }
    }
    if (const auto words = measure.fields.find("unit"); text.empty() && words != measure.fields.end()) {
        text = words->second;  // a unit is called what its symbol says
    }
    return text.empty() && entry != nullptr ? std::string(entry->name) : text;
}

}  // namespace crosstick::movement
