#pragma once

#include <filesystem>
#include <fstream>

#include <nlohmann/json.hpp>

#include "sample-data/faults.h"
#include "sample-data/place.h"

namespace crosstick::demo {

using Json = nlohmann::json;

/// Reads one file of the demo's lists and hands it to `take`, which may throw what the JSON library throws.
/// Errors: demo/no-data, demo/damaged-data.
template <class Take>
[[nodiscard]] auto readData(const std::filesystem::path& file, Take&& take) -> Result<decltype(take(Json{}))> {
    std::ifstream in(file);
    if (!in) {
        return fail(kNoData, {{"file", file.string()}});
    }
    try {
        return take(Json::parse(in));
    } catch (const Json::exception& error) {
        return fail(kDamagedData, {{"file", file.string()}, {"found", std::string(error.what())}});
    }
}

/// Short metres of the lists (54270 98060) to the full grid (654270 5098060).
[[nodiscard]] inline Spot spotOf(const Json& pair) {
    return {600000 + pair.at(0).get<double>(), 5000000 + pair.at(1).get<double>()};
}
[[nodiscard]] inline Line lineOf(const Json& pairs) {
    Line line;
    for (const Json& pair : pairs) {
        line.push_back(spotOf(pair));
    }
    return line;
}
[[nodiscard]] inline PegLine pegsOf(const Json& triples) {
    PegLine pegs;
    for (const Json& triple : triples) {
        pegs.push_back({spotOf(triple), triple.at(2).get<double>()});
    }
    return pegs;
}

}  // namespace crosstick::demo
