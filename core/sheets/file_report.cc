#include "core/sheets/file_report.h"

#include <algorithm>
#include <cctype>

#include "core/sheets/messages.h"
#include "core/worker/faults.h"

namespace crosstick::sheets {
namespace {

using worker::Packer;
using worker::Unpacker;

constexpr std::int64_t kMostItems = 64;

void pack(Packer& packer, const std::optional<double>& value) {
    packer.number(value ? 1 : 0).real(value.value_or(0));
}

std::optional<double> realOrNone(Unpacker& unpacker) {
    const bool there = unpacker.number(0, 1) == 1;
    const double value = unpacker.real();
    return there ? std::optional(value) : std::nullopt;
}

template <class Enum>
Enum choice(Unpacker& unpacker, Enum last) {
    return static_cast<Enum>(unpacker.number(0, static_cast<std::int64_t>(last)));
}

int whole(Unpacker& unpacker, std::int64_t least, std::int64_t most) {
    return static_cast<int>(unpacker.number(least, most));
}

void packPlacement(Packer& packer, const std::optional<std::array<double, 6>>& placement) {
    packer.number(placement ? 1 : 0);
    for (const double number : placement.value_or(std::array<double, 6>{})) {
        packer.real(number);
    }
}

std::optional<std::array<double, 6>> takePlacement(Unpacker& unpacker) {
    const bool there = unpacker.number(0, 1) == 1;
    std::array<double, 6> placement{};
    for (double& number : placement) {
        number = unpacker.real();
    }
    return there ? std::optional(placement) : std::nullopt;
}

void packHeights(Packer& packer, const std::optional<HeightFacts>& heights) {
    const HeightFacts facts = heights.value_or(HeightFacts{});
    packer.number(heights ? 1 : 0).number(static_cast<std::int64_t>(facts.unit)).text(facts.datum);
    pack(packer, facts.noData);
}

std::optional<HeightFacts> takeHeights(Unpacker& unpacker) {
    const bool there = unpacker.number(0, 1) == 1;
    HeightFacts facts;
    facts.unit = choice(unpacker, HeightUnit::SurveyFoot);
    facts.datum = unpacker.text();
    facts.noData = realOrNone(unpacker);
    return there ? std::optional(std::move(facts)) : std::nullopt;
}

/// A definition may name grid files, which PROJ would then open here: foreign bytes again. None of ours does.
bool namesFiles(const std::string& crs) {
    std::string lower = crs;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return lower.find("grids") != std::string::npos || lower.find("parameterfile") != std::string::npos;
}

}  // namespace

Packing packingFor(Colours colours, bool isLossy, int columns, int rows) {
    constexpr double kMuch = 1e8;
    const bool fewInks = colours == Colours::Palette || colours == Colours::Grey || colours == Colours::Heights;
    const bool vast = static_cast<double>(columns) * rows > kMuch;
    return isLossy || (vast && !fewInks) ? Packing::Lossy : Packing::Lossless;
}

worker::Record packReport(const FileReport& report) {
    Packer packer;
    packer.text(report.driver).number(report.columns).number(report.rows).number(report.bands).number(report.bits);
    packer.number(report.pages).number(report.orientation).number(static_cast<std::int64_t>(report.colours));
    packer.text(report.compression).number(report.isLossy ? 1 : 0).number(report.isWhole ? 1 : 0);
    packer.number(report.blockColumns).number(report.blockRows).number(report.overviews);
    packer.text(report.crs);
    packPlacement(packer, report.placement);
    packer.number(report.controlPoints);
    pack(packer, report.dotsPerMetre);
    packHeights(packer, report.heights);
    packer.number(static_cast<std::int64_t>(report.printed.size()));
    for (const auto& [key, value] : report.printed) {
        packer.text(key).text(value);
    }
    return packer.record(messages::kReport);
}

Result<FileReport> unpackReport(const worker::Record& record) {
    Unpacker unpacker(record.body);
    FileReport report;
    report.driver = unpacker.text();
    report.columns = whole(unpacker, 1, kLongestSide);
    report.rows = whole(unpacker, 1, kLongestSide);
    report.bands = whole(unpacker, 1, 65535);
    report.bits = whole(unpacker, 1, 128);
    report.pages = whole(unpacker, 1, 1000000);
    report.orientation = whole(unpacker, 1, 8);
    report.colours = choice(unpacker, Colours::Unknown);
    report.compression = unpacker.text();
    report.isLossy = unpacker.number(0, 1) == 1;
    report.isWhole = unpacker.number(0, 1) == 1;
    report.blockColumns = whole(unpacker, 1, INT32_MAX);
    report.blockRows = whole(unpacker, 1, INT32_MAX);
    report.overviews = whole(unpacker, 0, 64);
    report.crs = unpacker.text();
    report.placement = takePlacement(unpacker);
    report.controlPoints = whole(unpacker, 0, INT32_MAX);
    report.dotsPerMetre = realOrNone(unpacker);
    report.heights = takeHeights(unpacker);
    for (std::int64_t left = unpacker.number(0, kMostItems); left > 0 && unpacker.isSound(); --left) {
        std::string key = unpacker.text();
        report.printed[std::move(key)] = unpacker.text();
    }
    if (namesFiles(report.crs)) {
        report.crs.clear();
    }
    const bool fits = static_cast<double>(report.columns) * report.rows <= kMostPixels;
    if (record.kind != messages::kReport || !unpacker.isSound() || !unpacker.isAtEnd() || !fits) {
        return fail(worker::kGarbled);
    }
    return report;
}

}  // namespace crosstick::sheets
