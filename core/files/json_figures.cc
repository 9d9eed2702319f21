#include "core/files/json_figures.h"

namespace crosstick::files {
namespace {

constexpr const char* kKey = "figures_at";

std::optional<std::size_t> countFrom(FieldReader& reader, const char* key) {
    constexpr std::int64_t kMost = 1'000'000;
    const std::int64_t count = reader.whole(key).value_or(0);
    return count >= 0 && count <= kMost ? std::optional(static_cast<std::size_t>(count)) : std::nullopt;
}

}  // namespace

void putFigures(Json& showing, const std::vector<plan::FiguresAt>& figures,
                const std::function<Json(geodesy::PlanePoint)>& placeJson) {
    Json all = Json::array();
    for (const plan::FiguresAt& one : figures) {
        Json entry = {{"at", placeJson(one.at)}};
        put(entry, "from", one.leg.from.isNone() ? std::string{} : text(one.leg.from));
        put(entry, "to", one.leg.to.isNone() ? std::string{} : text(one.leg.to));
        if (one.leg.bends > 0) {
            entry["piece"] = one.leg.piece;
            entry["bends"] = one.leg.bends;
        }
        put(entry, one.unknown);
        all.push_back(std::move(entry));
    }
    if (!all.empty()) {
        showing[kKey] = std::move(all);
    }
}

std::vector<plan::FiguresAt> figuresFrom(
    FieldReader& reader, const std::function<std::optional<geodesy::PlanePoint>(const Json&)>& placeFrom) {
    std::vector<plan::FiguresAt> all;
    const Json* figures = reader.array(kKey);
    if (figures == nullptr) {
        return all;
    }
    for (const Json& value : *figures) {
        FieldReader inner(value, "figures");
        const auto piece = countFrom(inner, "piece");
        const auto bends = countFrom(inner, "bends");
        const Json* place = inner.array("at");
        const auto at = place == nullptr ? std::nullopt : placeFrom(*place);
        const plan::ItemId from = inner.id("from").value_or(plan::ItemId{});
        const plan::ItemId to = inner.id("to").value_or(plan::ItemId{});
        if (!at || !piece || !bends || *piece > *bends || inner.fault()) {
            reader.wrong(
                kKey,
                "places of figures, each \"at\" a place, \"from\" and \"to\" ids, \"piece\" a number up to \"bends\"");
            break;
        }
        all.push_back({{from, to, *piece, *bends}, *at, inner.unknown()});
    }
    return all;
}

}  // namespace crosstick::files
