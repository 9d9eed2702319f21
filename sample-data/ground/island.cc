#include "sample-data/ground/island.h"

#include "sample-data/data_file.h"

namespace crosstick::demo {
namespace {

std::vector<NamedPegs> namedPegs(const Json& list) {
    std::vector<NamedPegs> lines;
    for (const Json& entry : list) {
        lines.push_back({entry.at("name").get<std::string>(), pegsOf(entry.at("points"))});
    }
    return lines;
}

SpotKind spotKind(const std::string& word) {
    if (word == "pillar") {
        return SpotKind::Pillar;
    }
    return word == "lake" ? SpotKind::Lake : SpotKind::Plain;
}

Island islandOf(const Json& data) {
    Island island;
    island.noiseSeed = data.at("noise_seed").get<std::uint64_t>();
    island.shore = pegsOf(data.at("shore"));
    for (const Json& islet : data.at("islets")) {
        island.islets.push_back(lineOf(islet));
    }
    island.isletHeight = data.at("islet_height").get<double>();
    island.ridges = namedPegs(data.at("ridges"));
    island.brooks = namedPegs(data.at("brooks"));
    island.lake = lineOf(data.at("lake").at("points"));
    island.lakeLevel = data.at("lake").at("level").get<double>();
    for (const Json& entry : data.at("spot_heights")) {
        island.spotHeights.push_back({spotKind(entry.at("kind").get<std::string>()),
                                      {spotOf(entry.at("at")), entry.at("height").get<double>()}});
    }
    return island;
}

}  // namespace

Result<Island> readIsland(const std::filesystem::path& file) {
    return readData(file, islandOf);
}

}  // namespace crosstick::demo
