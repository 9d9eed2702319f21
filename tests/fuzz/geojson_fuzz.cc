// Any bytes as GeoJSON: they are refused with an error that names its reason, or give a plan whose own GeoJSON reads
// back into it without a change, and can be pasted into another without touching what that one has.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/files/exchange.h"
#include "core/plan/pasting.h"

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
    IdSource ids(9);
    const plan::FilmId film = read->plan.films().empty() ? plan::FilmId{} : read->plan.films().front()->id;
    const plan::Pasted twice =
        plan::pasted(read->plan, read->plan, {film, Metres(1), Metres(1), [&ids] { return ids.next(); }});
    require(twice.plan.measures().size() == 2 * read->plan.measures().size());
    require(twice.plan.routes().size() == 2 * read->plan.routes().size());
    return 0;
}
