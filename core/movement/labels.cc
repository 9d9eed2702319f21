#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"

namespace crosstick::movement {

std::string label(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    std::string text = entry == nullptr ? measure.kind : std::string(entry->abbreviation);
    if (!text.empty() && measure.name.starts_with(text + ' ')) {
        text.clear();  // a name that says "PL TRIVET" itself
    }
    for (const std::string& part : {measure.number, measure.name}) {
        if (!part.empty()) {
            text += text.empty() ? part : ' ' + part;
        }
    }
    return text.empty() && entry != nullptr ? std::string(entry->name) : text;
}

}  // namespace crosstick::movement
