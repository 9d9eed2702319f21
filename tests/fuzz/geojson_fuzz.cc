// Any bytes as GeoJSON: they are refused with an error that names its reason, or give a plan whose own GeoJSON reads
// back into it without a change.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/files/exchange.h"

namespace {

using namespace crosstick;

void require(bool claim) {
    if (!claim) {
        std::abort();
    }
}

const plan::Plan& emptyPlan() {
    static const plan::Plan plan = [] {
        plan::Heading heading;
        heading.plane = geodesy::Zone{25, geodesy::Hemisphere::North};
        plan::PlanBuilder builder{plan::Plan{}};
        builder.id(Uuid{{1}}).heading(heading);
        return std::move(builder).build();
    }();
    return plan;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto read = files::readGeoJson(text, emptyPlan(), {"FUZZ"});
    if (!read) {
        require(!read.error().fault.name.empty());
        return 0;
    }
    const std::string written = files::writeGeoJson(read->plan);
    const auto again = files::readGeoJson(written, read->plan, {"FUZZ"});
    require(again.has_value());
    require(again->measures == read->plan.measures().size());
    require(again->plan.films().size() == read->plan.films().size());
    return 0;
}
